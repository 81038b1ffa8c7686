// SHA-256 and a keyed check made of it (FIPS 180-4 and RFC 2104), for the result slip.
const ROUND = [], START = [];
(function () {
  // The constants are the first bits of the roots of the first primes.
  const fraction = (x) => ((x - Math.floor(x)) * 4294967296) >>> 0;
  for (let n = 2; ROUND.length < 64; n++) {
    let prime = true;
    for (let k = 2; k * k <= n; k++) if (n % k === 0) prime = false;
    if (!prime) continue;
    if (START.length < 8) START.push(fraction(Math.sqrt(n)));
    ROUND.push(fraction(Math.cbrt(n)));
  }
})();
function sha256(bytes) {
  const length = bytes.length, padded = new Uint8Array(((length + 72) >> 6) << 6), hash = START.slice();
  padded.set(bytes);
  padded[length] = 0x80;
  for (let i = 0, n = length * 8; i < 4; i++) padded[padded.length - 1 - i] = (n >>> (8 * i)) & 255;
  const turn = (x, n) => (x >>> n) | (x << (32 - n)), w = new Array(64);
  for (let at = 0; at < padded.length; at += 64) {
    for (let i = 0; i < 64; i++) {
      if (i < 16) {
        const j = at + 4 * i;
        w[i] = (padded[j] << 24) | (padded[j + 1] << 16) | (padded[j + 2] << 8) | padded[j + 3];
        continue;
      }
      const x = w[i - 15], y = w[i - 2];
      w[i] = (w[i - 16] + (turn(x, 7) ^ turn(x, 18) ^ (x >>> 3)) + w[i - 7] +
        (turn(y, 17) ^ turn(y, 19) ^ (y >>> 10))) | 0;
    }
    let [a, b, c, d, e, f, g, h] = hash;
    for (let i = 0; i < 64; i++) {
      const one = (h + (turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)) + ((e & f) ^ (~e & g)) + ROUND[i] + w[i]) | 0;
      const two_ = ((turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      h = g; g = f; f = e; e = (d + one) | 0; d = c; c = b; b = a; a = (one + two_) | 0;
    }
    [a, b, c, d, e, f, g, h].forEach((x, i) => { hash[i] = (hash[i] + x) | 0; });
  }
  const out = new Uint8Array(32);
  hash.forEach((x, i) => { for (let j = 0; j < 4; j++) out[4 * i + j] = (x >>> (24 - 8 * j)) & 255; });
  return out;
}
function ascii(text) { return Uint8Array.from(text, (char) => char.charCodeAt(0)); }
function joinedBytes(a, b) {
  const all = new Uint8Array(a.length + b.length);
  all.set(a);
  all.set(b, a.length);
  return all;
}
function keyedCheck(key, text) {
  const block = new Uint8Array(64);
  block.set(ascii(key));
  const inner = sha256(joinedBytes(block.map((b) => b ^ 0x36), ascii(text)));
  return sha256(joinedBytes(block.map((b) => b ^ 0x5c), inner));
}
// Letters and figures that are hard to take for one another when a slip is copied by hand.
const CHECK_SIGNS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ";
function checkSigns(bytes, count_) {
  let n = ZERO, text = "";
  for (let i = 0; i < 8; i++) n = n * BigInt(256) + BigInt(bytes[i]);
  for (let i = 0; i < count_; i++) { text += CHECK_SIGNS[Number(n % BigInt(31))]; n /= BigInt(31); }
  return text;
}
