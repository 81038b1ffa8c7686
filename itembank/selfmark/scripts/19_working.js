// Working that is typed with an answer (itembank/marking/typing/typed_working, filled, rivals).
const showsWorking = (text) => Boolean(search("working.shows", text));
function lettersNamed(text) {
  return findAll("working.named", text).map((m) => m.groups)
    .filter((g) => g.last || g.first !== g.unit).map((g) => g.last || g.first);
}
function linesOf(text, commas = true) {
  const found = [], goesOn = (part) => matchAt("working.goes_on", part, 0);
  for (const part of split("working.breaks", text)) {
    if (part === null || !strip(part, " ,.;")) continue;
    if (found.length && goesOn(part)) {
      found.push(`${strip(found.pop())} ${strip(part)}`);
      continue;
    }
    found.push(strip(part));
  }
  if (!commas) return found;
  const parted = [];
  for (const part of found) {
    for (const piece of split("working.commas", part)) {
      if (!piece || !strip(piece)) continue;
      if (parted.length && goesOn(piece)) {
        parted.push(`${parted.pop()} ${strip(piece)}`);
        continue;
      }
      const run_ = split("working.run_on", piece);
      if (run_.length > 1 && run_.every((one) => one.indexOf("=") >= 0)) parted.push(...run_.map((one) => strip(one)));
      else parted.push(strip(piece));
    }
  }
  return parted;
}
// The question's numbers in order, on a line before the last (sorted_numbers).
function withoutSortedNumbers(q, answer) {
  const lines = answer.split("\n"), last = lines.pop();
  const inOrderOfSize = (numbers) => numbers.sort((a, b) => (a.less(b) ? -1 : b.less(a) ? 1 : 0)).join(" ");
  const rows = q.shown.filter((one) => lines.length && one.k === "Listing")
    .map((one) => one.parts.map((part) => exactOr(part, null)).filter(Boolean))
    .filter((row) => row.length > 2).map(inOrderOfSize);
  if (!rows.length) return answer;
  const numbersIn = (line) => {
    const plain = visible(line);
    if (!fullmatch("sorted.row", plain)) return "";
    return inOrderOfSize(findAll("sorted.number", plain).map((m) => {
      const [whole, places] = m[0].replace("−", "-").split(".");
      return F(BigInt(whole + (places || "")), bpow(TEN, (places || "").length));
    }));
  };
  return [...lines.filter((line) => rows.indexOf(numbersIn(line)) < 0), last].join("\n");
}
function comesTo(node) {
  if (node.k !== "Relation") return node;
  const sides = sidesOf(node), ops = opsOf(node);
  if (ops.every((op) => op === "=")) {
    const head = sides[0], last = sides[sides.length - 1];
    if (head.k === "Blank") return last;
    if (last.k === "Sym" && head.k !== "Sym") return Relation(last, [["=", sides[sides.length - 2]]]);
    return head.k === "Sym" ? Relation(head, [["=", last]]) : last;
  }
  if (ops.indexOf("=") < 0) return node;
  const groups = [sides[0]], signs = [];
  for (const [op, side] of node.rest) {
    if (op !== "=") { signs.push(op); groups.push(side); } else if (signs.length) groups[groups.length - 1] = side;
  }
  return Relation(groups[0], signs.map((op, i) => [op, groups[i + 1]]));
}
function results(q, node) {
  const last = comesTo(node);
  if (node.k !== "Relation" || opsOf(node).some((op) => op !== "=")) return [last];
  let sides = sidesOf(node);
  if (sides[0].k === "Blank") sides = sides.slice(1);
  const letter = last.k === "Relation" && last.first.k === "Sym" ? last.first : null;
  if (!letter && !freeSides(q, sides)) return [];
  const end = sides[sides.length - 1], kinds = new Set([kindOf(end)]), found = [last];
  for (const side of sides.slice(0, -1).reverse()) {
    if (kinds.has(kindOf(side)) || (letter && eq(side, letter)) || !same(side, end)) break;
    kinds.add(kindOf(side));
    found.push(letter ? Relation(letter, [["=", side]]) : side);
  }
  return found;
}
function freeSides(q, sides) {
  if (hasLetters(q.key) && !hasAny(q.key, "Relation")) return true;
  return sides.every((side) => subset(unknownLetters(side), new Set(Object.keys(q.printed))) ||
    (side.k === "Ratio" && side.parts.every((part) => part.k === "Sym")));
}
function kindOf(node) {
  const inner = is(node, "Neg", "Bracket") ? node.of : node;
  return is(inner, "Quantity", "Money") ? "amount" : inner.k;
}
function links(q, node) {
  if (is(node, "Listing", "Either")) return node.parts.reduce((all, part) => all.concat(links(q, part)), []);
  if (node.k !== "Relation") return [];
  const found = [];
  let left = node.first;
  for (const [op, right] of node.rest) {
    const finished = op === "=" && flat(left) && flat(right), from = left;
    found.push({
      left, right, holds: holds(q, left, op, right), flat: finished, answers: left.k === "Sym" && flat(right),
      text: () => shownLine(Relation(from, [[op, right]])),
    });
    left = right;
  }
  return found;
}
function flat(node) {
  let inner = node;
  while (is(inner, "Neg", "Bracket", "Money", "Quantity", "Percent")) inner = children(inner)[0];
  if (inner.k === "Mixed" || (inner.k === "Frac" && inner.num.k === "Int" && inner.den.k === "Int")) return true;
  return !hasLetters(node) && !is(node, "Ratio", "Label") && !valueFault(node);
}
// true, false, or null where it cannot be told.
function holds(q, left, op, right) {
  try {
    if (unknownLetters(left).size || unknownLetters(right).size) return holdsForLetters(q, left, op, right);
    if (left.k === "Ratio" || right.k === "Ratio") return ratiosHold(left, right);
    return numbersHold(left, op, right);
  } catch (error) {
    if (error instanceof NotationError) return null;
    throw error;
  }
}
function ratiosHold(left, right) {
  if (left.k !== "Ratio" || right.k !== "Ratio" || left.parts.length !== right.parts.length) return null;
  if (![...left.parts, ...right.parts].every(bounded)) return null;
  for (const change of [(node) => node, withoutSigns]) {
    const a = left.parts.map((part) => exact(change(part))), b = right.parts.map((part) => exact(change(part)));
    if (a.every((x, i) => x.times(b[0]).is(b[i].times(a[0])))) return true;
  }
  return unitsIn(left).size || unitsIn(right).size ? null : false;
}
function holdsForLetters(q, left, op, right) {
  if (op !== "=" || !bounded(left) || !bounded(right)) return null;
  const letters = new Set([...unknownLetters(left), ...unknownLetters(right)]);
  if (subset(letters, new Set(Object.keys(q.printed)))) {
    const values = {};
    for (const [name, worth] of Object.entries(q.printed)) values[name] = number(worth);
    return algebra(left, values).is(algebra(right, values));
  }
  if (q.for_letters === "all" || (q.for_letters === "n" && letters.size === 1 && letters.has("n"))) {
    return algebra(left).is(algebra(right));
  }
  if (q.equation && letterEquation(q.key)) {
    const name = q.key.first.name, root = q.key.rest[0][1];
    if (letters.size !== 1 || !letters.has(name) || hasLetters(root)) return null;
    const known = { [name]: algebra(root) };
    return algebra(left, known).is(algebra(right, known));
  }
  return null;
}
function numbersHold(left, op, right) {
  if (!bounded(left) || !bounded(right)) return null;
  if (op === "=" && same(left, right)) return true;
  let a, b;
  try { a = exact(left); b = exact(right); } catch (error) {
    if (!(error instanceof NotationError)) throw error;
    return op === "=" ? rootsHold(left, right) : null;
  }
  if (op === "=") {
    if (a.is(b) || sameWithoutUnits(left, right) || aboutEqual(left, right) || aboutEqual(right, left)) return true;
    return hasAny(left, "Percent") !== hasAny(right, "Percent") || unitLeftOut(left, right) ? null : false;
  }
  const mine = unitsIn(left), theirs = unitsIn(right);
  if ((mine.size || theirs.size) && !(mine.size === theirs.size && subset(mine, theirs))) return null;
  return compareBy(op, a, b);
}
function rootsHold(left, right) {
  const sides = [withoutSigns(left), withoutSigns(right)];
  if (same(sides[0], sides[1]) && !unitsClash(left, right)) return true;
  const mine = unitsIn(left), theirs = unitsIn(right);
  if (sides.some((side) => hasAny(side, "Dec", "Trig")) || mine.size !== theirs.size || !subset(mine, theirs)) return null;
  return symbols(left).has(PI) !== symbols(right).has(PI) ? null : false;
}
function compareBy(op, a, b) {
  return { "<": a.less(b), ">": b.less(a), "≤": !b.less(a), "≥": !a.less(b), "=": a.is(b), "≠": !a.is(b) }[op];
}
function sameWithoutUnits(left, right) {
  const a = exactOr(withoutSigns(left), null), b = a && exactOr(withoutSigns(right), null);
  return Boolean(a && b) && a.is(b) && !unitsClash(left, right);
}
function unitsClash(left, right) {
  const a = unitOf(left), b = unitOf(right);
  return Boolean(a && b) && a[0] === b[0] && !a[1].is(b[1]) && flat(left) && flat(right);
}
function withoutSigns(node) {
  switch (node.k) {
    case "Quantity": case "Money": return withoutSigns(node.amount);
    case "Percent": return withoutSigns(node.of);
    case "Neg": case "Bracket": case "Sum": case "Product": case "Frac": return withParts(node, withoutSigns);
    case "Power": return Power(withoutSigns(node.base), node.exponent);
    case "Root": return Root(withoutSigns(node.of), node.index);
  }
  return node;
}
function unitsIn(node) {
  return new Set(walk(node).filter((part) => is(part, "Quantity", "Money"))
    .map((part) => (part.k === "Quantity" ? part.unit : part.sign)));
}
function unitLeftOut(left, right) {
  for (const [side, other] of [[left, right], [right, left]]) {
    if (unitsIn(side).size || !unitsIn(other).size) continue;
    const n = exact(side), amount = exact(other);
    if ([...Object.values(SIZES), ...Object.values(COINS)].some((size) => n.times(size).is(amount))) return true;
  }
  return false;
}
function aboutEqual(full, short) {
  short = withoutSigns(short);
  const inner = short.k === "Neg" ? short.of : short, whole = withoutSigns(full);
  if (inner.k !== "Dec" || inner.recurring || whole.k === "Dec") return false;
  return atMost(exact(whole).minus(exact(short)).abs(), F(ONE, TWO * bpow(TEN, inner.places.length)));
}

