// What may truly be said of a wrong answer (itembank/marking/telling).
function hint(q, given) {
  try { return hintFor(q, given) || TABLES.messages.CHECK; } catch (error) {
    if (error instanceof NotationError) return TABLES.messages.CHECK;
    throw error;
  }
}
function hintFor(q, given) {
  const key = q.key;
  let said = kindHint(q, given);
  if (said) return said;
  switch (key.k) {
    case "Label": return labelHint(q, given);
    case "Either": said = severalHint(given, key); break;
    case "Listing": said = listHint(q, given, key); break;
    case "Ratio": said = ratioHint(q, given, key); break;
    case "Relation": said = relationHint(q, given, key); break;
    default:
      if (letterEquation(given) && !symbols(key).has(given.first.name)) given = given.rest[0][1];
      said = singleHint(q, given, key);
  }
  return said || tried(q, given) || sizeHint(given, key);
}
function labelHint(q, given) {
  const names = q.names;
  if (names.length >= 2 && given.k === "Label" && names.map(casefold).indexOf(casefold(given.text)) < 0) {
    return `Give the name of one choice: ${names.slice(0, -1).join(", ")} or ${names[names.length - 1]}.`;
  }
  return "That is not the one: work out what each choice comes to and compare.";
}
function severalHint(given, key) {
  const left = missing(given, key);
  if (left > 0) return `What is given is right. ${left === 1 ? "Another answer is" : `${left} more answers are`} missing.`;
  const list = is(given, "Either", "Listing") ? given.parts : [];
  const hits = list.filter((part) => key.parts.some((wanted) => same(part, wanted)));
  if (hits.length && hits.length < list.length) {
    const head = hits.length === 1 ? "One of the answers is" : `${hits.length} of the answers are`;
    return `${head} right: look again at the ${list.length === 2 ? "other" : "others"}.`;
  }
  return "";
}
function permutations(list) {
  if (list.length < 2) return [list];
  const found = [];
  list.forEach((one, i) => {
    for (const rest of permutations([...list.slice(0, i), ...list.slice(i + 1)])) found.push([one, ...rest]);
  });
  return found;
}
const allSame = (a, b) => {
  for (let i = 0; i < Math.min(a.length, b.length); i++) if (!same(a[i], b[i])) return false;
  return true;
};
const listEq = (a, b) => a.length === b.length && a.every((one, i) => eq(one, b[i]));
function listHint(q, given, key) {
  if (given.k === "Ratio" && !unknowns(key).length) return "The answer is not a ratio: give the amounts, with commas between.";
  if (given.k !== "Listing") {
    if (key.parts.some((part) => same(given, part))) return `That is one part of the answer: give all ${key.parts.length}.`;
    return `The answer has ${key.parts.length} parts: give each of them, with commas between.`;
  }
  const list = given.parts, wanted = key.parts, ordered = q.ordered;
  if (list.length < wanted.length) return `The answer has ${wanted.length} parts, and there are ${list.length} here.`;
  if (list.length > wanted.length) return `The answer has only ${wanted.length} parts, and there are ${list.length} here.`;
  if (list.length <= 5 && permutations(list).some((some) => !listEq(some, list) && allSame(some, wanted))) {
    if (ordered && allSame(list.slice().reverse(), wanted)) {
      return "That is the wrong way round: look which end the order begins from.";
    }
    if (ordered) return outOfOrder(ordered === "ascending", list);
    return "The right numbers are there, in the wrong order: check which is which.";
  }
  if (ordered) {
    for (const part of list) {
      if (!wanted.some((want) => same(part, want))) return `${shownLine(part)} is not one of the numbers in the question.`;
    }
  }
  const names = unknowns(key);
  if (names.length) {
    for (let i = 0; i < names.length; i++) {
      if (list.some((own_) => own_.k === "Relation" && same(own_, wanted[i]))) return `${names[i]} is right: look again at the rest.`;
    }
    return lettersSwapped(list, wanted) ? "The right numbers are there, but not with the right letters." : "";
  }
  if (list.every((mine, i) => wrongUnitOnly(mine, wanted[i]))) {
    return TABLES.messages.WRONG_UNIT.replace("number is", "numbers are");
  }
  const right = list.map((mine, i) => i).filter((i) => same(list[i], wanted[i]));
  if (right.length && !ordered) {
    const places = ["first", "second", "third", "fourth", "fifth", "sixth"];
    if (right.length === 1 && right[0] < places.length) return `The ${places[right[0]]} part is right: look again at the rest.`;
    return `${right.length} of the ${list.length} parts are right: look again at the rest.`;
  }
  return "";
}
function lettersSwapped(list, wanted) {
  const mine = list.map((part) => (part.k === "Relation" ? part.rest[0][1] : part));
  const theirs = wanted.filter((part) => part.k === "Relation").map((part) => part.rest[0][1]);
  return mine.length === theirs.length && permutations(mine).some((some) => allSame(some, theirs));
}
function outOfOrder(up, list) {
  for (let i = 1; i < list.length; i++) {
    const a = exact(list[i - 1]), b = exact(list[i]);
    if (up ? b.less(a) : a.less(b)) {
      return `Look again at ${shownLine(list[i - 1])} and ${shownLine(list[i])}: which of the two is larger?`;
    }
  }
  return "";
}
function ratioHint(q, given, key) {
  if (given.k !== "Ratio") {
    const list = given.k === "Frac" ? [given.num, given.den] : given.k === "Listing" ? given.parts : [];
    if (list.length && same(Ratio(list), key)) return "The right numbers are there: write them as a ratio, with a colon between.";
    if (key.parts.length === 2 && [key.parts, key.parts.slice().reverse()].some(([n, part]) => same(given, n) && eq(part, Int(1)))) {
      return "The number is right: give the whole ratio, with the 1 and a colon.";
    }
    return "The answer is a ratio: give it with a colon between the numbers.";
  }
  if (given.parts.length !== key.parts.length) {
    return `The ratio has ${key.parts.length} parts, and there are ${given.parts.length} here.`;
  }
  if (key.parts.length <= 4 && permutations(given.parts).some((some) => !listEq(some, given.parts) && same(Ratio(some), key))) {
    return "The right numbers are there, in the wrong order: which comes first?";
  }
  if (key.parts.length === 3 && !hasLetters(given)) {
    for (let place = 0; place < 3; place++) {
      const rest = [0, 1, 2].filter((i) => i !== place);
      if (same(Ratio(rest.map((i) => given.parts[i])), Ratio(rest.map((i) => key.parts[i])))) {
        return `Only the ${["first", "second", "third"][place]} part is not right: look again at that one.`;
      }
    }
  }
  if (q.target && q.target.k === "Ratio" && !hasLetters(q.target)) {
    return `That is not the same ratio as ${shownLine(q.target)}: was every part multiplied or divided by the same number?`;
  }
  return "";
}
function relationHint(q, given, key) {
  if (q.sign) return signHint(q.numbers, given);
  const letter = key.first.k === "Sym" ? key.first : null;
  if (is(given, "Listing", "Either") && key.rest.length === 1) return tooMany(given, key);
  if (letter && given.k === "Relation") {
    if (saysTheSame(given, key)) return `That is true: go on until ${letter.name} stands alone on one side.`;
    const alone = eq(given.first, letter) || eq(given.rest[given.rest.length - 1][1], letter);
    if (symbols(given).has(letter.name) && !alone) {
      return `Go on until ${letter.name} stands alone, and check the steps before.`;
    }
    const other = given.first.k === "Sym" ? given.first : null;
    if (other && !eq(other, letter) && given.rest.length === 1 &&
        same(given.rest[0][1], key.rest[0][1]) && key.rest[0][0] === "=") {
      return `The question is about ${letter.name}, not ${other.name}.`;
    }
  }
  if (q.range) return inequalityHint(given, key);
  if (letter && key.rest.length === 1 && key.rest[0][0] === "=") {
    const right = rightSide(given, letter);
    return right ? singleHint(q, right, key.rest[0][1]) : "";
  }
  return "";
}
function signHint(numbers, given) {
  if (given.k === "Relation" && given.rest.length === 1) {
    if (![given.first, given.rest[0][1]].every((a) => numbers.some((b) => same(a, b)))) {
      return "Those are not the two numbers of the question.";
    }
    return "The sign is not right: which of the two is larger, or are they worth the same?";
  }
  return "Give the sign that goes between the two numbers: <, > or =.";
}
function inequalityHint(given, key) {
  if (given.k !== "Relation") {
    if (key.rest.length === 1 && same(given, key.rest[0][1])) {
      return "The number is right: give the letter and the inequality sign as well.";
    }
    return "The answer is an inequality: give a letter, a sign and a number.";
  }
  if (given.rest.length !== key.rest.length) {
    if (key.rest.length === 2) {
      const ends = [Relation(key.rest[0][1], key.rest.slice(1)), Relation(key.first, key.rest.slice(0, 1))];
      if (ends.some((end) => same(given, end))) return "That is right at one end: give the other end as well.";
    }
    return "";
  }
  const ways = [given, turned(given)];
  if (key.first.k !== "Sym") {
    return ways.some((way) => allSame(sidesOf(way), sidesOf(key))) ? "The numbers are right: look again at the signs." : "";
  }
  for (const way of ways) {
    if (!eq(way.first, key.first)) continue;
    const [op, side] = way.rest[0], [wanted, n] = key.rest[0];
    if (same(side, n)) return wrongSign(op, wanted, key.first);
    if (op === wanted && (side.k === "Neg") !== (n.k === "Neg") && same(Neg(Bracket(side)), n)) {
      return "The sign of the number is not right: is it more or less than 0?";
    }
    return "";
  }
  return "";
}
function wrongSign(op, wanted, letter) {
  if (op === "=") return "The number is right, but there is more than one answer: use an inequality sign.";
  const both = [op, wanted].sort().join("");
  if (both === "<≤" || both === ">≥") return `Nearly: can ${letter.name} be equal to that number or not?`;
  return `The number is right, but the sign is not: try a number that is less for ${letter.name} and one that is more.`;
}

