// Other ways of writing the same thing (itembank/marking/typing/spelling and numerals).
const SPELT = TABLES.constants.spelling._WORDS;
const SMALL = TABLES.constants.numerals._SMALL, LARGE = TABLES.constants.numerals._LARGE;

function visible(text) {
  if (/^[\x20-\x7e]*$/.test(text)) return words(text).join(" ");
  const levelled = (digits) => digits.normalize("NFKC");
  text = sub("spelling.raised_fraction", (m) => ` ${levelled(m[1])}/${levelled(m[2])}`, text);
  return words(Array.from(text).map(plainChar).join("")).join(" ");
}
function unassigned(char) {
  const code = char.codePointAt(0), runs = TABLES.characters.unassigned;
  for (let i = 0, at = 0; i < runs.length; i += 2) {
    at += runs[i];
    if (code < at) return false;
    at += runs[i + 1];
    if (code < at) return true;
  }
  return false;
}
function plainChar(char) {
  if (char >= "\uff01" && char <= "\uff5e") return String.fromCharCode(char.charCodeAt(0) - 0xfee0);
  if (char in PASS_FOR) return PASS_FOR[char];
  const digit = decimal(char);
  if (digit !== null) return String(digit);
  return (/^\p{C}$/u.test(char) || unassigned(char)) && !/^[\u2061-\u2064]$/.test(char) ? " " : char;
}
const PASS_FOR = TABLES.constants.spelling._PASS_FOR;
const BRACKETS = { "[": "(", "]": ")", "{": "(", "}": ")", "\\": "/" };
const STOPS = TABLES.constants.spelling._STOPS;
const untagged = (text) => sub("spelling.tags", "", rstrip(lstrip(text, " ;,!"), STOPS));
function respell(text) {
  if (text.indexOf(".") >= 0 || text.indexOf("…") >= 0 || text.indexOf("rec") >= 0) {
    text = sub("spelling.dots", (m) => recurringFrom(m[1]), text);
  }
  text = text.replace(/[[\]{}\\]/g, (char) => BRACKETS[char]).replace(/[≈≃≅≡]/g, "=");
  text = sub("spelling.shut", (m) => m[1], text);
  text = sub("spelling.apart", (m) => `${m[1]}=`, text);
  for (const [double, single] of Object.entries(TABLES.constants.spelling._DOUBLE)) text = text.split(double).join(single);
  text = untagged(text);
  if (/\p{L}/u.test(text)) text = worded(text);
  if (/[£€$%]/.test(text)) {
    text = sub("spelling.sign_after", (m) => (m[1] ? `${m[2]}${m[1]}` : `${m[3]}%`), text);
    text = sub("spelling.both_signs", (m) => m[1], text);
    text = sub("spelling.minus_money", "-£", text);
    const dashed = fullmatch("spelling.pounds_dash", text);
    if (dashed) text = `£${dashed[1]}.${dashed[2]}`;
    text = sub("spelling.pounds_pence", (m) => `£${m[1] || m[3]}.${two(Number(m[2] || m[4]))}`, text);
  }
  text = sub("spelling.thousands", "", text);
  if (text.indexOf("+") >= 0) text = sub("spelling.signs", " - ", sub("spelling.plus", "", text));
  return untagged(text);
}
function worded(text) {
  text = sub("spelling.joins", (m) => m[0].toLowerCase(), text);
  text = sub("spelling.close_or", " or ", text);
  text = inDigits(sub("spelling.twice", "", text));
  text = sub("spelling.minus", "-", text);
  text = sub("spelling.root", "√", text);
  text = sub("spelling.per_cent", "%", text);
  if (text.indexOf("than") >= 0 || text.indexOf("at ") >= 0 || search("spelling.or_more", text)) {
    for (const [pattern, sign] of TABLES.constants.spelling._COMPARED) {
      text = sub(pattern, (m) => sign.replace("\\1", m[1]), text);
    }
  }
  text = sub("spelling.equals", "=", text);
  text = sub("spelling.pounds", (m) => (m.groups.p === undefined
    ? `£${m.groups.n}` : `£${m.groups.n}.${two(Number(m.groups.p))}`), text);
  text = sub("spelling.pence", (m) => `${m.groups.n}p`, text);
  text = sub("spelling.raised_unit", (m) => `${m.groups.unit.toLowerCase()}^${m.groups.in || m.groups.n}`, text);
  text = sub("spelling.pi", "π", text);
  text = sub("spelling.unit_words", (m) => ` ${SPELT[m.groups.word.toLowerCase()]}`, text);
  for (const [pattern, sign] of TABLES.constants.spelling._BETWEEN) text = sub(pattern, sign, text);
  return sub("spelling.over", "/", text.split(" °").join("°"));
}
function recurringFrom(digits) {
  const [whole, places] = digits.split(".");
  let head = "", block = "";
  for (let size = 1; size <= Math.floor(places.length / 2); size++) {
    const last = places.slice(-size);
    if (places.slice(-2 * size, places.length - size) === last) {
      block = last;
      head = places.slice(0, places.length - 2 * size);
      while (head.endsWith(block)) head = head.slice(0, -size);
      break;
    }
  }
  if (!block) { head = places.slice(0, -1); block = places.slice(-1); }
  const dot = SIGNS.DOT;
  return `${whole}.${head}${block[0]}${dot}${block.length > 1 ? block.slice(1) + dot : ""}`;
}
function inDigits(text) {
  if (!search("numerals.has_word", text) && !search("numerals.fraction", text)) return text;
  text = sub("numerals.digits_large", (m) => {
    const worth = decimalText(m[1]).times(F(LARGE[m[2].toLowerCase()]));
    return worth.whole ? String(worth.n) : m[0];
  }, text);
  text = sub("numerals.words", spokenNumber, text);
  text = sub("numerals.point", (m) => `${m[1]}.${m[2].split(" ").join("")}`, text);
  return sub("numerals.fraction", spokenFraction, text);
}
function decimalText(text) {
  const [whole, places] = text.split(".");
  return places === undefined ? F(BigInt(whole)) : F(BigInt(whole + places), bpow(TEN, places.length));
}
function spokenNumber(m) {
  const joiner = own(",? and |[ -]+"), low = m[0].toLowerCase();
  const list = split(joiner, low), joins = findAll(joiner, low).map((one) => one[0]), told_ = [];
  let total = 0, group = 0, last = 1000000000, beforeGroup = "", least = 1000000000;
  list.forEach((word, place) => {
    const join = place ? joins[place - 1] : "";
    if (word === "a" || word === "an") return;
    if (word in LARGE) {
      const size = LARGE[word];
      if (size === 100) group = Math.max(group, 1) * 100;
      else {
        if (size >= least) { told_.push(String(total), beforeGroup); total = 0; }
        total += Math.max(group, 1) * size;
        group = 0;
        least = size;
      }
      last = size;
      return;
    }
    const n = SMALL[word], and = join.indexOf("and") >= 0, between = and ? " and " : " ";
    const again = group >= 100 && list[place + 1] === "hundred";
    const joined_ = place && ((last >= 100 && (group || total) && !again)
      || (last >= 20 && last < 100 && n > 0 && n < 10 && !and));
    if (place && !joined_) {
      told_.push(String(total + group), between);
      total = group = 0;
      least = 1000000000;
    }
    if (!group) beforeGroup = between;
    group += n;
    last = n;
  });
  told_.push(String(total + group));
  return told_.join("");
}
function spokenFraction(m) {
  const part = m.groups.part.toLowerCase();
  const bottom = part === "halves" ? 2 : TABLES.constants.numerals._PARTS[part];
  if (m.groups.top === undefined && m.groups.many) return m[0];
  return `${m.groups.whole ? `${m.groups.whole} ` : ""}${m.groups.top || "1"}/${bottom}`;
}
