// Common factors, and whether a polynomial splits further (itembank/items/forms/polynomials).
function wholeContent(side) {
  const all = Array.from(side.values()).map(([, c]) => c);
  return all.some((c) => !c.whole) ? ZERO : gcdAll(all.map((c) => c.n));
}
function commonLetters(side) {
  let found = null;
  for (const [m] of side.values()) {
    const names = new Set(m.powers.map(([name]) => name));
    found = found === null ? names : new Set(Array.from(found).filter((name) => names.has(name)));
  }
  return found || new Set();
}
function proportional(a, b) {
  if ([a.top, a.bottom, b.top, b.bottom].every((side) => side.size === 1)) {
    const key = (side) => side.keys().next().value;
    return key(a.top) === key(b.top) && key(a.bottom) === key(b.bottom);
  }
  let left, right;
  try { left = polyProduct(a.top, b.bottom); right = polyProduct(b.top, a.bottom); } catch (error) {
    if (error instanceof NotExact) return false;
    throw error;
  }
  if (left.size !== right.size || Array.from(left.keys()).some((key) => !right.has(key))) return false;
  const ratios = new Set(Array.from(left).map(([key, [, c]]) => c.over(right.get(key)[1]).toString()));
  return ratios.size <= 1;
}
const rooted = (side) => Array.from(side.values()).some(([m]) => m.root !== 1);
const exponentIn = (m, name) => m.powers.reduce((n, [other, k]) => (other === name ? k : n), 0);
const degreeOf = (m) => m.powers.reduce((n, [, k]) => n + k, 0);
class TooLarge extends NotationError {}

