// What a tree is worth, in exact arithmetic (itembank/notation/value).
const LARGEST_EXPONENT = 64, LARGEST_BITS = 8192, DAY = 86400;
const SIZES = {};
for (const [name, unit] of Object.entries(UNITS)) SIZES[name] = Fraction.of(unit[1]);
const COINS = {};
for (const [name, unit] of Object.entries(CURRENCY)) COINS[name] = Fraction.of(unit[1]);

function exact(node) {
  const worth = EXACT[node.k];
  if (!worth) throw new NotExact(`${node.k} has no value of its own`);
  return worth(node);
}
function exactOr(node, otherwise) {
  try { return exact(node); } catch (error) {
    if (error instanceof NotationError) return otherwise;
    throw error;
  }
}
function decimalValue(node) {
  const scale = bpow(TEN, node.places.length);
  let value = F(BigInt(node.whole + node.places), scale);
  if (node.recurring) {
    value = value.plus(F(BigInt(node.recurring), (bpow(TEN, node.recurring.length) - ONE) * scale));
  }
  return value;
}
function overFraction(top, bottom) {
  if (bottom.zero) throw new NotExact("this divides by zero");
  return top.over(bottom);
}
function powerOf(base, exponent) {
  if (!exponent.whole || F(LARGEST_EXPONENT).less(exponent.abs())) {
    throw new NotExact(`the exponent ${exponent} is not a whole number up to 64`);
  }
  const times = Number(babs(exponent.n));
  if (Math.max(bits(base.n), bits(base.d)) * times > LARGEST_BITS) throw new NotExact("this power is too large");
  if (exponent.n < ZERO && base.zero) throw new NotExact("this divides by zero");
  const top = bpow(base.n, times), bottom = bpow(base.d, times);
  return exponent.n < ZERO ? F(bottom, top) : F(top, bottom);
}
function wholeRoot(n, index) {
  if (bits(n) > LARGEST_BITS) throw new NotExact("this root is of too large a number");
  const guess = floorRoot(n, index);
  if (bpow(guess, index) !== n) throw new NotExact("this root is not a rational number");
  return guess;
}
function floorRoot(n, index) {
  if (index === 2) return isqrt(n);
  if (index === 4) return isqrt(isqrt(n));
  if (!n) return ZERO;
  const k = BigInt(index);
  let guess = ONE << BigInt(Math.floor(bits(n) / index) + 1);
  for (;;) {
    const better = ((k - ONE) * guess + n / bpow(guess, index - 1)) / k;
    if (better >= guess) return guess;
    guess = better;
  }
}
function rootOf(of, index) {
  if (of.n < ZERO && index % 2 === 0) throw new NotExact("a negative number has no such root");
  const top = wholeRoot(babs(of.n), index), bottom = wholeRoot(of.d, index);
  return F(of.n < ZERO ? -top : top, bottom);
}
function clockSeconds(node) {
  let hour = node.hour;
  if (node.half) hour = (hour % 12) + (node.half === "pm" ? 12 : 0);
  return 3600 * hour + 60 * (node.minute || 0);
}
function sumValue(node) {
  let total = exact(node.first);
  for (const [op, term] of node.rest) total = op === "+" ? total.plus(exact(term)) : total.minus(exact(term));
  const times = timesIn(node);
  if (times === null) return total;
  if (times === 1) return total.modulo(F(DAY));
  if (total.n < ZERO) throw new NotExact("the times are of different days");
  return total;
}
// The sines and tangents that are fractions, and their angles: as in itembank/notation/right_ratios.py.
const SINES = { 0: [0, 1], 30: [1, 2], 90: [1, 1], 150: [1, 2], 180: [0, 1], 210: [-1, 2], 270: [-1, 1], 330: [-1, 2] };
const TANGENTS = { 0: [0, 1], 45: [1, 1], 135: [-1, 1] };
const ANGLES = { "0/1": 0, "1/2": 30, "-1/2": -30, "1/1": 90, "-1/1": -90 };
const ANGLES_OF_TAN = { "0/1": 0, "1/1": 45, "-1/1": -45 };
function trigValue(node) {
  const of = exact(node.of);
  let found;
  if (node.inverse) {
    const angle = (node.name === "tan" ? ANGLES_OF_TAN : ANGLES)[`${of.n}/${of.d}`];
    if (angle !== undefined) found = F(node.name === "cos" ? 90 - angle : angle);
  } else if (of.d === ONE) {
    const turned = node.name === "cos" ? of.plus(F(90)) : of;
    const pair = node.name === "tan" ? TANGENTS[turned.modulo(F(180)).n] : SINES[turned.modulo(F(360)).n];
    if (pair) found = F(pair[0], pair[1]);
  }
  if (found === undefined) throw new NotExact(`this ${node.inverse ? "angle" : "ratio"} is not a fraction`);
  return found;
}
const EXACT = {
  Int: (node) => F(node.n),
  Dec: decimalValue,
  Frac: (node) => overFraction(exact(node.num), exact(node.den)),
  Mixed: (node) => F(node.whole).plus(overFraction(F(node.num), F(node.den))),
  Neg: (node) => exact(node.of).negated(),
  Bracket: (node) => exact(node.of),
  Sum: sumValue,
  Product: (node) => node.rest.reduce(
    (total, [op, factor]) => (op === "÷" ? overFraction(total, exact(factor)) : total.times(exact(factor))),
    exact(node.first)),
  Juxt: (node) => node.factors.reduce((total, factor) => total.times(exact(factor)), F(1)),
  Percent: (node) => exact(node.of).over(F(100)),
  Money: (node) => exact(node.amount).times(COINS[node.sign]),
  Quantity: (node) => exact(node.amount).times(SIZES[node.unit]),
  MixedUnits: (node) => node.parts.map(exact).reduce((a, b) => a.plus(b), F(0)),
  ClockTime: (node) => F(clockSeconds(node)),
  Power: (node) => powerOf(exact(node.base), exact(node.exponent)),
  Root: (node) => rootOf(exact(node.of), node.index),
  Trig: trigValue,
};
function carryFault(node) {
  for (let i = 1; i < node.parts.length; i++) {
    const before = node.parts[i - 1], after = node.parts[i];
    if (atMost(SIZES[before.unit], exact(after))) {
      return `${shownLine(after)} is not less than ${shownLine(Quantity(Int(1), before.unit))}`;
    }
  }
  return "";
}
function numberNode(value) {
  const top = babs(value.n);
  const node = value.d === ONE ? Int(top) : Frac(Int(top), Int(value.d));
  return value.n < ZERO ? Neg(node) : node;
}
function decimalNode(value) {
  let whole = babs(value.n) / value.d, rest = babs(value.n) % value.d, digits = "";
  const seen = new Map();
  while (rest && !seen.has(rest)) {
    if (digits.length > 5000) throw new Undecided("a very long recurring decimal");
    seen.set(rest, digits.length);
    digits += String((rest * TEN) / value.d);
    rest = (rest * TEN) % value.d;
  }
  const cut = rest ? seen.get(rest) : digits.length;
  const node = digits ? Dec(String(whole), digits.slice(0, cut), digits.slice(cut)) : Int(whole);
  return value.n < ZERO ? Neg(node) : node;
}
