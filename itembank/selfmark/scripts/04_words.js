// What is said of a tree that no line can show (itembank/notation/tree, `words` of each node).
const SAID_AS = TABLES.words, END = "\0";
const endsIfFollowed = (name) => END + name + END;
const ENDINGS = SAID_AS.endings.join("|");

function inWords(node) {
  let phrase = said(node);
  if (phrase.indexOf(END) >= 0) {
    if (phrase.endsWith(END)) phrase = phrase.slice(0, phrase.lastIndexOf(END, phrase.length - 2));
    phrase = phrase.replace(/\0([a-z ]+)\0/g, ", end of $1");
  }
  return phrase.replace(new RegExp(`(, end of (?:${ENDINGS}))(?= )`, "g"), "$1,");
}
const said = (node) => WORDS[node.k](node);
const hasEnded = (phrase) => phrase.endsWith(END) || new RegExp(`, end of (?:${ENDINGS})$`).test(phrase);
const saidChain = (signs) => (node) =>
  [said(node.first), ...node.rest.map(([op, part]) => `${signs[op]} ${said(part)}`)].join(" ");
const saidRow = (mark_) => (node) => node.parts.map(said).join(mark_);
function saidParts(top, bottom) {
  const names = SAID_AS.fractions[String(bottom)];
  if (!names) return `${top} over ${bottom}${endsIfFollowed("fraction")}`;
  return `${top} ${top === ONE ? names[0] : names[1]}`;
}
function saidAmount(amount, singular, many) {
  if (amount.k === "Frac") {
    const article = "aeiou".indexOf(singular[0]) >= 0 || singular === "hour" ? "an" : "a";
    return `${said(amount)} of ${article} ${singular}`;
  }
  return `${said(amount)} ${eq(amount, Int(1)) ? singular : many}`;
}
const WORDS = {
  Int: (node) => String(node.n),
  Dec: (node) => {
    const block = Array.from(node.recurring).join(" ");
    const phrase = `${node.whole} point ${Array.from(node.places).join(" ")}`.replace(/ $/, "");
    if (!block) return phrase;
    return block.length === 1 ? `${phrase} ${block} recurring` : `${phrase} ${block}, with ${block} recurring`;
  },
  Sym: (node) => {
    const greek = SAID_AS.greek[node.name.toLowerCase()], large = isUpper(node.name) ? "capital " : "";
    return large + (greek || node.name);
  },
  Blank: () => "a blank box",
  // The signs of sets, as unknowns.py says them.
  Label: (node) => node.text.replace(/[∩∪′]/gu, (sign) => ({ "∩": "intersection", "∪": "union", "′": " dash" }[sign])),
  Frac: (node) => {
    if (node.num.k === "Int" && node.den.k === "Int") return saidParts(node.num.n, node.den.n);
    if (isSimple(node.num) && isSimple(node.den)) {
      return `${said(node.num)} over ${said(node.den)}${endsIfFollowed("fraction")}`;
    }
    return `the fraction ${said(node.num)}, over ${said(node.den)}, end of fraction`;
  },
  Mixed: (node) => `${node.whole} and ${saidParts(node.num, node.den)}`,
  Neg: (node) => {
    const of = node.of, whole = of.k === "Frac" && of.num.k === "Int" && of.den.k === "Int";
    const number_ = whole || is(of, "Int", "Dec", "Mixed", "Money", "Quantity", "Percent");
    return `${number_ ? "negative" : "minus"} ${said(of)}`;
  },
  Percent: (node) => `${said(node.of)} per cent`,
  Money: (node) => {
    const unit = CURRENCY[node.sign], amount = node.amount;
    if (amount.k !== "Dec" || amount.places.length !== 2 || amount.recurring || node.sign === "p") {
      return saidAmount(amount, unit[2], unit[3]);
    }
    const whole = BigInt(amount.whole), hundredths = Number(amount.places);
    const smaller = node.sign === "£" ? ["penny", "pence"] : ["cent", "cents"];
    const large = `${whole} ${whole === ONE ? unit[2] : unit[3]}`;
    return `${large} ${hundredths} ${smaller[hundredths === 1 ? 0 : 1]}`;
  },
  Quantity: (node) => saidAmount(node.amount, UNITS[node.unit][2], UNITS[node.unit][3]),
  MixedUnits: saidRow(" "),
  ClockTime: ({ hour, minute, half }) => {
    let phrase = String(hour);
    if (minute === 0) phrase = half ? `${hour} o’clock` : `${hour} hundred`;
    else if (minute !== null) phrase = `${hour} ${minute < 10 ? "oh " : ""}${minute}`;
    return half ? `${phrase} ${half}` : `the time ${phrase}`;
  },
  Power: (node) => {
    const base = said(node.base);
    if (eq(node.exponent, Int(2))) return `${base} squared`;
    if (eq(node.exponent, Int(3))) return `${base} cubed`;
    const exponent = said(node.exponent);
    if (isSimple(node.exponent)) return `${base} to the power ${exponent}${endsIfFollowed("power")}`;
    return `${base} to the power ${exponent}, end of power`;
  },
  Root: (node) => {
    const phrase = `the ${{ 2: "square", 3: "cube", 4: "fourth" }[node.index]} root of ${said(node.of)}`;
    return isSimple(node.of) ? phrase : `${phrase}, end of root`;
  },
  Trig: (node) => {
    const name = { sin: "sine", cos: "cosine", tan: "tangent" }[node.name];
    const phrase = `the ${node.inverse ? "inverse " : ""}${name} of ${said(node.of)}`;
    if (isSimple(node.of)) return phrase;
    if (node.of.k === "Quantity" && isSimple(node.of.amount)) return phrase + endsIfFollowed(name);
    return `${phrase}, end of ${name}`;
  },
  Bracket: (node) => `open bracket ${said(node.of)} close bracket`,
  Juxt: (node) => node.factors.map((factor, place) => (
    place && factor.k === "Root" && factor.index === 2 && factor.of.k === "Int" ? `root ${said(factor.of)}` : said(factor)
  )).join(" "),
  Sum: saidChain({ "+": "plus", "-": "minus" }),
  Product: saidChain(SAID_AS.product),
  Ratio: saidRow(" to "),
  Relation: saidChain(SAID_AS.relation),
  Listing: (node) => {
    const listed = node.parts.map(said).map((phrase, i, all) =>
      phrase + (i === all.length - 1 ? "" : hasEnded(phrase) ? " then " : ", ")).join("");
    return node.brackets ? `open bracket ${listed} close bracket` : listed;
  },
  Either: saidRow(", or "),
};