function splits(side) {
  if (rooted(side)) return false;
  const degree = Math.max(0, ...Array.from(side.values()).map(([m]) => degreeOf(m)));
  if (degree < 2 || side.size < 2) return false;
  if (!commonLetters(side).size) {
    const found = splitsAsQuadratic(side);
    if (found !== null) return found;
  } else return true;
  if (degree > 12 || side.size > 40) throw new TooLarge("this is too long for its factors to be looked for");
  return splitsOtherwise(side);
}
function splitsAsQuadratic(side) {
  if (side.size > 3) return null;
  const letters = sortedText(Array.from(polyLetters(side)));
  const exponents = (m) => letters.map((name) => exponentIn(m, name));
  const ends = Array.from(side.values()).map(([m, c]) => [exponents(m), c]).sort((x, y) => {
    for (let i = 0; i < letters.length; i++) if (x[0][i] !== y[0][i]) return x[0][i] - y[0][i];
    return 0;
  });
  const [low, first] = ends[0], [high, last] = ends[ends.length - 1];
  if ([...low, ...high].some((n) => n % 2)) return null;
  let b = F(0);
  if (ends.length === 3) {
    if (ends[1][0].some((m, i) => 2 * m !== low[i] + high[i])) return null;
    b = ends[1][1];
  }
  const discriminant = b.times(b).minus(F(4).times(first).times(last));
  if (discriminant.n >= ZERO && [discriminant.n, discriminant.d].every((n) => isqrt(n) * isqrt(n) === n)) return true;
  const total = (list) => list.reduce((x, y) => x + y, 0);
  return Math.max(...low, ...high) === 2 && total(low) <= 2 && total(high) <= 2 ? false : null;
}
// Where the marker asks its algebra system: a cubic in one letter splits where it has a rational
// root; what is of degree 1 in some letter, where its two coefficients there share a factor; what
// is of degree 2 in a letter with a number before it, where its discriminant is a square. More is
// not decided here.
function splitsOtherwise(side) {
  const letters = Array.from(polyLetters(side));
  if (letters.length === 1) {
    const list = coefficients(side, letters[0]);
    if (list.length <= 4) return hasRationalRoot(list);
    if (hasRationalRoot(list)) return true;
    throw new Undecided("a polynomial of degree 4 or more");
  }
  for (const name of letters) {
    const by = byPower(side, name);
    if (Math.max(...by.keys()) !== 1) continue;
    return sharesAFactor(by.get(1), by.get(0) || new Map());
  }
  throw new Undecided("a polynomial in several letters");
}
function byPower(side, name) {
  const found = new Map();
  for (const [m, c] of side.values()) {
    const n = exponentIn(m, name);
    if (!found.has(n)) found.set(n, new Map());
    const rest = monomial(m.powers.filter(([other]) => other !== name), m.root);
    found.get(n).set(rest.key, [rest, c]);
  }
  return found;
}
function coefficients(side, name) {
  const by = new Map();
  for (const [m, c] of side.values()) by.set(exponentIn(m, name), c);
  const found = [];
  for (let n = Math.max(-1, ...by.keys()); n >= 0; n--) found.push(by.get(n) || F(0));
  return found;
}
function divisors(n) {
  n = babs(n);
  if (n > BigInt(1000000000)) throw new Undecided("large coefficients");
  const most = Number(n), found = [];
  for (let k = 1; k * k <= most; k++) if (most % k === 0) found.push(BigInt(k), BigInt(most / k));
  return found;
}
function hasRationalRoot(list) {
  let scale = ONE;
  for (const c of list) scale = (scale / gcd2(scale, c.d)) * c.d;
  const whole = list.map((c) => c.n * (scale / c.d));
  if (whole[whole.length - 1] === ZERO) return true;
  for (const p of divisors(whole[whole.length - 1])) {
    for (const q of divisors(whole[0])) {
      for (const top of [p, -p]) {
        let total = F(0);
        for (const c of whole) total = total.times(F(top, q)).plus(F(c));
        if (total.zero) return true;
      }
    }
  }
  return false;
}
function shareAFactor(above, below) {
  if (rooted(above) || rooted(below)) return false;
  const a = polyLetters(above), b = polyLetters(below);
  const all = new Set([...a, ...b]), both = Array.from(a).filter((name) => b.has(name));
  if (all.size === 1) return commonDegree(coefficients(above, both[0] || ""), coefficients(below, both[0] || "")) > 0;
  if (!both.length || above.size < 2 || below.size < 2) return false;
  return sharesAFactor(above, below);
}
function commonDegree(a, b) {
  while (b.length) { const rest = remainder(a, b); a = b; b = rest; }
  return a.length - 1;
}
function remainder(a, b) {
  let rest = a.slice();
  while (rest.length >= b.length) {
    const factor = rest[0].over(b[0]);
    b.forEach((c, i) => { rest[i] = rest[i].minus(factor.times(c)); });
    rest.shift();
  }
  while (rest.length && rest[0].zero) rest.shift();
  return rest;
}
// Whether two polynomials in several letters share a factor with a letter in it. They do where
// for some letter both hold, their resultant in it is nothing, or their contents share one: a
// greatest common divisor by pseudo-remainders, letter by letter.
function sharesAFactor(a, b) {
  if (!a.size) return polyLetters(b).size > 0;
  if (!b.size) return polyLetters(a).size > 0;
  return polyLetters(polyGcd(a, b)).size > 0;
}
function polyGcd(a, b) {
  if (!a.size) return b;
  if (!b.size) return a;
  const names = sortedText([...new Set([...polyLetters(a), ...polyLetters(b)])]);
  if (!names.length) return poly([[UNIT, F(1)]]);
  const name = names[0];
  let [x, y] = [a, b].map((side) => byPower(side, name));
  const [p, q] = [x, y].map(contentIn);
  const common = polyGcd(p, q);
  x = dividedBy(x, p); y = dividedBy(y, q);
  if (degreeIn(x) < degreeIn(y)) [x, y] = [y, x];
  let steps = 0;
  while (y.size && degreeIn(y) > 0) {
    if (++steps > 40) throw new Undecided("a long common factor");
    let rest = pseudoRemainder(x, y);
    if (rest.size) rest = dividedBy(rest, contentIn(rest));
    x = y; y = rest;
  }
  const primitive = y.size ? new Map([[0, poly([[UNIT, F(1)]])]]) : x;
  return polyProduct(common, joinedPowers(primitive, name));
}
const degreeIn = (by) => Math.max(0, ...by.keys());
function contentIn(by) {
  let found = new Map();
  for (const side of by.values()) found = polyGcd(found, side);
  return found;
}
function dividedBy(by, content) {
  const found = new Map();
  for (const [n, side] of by) found.set(n, exactDivision(side, content));
  return found;
}
function joinedPowers(by, name) {
  let total = new Map();
  for (const [n, side] of by) {
    total = polyPlus(total, n ? polyProduct(side, poly([[monomial([[name, n]], 1), F(1)]])) : side);
  }
  return total;
}
function pseudoRemainder(x, y) {
  const n = degreeIn(y), lead = y.get(n);
  let rest = new Map(x);
  while (rest.size && degreeIn(rest) >= n) {
    const m = degreeIn(rest), top = rest.get(m), next = new Map();
    for (const k of new Set([...rest.keys(), ...Array.from(y.keys()).map((j) => j + m - n)])) {
      if (k === m) continue;
      const left = rest.has(k) ? polyProduct(rest.get(k), lead) : new Map();
      const less = y.has(k - m + n) ? polyProduct(y.get(k - m + n), top) : new Map();
      const value = polyPlus(left, poly(Array.from(less.values()).map(([mono, c]) => [mono, c.negated()])));
      if (value.size) next.set(k, value);
    }
    rest = next;
  }
  return rest;
}
// Division that leaves nothing, by the terms that come last in one order of all monomials.
function exactDivision(a, b) {
  const lead = (side) => Array.from(side.values()).sort((x, y) => compareMonomials(y[0], x[0]))[0];
  const [m, c] = lead(b);
  let rest = a, total = new Map();
  while (rest.size) {
    const [n, d] = lead(rest), powers = [];
    for (const name of sortedText([...new Set([...n.powers, ...m.powers].map(([one]) => one))])) {
      const k = exponentIn(n, name) - exponentIn(m, name);
      if (k < 0) throw new Undecided("a division that leaves something");
      if (k) powers.push([name, k]);
    }
    const term = poly([[monomial(powers, 1), d.over(c)]]);
    total = polyPlus(total, term);
    rest = polyPlus(rest, polyProduct(b, poly(Array.from(term.values()).map(([mono, k]) => [mono, k.negated()]))));
  }
  return total;
}
function compareMonomials(a, b) {
  for (const name of sortedText([...new Set([...a.powers, ...b.powers].map(([one]) => one))])) {
    const k = exponentIn(a, name) - exponentIn(b, name);
    if (k) return k;
  }
  return 0;
}
