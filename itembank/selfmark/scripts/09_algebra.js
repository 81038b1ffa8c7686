// A tree as an exact quotient of polynomials, square roots and all (itembank/notation/algebra).
// A polynomial is a Map from a monomial's key to [monomial, coefficient], in the order in which
// its terms came to be, as a dictionary of Python has it; a monomial is its letters with their
// exponents and the number under one square root.
const MOST_TERMS = 300, LARGEST_DEGREE = 64, LARGEST_RADICAND = 1000000000;
const UNIT_KEY = "|1";

function monomial(powers, root) {
  return { powers, root, key: `${powers.map(([name, n]) => `${name}^${n}`).join("*")}|${root}` };
}
const UNIT = monomial([], 1);
function poly(pairs) {
  const found = new Map();
  for (const [m, c] of pairs) found.set(m.key, [m, c]);
  return found;
}
function put(total, m, c) { if (c.zero) total.delete(m.key); else total.set(m.key, [m, c]); }
function polyPlus(a, b) {
  const total = new Map(a);
  for (const [key, [m, c]] of b) put(total, m, total.has(key) ? total.get(key)[1].plus(c) : c);
  return total;
}
function polyProduct(a, b) {
  if (a.size * b.size > (MOST_TERMS * MOST_TERMS) / 4) throw new NotExact("this multiplies out to too many terms");
  const total = new Map();
  for (const [first, c] of a.values()) {
    for (const [second, d] of b.values()) {
      const [m, factor] = monomialTimes(first, second);
      const value = c.times(d).times(F(factor));
      put(total, m, total.has(m.key) ? total.get(m.key)[1].plus(value) : value);
    }
  }
  if (total.size > MOST_TERMS) throw new NotExact("this multiplies out to too many terms");
  return total;
}
function gcdNumber(a, b) { while (b) { const r = a % b; a = b; b = r; } return a; }
function monomialTimes(a, b) {
  const shared = gcdNumber(a.root, b.root);
  let powers = a.powers.length ? a.powers : b.powers;
  if (a.powers.length && b.powers.length) {
    const merged = new Map(a.powers);
    for (const [name, n] of b.powers) merged.set(name, (merged.get(name) || 0) + n);
    let degree = 0;
    for (const n of merged.values()) degree += n;
    if (degree > LARGEST_DEGREE) throw new NotExact(`the degree is more than ${LARGEST_DEGREE}`);
    powers = Array.from(merged).sort((x, y) => (x[0] < y[0] ? -1 : 1));
  }
  return [monomial(powers, (a.root / shared) * (b.root / shared)), shared];
}
function polyEqual(a, b) {
  if (a.size !== b.size) return false;
  for (const [key, [, c]] of a) if (!b.has(key) || !b.get(key)[1].is(c)) return false;
  return true;
}
function polyLetters(side) {
  const found = new Set();
  for (const [m] of side.values()) for (const [name] of m.powers) found.add(name);
  return found;
}
class Quotient {
  constructor(top, bottom) { this.top = top; this.bottom = bottom; }
  plus(b) {
    if (polyEqual(this.bottom, b.bottom)) return new Quotient(polyPlus(this.top, b.top), this.bottom);
    return new Quotient(
      polyPlus(polyProduct(this.top, b.bottom), polyProduct(b.top, this.bottom)),
      polyProduct(this.bottom, b.bottom));
  }
  negated() {
    return new Quotient(poly(Array.from(this.top.values()).map(([m, c]) => [m, c.negated()])), this.bottom);
  }
  minus(b) { return this.plus(b.negated()); }
  times(b) { return new Quotient(polyProduct(this.top, b.top), polyProduct(this.bottom, b.bottom)); }
  over(b) {
    if (!b.top.size) throw new NotExact("this divides by zero");
    return new Quotient(polyProduct(this.top, b.bottom), polyProduct(this.bottom, b.top));
  }
  is(b) { return polyEqual(polyProduct(this.top, b.bottom), polyProduct(b.top, this.bottom)); }
  letters() { return new Set([...polyLetters(this.top), ...polyLetters(this.bottom)]); }
}
const number = (value) => new Quotient(value.zero ? new Map() : poly([[UNIT, value]]), poly([[UNIT, F(1)]]));
const letterQuotient = (name) => new Quotient(poly([[monomial([[name, 1]], 1), F(1)]]), poly([[UNIT, F(1)]]));
const onlyUnit = (side) => side.size === 0 || (side.size === 1 && side.has(UNIT_KEY));
const coefficient = (side, key) => (side.has(key) ? side.get(key)[1] : F(0));

