// Reads a line to its tree, by the tables that the marker's own grammar gives (itembank/notation/
// parse; LALR(1) with a lexer that looks only for what may come next).
const GRAMMAR = TABLES.grammar;

function parse(text, how) {
  const { pence, letters } = how;
  let { times } = how;
  let fault = checkLimits(text);
  if (fault) throw new ParseError(fault);
  const dotted = search("parse.high_dot", text);
  if (dotted) {
    throw new ParseError(
      `${dotted[0]} can be read in two ways: write ${dotted[1]}.${dotted[2]} or ${dotted[1]} × ${dotted[2]}.`);
  }
  let plain = normalise(text);
  if (!plain) throw new ParseError("There is nothing to read: type a number or an expression.");
  if (count(plain, '"') % 2) {
    throw new ParseError("The quotation mark at column 1 is not closed: close it or take it out.");
  }
  plain = withSigns(plain, letters);
  if (!times) times = holdsTime(plain);
  for (const clock of findAll("clock.close_up", plain)) {
    if ((times || clock.groups.half) && !fullmatch("clock.a_time", clock[0])) {
      throw new ParseError(noTimeOfDay(clock));
    }
  }
  const word = unknownWord(plain, letters);
  if (word) throw new ParseError(word);
  fault = checkLimits(plain);
  if (fault) throw new ParseError(fault);
  try {
    const node = run(plain, pence, times).node;
    line(node, pence);
    return node;
  } catch (error) {
    if (error instanceof Stopped) throw new ParseError(explained(plain, error.at));
    if (error instanceof RefusedError || error instanceof NotationError) {
      throw new ParseError(error.message);
    }
    throw error;
  }
}
class Stopped extends Error {
  constructor(at) { super("stopped"); this.at = at; }
}
function explained(plain, at) {
  const before = rstrip(plain.slice(0, at));
  const after = at < plain.length ? String.fromCodePoint(plain.codePointAt(at)) : "";
  const outside = before.replace(/"[^"]*"/g, "");
  if (!after) {
    if (count(outside, "(") > count(outside, ")")) return "A bracket is left open at the end: close it.";
    return `The line stops too early: write what comes after ${Array.from(before).slice(-1).join("")}.`;
  }
  if (after === ")" && count(outside, "(") <= count(outside, ")")) {
    return "The bracket closed at column 1 was never opened: open it or take it out.";
  }
  if (after === '"') return "A name in quotation marks (column 1) stands alone: put a comma or = beside it.";
  if (!before) {
    return `A line of mathematics cannot begin with ${told(after)}: begin with a number or a letter.`;
  }
  return `Reading stopped at ${told(after)} (column 1): check what stands there.`;
}
function run(plain, pence, times) {
  const states = [0], values = [];
  let at = 0, sign = null;
  for (;;) {
    const actions = GRAMMAR.states[states[states.length - 1]];
    if (!sign) sign = nextSign(plain, at, actions, pence, times);
    const action = actions[sign.name];
    if (action === undefined) throw new Stopped(sign.name === "$END" ? plain.length : sign.start);
    if (action >= 0) {
      states.push(action);
      values.push(sign);
      at = sign.start + sign.text.length;
      sign = null;
      continue;
    }
    const [gives, length, built] = GRAMMAR.rules[-1 - action];
    let below = values.splice(values.length - length, length);
    states.length -= length;
    below = below.reduce((all, one) => all.concat(Array.isArray(one) ? one : [one]), []);
    const value = built === "" ? below[0] : built === "~" ? below : BUILD[built](below);
    values.push(value);
    const next = GRAMMAR.states[states[states.length - 1]][gives];
    states.push(next);
    if (next === GRAMMAR.end && sign.name === "$END") return values[values.length - 1];
  }
}
const SIGN_PATTERNS = GRAMMAR.signs.map(([name, source]) => [name, [source, "u"]]);
const NARROW_TIME = [GRAMMAR.no_times, "u"];
function nextSign(plain, at, actions, pence, times) {
  while (plain[at] === " ") at++;
  if (at >= plain.length) return { name: "$END", text: "", start: at };
  for (const [name, pattern] of SIGN_PATTERNS) {
    if (actions[name] === undefined || (name === "PENCE" && !pence)) continue;
    const m = matchAt(name === "TIME" && !times ? NARROW_TIME : pattern, plain, at);
    if (m) return { name, text: m[0], start: at };
  }
  throw new Stopped(at);
}
function refused(message) { throw new RefusedError(message); }
const ungrouped = (part) => (part.node.k === "Bracket" ? part.node.of : part.node);
const made = (node, list) => ({ node, start: list[0].start });
const chain = (kind) => (list) => {
  const rest = [];
  for (let i = 1; i < list.length; i += 2) rest.push([list[i].text, list[i + 1].node]);
  return made(kind(list[0].node, rest), list);
};
const row = (kind) => (list) => made(kind(list.filter((_, i) => i % 2 === 0).map((part) => part.node)), list);
const BUILD = {
  start: (list) => list[0],
  either: row(Either),
  listing: row(Listing),
  pair: (list) => made(Listing([list[1].node, list[3].node], true), list),
  relation: chain(Relation),
  label: (list) => made(Label(list[0].text.slice(1, -1)), list),
  ratio: row(Ratio),
  sum: chain(Sum),
  product: chain(Product),
  neg: (list) => {
    if (list[1].node.k === "Neg") refused("Two minus signs together need a bracket between them, as in -(-3).");
    return made(Neg(list[1].node), list);
  },
  percent: (list) => made(Percent(list[0].node), list),
  pence: (list) => {
    if (!is(list[0].node, "Int", "Dec", "Blank")) refused("Only one number can be pence: write £ instead.");
    return made(Money(list[0].node, "p"), list);
  },
  money: (list) => made(Money(list[1].node, list[0].text), list),
  quantity: (list) => made(Quantity(list[0].node, SIGNS.UNIT_SIGNS[list[1].text] || list[1].text), list),
  mixed_units: (list) => made(MixedUnits(list.map((part) => part.node)), list),
  clock: (list) => {
    const [, hour, minute, half] = fullmatch("clock_times.clock", list[0].text);
    return made(ClockTime(Number(hour), minute === undefined ? null : Number(minute), half || ""), list);
  },
  frac: (list) => {
    const [top, , bottom] = list;
    if (list.length > 3) refused("More than one / can be read in two ways: put one fraction in brackets.");
    for (const part of [top, bottom]) {
      if (part.node.k === "Mixed") {
        refused(`A mixed number over or under a / needs brackets: write (${shownLine(part.node)}).`);
      }
    }
    const den = bottom.node.k === "Neg" ? bottom.node.of : bottom.node;
    if (den.k === "Juxt") {
      const over = shownLine(top.node), [first, ...others] = den.factors.map(shownLine);
      const rest = others.join("");
      refused(`${over}/${first}${rest} can be read in two ways: write (${over}/${first})${rest} or ${over}/(${first}${rest}).`);
    }
    return made(Frac(ungrouped(top), ungrouped(bottom)), list);
  },
  juxt: (list) => {
    for (let i = 1; i < list.length; i++) {
      const before = list[i - 1].node, after = list[i].node;
      if (before.k === "Mixed" || after.k === "Mixed") {
        refused("A mixed number beside another factor needs brackets, as in (2 1/2)x.");
      }
      const inner = after.k === "Power" ? after.base : after;
      if (is(inner, "Int", "Dec") && before.k !== "Bracket") {
        refused(`${shownLine(before)} and ${shownLine(after)} stand side by side: write a sign between, or the number first.`);
      }
    }
    let [first, ...rest] = list.map((part) => part.node);
    if (first.k === "Bracket" && leadsLetters(first, rest)) first = first.of;
    return made(Juxt([first, ...rest]), list);
  },
  power: (list) => {
    const base = list[0], exponents = list.filter((_, i) => i >= 2 && i % 2 === 0);
    if (exponents.length > 1) {
      refused("A power of a power can be read in two ways: put one of them in brackets.");
    }
    if (is(base.node, "Root", "Mixed")) {
      const shown = shownLine(base.node);
      refused(`Put ${shown} in brackets before raising it: write (${shown})^…`);
    }
    return made(Power(base.node, ungrouped(exponents[0])), list);
  },
  mixed: (list) => {
    const [whole, top, bottom] = list[0].text.match(/[0-9]+/g).map((n) => BigInt(n));
    if (whole === ZERO || top === ZERO || bottom === ZERO) refused("A mixed number has no part that is 0.");
    return made(Mixed(whole, top, bottom), list);
  },
  root: (list) => made(Root(ungrouped(list[1]), { "∛": 3, "∜": 4 }[list[0].text] || 2), list),
  trig: (list) => made(Trig(list[0].text.slice(0, 3), ungrouped(list[1]), list[0].text.length > 3), list),
  int: (list) => made(Int(list[0].text), list),
  dec: (list) => {
    const text = list[0].text, point = text.indexOf(".");
    const whole = text.slice(0, point) || "0", after = text.slice(point + 1);
    const dot = after.indexOf(SIGNS.DOT);
    if (dot < 0) return made(Dec(whole, after), list);
    return made(Dec(whole, after.slice(0, dot - 1), after.slice(dot - 1).split(SIGNS.DOT).join("")), list);
  },
  sym: (list) => made(Sym(list[0].text), list),
  blank: (list) => made(Blank(), list),
  group: (list) => made(Bracket(list[1].node), list),
};
