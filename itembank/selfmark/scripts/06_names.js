// Names of units, words that are none, times of day in a line (itembank/notation/unit_names,
// unknown_words and clock_text).
const NAMES = TABLES.constants.unit_names.NAMES;
const BIG_SMALL = {};
for (const [big, small, unit] of TABLES.big_small) BIG_SMALL[`${big} ${small}`] = unit;

function edited(plain, edits) {
  for (const [start, end, put] of edits.slice().reverse()) {
    plain = plain.slice(0, start) + put + plain.slice(end);
  }
  return plain;
}
function withSigns(plain, letters) {
  if (!search("unit_names.perhaps", plain)) return plain;
  let edits = [];
  for (const m of findAll("unit_names.spelt", plain)) {
    const name = m.groups.name, gap = m[0].slice(0, m[0].length - name.length);
    const sign = signFor(name, Boolean(gap), letters);
    if (sign && (sign !== name || (!gap && TABLES.units.needs_space.indexOf(sign) >= 0))) {
      const space = sign === "%" || sign === "°" || sign === "p" ? "" : " ";
      edits.push([m.index, m.index + m[0].length, space + sign]);
    }
  }
  plain = partedUnits(edited(plain, edits));
  if (!letters.has("p") && !letters.has("m")) {
    edits = findAll("unit_names.half", plain).map((m) => [
      m.index, m.index + m[0].length, ` ${strip(m[0])[0].toLowerCase()}m`,
    ]);
    plain = edited(plain, edits);
  }
  if (!letters.has("p") || !letters.has("i")) {
    edits = findAll("unit_names.pi", plain).map((m) => [m.index, m.index + m[0].length, "π"]);
    plain = edited(plain, edits);
  }
  return plain;
}
function signFor(name, spaced, letters) {
  if (name === "L" || name === "l") return name === "L" && spaced && !letters.has("L") ? "l" : "";
  if (TABLES.constants.unit_names._CAPITALS_MATTER.indexOf(name) >= 0 || subset(name, letters)) return "";
  const short = name.length <= 2 && isAlpha(name);
  if (short && !spaced) return "";
  if (short && isLower(name) && Array.from(name).some((char) => letters.has(char))) return "";
  return NAMES[name.toLowerCase()] || "";
}
function partedUnits(plain) {
  for (;;) {
    let changed = "";
    for (const m of findAll("unit_names.next", plain)) {
      const { big, small, gap3 } = m.groups, unit = BIG_SMALL[`${big} ${small}`];
      if (unit === undefined) continue;
      const end = m.index + m[0].length;
      const number = /^\p{Nd}+(?:\.\p{Nd}+)?/u.exec(plain.slice(end))[0];
      const start = end + number.length;
      const made = edited(plain, [
        [m.index, end, ` ${big} `],
        [start, start + gap3.length + small.length, ` ${unit}`],
      ]);
      if (made !== plain) { changed = made; break; }
    }
    if (!changed) return plain;
    plain = changed;
  }
}

