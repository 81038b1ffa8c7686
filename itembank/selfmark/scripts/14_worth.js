// What an answer is worth, within bounds (itembank/marking/worth/worth).
const MOST_WORK = 2000;
const MADE = {};
for (const [kinds, unit] of TABLES.units.made) MADE[kinds.join(" ")] = unit;

function bitsOf(node) {
  switch (node.k) {
    case "Int": return bits(node.n);
    case "Dec": return 7 * (node.whole + node.places + node.recurring).length;
    case "Power": {
      const below = bitsOf(node.base), above = bitsOf(node.exponent);
      if (above > 64) return LARGEST_BITS + 1;
      const exponent = exactOr(node.exponent, null);
      if (exponent === null) return below + above;
      const times = exponent.abs().less(F(1)) ? F(1) : exponent.abs();
      return Number(times.times(F(below)).floor());
    }
  }
  return children(node).map(bitsOf).reduce((a, b) => a + b, 0) + 1;
}
// Both values are fractions, or both are quotients.
function worths(given, key) {
  if (bitsOf(given) > LARGEST_BITS) throw new NotExact("this is too large a number");
  const own = unitOf(given), wanted = unitOf(key);
  if (own && (!wanted || own[0] !== wanted[0])) throw new NotExact("the unit is of another kind");
  if (!own && isTime(key)) throw new NotExact("the answer is no time of day");
  const scale = !own && wanted ? wanted[1] : F(1);
  try {
    const a = exact(given).times(scale);
    return [a, exact(key)];
  } catch (error) {
    if (!(error instanceof NotExact)) throw error;
    const atoms = [];
    if (hasAtoms(given) || hasAtoms(key)) {
      given = plainTree(given, atoms);
      key = plainTree(key, atoms);
    }
    const a = boundedAlgebra(given), b = boundedAlgebra(key);
    return [a.times(number(scale)), b];
  }
}
const quotient = (worth) => (worth instanceof Quotient ? worth : number(worth));
const worthsEqual = (a, b) => a.is(b);
// [dimension, size], or null for no unit.
function unitOf(node) {
  switch (node.k) {
    case "Neg": case "Bracket": return unitOf(node.of);
    case "Quantity": return [UNITS[node.unit][0], SIZES[node.unit]];
    case "MixedUnits": return unitOf(node.parts[0]);
    case "Money": return [CURRENCY[node.sign][0], COINS[node.sign]];
    case "ClockTime": case "Sum": return isTime(node) ? ["time of day", F(1)] : null;
    case "Product": {
      const unit = madeUnit(node);
      if (unit !== false) return unit;
      if (node.rest.every(([, part]) => !unitOf(part))) return unitOf(node.first);
      return unitOf(node.rest[node.rest.length - 1][1]);
    }
  }
  return null;
}
function madeUnit(node) {
  const units = sidesOf(node).map(unitOf);
  if (units.some((unit) => !unit)) return false;
  const kinds = units.map(([kind]) => kind), ops = opsOf(node);
  if (kinds.length === 2 && ops[0] === "÷" && kinds[0] === kinds[1]) return null;
  const signed = [kinds[0], ...ops.map((op, i) => op + kinds[i + 1])].join(" ");
  return signed in MADE ? [MADE[signed], F(1)] : false;
}
const bounded = (node) => bitsOf(node) <= LARGEST_BITS && sizeOf(node)[1] <= MOST_WORK;
function boundedAlgebra(node) {
  if (!bounded(node)) throw new NotExact("this multiplies out to too many terms");
  return algebra(node);
}
function sizeOf(node) {
  switch (node.k) {
    case "Sum": {
      const sizes = sidesOf(node).map(sizeOf);
      if (walk(node).some((part) => part.k === "Frac" && hasLetters(part))) return multipliedSize(sizes);
      return [sizes.reduce((n, [k]) => n + k, 0), sizes.reduce((n, [, k]) => n + k, 0)];
    }
    case "Power": {
      const exponent = exactOr(node.exponent, null);
      if (exponent === null) return [1, 1];
      const times = babs(exponent.n) / exponent.d;
      const most = times > BigInt(64) ? 64 : Number(times);
      return multipliedSize(new Array(most).fill(sizeOf(node.base)));
    }
    case "Juxt": case "Product": case "Frac": return multipliedSize(children(node).map(sizeOf));
    case "Root":
      if (!hasLetters(node.of)) {
        const inside = exactOr(node.of, null);
        if (inside === null) return [2, 10];
        return [2, 1 + Number(isqrt(babs(inside.n * inside.d)) / BigInt(64))];
      }
      break;
    case "Int": case "Dec": case "Sym": case "Mixed": case "Blank": return [1, 1];
  }
  const sizes = children(node).map(sizeOf);
  return [sizes.length ? Math.max(...sizes.map(([n]) => n)) : 1, sizes.reduce((n, [, k]) => n + k, 0) + 1];
}
function multipliedSize(sizes) {
  let terms = 1, work = 0;
  for (const [n, cost] of sizes) {
    work += cost + terms * n;
    terms = Math.min(terms * n, 1000000);
  }
  return [terms, work];
}
function hasAtoms(node) {
  return walk(node).some((part) => part.k === "Root" || (part.k === "Power" && part.exponent.k !== "Int") ||
    (isFunction(part) && hasLetters(part)));
}
const isFunction = (node) => !(node.k in ALGEBRA) && isExpression(node) && children(node).length > 0;
function plainTree(node, atoms) {
  if (!hasLetters(node)) return node;
  const plain = (part) => plainTree(part, atoms);
  switch (node.k) {
    case "Root": {
      const { of, index } = node;
      if (of.k === "Frac") return plain(Frac(Root(of.num, index), Root(of.den, index)));
      if (of.k === "Product" && of.rest.length === 1 && (of.rest[0][0] === "×" || of.rest[0][0] === "÷")) {
        return plain(Product(Root(of.first, index), [[of.rest[0][0], Root(of.rest[0][1], index)]]));
      }
      if (of.k === "Juxt") return plain(Juxt(of.factors.map((factor) => Root(factor, index))));
      return Sym(atomFor(["root", index, boundedAlgebra(plain(of))], atoms));
    }
    case "Power":
      if (hasLetters(node.exponent)) {
        const below = plain(node.base), above = plain(node.exponent);
        const base = boundedAlgebra(below);
        return Sym(atomFor(["power", base, boundedAlgebra(above)], atoms));
      }
      {
        const power = exactOr(node.exponent, null);
        if (power && [TWO, BigInt(3), BigInt(4)].indexOf(power.d) >= 0) {
          const n = power.n < ZERO ? Neg(Int(-power.n)) : Int(power.n);
          return Power(plain(Root(bareOf(node.base), Number(power.d))), n);
        }
      }
      return Power(plain(node.base), node.exponent);
    case "Neg": case "Bracket": case "Frac": case "Juxt": case "Sum": case "Product":
      return withParts(node, plain);
  }
  if (isFunction(node)) {
    const inside = children(node).map((part) => boundedAlgebra(plain(part)));
    return Sym(atomFor(["function", frame(node).id, ...inside], atoms));
  }
  return node;
}
function atomFor(found, atoms) {
  for (const [known, name] of atoms) {
    if (known.length === found.length &&
        known.every((one, i) => (one instanceof Quotient ? one.is(found[i]) : one === found[i]))) return name;
  }
  const name = `§${atoms.length}`;
  atoms.push([found, name]);
  return name;
}
function saysTheSame(given, key) {
  const equations = [];
  for (const node of [given, key]) {
    if (node.k !== "Relation" || node.rest.length !== 1 || node.rest[0][0] !== "=" || !hasLetters(node)) return false;
    let top;
    try {
      const left = boundedAlgebra(node.first);
      top = left.minus(boundedAlgebra(node.rest[0][1])).top;
    } catch (error) {
      if (error instanceof NotationError) return false;
      throw error;
    }
    if (!top.size) return false;
    const lead = top.get(sortedText(Array.from(top.keys()))[0])[1];
    equations.push(poly(Array.from(top.values()).map(([m, c]) => [m, c.over(lead)])));
  }
  return polyEqual(equations[0], equations[1]);
}