// What is nearly right about one number or expression (nearly.py).
function wrongUnit(given, key) {
  const own_ = unitOf(given), wanted = unitOf(key);
  return Boolean(own_ && wanted) && own_[0] !== wanted[0];
}
function singleHint(q, given, key) {
  if (is(given, "Relation", "Listing", "Either", "Ratio", "Label")) return notOne(given, key);
  if (given.k === "Percent" && key.k !== "Percent" && same(given.of, key)) {
    return "The number is right, but it is no percentage: leave the per cent sign out.";
  }
  if (wrongUnitOnly(given, key)) return TABLES.messages.WRONG_UNIT;
  if (!bounded(given) || !bounded(key) || wrongUnit(given, key)) return "";
  const [a, b] = worths(given, key);
  if (a instanceof Fraction && b instanceof Fraction) return numbersHint(given, key, a, b) || closeHint(q, given, a, b);
  const n = rationalOr(quotient(a));
  if (n) {
    const about = approximately(quotient(b));
    if (about !== null) return closeHint(q, given, n, fromNumber(about));
  }
  const other = foreignLetter(q, given, key);
  if (other) return other;
  if (given.k === "Sum") {
    const [op, last] = given.rest[given.rest.length - 1];
    if (last.k === "Frac" && same(Frac(Sum(given.first, [...given.rest.slice(0, -1), [op, last.num]]), last.den), key)) {
      return "Put brackets round all that is divided, as in (a + b)/2.";
    }
  }
  return expressionsHint(given, quotient(a), quotient(b));
}
function foreignLetter(q, given, key) {
  const own_ = q.own_letters || q.letters;
  const strange = sortedText(Array.from(unknownLetters(given)).filter((name) => !own_.has(name)));
  if (strange.length !== 1 || !hasLetters(key)) return "";
  if (own_.size === 1) return `The question is about ${own_.values().next().value}, not ${strange[0]}.`;
  return `There is no ${strange[0]} in the question.`;
}
function wrongUnitOnly(given, key) {
  const amount = amountIn(given), wanted = amountIn(key);
  return Boolean(amount && wanted) && unitText(unitOf(given)) !== unitText(unitOf(key)) && same(amount, wanted);
}
function amountIn(node) {
  if (node.k === "Neg") {
    const amount = amountIn(node.of);
    return amount && Neg(amount);
  }
  return is(node, "Quantity", "Money") ? node.amount : null;
}
function notOne(given, key) {
  const list = given.k === "Relation" || given.k === "Label" ? [given] : given.parts;
  if (hasLetters(key) && list.some((part) => part.k === "Relation")) {
    return "The answer is an expression: there is no equation to solve here.";
  }
  if (is(given, "Listing", "Either")) return tooMany(given, key);
  if (given.k === "Relation" && unknownLetters(given).size && !hasLetters(key)) {
    return `Go on until ${sortedText(Array.from(unknownLetters(given)))[0]} stands alone, and check the steps before.`;
  }
  if (given.k === "Ratio" && given.parts.length === 2 && !hasLetters(given) && same(Frac(given.parts[0], given.parts[1]), key)) {
    const kind = is(key, "Frac", "Mixed") ? "fraction" : "number";
    return `The right numbers are there, but the answer is not a ratio: give a ${kind}.`;
  }
  return "";
}
function tooMany(given, key) {
  if (given.parts.every((part) => same(part, key))) return "The same answer stands there more than once: give it once.";
  if (given.parts.some((part) => same(part, key))) return TABLES.messages.TWO_ANSWERS;
  if (hasAny(key, "Product", "Power") && !hasLetters(key)) {
    return "The answer is a product: write × between the numbers, and check what they make.";
  }
  return "Only one answer is wanted: give one.";
}
function numbersHint(given, key, a, b) {
  if (a.is(b.negated()) && !b.zero) return "The size is right, but the sign is not: is it more or less than 0?";
  const [inner, other] = [given, key].map((node) => (node.k === "Neg" ? node.of : node));
  if (!a.zero && inner.k === "Frac" && other.k === "Frac" && a.times(b).is(F(1))) {
    return "The right numbers are there, but the fraction is upside down.";
  }
  if (!a.zero && !b.zero && !a.is(b) && powerOfTen(a.over(b))) {
    return "The digits are right, but the place value is not: look at the size again.";
  }
  return "";
}
function powerOfTen(ratio) {
  const large = ratio.n > ratio.d ? ratio.n : ratio.d, small = ratio.n > ratio.d ? ratio.d : ratio.n;
  return ratio.n > ZERO && small === ONE && large <= BigInt(1000000000) && /^10*$/.test(String(large));
}
const FRACTION_FORMS = ["fraction", "lowest-terms", "improper", "mixed", "simplest"];
function closeHint(q, given, a, b) {
  let inner = given.k === "Neg" ? given.of : given;
  const unit = unitOf(given) || unitOf(q.key);
  let size = unit ? unit[1] : F(1);
  if (is(inner, "Quantity", "Money")) inner = inner.amount;
  else if (inner.k === "Percent") { inner = inner.of; size = F(1, 100); }
  const mine = unitOf(given), wanted_ = unitOf(q.key);
  if (q.policy.unrounded !== null && (!mine || (wanted_ && mine[0] === wanted_[0] && mine[1].is(wanted_[1])))) {
    b = q.policy.unrounded.times(size);
  }
  if (inner.k === "Int" && given.k === "Percent") inner = Dec(String(inner.n), "");
  if (inner.k !== "Dec") return "";
  if (roundsTo(q.policy, given, q.key)) {
    return `That is close: keep every digit until the end, and round only then, to ${roundedTo(q.policy.rounding)}.`;
  }
  const last = size.times(F(ONE, bpow(TEN, (inner.places + inner.recurring).length)));
  if (!a.minus(b).abs().less(last)) return "";
  const rooted = hasAny(q.key, "Root");
  if (inner.recurring && !rooted) {
    const ends = bpow(TEN, 64) % b.d === ZERO;
    return ends ? "That is close, but it is not exact: the answer is a decimal that ends."
      : "That is close: put dots over the digits that go on for ever.";
  }
  if (q.policy.rounding) return `That is close: look at the next digit, and round to ${roundedTo(q.policy.rounding)}.`;
  if (rooted) return "That is close, but it is not exact: leave the root in your answer.";
  let wanted = "do not round it";
  if (FRACTION_FORMS.indexOf(q.form) >= 0 && is(q.key, "Frac", "Mixed", "Neg")) {
    wanted = `give it as a ${q.form === "mixed" ? "mixed number" : "fraction"}`;
  }
  return `That is close, but it is not exact: ${wanted}.`;
}
function expressionsHint(given, a, b) {
  if (a.is(b.negated())) return "Every sign is the wrong way round: check the signs.";
  const one = poly([[UNIT, F(1)]]);
  if (!polyEqual(a.bottom, one) || !polyEqual(b.bottom, one)) return "";
  const right = Array.from(b.top.values()).filter(([m, c]) => a.top.has(m.key) && a.top.get(m.key)[1].is(c));
  if (!b.letters().size) return right.length ? "Part of that is right: check the rest." : "";
  if (!a.letters().size) {
    const only = b.letters();
    if (only.size === 1 && only.has(PI)) return "Leave π in your answer, as a letter that is not worked out.";
    return "A letter is missing: the answer is an expression.";
  }
  if (b.top.size > 1 && right.length) {
    const said = right.map(([m, c]) => termText(m, c));
    if (said.every(Boolean)) {
      const listed = said.length === 1 ? said[0] : `${said.slice(0, -1).join(", ")} and ${said[said.length - 1]}`;
      const when = walk(given).some((part) => part.k === "Bracket") ? "Multiplied out, " : "";
      return `${when}${listed} ${said.length === 1 ? "is" : "are"} right: look again at the rest.`;
    }
  }
  const sizes = (side) => poly(Array.from(side.values()).map(([m, c]) => [m, c.abs()]));
  if (Array.from(b.top.values()).some(([m, c]) => coefficient(a.top, m.key).abs().is(c.abs())) &&
      polyEqual(sizes(a.top), sizes(b.top))) {
    return "The terms are right, but not all their signs: check the signs.";
  }
  return "";
}
function termText(m, c) {
  if (m.root !== 1 || m.powers.some(([name]) => name.length > 1)) return "";
  const factors = m.powers.map(([name, n]) => (n === 1 ? Sym(name) : Power(Sym(name), Int(n))));
  const size = numberNode(c.abs());
  let node;
  if (!factors.length) node = size;
  else if (c.abs().is(F(1))) node = factors.length === 1 ? factors[0] : Juxt(factors);
  else node = Juxt([size, ...factors]);
  return shownLine(c.n < ZERO ? Neg(node) : node);
}