function filled(q, node) {
  let given = [node];
  if (node.k === "Relation") {
    if (opsOf(node).some((op) => op !== "=")) return null;
    given = sidesOf(node);
  }
  for (const run_ of q.shown) {
    for (const pattern of walk(run_)) {
      if (!symbols(pattern).has("□") || is(pattern, "Blank", "Neg", "Bracket", "Relation")) continue;
      for (const shown of given.slice().reverse()) {
        const found = [];
        if (fitsPattern(pattern, shown, found) && found.length === 1) return found[0];
      }
    }
  }
  return null;
}
function embedded(q, node) {
  const equation = q.equation;
  if (!equation || node.k !== "Relation" || node.rest.length !== 1 || hasLetters(node)) return "";
  const letter = symbols(equation).values().next().value;
  const pattern = boxed(equation, letter);
  node = boxed(node, letter);
  for (const way of [node, Relation(node.rest[0][1], [[node.rest[0][0], node.first]])]) {
    const found = [];
    if (fitsPattern(pattern, way, found) && new Set(found.map((one) => one.id)).size === 1) {
      return same(found[0], q.key) ? letter : "";
    }
  }
  return "";
}
function boxed(node, letter) {
  switch (node.k) {
    case "Sym": return node.name === letter ? Blank() : node;
    case "Juxt": {
      const [head, ...rest] = node.factors.map((factor) => boxed(factor, letter));
      return Product(head, rest.map((factor) => ["×", factor]));
    }
    case "Neg": case "Bracket": case "Frac": case "Sum": case "Relation":
      return withParts(node, (part) => boxed(part, letter));
  }
  return node;
}
function fitsPattern(pattern, node, found) {
  if (pattern.k === "Blank") { found.push(node); return true; }
  if (!symbols(pattern).has("□")) return eq(pattern, node);
  if (pattern.k !== node.k) return false;
  const mine = children(pattern), theirs = children(node);
  if (mine.length !== theirs.length || !eq(frame(pattern), frame(node))) return false;
  return mine.every((part, i) => fitsPattern(part, theirs[i], found));
}

