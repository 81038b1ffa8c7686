// Exact rational numbers. BigInt is called as a function, never written 1n, so that a browser
// without it still reads this script and can say so in words.
const N = (n) => BigInt(n);
const ZERO = BigIntOr(0), ONE = BigIntOr(1), TWO = BigIntOr(2), TEN = BigIntOr(10);

function BigIntOr(n) { return typeof BigInt === "function" ? BigInt(n) : n; }
function babs(n) { return n < ZERO ? -n : n; }
function gcd2(a, b) {
  a = babs(a); b = babs(b);
  while (b) { const r = a % b; a = b; b = r; }
  return a;
}
function gcdAll(numbers) { return numbers.reduce(gcd2, ZERO); }
function bits(n) { return n === ZERO ? 0 : babs(n).toString(2).length; }
function bpow(base, exponent) {
  let total = ONE;
  for (let i = 0; i < exponent; i++) total *= base;
  return total;
}
function isqrt(n) {
  if (n < TWO) return n;
  let guess = ONE << BigInt(Math.floor(bits(n) / 2) + 1);
  for (;;) {
    const better = (guess + n / guess) / TWO;
    if (better >= guess) return guess;
    guess = better;
  }
}

class Fraction {
  constructor(top, bottom) {
    if (bottom === undefined) { this.n = BigInt(top); this.d = ONE; return; }
    let n = BigInt(top), d = BigInt(bottom);
    if (d === ZERO) throw new NotExact("this divides by zero");
    if (d < ZERO) { n = -n; d = -d; }
    const common = gcd2(n, d);
    this.n = n / common; this.d = d / common;
  }
  static of(text) {
    const [top, bottom] = text.split("/");
    return new Fraction(BigInt(top), bottom === undefined ? ONE : BigInt(bottom));
  }
  plus(b) { return new Fraction(this.n * b.d + b.n * this.d, this.d * b.d); }
  minus(b) { return new Fraction(this.n * b.d - b.n * this.d, this.d * b.d); }
  times(b) { return new Fraction(this.n * b.n, this.d * b.d); }
  over(b) { return new Fraction(this.n * b.d, this.d * b.n); }
  negated() { return new Fraction(-this.n, this.d); }
  abs() { return this.n < ZERO ? this.negated() : this; }
  is(b) { return this.n === b.n && this.d === b.d; }
  less(b) { return this.n * b.d < b.n * this.d; }
  get zero() { return this.n === ZERO; }
  get whole() { return this.d === ONE; }
  // The largest whole number that is not more, as Python's // has it.
  floor() {
    const q = this.n / this.d;
    return this.n < ZERO && q * this.d !== this.n ? q - ONE : q;
  }
  modulo(n) { return this.minus(n.times(new Fraction(this.over(n).floor()))); }
  toString() { return this.d === ONE ? String(this.n) : `${this.n}/${this.d}`; }
}
const F = (top, bottom) => new Fraction(top, bottom === undefined ? 1 : bottom);
const atMost = (a, b) => !b.less(a);

// The nearest double, as Python's float() gives it.
function toNumber(f) {
  const most = ONE << N(53);
  if (babs(f.n) < most && f.d < most) return Number(f.n) / Number(f.d);
  if (f.n === ZERO) return 0;
  let shift = bits(f.d) - bits(f.n) + 66;
  const scaled = shift >= 0 ? (babs(f.n) << N(shift)) / f.d : babs(f.n) / (f.d << N(-shift));
  let found = Number(scaled);
  for (; shift > 1000; shift -= 1000) found /= Math.pow(2, 1000);
  for (; shift < -1000; shift += 1000) found *= Math.pow(2, 1000);
  found /= Math.pow(2, shift);
  if (!isFinite(found)) throw new NotExact("this is too large");
  return f.n < ZERO ? -found : found;
}
function fromNumber(x) {
  if (!isFinite(x)) throw new NotExact("this is too large");
  let bottom = ONE;
  while (x !== Math.floor(x)) { x *= 2; bottom *= TWO; }
  return new Fraction(BigInt(x), bottom);
}

// What cannot be done is said by these; the marker catches them where Python's does.
class NotationError extends Error {}
class NotExact extends NotationError {}
class ParseError extends NotationError {}
class RefusedError extends Error {}
class Unreadable extends Error {}
// The one thing Python's marker has no word for: this page cannot tell, and says so.
class Undecided extends Error {}
