// One of many right answers (itembank/items/membership and asks/equivalent).
const SAID = { "<": "less than", ">": "more than", "≤": "at most", "≥": "at least", "=": "equal to" };

function notEquivalent(target, answer) {
  if (answer.k === "Bracket") return notEquivalent(target, answer.of);
  if (answer.k === "Relation" && answer.rest.length === 1 && answer.rest[0][0] === "=" && eq(answer.first, target)) {
    return notEquivalent(target, answer.rest[0][1]);
  }
  if (is(answer, "Relation", "Listing", "Either")) return "one number is asked for";
  if (eq(answer, target)) return `${shownLine(answer)} is the number in the question`;
  if (!exact(answer).is(exact(target))) return `${shownLine(answer)} is not equal to ${shownLine(target)}`;
  return "";
}
function givenValues(give, answer) {
  switch (answer.k) {
    case "Bracket": return givenValues(give, answer.of);
    case "Listing": case "Either": return answer.parts.reduce((all, part) => all.concat(givenValues(give, part)), []);
    case "Relation":
      if (answer.rest.length === 1 && answer.rest[0][0] === "=") {
        if (answer.first.k === "Sym") return [answer.rest[0][1]];
        if (answer.rest[0][1].k === "Sym") return [answer.first];
      }
      if (!hasLetters(answer)) {
        const found = ofLine(give, children(answer));
        return found.length ? found : [answer];
      }
      break;
    case "Product": case "Sum":
      if (give.letters.length > 1) {
        const ops = new Set(opsOf(answer));
        const plain = ops.size === 1 && (ops.has("×") || ops.has("+"));
        if (plain && give.relations.some((relation) => hasAny(relation, answer.k))) return sidesOf(answer);
      }
  }
  return [answer];
}
function ofLine(give, sides) {
  const several = sides.map((side) => givenValues(give, side)).filter((found) => found.length > 1);
  if (several.length) return several.length === 1 ? several[0] : [];
  const trees = [...give.relations, ...give.conditions.reduce((all, [, of]) => all.concat(of), [])], own_ = new Set();
  for (const tree of trees) {
    for (const part of walk(tree)) {
      if (part.k !== "Relation" && !hasLetters(part)) own_.add(exact(part).toString());
    }
  }
  const loose = sides.filter((side) => !own_.has(exact(side).toString()));
  return loose.length === 1 ? loose : [];
}
function unmet(give, answer) {
  const shown = givenValues(give, answer), wanted = give.letters.length;
  const untrue = falseLine(answer);
  if (untrue) return untrue;
  if (shown.length !== wanted) {
    return `${{ 1: "one number is", 2: "two numbers are", 3: "three numbers are" }[wanted] || wanted} asked for`;
  }
  if (shown.some((node) => hasAny(node, "ClockTime"))) throw new NotExact("a time of day is no number");
  const values = shown.map(exact);
  for (const [name, of] of give.conditions) {
    const fault = conditionUnmet(name, of, shown, values);
    if (fault) return fault;
  }
  let head = "";
  for (const places of permutations(shown.map((_, i) => i))) {
    const fault = relationsUnmet(give, places.map((i) => shown[i]), places.map((i) => values[i]));
    if (!fault) return "";
    head = head || fault;
  }
  return head;
}
function falseLine(answer) {
  if (answer.k !== "Relation" || hasLetters(answer)) return "";
  let left = exact(answer.first);
  for (const [op, side] of answer.rest) {
    const right = exact(side);
    if (!compareBy(op, left, right)) return `${shownLine(answer)} is not true`;
    left = right;
  }
  return "";
}
function conditionUnmet(name, of, shown, values) {
  if (name === "different") {
    return new Set(values.map(String)).size < values.length ? "the numbers are not different" : "";
  }
  const others = of.map(exact);
  for (let i = 0; i < values.length; i++) {
    if (!MEETS[name](values[i], ...others)) {
      if (name === "factor" && values[i].n < ZERO) {
        return `${shownLine(shown[i])} is less than 0, and factors are taken to be more than 0`;
      }
      let place = 0;
      const said = TABLES.conditions[name].replace(/\{\}/g, () => shownLine(of[place++]));
      return `${shownLine(shown[i])} is not ${said}`;
    }
  }
  return "";
}
function isPowerOf(value, index) {
  if (!value.whole || value.n < ONE) return false;
  return bpow(floorRoot(value.n, index), index) === value.n;
}
const MEETS = {
  whole: (value) => value.whole,
  positive: (value) => value.n > ZERO,
  negative: (value) => value.n < ZERO,
  even: (value) => value.over(F(2)).whole,
  odd: (value) => value.whole && !value.over(F(2)).whole,
  prime: (value) => {
    if (F(LARGEST_PRIME).less(value)) throw new NotExact("this is too large to tell whether it is prime");
    return value.whole && isPrime(value.n);
  },
  square: (value) => isPowerOf(value, 2),
  cube: (value) => isPowerOf(value, 3),
  multiple: (value, of) => value.whole && !of.zero && value.over(of).whole,
  factor: (value, of) => value.whole && value.n > ZERO && of.over(value).whole,
};
function relationsUnmet(give, shown, values) {
  const at = {};
  give.letters.forEach((name, i) => { at[name] = values[i]; });
  for (const relation of give.relations) {
    const fault = outsideRange(give, relation, shown, at);
    if (fault !== null) {
      if (fault) return fault;
      continue;
    }
    let left = relation.first;
    for (const [op, right] of relation.rest) {
      const a = worthAt(left, at), b = worthAt(right, at);
      if (!compareBy(op, a, b)) {
        const written = new Map();
        give.letters.forEach((name, i) => {
          written.set(Sym(name).id, is(shown[i], "Neg", "Sum", "Product") ? Bracket(shown[i]) : shown[i]);
        });
        return untrueText(give, written, left, a, op, right, b);
      }
      left = right;
    }
  }
  return "";
}
function outsideRange(give, relation, shown, at) {
  if (relation.rest.length !== 2) return null;
  const low = relation.first, [[one, middle], [two_, high]] = relation.rest;
  if (!(one === "<" || one === "≤") || !(two_ === "<" || two_ === "≤") || middle.k !== "Sym") return null;
  if (!(middle.name in at) || hasLetters(low) || hasLetters(high) || one !== two_) return null;
  const value = at[middle.name], ends = [exact(low), exact(high)];
  const written = shownLine(shown[give.letters.indexOf(middle.name)]);
  const place = one === "≤" ? `from ${shownLine(low)} to ${shownLine(high)}` : `between ${shownLine(low)} and ${shownLine(high)}`;
  const said = `${written} is not ${place}`;
  for (const [end, node, than] of [[ends[0], low, "less"], [ends[1], high, "more"]]) {
    if (value.is(end) && one === "<") return `${said}: it is equal to ${shownLine(node)}`;
    if (than === "less" ? value.less(end) : end.less(value)) return `${said}: it is ${than} than ${shownLine(node)}`;
  }
  return "";
}
// Where letters stand in a denominator only the long way is exact; both give one number.
function worthAt(side, at) {
  const known = {};
  for (const [name, value] of Object.entries(at)) known[name] = number(value);
  return rational(algebra(side, known));
}
function untrueText(give, written, left, a, op, right, b) {
  const letters = new Set(give.letters);
  let side = left, worth = a, other = right;
  if (!Array.from(symbols(left)).some((name) => letters.has(name))) {
    [side, worth, other] = [right, b, left];
    op = TURNED[op];
  }
  const limit = shownLine(replaced(other, written)), what = shownLine(replaced(side, written));
  let said;
  if (side.k === "Sym" && letters.has(side.name)) {
    said = `${shownLine(bareOf(written.get(side.id)))} is`;
    if (op === "≠") return `the answer has to be another number than ${limit}`;
  } else if (op === "=") return `${what} is ${shownLine(numberNode(worth))}, not ${limit}`;
  else said = `${what} is ${shownLine(numberNode(worth))}, which is`;
  return `${said} ${op === "≠" ? "" : "not "}${SAID[op] || "equal to"} ${limit}`;
}
