// The verdict on a typed answer (itembank/marking/mark).
const RIGHT = "right", WRONG_FORM = "right value, wrong form", KNOWN = "known wrong method";
const WRONG = "wrong", UNREADABLE = "unreadable", UNDECIDED = "undecided";
const verdict = (kind, says, slip) => ({ verdict: kind, says: says || "", slip: slip === undefined ? -1 : slip });
const MESSAGES = TABLES.messages;

// A question from the page's data, its trees and numbers made.
function question(data) {
  const tree = (one) => (one ? restored(one) : null), q = Object.assign({}, data);
  q.key = restored(data.key);
  q.letters = new Set(data.letters);
  q.shown = data.shown.map(restored);
  q.slips = data.slips.map(([wrong, says, id]) => ({ wrong: restored(wrong), says, id }));
  q.target = tree(data.target);
  q.asked_target = tree(data.asked_target);
  q.equation = tree(data.equation);
  q.several = is(q.key, "Either", "Listing");
  q.numbers = data.numbers.map(restored);
  q.terms = data.terms && data.terms.map(restored);
  q.common = data.common && { numbers: data.common.numbers.map(restored), detail: data.common.detail };
  q.printed = {};
  for (const [name, worth] of Object.entries(data.printed)) q.printed[name] = Fraction.of(worth);
  q.policy = Object.assign({}, data.policy, {
    within: Fraction.of(data.policy.within),
    unrounded: data.policy.unrounded === null ? null : Fraction.of(data.policy.unrounded),
  });
  q.equivalent = tree(data.equivalent);
  q.give = data.give && {
    letters: data.give.letters,
    relations: data.give.relations.map(restored),
    conditions: data.give.conditions.map(([name, of]) => [name, of.map(restored)]),
  };
  return q;
}
// Never throws. What this page cannot decide as the marker would is left to the teacher, and so is
// a question that it cannot set up: then the other questions of the page go on.
function mark(q, answer) {
  try {
    return marked(typeof q === "function" ? q() : q, answer);
  } catch (error) {
    if (typeof console !== "undefined" && !(error instanceof Undecided)) console.error(error);
    return verdict(UNDECIDED, "", -1);
  }
}
const NOT_ARITHMETIC = (error) => error instanceof NotationError;
function marked(q, answer) {
  if (codePoints(answer) > READ.LONGEST) {
    return verdict(UNREADABLE, `The answer is longer than ${READ.LONGEST} characters: type the answer alone.`);
  }
  if (q.drawn) return verdict(UNREADABLE, MESSAGES.DRAWN);
  const found = markedAny(q, answer);
  if (found.verdict === RIGHT || found.verdict === UNREADABLE) return found;
  const told_ = goesOn(q, answer, found.verdict === WRONG_FORM);
  return told_ ? verdict(UNREADABLE, told_) : found;
}
// Decimals with dots at their end that do not show which digits recur (typing/goes_on).
function goesOn(q, answer, formAlone) {
  const found = search("goes_on.goes_on", answer);
  if (!found) return "";
  const { places } = found.groups, slip = strip(found.groups.dots) === "..", rounds = Boolean(q.policy.rounding);
  if (!slip && (formAlone || rounds || showsBlock(places))) return "";
  const ends = formAlone || rounds;
  const cut = answer.slice(0, found.index) + found.groups.whole + (ends ? "" : "5") + answer.slice(found.index + found[0].length);
  let typed;
  try { typed = comesTo(readAnswer(cut, q)); } catch (error) {
    if (error instanceof Unreadable) return "";
    throw error;
  }
  const size = BigInt(q.key.k === "Percent" ? 100 : 1);
  const near = ends ? F(0) : F(BigInt(5), size * bpow(TEN, places.length + 1));
  return same(typed, q.key, near) ? `${found[0]} ${MESSAGES.SEVERAL_WAYS}` : "";
}
function showsBlock(places) {
  for (let size = 1; size <= Math.floor(places.length / 2); size++) {
    if (places.slice(-size) === places.slice(-2 * size, places.length - size)) return true;
  }
  return false;
}
function markedAny(q, answer) {
  answer = withoutSortedNumbers(q, withoutPartLabel(strip(answer, " \t\r\n"), q));
  const named_ = lettersNamed(answer).filter((letter) => !q.letters.has(letter));
  if (named_.length) q = Object.assign({}, q, { letters: new Set([...q.letters, ...named_]), own_letters: q.own_letters || q.letters });
  const nothing = q.equals_nothing && fullmatch("mark.equals_nothing", answer);
  if (nothing) {
    const alone = markedAny(q, answer.slice(0, answer.length - nothing.groups.end.length));
    if (alone.verdict === RIGHT) return verdict(WRONG_FORM, MESSAGES.NOTHING_TO_SOLVE);
    if (alone.verdict === KNOWN) return alone;
  }
  const [whole, typed] = markedWhole(q, answer);
  if (whole.verdict === RIGHT || whole.verdict === KNOWN || q.reads || !showsWorking(answer)) return whole;
  if (typed && q.key.k === "Listing" && givesEach(q, typed)) return whole;
  const letter = typed && embedded(q, typed);
  if (letter) return verdict(WRONG_FORM, `Right so far: now write what ${letter} is.`);
  try { return markedWorking(q, answer, typed) || whole; } catch (error) {
    if (NOT_ARITHMETIC(error)) return whole;
    throw error;
  }
}
function markedWhole(q, answer) {
  let typed;
  try { typed = readAnswer(answer.split("\n").join(", "), q); } catch (error) {
    if (error instanceof Unreadable) return [verdict(UNREADABLE, error.message), null];
    throw error;
  }
  return [safely(q, typed, answer), typed];
}
function safely(q, typed, answer) {
  let found;
  try { found = verdictOn(q, typed); } catch (error) {
    if (NOT_ARITHMETIC(error)) return verdict(WRONG, MESSAGES.NO_VALUE);
    throw error;
  }
  const fault = found.verdict === RIGHT && countedWrongly(q, answer);
  return fault ? verdict(WRONG_FORM, fault) : found;
}
function verdictOn(q, typed) {
  const how = q.policy;
  let [given, unitSaid] = withoutUnit(q, tidy(typed));
  if (q.give || q.equivalent) {
    const marked = oneOfMany(q, typed, given);
    return marked.verdict === RIGHT && unitSaid ? verdict(WRONG, unitSaid) : marked;
  }
  if (q.repeated && given.k === "Listing") given = once(given, q.key);
  const right = same(given, q.key, how.within, how.ordered) && !otherLetter(q, given);
  if (right && unitSaid) return verdict(unitSaid === MESSAGES.STANDS_BESIDE ? WRONG_FORM : WRONG, unitSaid);
  if (right) {
    const fault = formOf(q, typed, given);
    if (!fault) return verdict(RIGHT);
    return knownSlip(q, given, true, true) || verdict(WRONG_FORM, askedFor(q, fault));
  }
  const unit = inAnotherUnit(q, tidy(typed));
  if (unit) return verdict(WRONG_FORM, `Right value: give it in ${unit}.`);
  const known = unitSaid ? null : knownSlip(q, given, false, true);
  if (known) return known;
  if (!unitSaid && !wrongUnit(given, q.key) && notYetRounded(how, given, q.key)) {
    return verdict(WRONG_FORM, askedFor(q, NOT_ROUNDED));
  }
  if (q.key.k === "MixedUnits" && is(given, "Int", "Dec", "Mixed")) {
    const last = q.key.parts[q.key.parts.length - 1].unit;
    if (same(Quantity(given, last), q.key)) {
      return verdict(WRONG_FORM, `The number is right in ${unitKnown(last)[3]}: give the unit as well.`);
    }
  }
  if (q.key.k === "Percent" && !unitSaid && is(given, "Int", "Dec", "Mixed")) {
    if (same(Percent(given), q.key)) return verdict(WRONG_FORM, MESSAGES.PER_CENT);
    given = Percent(given);
    const slip = knownSlip(q, given, false, true);
    if (slip) return slip;
  }
  const box = filled(q, given);
  if (box) {
    if (same(box, q.key)) return verdict(WRONG_FORM, "Right so far: give only what goes in the box.");
    const slip = knownSlip(q, box, false, true);
    if (slip) return slip;
    given = box;
  }
  if (is(q.key, "Product", "Power") && given.k === "Listing") {
    const [head, ...rest] = given.parts;
    if (same(Product(head, rest.map((part) => ["×", part])), q.key)) {
      return verdict(WRONG_FORM, "Right value: now write the numbers as a product, with × between.");
    }
  }
  return verdict(WRONG, hint(q, given));
}
function numbersGiven(q, answer) {
  if (q.give) return givenValues(q.give, answer);
  return q.equivalent ? [answer] : null;
}
function givesEach(q, typed) {
  try {
    const numbers = numbersGiven(q, typed);
    return numbers !== null && numbers.length === children(q.key).length;
  } catch (error) {
    if (NOT_ARITHMETIC(error)) return false;
    throw error;
  }
}
function oneOfMany(q, typed, given) {
  let fault;
  try { fault = q.give ? unmet(q.give, given) : notEquivalent(q.equivalent, given); } catch (error) {
    if (error instanceof NotationError) return verdict(UNREADABLE, MESSAGES.PLAIN_NUMBERS);
    throw error;
  }
  const numbers = numbersGiven(q, given);
  if (numbers.length === (q.key.k === "Listing" ? q.key.parts.length : 1)) {
    typed = given = numbers.length > 1 ? Listing(numbers) : numbers[0];
  }
  if (fault) {
    return knownSlip(q, given, false, false) || verdict(WRONG, `${fault.slice(0, 1).toUpperCase()}${fault.slice(1)}.`);
  }
  const left = formOf(q, typed, given);
  return left ? verdict(WRONG_FORM, askedFor(q, left)) : verdict(RIGHT);
}
function once(given, key) {
  return key.k === "Relation" && given.parts.every((part) => same(part, key)) ? given.parts[0] : given;
}
function otherLetter(q, given) {
  if (q.target && q.target.k === "Sym" && letterEquation(given)) {
    const name = given.first.name;
    return name !== q.target.name && q.shown.some((run_) => symbols(run_).has(name));
  }
  return false;
}
function knownSlip(q, given, exactly, ordered) {
  for (let i = 0; i < q.slips.length; i++) {
    const { wrong, says } = q.slips[i];
    if (exactly ? alike(completed(given, wrong), wrong) : same(given, wrong, F(0), ordered)) {
      return verdict(KNOWN, says, i);
    }
  }
  return null;
}
function markedWorking(q, answer, typed) {
  if (q.key.k === "Label") return null;
  const ended = onTheLastLine(q, answer);
  if (ended) return ended;
  const lines = linesOf(answer);
  if (!lines.length) return null;
  const decimal = answer.indexOf(",") >= 0 && sub("with_working.decimals", "", answer).indexOf(",") < 0;
  const alone = (lines.length === 1 || decimal) && linesOf(answer.split(",").join(".")).length === 1;
  if (alone && typed && plainAnswer(q, typed)) return null;
  const read = [];
  for (const text of lines) {
    try { read.push(readAnswer(text, q)); } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      if (!matchAt("working.done_to_both", text, 0)) return typed ? null : verdict(UNREADABLE, error.message);
      read.push(null);
    }
  }
  if (q.key.k === "Relation" && q.key.first.k === "Sym") {
    const letter = q.key.first;
    if (read.some((node) => { const end = node && comesTo(node); return end && end.k === "Relation" && eq(end.first, letter); })) {
      dropChecks(q, read);
    }
  }
  if (!read.length || !read[read.length - 1]) return null;
  const shown = read.filter(Boolean), most = is(q.key, "Either", "Listing") ? q.key.parts.length : 1;
  const [solved, others] = solvedIn(q, shown);
  if (solved) {
    const found = safely(q, solved, answer);
    if (found.verdict === RIGHT) {
      return flat(shown[shown.length - 1]) ? verdict(WRONG, MESSAGES.TWO_ANSWERS) : withWorking(q, others, [solved], found);
    }
  }
  let best = null;
  for (let n = Math.min(most, shown.length); n > 0; n--) {
    for (const given of answersOf(q, shown.slice(-n))) {
      const found = safely(q, given, answer);
      if (found.verdict === RIGHT) return withWorking(q, shown.slice(0, -n), shown.slice(-n), found);
      if (!best || (best[0].verdict === WRONG && found.verdict !== WRONG)) best = [found, n];
    }
  }
  return best && withWorking(q, shown.slice(0, -best[1]), shown.slice(-best[1]), best[0]);
}
function onTheLastLine(q, answer) {
  const rows = linesOf(answer, false);
  if (!is(q.key, "Either", "Listing") || rows.length < 2) return null;
  let last, before;
  try {
    last = readAnswer(rows[rows.length - 1], q);
    before = linesOf(rows.slice(0, -1).join("\n"))
      .filter((text) => !matchAt("working.done_to_both", text, 0)).map((text) => readAnswer(text, q));
  } catch (error) {
    if (error instanceof Unreadable) return null;
    throw error;
  }
  const found = safely(q, last, answer);
  return found.verdict === RIGHT ? withWorking(q, before, [last], found) : null;
}
function solvedIn(q, shown) {
  const names = unknowns(q.key), found = new Map(), others = [];
  for (const node of shown) {
    const given = comesTo(node);
    if (letterEquation(given) && names.indexOf(given.first.name) >= 0 && !hasLetters(given.rest[0][1])) {
      const name = given.first.name;
      if (found.has(name)) others.push(found.get(name));
      found.set(name, given);
    } else others.push(node);
  }
  if (!names.length || found.size !== names.length) return [null, shown];
  return [Listing(names.map((name) => found.get(name))), others];
}
function plainAnswer(q, typed) {
  if (typed.k === "Relation") {
    return typed.rest.length === 1 &&
      (q.sign || typed.first.k === "Sym" || typed.rest[0][1].k === "Sym" || typed.rest[0][0] !== "=");
  }
  return is(typed, "Listing", "Either") ? typed.parts.every((part) => plainAnswer(q, part)) : true;
}
function dropChecks(q, read) {
  while (read.length > 1) {
    const last = read[read.length - 1];
    if (!last || last.k !== "Relation" || hasLetters(last) || !links(q, last).every((link) => link.holds)) return;
    read.pop();
  }
}
function answersOf(q, lines) {
  if (lines.length > 1) {
    const ends = lines.map((node) => results(q, node)[0]);
    return ends.every(Boolean) ? [Listing(ends)] : [];
  }
  const only = lines[0];
  if (is(only, "Listing", "Either")) {
    const ends = only.parts.map((part) => results(q, part)[0]);
    return ends.every(Boolean) ? [make(only.k, ends)] : [];
  }
  const found = [...(q.sign ? [only] : []), ...results(q, only)], box = filled(q, only);
  return box ? [...found, box] : found;
}
function usedLater(node, later) {
  const lines = later.filter((line) => line.k === "Relation");
  return flat(node) && lines.some((line) => sidesOf(line).slice(0, -1)
    .some((side) => !flat(side) && walk(side).some((part) => eq(part, node))));
}
function twoNumbers(q, link) {
  const left = tidy(link.left);
  return link.flat && !(notYetRounded(q.policy, left, link.right) || roundsTo(q.policy, left, link.right));
}
function withWorking(q, before, last, found) {
  let every = [...before, ...last].reduce((all, node) => all.concat(links(q, node)), []);
  const end_ = every[every.length - 1];
  if (q.rounds && end_ && (end_.holds !== false || !twoNumbers(q, end_))) every = every.slice(0, -1);
  const untrue = every.find((link) => link.holds === false && !link.answers);
  const ends = answersOf(q, last), target = q.asked_target;
  const rivals = before.filter((node, i) => !(target && eq(node, target)) &&
    !usedLater(node, [...before.slice(i + 1), ...last]) && !(q.rounds && ends.length && notYetRounded(q.policy, tidy(node), ends[0])));
  if (ends.length && rivals.some((node) => rival(node, ends[0]) || anotherResult(q, tidy(node)))) {
    return verdict(WRONG, MESSAGES.TWO_ANSWERS);
  }
  if (found.verdict === RIGHT && untrue) {
    if (untrue.flat) return verdict(WRONG, `${untrue.text()} is not true: the two sides are not worth the same.`);
    return verdict(RIGHT, `The answer is right; ${untrue.text()} on the way is not true.`);
  }
  if (found.verdict === WRONG && untrue) return verdict(WRONG, `Look again at ${untrue.text()}: it is not true.`);
  return found;
}
