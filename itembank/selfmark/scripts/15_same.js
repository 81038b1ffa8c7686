// Whether an answer is worth the same as the key, part by part (itembank/marking/worth/same).
const TURNED = { "<": ">", ">": "<", "≤": "≥", "≥": "≤", "=": "=", "≠": "≠" };

function same(given, key, within, ordered) {
  try { return sameWorth(given, key, within || F(0), ordered === undefined ? true : ordered); } catch (error) {
    if (error instanceof NotationError) return false;
    throw error;
  }
}
function sameWorth(given, key, within, ordered) {
  if (eq(given, key)) return true;
  if (given.k === "Bracket") given = given.of;
  if (given.k === "Either" && key.k !== "Either") {
    return given.parts.every((part) => sameWorth(part, key, within, ordered));
  }
  switch (key.k) {
    case "Label": return given.k === "Label" && foldedText(given.text) === foldedText(key.text);
    case "Either": return missing(given, key, within) === 0;
    case "Relation": return sameRelation(given, key, within);
    case "Ratio": return sameRatio(given, key.parts);
    case "Listing":
      if (unknowns(key).length) return sameSolution(given, key, within);
      if (given.k === "Ratio") given = Listing(given.parts);
      if (given.k !== "Listing" || given.parts.length !== key.parts.length) return chainSays(given, key);
      if (ordered) return byAxis(given.parts).every((left, i) => sameWorth(left, key.parts[i], within, true));
      return matchParts(given.parts, key.parts, within);
  }
  if (given.k === "Relation" && given.rest.length === 1 && given.rest[0][0] === "=") {
    const left = given.first, right = given.rest[0][1];
    if (left.k === "Sym" && !symbols(right).has(left.name)) return sameWorth(right, key, within, ordered);
    return right.k === "Sym" && !symbols(left).has(right.name) && sameWorth(left, key, within, ordered);
  }
  if (is(given, "Relation", "Ratio", "Listing", "Either", "Label")) return false;
  const [a, b] = worths(given, key);
  if (!within.zero && a instanceof Fraction && b instanceof Fraction) {
    const unit = unitOf(key);
    return atMost(a.minus(b).abs(), within.times(unit ? unit[1] : F(1)));
  }
  return worthsEqual(a, b);
}
// Coordinates that are named, y = 5, x = 2, with x first.
function byAxis(given) {
  const names = given.map((part) => (letterEquation(part) ? part.first.name.toLowerCase() : "")), wanted = sortedText(names);
  if (wanted.join("") !== "xyz".slice(0, names.length)) return given;
  return wanted.map((name) => given[names.indexOf(name)]);
}
function sameRatio(given, list) {
  if (given.k !== "Ratio" || given.parts.length !== list.length) return false;
  const parts = ratioInOneUnit(given, list).parts;
  const pairs = parts.map((left, i) => worths(left, list[i]).map(quotient));
  const [lead, wanted] = pairs[0];
  if (!(lead.top.size && wanted.top.size)) return false;
  return pairs.every(([a, b]) => a.times(wanted).is(b.times(lead)));
}
function ratioInOneUnit(given, list) {
  const kinds = new Set(given.parts.map((part) => { const unit = unitOf(part); return unit ? unit[0] : ""; }));
  if (kinds.size !== 1 || kinds.has("") || list.some((part) => unitOf(part))) return given;
  return Ratio(given.parts.map((part) => numberNode(exact(part))));
}
function matchParts(given, list, within) {
  const left = given.slice();
  for (const part of list) {
    const at = left.findIndex((candidate) => same(candidate, part, within));
    if (at < 0) return false;
    left.splice(left.findIndex((one) => eq(one, left[at])), 1);
  }
  return !left.length;
}
function chainSays(given, key) {
  if (given.k !== "Relation") return false;
  const ops = new Set(opsOf(given));
  if (ops.size !== 1 || !(ops.has("<") || ops.has(">"))) return false;
  return same(Listing(sidesOf(given)), key);
}
function unknowns(key) {
  const names = [];
  if (key.k === "Listing") {
    for (const part of key.parts) {
      if (!letterEquation(part)) return [];
      names.push(part.first.name);
    }
  }
  return new Set(names).size === names.length ? names : [];
}
function sameSolution(given, key, within) {
  if (given.k !== "Listing" || given.parts.length !== key.parts.length) return false;
  const wanted = new Map(unknowns(key).map((name, i) => [name, key.parts[i]])), loose = [];
  for (const part of given.parts) {
    const name = solvedLetter(part);
    if (name === null) { loose.push(part); continue; }
    if (!wanted.has(name)) return false;
    const mine = wanted.get(name);
    wanted.delete(name);
    if (!sameWorth(part, mine, within, true)) return false;
  }
  const rest = sortedText(Array.from(wanted.keys())).map((name) => wanted.get(name));
  return loose.length === rest.length && loose.every((left, i) => sameWorth(left, rest[i], within, true));
}
function solvedLetter(part) {
  if (part.k !== "Relation" || part.rest.length !== 1 || part.rest[0][0] !== "=") return null;
  if (part.first.k === "Sym") return part.first.name;
  return part.rest[0][1].k === "Sym" ? part.rest[0][1].name : null;
}
// How many of the key's answers were not given; −1 where one that was is wrong.
function missing(given, key, within) {
  const head = key.parts[0];
  const hits = severalAnswers(given, head.k === "Listing" ? head.parts.length : 0).map((answer) =>
    key.parts.map((part, i) => i).filter((i) => same(answer, key.parts[i], within)));
  return hits.every((list) => list.length) ? key.parts.length - matched(hits) : -1;
}
// The most parts that can be given, each answer standing for one of its hits (augmenting paths).
function matched(hits) {
  const answerOf = new Map();
  const placed = (answer, tried_) => hits[answer].some((part) => {
    if (tried_.has(part)) return false;
    tried_.add(part);
    if (answerOf.has(part) && !placed(answerOf.get(part), tried_)) return false;
    answerOf.set(part, answer);
    return true;
  });
  return hits.filter((_, answer) => placed(answer, new Set())).length;
}
function severalAnswers(given, letters) {
  if (given.k === "Either") return given.parts.reduce((all, part) => all.concat(severalAnswers(part, letters)), []);
  if (given.k === "Listing" && !letters) return given.parts;
  if (given.k === "Listing" && given.parts.length % letters === 0) {
    const found = [];
    for (let i = 0; i < given.parts.length; i += letters) found.push(Listing(given.parts.slice(i, i + letters)));
    return found;
  }
  return [given];
}
function sameRelation(given, key, within) {
  if (given.k === "Listing") given = oneChain(given) || given;
  if (given.k !== "Relation") {
    return letterEquation(key) && sameWorth(given, key.rest[0][1], within, true);
  }
  if (given.rest.length !== key.rest.length) return false;
  return [given, turned(given)].some((way) =>
    way.rest.every(([op], i) => op === key.rest[i][0]) &&
    sameWorth(way.first, key.first, F(0), true) &&
    way.rest.every(([, left], i) => sameWorth(left, key.rest[i][1], within, true)));
}
function turned(node) {
  const sides = sidesOf(node).reverse(), ops = opsOf(node).map((op) => TURNED[op]).reverse();
  return Relation(sides[0], ops.map((op, i) => [op, sides[i + 1]]));
}
function oneChain(given) {
  if (given.parts.length !== 2) return null;
  const bounds = {}, letters = new Map();
  for (let part of given.parts) {
    if (part.k !== "Relation" || part.rest.length !== 1) return null;
    if (part.first.k !== "Sym") part = turned(part);
    const [op, side] = part.rest[0];
    bounds[op === ">" || op === "≥" ? "low" : op === "<" || op === "≤" ? "high" : ""] = [op, side];
    letters.set(part.first.id, part.first);
  }
  if (!bounds.low || !bounds.high || Object.keys(bounds).length !== 2 || letters.size !== 1) return null;
  const [lowOp, low] = bounds.low, [highOp, high] = bounds.high;
  return Relation(low, [[TURNED[lowOp], letters.values().next().value], [highOp, high]]);
}
const foldedText = (text) => words(casefold(text)).join(" ");
