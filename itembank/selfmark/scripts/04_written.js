// The line face: a tree as a person would type it (itembank/notation/tree, `line` of each node).
let penceHere = true;
const SIGNS = TABLES.constants.signs;
const DIGITS_MOST = SIGNS.MAX_DIGITS;

function refuse(message) { throw new NotationError(message); }
function checkLimits(text) {
  if (codePoints(text) > SIGNS.MAX_TEXT) {
    return `Mathematics on one line may have at most ${grouped3(String(SIGNS.MAX_TEXT))} characters.`;
  }
  text = sub("signs.quoted", (m) => " ".repeat(m[0].length), text);
  for (const m of findAll("signs.number", text)) {
    if (Array.from(m[0]).filter(isDigit).length > DIGITS_MOST) {
      return `A number may have at most ${DIGITS_MOST} digits.`;
    }
  }
  let depth = 0;
  for (const char of text) {
    depth += (char === "(" ? 1 : 0) - (char === ")" ? 1 : 0);
    if (depth > SIGNS.MAX_NESTING) return `Brackets may be nested at most ${SIGNS.MAX_NESTING} deep.`;
  }
  return "";
}
function line(node, pence) {
  const before = penceHere;
  penceHere = pence === undefined ? true : pence;
  let text;
  try { text = textOf(node, 11, "a piece of mathematics"); } finally { penceHere = before; }
  const fault = checkLimits(text);
  if (fault) refuse(fault);
  return text;
}
// As people may read it: its line, or its words where no line can show it.
function shownLine(node) {
  const letter = symbols(node).has("p");
  for (const pence of [!letter, letter]) {
    try { return line(node, pence); } catch (error) {
      if (!(error instanceof NotationError)) throw error;
    }
  }
  return inWords(node);
}
function confined(node) {
  if (node.k === "ClockTime" || (node.k === "Sum" && timesIn(node) === 1)) return TABLES.messages.ALONE;
  return "";
}
function misplaced(node, place) {
  refuse(confined(node) || `${node.k} cannot stand as ${place} without brackets.`);
}
function unconfined(node) {
  const why = confined(node);
  if (why) refuse(why);
  return node;
}
function textOf(node, most, place, also) {
  if (RANK[node.k] > most && !(also && is(node, ...also))) misplaced(node, place);
  return LINE[node.k](node);
}
const isSimple = (node) => RANK[node.k] === 0;
function grouped(node, place) {
  const text = textOf(unconfined(node), 7, place);
  return isSimple(node) ? text : `(${text})`;
}
function chained(node, ops, most, place, also) {
  if (!node.rest.length) refuse(`There must be two or more parts for there to be ${place}.`);
  let text = textOf(node.first, most, place, also);
  for (const [op, part] of node.rest) {
    if (!(op in ops)) refuse("a sign that cannot join parts");
    text += ops[op] + textOf(part, most, place, also);
  }
  return text;
}
function joined(list, mark, most, place) {
  if (list.length < 2) refuse(`There must be two or more parts for there to be ${place}.`);
  return list.map((part) => textOf(part, most, place)).join(mark);
}
const SUM_OPS = { "+": " + ", "-": " - " };
const PRODUCT_OPS = { "×": " × ", "÷": " ÷ ", of: " of " };
const RELATION_OPS = { "=": " = ", "<": " < ", ">": " > ", "≤": " ≤ ", "≥": " ≥ ", "≠": " ≠ " };
const ROOT_SIGNS = { 2: "√", 3: "∛", 4: "∜" };
const LETTER = new RegExp(`^[${SIGNS.LETTERS}]$`, "u");
const UNITS = TABLES.units.units, CURRENCY = TABLES.units.currency;
function shownUnit(unit, singular) {
  if (TABLES.units.as_words.indexOf(unit) < 0) return unit;
  return singular ? UNITS[unit][2] : UNITS[unit][3];
}
const isOne = (amount) => eq(amount, Int(1)) || amount.k === "Frac";
function clockFault(node) {
  const n = timesIn(node);
  if (n === null) return "";
  if (n !== 0 && n !== 1 && !hasLetters(node)) {
    return "Two times of day cannot be added: only their difference has a meaning.";
  }
  if (sidesOf(node).some((term) => is(term, "Int", "Dec", "Mixed", "Frac", "Percent", "Money"))) {
    return "To a time of day only a length of time can be added, such as 35 min or 2 h.";
  }
  return "";
}
const MISREAD = TABLES.misread.map((source) => [source, "u"]);
function leadsLetters(first, rest) {
  while (first.k === "Bracket") first = first.of;
  if (!is(first, "Frac", "Mixed")) return false;
  const after = rest[0].k === "Power" ? rest[0].base : rest[0];
  return !is(after, "Int", "Dec") && rest.some(hasLetters);
}
function juxtLine(node) {
  const [first, ...rest] = node.factors, FACTOR = "a factor side by side";
  if (!rest.length) refuse("Factors side by side must be two or more.");
  const head = textOf(first, 2, FACTOR, ["Frac", "Mixed"]);
  const texts = rest.map((factor) => textOf(factor, 2, FACTOR));
  const groups = leadsLetters(first, rest);
  if (is(first, "Frac", "Mixed") && !groups) {
    refuse(`The fraction ${head} can only stand in front of a letter.`);
  }
  const all = [groups ? `(${head})` : head, ...texts];
  texts.forEach((text, i) => {
    if (isDigit(text[0]) && node.factors[i].k !== "Bracket") {
      refuse(`${all[i]} and ${text} cannot stand side by side without a sign.`);
    }
  });
  const whole = all.join(""), misread = search(MISREAD[penceHere ? 1 : 0], whole);
  if (misread) refuse(`${whole} would be read with '${misread[0]}' as one word; change a letter.`);
  return whole;
}
function quantityLine(node) {
  if (!UNITS[node.unit]) refuse("that is not a known unit.");
  const sign = node.unit === "°" ? "°" : ` ${shownUnit(node.unit, isOne(node.amount))}`;
  return textOf(node.amount, 3, "the number of a quantity") + sign;
}
function mixedUnitsLine(node) {
  const list = node.parts;
  if (list.length < 2 || !list.every((part) => part.k === "Quantity")) {
    refuse("A quantity in several units has two or more of them.");
  }
  for (let i = 1; i < list.length; i++) {
    const before = list[i - 1], after = list[i];
    if ((TABLES.units.together[before.unit] || []).indexOf(after.unit) < 0) {
      refuse(`${before.unit} and ${after.unit} do not go together in one quantity: put a sign between them.`);
    }
    if (!is(before.amount, "Int", "Blank")) {
      refuse(`Only a whole number of ${before.unit} can stand before ${after.unit}.`);
    }
  }
  const last = list[list.length - 1];
  if (!is(last.amount, "Int", "Dec", "Mixed", "Blank")) {
    refuse(`Only a number of ${last.unit} can stand after ${list[list.length - 2].unit}.`);
  }
  return list.map(quantityLine).join(" ");
}
function two(n) { return n < 10 ? `0${n}` : String(n); }
function clockLine(node) {
  const { hour, minute, half } = node;
  if (minute !== null && !(minute >= 0 && minute < 60)) refuse("A time of day has 0 to 59 minutes.");
  if (!half) {
    if (minute === null || !(hour >= 0 && hour < 24)) {
      refuse("A time by the 24-hour clock is from 00:00 to 23:59.");
    }
    return `${two(hour)}:${two(minute)}`;
  }
  if (!(hour >= 1 && hour <= 12)) refuse("Before am and pm there is an hour from 1 to 12.");
  return minute === null ? `${hour} ${half}` : `${hour}:${two(minute)} ${half}`;
}
const LINE = {
  Int: (node) => {
    if (node.n < ZERO || String(node.n).length > DIGITS_MOST) {
      refuse(`A whole number here is 0 or more, of at most ${DIGITS_MOST} digits.`);
    }
    return String(node.n);
  },
  Dec: (node) => {
    const figures = node.whole + node.places + node.recurring;
    if (!(node.whole && node.places + node.recurring && /^[0-9]+$/.test(figures))) {
      refuse("A decimal needs digits before and after its point.");
    }
    if (figures.length > DIGITS_MOST) refuse(`A number may have at most ${DIGITS_MOST} digits.`);
    let block = node.recurring;
    if (block.length > 1) block = `${block[0]}${SIGNS.DOT}${block.slice(1)}`;
    return `${node.whole}.${node.places}${block}${block ? SIGNS.DOT : ""}`;
  },
  Sym: (node) => {
    if (!LETTER.test(node.name)) refuse("An unknown is one Latin or Greek letter.");
    return node.name;
  },
  Blank: () => "□",
  Label: (node) => {
    if (!strip(node.text) || node.text.indexOf('"') >= 0) {
      refuse("A name needs printable characters without quotation marks.");
    }
    return `"${node.text}"`;
  },
  Frac: (node) =>
    `${grouped(node.num, "the top of a fraction")}/${grouped(node.den, "the bottom of a fraction")}`,
  Mixed: (node) => {
    const three = [node.whole, node.num, node.den];
    if (three.some((n) => n < ONE || String(n).length > 60)) {
      refuse("A mixed number has three positive whole numbers of at most 60 digits.");
    }
    return `${node.whole} ${node.num}/${node.den}`;
  },
  Neg: (node) => `-${textOf(node.of, 4, "the number after a minus sign")}`,
  Percent: (node) => `${textOf(node.of, 3, "a percentage")}%`,
  Money: (node) => {
    if (!CURRENCY[node.sign]) refuse("that is not a known currency sign.");
    if (node.sign !== "p") return node.sign + textOf(node.amount, 3, "a sum of money");
    if (!penceHere) refuse("A line in which p is a letter cannot hold pence.");
    if (!is(node.amount, "Int", "Dec", "Blank")) misplaced(node.amount, "a number of pence");
    return `${textOf(node.amount, 0, "a number of pence")}p`;
  },
  Quantity: quantityLine,
  MixedUnits: mixedUnitsLine,
  ClockTime: clockLine,
  Power: (node) => `${textOf(node.base, 1, "the base of a power")}^${grouped(node.exponent, "an exponent")}`,
  Root: (node) => {
    if (!ROOT_SIGNS[node.index]) refuse(`A root has index 2, 3 or 4, not ${node.index}.`);
    return ROOT_SIGNS[node.index] + grouped(node.of, "the number under a root");
  },
  Trig: (node) => {
    const inside = textOf(unconfined(node.of), 7, "what a sine is taken of");
    const name = { sin: "sine", cos: "cosine", tan: "tangent" }[node.name];
    if (new RegExp(`[${SIGNS.LETTERS}]`, "u").test(inside)) {
      refuse(`A ${name} is taken of a number: ${inside} has a letter or a unit in it.`);
    }
    return `${node.name}${node.inverse ? "^-1" : ""}(${inside})`;
  },
  Bracket: (node) => `(${textOf(unconfined(node.of), 7, "the inside of a bracket")})`,
  Juxt: juxtLine,
  Sum: (node) => {
    const fault = clockFault(node);
    if (fault) refuse(fault);
    return chained(node, SUM_OPS, 6, "a term of a sum", ["ClockTime"]);
  },
  Product: (node) => chained(node, PRODUCT_OPS, 5, "a factor of a product"),
  Ratio: (node) => joined(node.parts, " : ", 7, "a part of a ratio"),
  Relation: (node) => chained(node, RELATION_OPS, 8, "a side of a relation"),
  Listing: (node) => {
    if (!node.brackets) return joined(node.parts, ", ", 9, "a part of a list");
    if (node.parts.length !== 2) refuse("A point has two coordinates.");
    return `(${joined(node.parts, ", ", 7, "a coordinate")})`;
  },
  Either: (node) => {
    for (const part of node.parts) if (part.k === "Label") misplaced(part, "one of several answers");
    return joined(node.parts, " or ", 10, "one of several answers");
  },
};
