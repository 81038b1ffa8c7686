// Text as Python has it: whitespace, digits, case, and the marker's own patterns.
// A pattern is a name among the tables, or [source, flags]. What it compiles to is kept beside it:
// once as it stands, once for the whole text, once for one place, once for every place. Text whose
// every letter and digit is ASCII is met with the same pattern in its short and much faster form.
const KEPT = new Map();
const COMMON_TEXT = /^[\x00-\x7f£×÷°√∛∜−–—□≤≥≠→‘’“”€…·\u0307]*$/;
function compiled(p, how, text) {
  let kept = KEPT.get(p);
  if (!kept) KEPT.set(p, (kept = {}));
  const short = COMMON_TEXT.test(text), name = short ? how : `${how} in full`;
  if (!kept[name]) {
    let [source, flags] = typeof p === "string" ? TABLES.patterns[p] : p;
    if (short) { source = inShort(source); flags = flags.replace("u", ""); }
    if (how === "whole") source = `^(?:${source})$`;
    kept[name] = pattern(source, flags + ({ at: "y", all: "g" }[how] || ""));
  }
  return kept[name];
}
function inShort(source) {
  return source.split(EDGE).join("\\b").split(WORDCHARS).join("\\w").split("\\p{Nd}").join("\\d");
}
// Where case does not matter, Python takes the dotless and the dotted i of Turkish for an i.
function seen(p, text) {
  const flags = typeof p === "string" ? TABLES.patterns[p][1] : p[1];
  return flags.indexOf("i") >= 0 && /[\u0130\u0131]/.test(text) ? text.replace(/[\u0130\u0131]/g, "i") : text;
}
const search = (p, text) => compiled(p, "first", text).exec(seen(p, text));
const fullmatch = (p, text) => compiled(p, "whole", text).exec(seen(p, text));
function matchAt(p, text, at) {
  const re = compiled(p, "at", text);
  re.lastIndex = at || 0;
  return re.exec(seen(p, text));
}
function findAll(p, text) {
  const re = compiled(p, "all", text), found = [], here = seen(p, text);
  re.lastIndex = 0;
  for (let m = re.exec(here); m; m = re.exec(here)) {
    found.push(m);
    if (!m[0]) re.lastIndex += text.codePointAt(m.index) > 0xffff ? 2 : 1;
  }
  return found;
}
// Replaces every match by what `put` makes of it: a text as it stands, or a function of the match.
function sub(p, put, text) {
  let made = "", last = 0;
  for (const m of findAll(p, text)) {
    made += text.slice(last, m.index) + (typeof put === "string" ? put : put(m));
    last = m.index + m[0].length;
  }
  return made + text.slice(last);
}
// re.split: what stands between the matches, and the groups; an unset group is null.
function split(p, text) {
  const found = [];
  let last = 0;
  for (const m of findAll(p, text)) {
    found.push(text.slice(last, m.index));
    for (let i = 1; i < m.length; i++) found.push(m[i] === undefined ? null : m[i]);
    last = m.index + m[0].length;
  }
  found.push(text.slice(last));
  return found;
}

const SPACES = "\\t-\\r\\x1c-\\x20\\x85\\xa0\\u1680\\u2000-\\u200a\\u2028\\u2029\\u202f\\u205f\\u3000";
const WORDCHARS = "\\p{L}\\p{N}_";
const EDGE = `(?:(?<=[${WORDCHARS}])(?![${WORDCHARS}])|(?<![${WORDCHARS}])(?=[${WORDCHARS}]))`;
// A pattern of this script's own, with \w, \d, \s and \b as Python has them.
const OWN = new Map();
function own(source, flags) {
  const name = `${flags || ""} ${source}`;
  if (!OWN.has(name)) OWN.set(name, ownPattern(source, flags));
  return OWN.get(name);
}
function ownPattern(source, flags) {
  return [
    source.replace(/\[\^?(?:\\.|[^\]\\])*\]|\\[wdsb]/g, (piece) => {
      if (piece[0] === "[") {
        return piece.replace(/\\w/g, WORDCHARS).replace(/\\d/g, "\\p{Nd}").replace(/\\s/g, SPACES);
      }
      return { "\\w": `[${WORDCHARS}]`, "\\d": "\\p{Nd}", "\\s": `[${SPACES}]`, "\\b": EDGE }[piece];
    }),
    (flags || "") + "u",
  ];
}
const SPACE = new RegExp(`[${SPACES}]+`);
function words(text) { return text.split(SPACE).filter((word) => word !== ""); }
function escaped(text) { return text.replace(/[\^$\\.*+?()[\]{}|\/]/g, "\\$&"); }
function strip(text, chars) { return lstrip(rstrip(text, chars), chars); }
function isSpace(char) { return char !== "" && SPACE.test(char); }
function lstrip(text, chars) {
  let at = 0;
  while (at < text.length && (chars === undefined ? isSpace(text[at]) : chars.indexOf(text[at]) >= 0)) at++;
  return text.slice(at);
}
function rstrip(text, chars) {
  let end = text.length;
  while (end && (chars === undefined ? isSpace(text[end - 1]) : chars.indexOf(text[end - 1]) >= 0)) end--;
  return text.slice(0, end);
}
function count(text, piece) { return text.split(piece).length - 1; }
function codePoints(text) { return Array.from(text).length; }
function isAlpha(char) { return /^\p{L}+$/u.test(char); }
function isUpper(char) { return /^\p{Lu}+$/u.test(char); }
function isLower(char) { return /^\p{Ll}+$/u.test(char); }
function decimal(char) {
  if (!/^\p{Nd}$/u.test(char)) return null;
  const code = char.codePointAt(0);
  for (const zero of TABLES.characters.zeros) if (code >= zero && code < zero + 10) return code - zero;
  throw new Undecided("a digit this page does not know");
}
function isDigit(char) { return char !== "" && (/^\p{Nd}$/u.test(char) || TABLES.characters.digits.indexOf(char) >= 0); }
function isNumeric(char) { return /^\p{N}$/u.test(char) || TABLES.characters.numeric.indexOf(char) >= 0; }
function casefold(text) {
  return Array.from(text).map((char) => TABLES.characters.casefold[char] || char.toLowerCase()).join("");
}
function capitalised(text) {
  const chars = Array.from(text);
  return chars.length ? chars[0].toUpperCase() + chars.slice(1).join("").toLowerCase() : "";
}
function told(char) { return TABLES.characters.told[char] || char; }
function plural(n, word) { return n === 1 ? word : `${word}s`; }
function counted(n, word) { return `${grouped3(String(n))} ${plural(n, word)}`; }
function grouped3(digits) { return digits.replace(/\B(?=(\d{3})+(?!\d))/g, ","); }
function subset(some, all) { for (const one of some) if (!all.has(one)) return false; return true; }
function sortedText(list) { return list.slice().sort((a, b) => (a < b ? -1 : a > b ? 1 : 0)); }