// What trying an answer out shows (tried.py).
function rightSide(given, letter) {
  if (given.k === "Relation" && given.rest.length === 1 && given.rest[0][0] === "=") {
    const right = given.rest[0][1];
    return eq(given.first, letter) ? right : eq(right, letter) ? given.first : null;
  }
  return is(given, "Relation", "Listing", "Either") ? null : given;
}
function tried(q, given) {
  if (q.equation && q.equation.rest.length === 1) return putIn(q.equation, given);
  if (q.terms) return termHint(q.terms, given);
  return q.common ? commonHint(q.common, given) : "";
}
function termHint(terms, given) {
  const letters = symbols(given);
  if (letters.size !== 1 || !letters.has("n") || !bounded(given)) return "";
  for (let i = 0; i < terms.length; i++) {
    const place = i + 1, got = rationalOr(algebra(given, { n: number(F(place)) }));
    if (got && !got.is(exact(terms[i]))) {
      if (place > 5) return "";
      return `Try it: with n = ${place} it comes to ${shownLine(numberNode(got))}, and the ${["first", "second", "third", "fourth", "fifth"][i]} term is ${shownLine(terms[i])}.`;
    }
  }
  return "";
}
function putIn(equation, given) {
  const name = symbols(equation).values().next().value;
  const value = rightSide(given, Sym(name));
  if (!value || hasLetters(value)) return "";
  const worth = exact(value), known = { [name]: number(worth) };
  const left = rationalOr(algebra(equation.first, known)), right = rationalOr(algebra(equation.rest[0][1], known));
  if (!left || !right || left.is(right)) return "";
  const shown = [worth, left, right].map((one) => shownLine(numberNode(one)));
  if (shown.some((text) => text.length > 12)) return "";
  return `Try it: with ${name} = ${shown[0]} the left side is ${shown[1]} and the right side ${shown[2]}.`;
}
function approximately(worth) {
  if (worth.letters().size) return null;
  const sum = (side) => Array.from(side.values()).reduce((total, [m, c]) => total + toNumber(c) * Math.sqrt(m.root), 0);
  const bottom = sum(worth.bottom);
  return bottom ? sum(worth.top) / bottom : null;
}
function rationalOr(worth) {
  if (!onlyUnit(worth.top) || !onlyUnit(worth.bottom)) return null;
  return coefficient(worth.top, UNIT_KEY).over(worth.bottom.get(UNIT_KEY)[1]);
}
function commonHint(common, given) {
  const worth = exact(given);
  if (!worth.whole || worth.n <= ZERO) return "The answer is a positive whole number.";
  for (const node of common.numbers) {
    const n = exact(node), said = shownLine(given), other = shownLine(node);
    if (common.detail === "hcf" && !n.modulo(worth).zero) return `${said} is not a factor of ${other}: try one that divides them all.`;
    if (common.detail === "lcm" && !worth.modulo(n).zero) return `${said} is not a multiple of ${other}: look on in its times table.`;
  }
  return common.detail === "hcf" ? "That is a common factor, but there is a larger one."
    : "That is a common multiple, but there is a smaller one.";
}
function sizeHint(given, key) {
  if (letterEquation(key)) {
    const value = rightSide(given, key.first);
    return value ? sizeHint(value, key.rest[0][1]) : "";
  }
  if (is(key, "Relation", "Listing", "Either", "Ratio", "Label")) return "";
  if (is(given, "Relation", "Listing", "Either", "Ratio", "Label")) return "";
  if (hasLetters(given) && !hasLetters(key)) return "The answer is a number, without letters.";
  if (!bounded(given) || !bounded(key)) return "";
  const [a, b] = worths(given, key);
  if (!(a instanceof Fraction) || !(b instanceof Fraction) || a.is(b)) return "";
  if (isTime(key)) return b.less(a) ? "That is too late." : "That is too early.";
  return `That is too ${b.less(a) ? "large" : "small"}: check each step.`;
}