const blanked = (plain) => sub("unknown.not_letters", (m) => "\0".repeat(codePoints(m[0])), plain);
function unknownWord(plain, letters) {
  if (!search("unknown.two", plain)) return "";
  const without = blanked(plain), runs = findAll("unknown.run", without);
  if (!runs.some((run) => run[0].length > 1)) return "";
  const known = new Set(letters);
  for (const run of runs) if (run[0].length === 1) known.add(run[0]);
  for (const run of runs) {
    const word = run[0];
    if (word.length === 1) continue;
    const before = without.slice(0, run.index), after = without.slice(run.index + word.length);
    const elsewhere = new Set(known);
    for (const other of runs) if (other !== run) for (const char of other[0]) elsewhere.add(char);
    const message = wordFault(word, before, after, known, elsewhere);
    if (message) return message;
  }
  return "";
}
const NUMBER_BEFORE = own("[0-9.]*[\\u0307□)]? ?$");
function wordFault(word, before, after, known, elsewhere) {
  const called = after.startsWith("(") || after.startsWith(" (");
  const named = functionIn(word, called, after);
  if (named) {
    return `‘${named}’ is the name of a function, which cannot be read: where letters are multiplied, put × between them.`;
  }
  if (subset(word, known)) return "";
  const spaced = Boolean(search(own("[0-9\\u0307□)] $"), before));
  const close = Boolean(search(own("[0-9\\u0307□]$"), before));
  if (spaced || close) {
    const fault = unitSlip(word, before, close, elsewhere);
    if (fault) return fault;
  }
  const apart = Boolean(search(own("[\\w□)] $"), before) || matchAt(own(" [\\w□(]"), after));
  if (isLetterProduct(word, spaced, apart)) return "";
  if (spaced || close) {
    const shown = strip(search(NUMBER_BEFORE, before)[0]);
    if (shown && isDigit(shown[shown.length - 1])) {
      return `‘${word}’ is not a unit that is known and no product of letters: write {${shown}} ${word}, or put × between letters.`;
    }
  }
  return `‘${word}’ is a word and no product of letters: write it outside the mathematics, or put × between letters.`;
}
function functionIn(word, called, after) {
  const low = word.toLowerCase();
  const argument = called || Boolean(matchAt(own(" ?[0-9A-Za-zΑ-ω√π]"), after));
  if (TABLES.constants.unknown._ONLY_CALLED.indexOf(low) >= 0) {
    return (low === "ln" || low === "lg" ? argument : called) ? word : "";
  }
  if (/^ln[a-z]$/.test(word) && !called) return "ln";
  const m = search("unknown.functions", word);
  return m && word.length - m[0].length <= 3 && TABLES.constants.unknown._COMMON.indexOf(low) < 0 ? m[0] : "";
}
function unitSlip(word, before, close, elsewhere) {
  const low = word.toLowerCase();
  if (low === "pound" || low === "pounds") {
    return `‘${word}’ may be money or mass: write £ before the number, or lb after it.`;
  }
  if (TABLES.constants.unknown._UNIT_LIKE.indexOf(low) < 0 || subset(word, elsewhere)) return "";
  const sign = NAMES[low] || low;
  if (sign === "°") return "";
  const unit = UNITS[sign] || CURRENCY[sign];
  if (!unit) return "";
  const shown = strip(search(NUMBER_BEFORE, before)[0]);
  if (close && word.length === 2) {
    return `${shown}${word} can be read in two ways: write ${shown} ${sign} for ${unit[3]}, or ${shown} × ${Array.from(word).join(" × ")}.`;
  }
  return `‘${word}’ is no sign of a unit: write ${sign} for ${unit[3]}.`;
}
function isLetterProduct(word, spaced, apart) {
  const low = word.toLowerCase();
  const common = TABLES.constants.unknown._COMMON, vowel = search("unknown.vowel", low);
  if (word.length === 2) return !(apart && TABLES.constants.unknown._LITTLE.indexOf(low) >= 0);
  if (spaced || common.indexOf(low) >= 0) return false;
  const capital = capitalised(word);
  if (word !== low && word === capital && vowel) return false;
  if (new Set(low).size === 1) return true;
  if (sortedText(Array.from(low)).join("") === low && !(low in NAMES)) return true;
  if (word !== low && word !== word.toUpperCase() && word !== capital) return word.length <= 4;
  return word.length <= 4 && !vowel && !(low in NAMES);
}

function noTimeOfDay(m) {
  const shown = m[0];
  if (!m.groups.half && fullmatch(own("[1-9]:[0-5]\\d"), shown)) {
    return `${shown} among times of day can be read in two ways: write 0${shown}, ${shown} am or ${shown} pm.`;
  }
  return `${shown} is no time of day: write 09:45 or 14:35 by the 24-hour clock, or 2:35 pm; in a ratio put spaces around the colon.`;
}
function holdsTime(text) {
  const timed = text.indexOf(":") >= 0 || text.indexOf("m") >= 0;
  if (timed && (search("clock.sure", text) || search("clock.in_a_sum", text))) return true;
  return Boolean(timed && search("clock.with_letter", text) && search("clock.a_length", text));
}