// Earlier lines that give another answer.
function rival(piece, answer) {
  const given = comesTo(piece);
  if (answer.k === "Listing" && unknowns(answer).length) {
    const list = is(given, "Listing", "Either") ? given.parts : [given], wanted = new Map();
    for (const part of answer.parts) if (part.k === "Relation") wanted.set(part.first.id, part);
    return list.some((part) => part.k === "Relation" && wanted.has(part.first.id) && rival(part, wanted.get(part.first.id)));
  }
  if (is(answer, "Listing", "Either")) {
    return answer.parts.every((part) => rival(piece, part)) && shapedLike(piece, answer);
  }
  if (same(given, answer)) return false;
  if (given.k === "Relation" && answer.k === "Relation") return otherValues(given, answer);
  if (given.k === "Relation") return false;
  return piece.k !== "Relation" && (flat(given) || given.k === "Label");
}
function otherValues(given, answer) {
  const sides = given.rest.map(([, side]) => side);
  if (sides.length === 2 && answer.rest.length === 2) {
    return eq(sides[0], answer.rest[0][1]) && flat(given.first) && flat(sides[1]);
  }
  if (given.first.k !== "Sym" || !eq(given.first, answer.first)) return false;
  if (hasLetters(answer.rest[answer.rest.length - 1][1])) {
    return !sides.some((side) => symbols(side).has(given.first.name));
  }
  return sides.every(flat);
}
const NO_EXPRESSION = ["Relation", "Ratio", "Listing", "Either", "Label", "Quantity", "Money", "Blank"];
function anotherResult(q, piece) {
  const key = q.key;
  if (piece.k !== key.k || is(key, "Relation", "Listing", "Either", "Label")) return false;
  if (formFault(q.form, piece) || same(piece, key)) return false;
  if (key.k === "Ratio") {
    const printed = q.shown.filter((one) => one.k === "Ratio" && one.parts.length === key.parts.length && !hasLetters(one));
    return piece.parts.length === key.parts.length && printed.length < 2 && !printed.some((one) => eq(one, piece));
  }
  if (!bounded(piece) || !bounded(key)) return false;
  if (hasLetters(key)) {
    const mine = algebra(piece).top, theirs = algebra(key).top;
    if (mine.size !== theirs.size || Array.from(mine.keys()).some((name) => !theirs.has(name))) return false;
  } else {
    const worth = algebra(piece), wanted = algebra(key);
    if (q.form.startsWith("prime") && worth.top.size && rational(wanted.over(worth)).whole) return false;
  }
  return !(q.asked_target ? walk(q.asked_target) : []).some((part) => {
    if (hasAny(part, ...NO_EXPRESSION) || !bounded(part)) return false;
    const worth = algebra(part);
    return worth.is(algebra(piece)) || worth.is(algebra(Neg(piece)));
  });
}
function shapedLike(piece, answer) {
  const given = comesTo(piece);
  const letters = answer.parts.filter((part) => part.k === "Relation").map((part) => part.first.id);
  if (given.k === "Relation") return letters.indexOf(given.first.id) >= 0 && given.rest.every(([, side]) => flat(side));
  return piece.k !== "Relation" && flat(given);
}
