// Typed text in the plain characters that the grammar knows (itembank/notation/normalise).
const SAME = TABLES.constants.normalise._SAME, RAISED = TABLES.constants.normalise._RAISED;
const DOUBLED = TABLES.constants.normalise._RELATIONS, QUOTES = TABLES.constants.normalise._QUOTES;

const GLUED = [TABLES.glued, "u"];

class PlainText {
  constructor() { this.chars = []; }
  put(text) {
    for (const char of text) {
      if (char === " " && (this.last === " " || this.last === "")) continue;
      this.chars.push(char);
    }
  }
  get last() { return this.chars.length ? this.chars[this.chars.length - 1] : ""; }
  openBeforeDigits() {
    let at = this.chars.length;
    while (at && (isDigit(this.chars[at - 1]) || "/ ".indexOf(this.chars[at - 1]) >= 0)) at--;
    while (at < this.chars.length && this.chars[at] === " ") at++;
    this.chars.splice(at, 0, "(");
  }
}
function normalise(text) {
  const chars = Array.from(text), plain = new PlainText();
  let at = 0;
  while (at < chars.length) at = taken(chars, at, plain);
  if (plain.last === " ") plain.chars.pop();
  return plain.chars.join("");
}
function taken(chars, at, plain) {
  const char = chars[at];
  if (char in QUOTES) {
    const end = chars.indexOf(QUOTES[char], at + 1);
    if (end < 0) { plain.put('"'); return at + 1; }
    plain.chars.push('"', ...chars.slice(at + 1, end), '"');
    return end + 1;
  }
  if (char in RAISED) {
    let end = at, raised = "";
    while (end < chars.length && chars[end] in RAISED) raised += RAISED[chars[end++]];
    plain.put(raised.indexOf("-") >= 0 ? `^(${raised})` : `^${raised}`);
    return end;
  }
  if (char === "_") {
    plain.put("□");
    while (at < chars.length && chars[at] === "_") at++;
    return at;
  }
  if (char === "=" && plain.last in DOUBLED && chars[at - 1] in DOUBLED) {
    plain.chars[plain.chars.length - 1] = DOUBLED[plain.last];
    return at + 1;
  }
  const fraction = TABLES.characters.fractions[char];
  if (fraction !== undefined) { takeFraction(fraction, chars, at, plain); return at + 1; }
  for (const part of SAME[char] || char.normalize("NFKC")) {
    const digit = decimal(part);
    if (digit !== null) plain.put(String(digit));
    else if (isSpace(part)) plain.put(" ");
    else if (!/^\p{Cf}$/u.test(part)) plain.put(SAME[part] || part);
  }
  return at + 1;
}
function takeFraction(fraction, chars, at, plain) {
  if (isDigit(plain.last)) plain.put(" ");
  plain.put(fraction.replace("⁄", "/"));
  const after = chars[at + 1] || "";
  if ((isAlpha(after) && !matchAt(GLUED, chars.slice(at + 1).join(""))) || after === "(") {
    plain.openBeforeDigits();
    plain.put(")");
  }
}