function algebra(node, known) {
  const form = ALGEBRA[node.k];
  return form ? form(node, known || {}) : number(exact(node));
}
function rational(value) {
  if (onlyUnit(value.top) && onlyUnit(value.bottom)) {
    return coefficient(value.top, UNIT_KEY).over(value.bottom.get(UNIT_KEY)[1]);
  }
  const [m, c] = value.bottom.values().next().value;
  const found = coefficient(value.top, m.key).over(c);
  if (value.is(number(found))) return found;
  throw new NotExact("this is not a rational number");
}
function algebraPower(base, exponent) {
  if (exponent.d === TWO || exponent.d === BigInt(3) || exponent.d === BigInt(4)) {
    return algebraPower(algebraRoot(base, Number(exponent.d)), F(exponent.n));
  }
  if (!exponent.whole || F(LARGEST_DEGREE).less(exponent.abs())) {
    throw new NotExact("this exponent cannot be worked out exactly");
  }
  if (exponent.n < ZERO) return number(F(1)).over(algebraPower(base, exponent.negated()));
  const times = Number(exponent.n);
  let most = 0;
  for (const side of [base.top, base.bottom]) {
    for (const [, c] of side.values()) most = Math.max(most, bits(c.n), bits(c.d));
  }
  if (most * times > LARGEST_BITS) throw new NotExact("this power is too large");
  let total = number(F(1));
  for (let i = 0; i < times; i++) total = total.times(base);
  return total;
}
function algebraRoot(of, index) {
  if (of.letters().size) throw new NotExact("a letter stands under a root");
  const value = rational(of);
  if (value.n < ZERO && index % 2 === 0) throw new NotExact("a negative number has no such root");
  if (index !== 2) {
    try { return number(exact(Root(fractionTree(value), index))); } catch (error) {
      if (!(error instanceof NotExact) || index !== 4) throw error;
      return algebraRoot(algebraRoot(of, 2), 2);
    }
  }
  const inside = value.n * value.d;
  if (inside > BigInt(LARGEST_RADICAND)) return number(exact(Root(fractionTree(value), 2)));
  const [outside, left] = squareFree(Number(inside));
  const top = value.zero ? new Map() : poly([[monomial([], left), F(BigInt(outside), value.d)]]);
  return new Quotient(top, poly([[UNIT, F(1)]]));
}
function fractionTree(value) {
  const node = Frac(Int(babs(value.n)), Int(value.d));
  return value.n < ZERO ? Neg(node) : node;
}
function squareFree(n) {
  if (n === 0) return [0, 1];
  let outside = 1, inside = 1, p = 2;
  while (p * p <= n) {
    let times = 0;
    while (n % p === 0) { n /= p; times++; }
    outside *= Math.pow(p, Math.floor(times / 2));
    inside *= Math.pow(p, times % 2);
    p += p === 2 ? 1 : 2;
  }
  return [outside, inside * n];
}
const letterOf = (name, known) => known[name] || letterQuotient(name);
const ALGEBRA = {
  Sym: (node, known) => letterOf(node.name, known),
  Blank: (node, known) => letterOf("□", known),
  Int: (node) => number(F(node.n)),
  Dec: (node) => number(decimalValue(node)),
  Neg: (node, known) => algebra(node.of, known).negated(),
  Bracket: (node, known) => algebra(node.of, known),
  Frac: (node, known) => {
    const top = algebra(node.num, known);
    return top.over(algebra(node.den, known));
  },
  Percent: (node, known) => algebra(node.of, known).over(number(F(100))),
  Money: (node, known) => algebra(node.amount, known).times(number(COINS[node.sign])),
  Quantity: (node, known) => algebra(node.amount, known).times(number(SIZES[node.unit])),
  Sum: (node, known) => node.rest.reduce((total, [op, term]) => {
    const value = algebra(term, known);
    return op === "+" ? total.plus(value) : total.minus(value);
  }, algebra(node.first, known)),
  Product: (node, known) => node.rest.reduce((total, [op, factor]) => {
    const value = algebra(factor, known);
    return op === "÷" ? total.over(value) : total.times(value);
  }, algebra(node.first, known)),
  Juxt: (node, known) => node.factors.reduce((total, factor) => total.times(algebra(factor, known)), number(F(1))),
  Power: (node, known) => {
    const power = algebra(node.exponent, known);
    if (power.letters().size) throw new NotExact("a letter stands in an exponent");
    return algebraPower(algebra(node.base, known), rational(power));
  },
  Root: (node, known) => algebraRoot(algebra(node.of, known), node.index),
};
