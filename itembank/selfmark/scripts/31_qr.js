// A small QR code (ISO/IEC 18004): bytes, versions 1 to 6, error correction level M.
const QR_BLOCKS = { 1: [10, [16]], 2: [16, [28]], 3: [26, [44]], 4: [18, [32, 32]], 5: [24, [43, 43]], 6: [16, [27, 27, 27, 27]] };
const GF_POWER = [], GF_LOG = [];
(function () {
  for (let i = 0, x = 1; i < 255; i++) {
    GF_POWER[i] = x;
    GF_LOG[x] = i;
    x <<= 1;
    if (x & 256) x ^= 0x11d;
  }
})();
const gfTimes = (a, b) => (a && b ? GF_POWER[(GF_LOG[a] + GF_LOG[b]) % 255] : 0);
function correction(data, count_) {
  let divisor = [1];
  for (let i = 0; i < count_; i++) {
    const next = divisor.concat(0);
    divisor.forEach((c, j) => { next[j + 1] ^= gfTimes(c, GF_POWER[i]); });
    divisor = next;
  }
  const rest = data.concat(new Array(count_).fill(0));
  for (let i = 0; i < data.length; i++) {
    const lead = rest[i];
    if (lead) divisor.forEach((c, j) => { rest[i + j] ^= gfTimes(c, lead); });
  }
  return rest.slice(data.length);
}
function qrBytes(text, version) {
  const [extra, blocks] = QR_BLOCKS[version], room = blocks.reduce((a, b) => a + b, 0), bits_ = [];
  const put_ = (value, n) => { for (let i = n - 1; i >= 0; i--) bits_.push((value >> i) & 1); };
  put_(4, 4);
  put_(text.length, 8);
  for (const char of text) put_(char.charCodeAt(0), 8);
  put_(0, Math.min(4, room * 8 - bits_.length));
  while (bits_.length % 8) bits_.push(0);
  const data = [];
  for (let i = 0; i < bits_.length; i += 8) data.push(parseInt(bits_.slice(i, i + 8).join(""), 2));
  for (let pad = 0xec; data.length < room; pad ^= 0xec ^ 0x11) data.push(pad);
  let at = 0;
  const parts_ = blocks.map((n) => data.slice(at, (at += n))), codes = parts_.map((part) => correction(part, extra));
  const all = [];
  for (let i = 0; i < Math.max(...blocks); i++) parts_.forEach((part) => { if (i < part.length) all.push(part[i]); });
  for (let i = 0; i < extra; i++) codes.forEach((code) => all.push(code[i]));
  return all;
}
// The dark and light modules of a code, row by row.
function qrCode(text) {
  const version = [1, 2, 3, 4, 5, 6].find((v) => QR_BLOCKS[v][1].reduce((a, b) => a + b, 0) - 2 >= text.length);
  if (!version) throw new Error("this is too long for the code");
  const size = 17 + 4 * version, grid = [], fixed = [];
  for (let i = 0; i < size; i++) { grid.push(new Array(size).fill(false)); fixed.push(new Array(size).fill(false)); }
  const set = (x, y, dark) => { if (x >= 0 && y >= 0 && x < size && y < size) { grid[y][x] = dark; fixed[y][x] = true; } };
  for (let i = 0; i < size; i++) { set(6, i, i % 2 === 0); set(i, 6, i % 2 === 0); }
  for (const [cx, cy] of [[3, 3], [size - 4, 3], [3, size - 4]]) {
    for (let dy = -4; dy <= 4; dy++) for (let dx = -4; dx <= 4; dx++) {
      const ring = Math.max(Math.abs(dx), Math.abs(dy));
      set(cx + dx, cy + dy, ring !== 2 && ring !== 4);
    }
  }
  if (version > 1) {
    for (let dy = -2; dy <= 2; dy++) for (let dx = -2; dx <= 2; dx++) {
      set(size - 7 + dx, size - 7 + dy, Math.max(Math.abs(dx), Math.abs(dy)) !== 1);
    }
  }
  formatBits(set, size, 0);
  const stream = [];
  for (const byte of qrBytes(text, version)) for (let i = 7; i >= 0; i--) stream.push((byte >> i) & 1);
  let next = 0;
  for (let right = size - 1; right >= 1; right -= 2) {
    if (right === 6) right = 5;
    for (let i = 0; i < size; i++) {
      for (const x of [right, right - 1]) {
        const y = ((right + 1) & 2) === 0 ? size - 1 - i : i;
        if (!fixed[y][x]) grid[y][x] = stream[next++] === 1;
      }
    }
  }
  let best = null;
  for (let mask = 0; mask < 8; mask++) {
    const tried_ = grid.map((row_, y) => row_.map((dark, x) => dark !== (!fixed[y][x] && masked(mask, x, y))));
    formatBits((x, y, dark) => { tried_[y][x] = dark; }, size, mask);
    const cost = penalty(tried_);
    if (!best || cost < best[0]) best = [cost, tried_];
  }
  return best[1];
}
function masked(mask, x, y) {
  return [
    (x + y) % 2, y % 2, x % 3, (x + y) % 3, (Math.floor(x / 3) + Math.floor(y / 2)) % 2,
    ((x * y) % 2) + ((x * y) % 3), (((x * y) % 2) + ((x * y) % 3)) % 2, (((x + y) % 2) + ((x * y) % 3)) % 2,
  ][mask] === 0;
}
function formatBits(set, size, mask) {
  let rest = mask; // level M is 00
  for (let i = 0; i < 10; i++) rest = (rest << 1) ^ ((rest >> 9) * 0x537);
  const all = ((mask << 10) | rest) ^ 0x5412, bit = (i) => ((all >> i) & 1) === 1;
  for (let i = 0; i < 6; i++) set(8, i, bit(i));
  set(8, 7, bit(6));
  set(8, 8, bit(7));
  set(7, 8, bit(8));
  for (let i = 9; i < 15; i++) set(14 - i, 8, bit(i));
  for (let i = 0; i < 8; i++) set(size - 1 - i, 8, bit(i));
  for (let i = 8; i < 15; i++) set(8, size - 15 + i, bit(i));
  set(8, size - 8, true);
}
function penalty(grid) {
  const size = grid.length, columns = grid.map((_, x) => grid.map((row_) => row_[x]));
  let cost = 0, dark = 0;
  for (const lines of [grid, columns]) {
    for (const one of lines) {
      for (let at = 0, end = 0; at < size; at = end) {
        while (end < size && one[end] === one[at]) end++;
        if (end - at >= 5) cost += end - at - 2;
      }
      const text = one.map((d) => (d ? "1" : "0")).join("");
      for (const bad of ["10111010000", "00001011101"]) {
        for (let at = text.indexOf(bad); at >= 0; at = text.indexOf(bad, at + 1)) cost += 40;
      }
    }
  }
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      if (grid[y][x]) dark++;
      if (x && y && grid[y][x] === grid[y - 1][x] && grid[y][x] === grid[y][x - 1] && grid[y][x] === grid[y - 1][x - 1]) cost += 3;
    }
  }
  return cost + 10 * Math.floor(Math.abs((dark * 100) / (size * size) - 50) / 5);
}
