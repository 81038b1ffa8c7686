// What is missing from an answer of the right value (itembank/marking/form).
const UNIT_MISSING = "the unit is missing", NOT_ROUNDED = "it is not rounded";
const NOT_WORKED_OUT = "it is not worked out", NOT_DIVIDED = "the division is not worked out";
const SHORT_MONEY = "pounds and pence are not given to two places";
const unitKnown = (unit) => UNITS[unit] || CURRENCY[unit];
const sizeKnown = (unit) => SIZES[unit] || COINS[unit];

function formOf(q, typed, given) {
  const how = q.policy;
  if (given.k === "Either" && q.key.k !== "Either") { // one answer in two ways: each is held to the form
    const read = typed.k === "Either" && typed.parts.length === given.parts.length ? typed.parts : given.parts;
    return given.parts.map((part, i) => formOf(q, read[i], part)).find(Boolean) || "";
  }
  const fault = unitFault(how, given, q.key) || roundingFault(how, given);
  if (fault || !how.forms.length) return fault;
  const shaped = completed(given, q.key);
  if (!alike(shaped, q.key)) {
    const left = unfinished(how, shaped, q.key);
    if (left) return left;
  }
  const faults = [];
  for (const form of how.forms) for (const candidate of [shaped, typed]) faults.push(faultIn(form, how, candidate));
  if (how.base && shaped.k === "Power" && q.key.k === "Power" && !eq(shaped.base, q.key.base)) {
    return "its base is not the one that is asked for";
  }
  if (faults.indexOf("") >= 0) return "";
  if (how.places && shortMoney(shaped)) return SHORT_MONEY;
  if (alike(shaped, q.key)) return "";
  if (faults[0] === UNIT_MISSING && hasAny(given, "Quantity")) return NOT_WORKED_OUT;
  return faults[0];
}
const holdsFraction = (key) => hasAny(key, "Frac", "Mixed");
function unitText(unit) { return unit ? `${unit[0]} ${unit[1]}` : ""; }
function unfinished(how, given, key) {
  if (given.k === "Ratio" && unitOf(given.parts[0])) {
    return new Set(given.parts.map((part) => unitText(unitOf(part)))).size > 1
      ? "the parts of the ratio have different units" : "the parts of the ratio have a unit";
  }
  const unlike = otherForm(given, key);
  if (unlike) return unlike;
  const all = leaves(given);
  for (const leaf of all) {
    const fault = undivided(leaf, holdsFraction(key)) || unjoined(leaf, key);
    if (fault) return fault;
    if (how.places && !holdsFraction(key) &&
        walk(leaf).some((p) => p.k === "Money" && is(p.amount, "Frac", "Mixed"))) {
      return "it is not given in pounds and pence";
    }
    if (leaf.k === "Frac" && is(leaf.num, "Int", "Dec") && is(leaf.den, "Int", "Dec") && wholeParts(leaf) === NOT_WHOLE) {
      return NOT_WHOLE;
    }
  }
  if (!walk(key).some(isOperation) && all.some((leaf) => !hasLetters(leaf) && valueFault(leaf) === NOT_WORKED_OUT)) {
    return NOT_WORKED_OUT;
  }
  return how.powers && hasAny(key, "Power") ? powersLeft(given) : "";
}
// How the result beside a line's name is not factorised, or expanded, as the key's is.
function otherForm(given, key) {
  const named = (node) => node.k === "Listing" && node.parts.length === 2 && node.parts[0].k === "Label";
  if (!named(given) || !named(key)) return "";
  const wanted = key.parts[1];
  if (!hasLetters(wanted) || is(wanted, "Relation", "Ratio")) return "";
  const fits = ["factorised", "expanded"].filter((form) => !formFault(form, wanted));
  return fits.length === 1 ? formFault(fits[0], given.parts[1]) : "";
}
function undivided(leaf, asFraction) {
  switch (leaf.k) {
    case "Neg": case "Bracket": case "Percent": return undivided(leaf.of, asFraction);
    case "Quantity": case "Money": return undivided(leaf.amount, asFraction);
    case "Juxt": return first(leaf.factors, (factor) => undivided(factor, false));
    case "Frac":
      if (leaf.num.k === "Int" && leaf.den.k === "Int" && leaf.den.n && leaf.num.n % leaf.den.n === ZERO) {
        return leaf.den.n === ONE ? ONE_BELOW : NOT_DIVIDED;
      }
      return "";
    case "Product":
      if (!hasLetters(leaf) && opsOf(leaf).every((op) => op === "÷")) {
        const simple = sidesOf(leaf).every((part) => is(part, "Int", "Dec"));
        if (simple && asFraction && leaf.rest.length === 1 && exact(leaf).d > ONE) {
          return "a division is not written as a fraction";
        }
        return simple ? NOT_DIVIDED : "";
      }
  }
  return "";
}
function unjoined(leaf, key) {
  if (leaf.k === "Sum" && leaf.first.k === "Int" && leaf.rest.length === 1 && leaf.rest[0][0] === "+") {
    const part = leaf.rest[0][1];
    if (part.k === "Frac" && part.num.k === "Int" && part.den.k === "Int" && part.num.n < part.den.n) {
      return hasAny(key, "Mixed") ? "the whole number and the fraction are still added" : "";
    }
  }
  return "";
}
function leaves(node) {
  const all = (list) => list.reduce((found, part) => found.concat(leaves(part)), []);
  switch (node.k) {
    case "Relation": return all(sidesOf(node));
    case "Listing": case "Either": case "Ratio": return all(node.parts);
    case "Label": return [];
  }
  return [node];
}
function powersLeft(given) {
  if (given.k === "Relation" && given.rest.length === 1) given = given.rest[0][1];
  for (const part of walk(given)) {
    let factors;
    if (part.k === "Product" && opsOf(part).every((op) => op === "×")) factors = sidesOf(part);
    else if (part.k === "Juxt") factors = part.factors;
    else continue;
    const bases = factors.map((factor) => (factor.k === "Power" ? factor.base : factor).id);
    if (new Set(bases).size < bases.length) return "a factor is repeated";
  }
  return hasAny(given, "Power") ? "" : "it is not a power";
}
function faultIn(form, how, node) {
  const fault = formFault(form, node);
  return fault && !how.lowest_terms && node.k !== "Ratio" ? partsFault(node, how) : fault;
}
function partsFault(node, how) {
  switch (node.k) {
    case "Relation": return first(sidesOf(node), (part) => partsFault(part, how));
    case "Listing": case "Either": return first(node.parts, (part) => partsFault(part, how));
    case "Money": if (how.places && shortMoney(node)) return SHORT_MONEY; break;
    case "Sym": case "Label": return "";
    case "Ratio": return formFault("ratio", node);
  }
  return hasLetters(node) ? expressionFault(node) : valueFault(node);
}
function shortMoney(node) {
  if (node.k === "Listing") return node.parts.some(shortMoney);
  return node.k === "Money" && node.sign !== "p" && node.amount.k === "Dec" && node.amount.places.length !== 2;
}
// An answer with what may be left out put in: the unit, the letter, the key's order.
function completed(given, key) {
  if (key.k === "Relation") {
    if (key.first.k === "Sym" && key.rest.length === 1) {
      return completedRelation(given, key.first, key.rest[0][0] === "=", key.rest[0][1]);
    }
    return given.k === "Relation" && given.rest[0][0] !== key.rest[0][0] ? turned(given) : given;
  }
  if (key.k === "Listing") {
    if (given.k === "Relation") given = Listing(sidesOf(given));
    if (given.k === "Listing" && given.parts.length === key.parts.length) {
      const order = keysOrder(given.parts, key.parts);
      return Listing(given.parts.map((left, i) => completed(left, order[i])));
    }
    return given;
  }
  if (key.k === "Either") {
    const single = key.parts[0].k !== "Listing";
    const answers = given.k === "Either" || (single && given.k === "Listing") ? given.parts : [given];
    const flat = answers.map((answer) => completed(answer, key.parts[0]));
    return flat.length > 1 ? Either(flat) : flat[0];
  }
  // The minus is the answer's own.
  if (key.k === "Neg" && is(key.of, "Quantity", "Money")) return completed(given, key.of);
  if (is(key, "Quantity", "Money") && !unitOf(given) && given.k !== "Relation") {
    const putUnit = (of) => (key.k === "Quantity" ? Quantity(of, key.unit) : Money(of, key.sign));
    return given.k === "Neg" ? Neg(putUnit(given.of)) : putUnit(given);
  }
  if (given.k === "Relation" && given.rest.length === 1) {
    return completed(given.first.k === "Sym" ? given.rest[0][1] : given.first, key);
  }
  return given;
}
function completedRelation(given, letter, equation, right) {
  if (given.k === "Relation") {
    if (!eq(given.first, letter) && given.rest.length === 1 && eq(given.rest[0][1], letter)) given = turned(given);
    const [op, side] = given.rest[0];
    return Relation(given.first, [[op, completed(side, right)], ...given.rest.slice(1)]);
  }
  return equation ? Relation(letter, [["=", completed(given, right)]]) : given;
}
function keysOrder(given, list) {
  const byLetter = new Map();
  for (const part of list) if (part.k === "Relation") byLetter.set(part.first.id, part);
  if (byLetter.size < list.length) return list;
  const names = given.filter((part) => part.k === "Relation").map((part) => part.first.id);
  if (names.length === list.length && new Set(names).size === names.length && names.every((name) => byLetter.has(name))) {
    return names.map((name) => byLetter.get(name));
  }
  return sortedText(Array.from(byLetter.keys())).map((name) => byLetter.get(name));
}
function unitFault(how, given, key) {
  if (key.k === "Listing" && given.k === "Listing" && given.parts.length === key.parts.length) {
    for (let i = 0; i < key.parts.length; i++) {
      const fault = unitFault(how, given.parts[i], key.parts[i]);
      if (fault) return fault;
    }
    return "";
  }
  if (key.k === "Relation" && key.rest.length === 1 && given.k === "Relation" && given.rest.length === 1) {
    return unitFault(how, given.rest[0][1], key.rest[0][1]);
  }
  const wanted = unitOf(key), own = unitOf(given);
  if (!wanted) return "";
  if (!own) return how.unit === "needed" ? UNIT_MISSING : "";
  if (how.named_unit && key.k === "MixedUnits") {
    const names = key.parts.map((part) => part.unit);
    if (given.k === "MixedUnits" && given.parts.map((part) => part.unit).join() === names.join()) return "";
    return `it is not in ${names.map((unit) => UNITS[unit][3]).join(" and ")}`;
  }
  if (how.named_unit && unitText(own) !== unitText(wanted)) return `it is not in ${unitKnown(how.named_unit)[3]}`;
  return "";
}
function roundingFault(how, given) {
  if (!how.rounding || !how.places) return "";
  const [detail, amount] = how.rounding;
  given = unsigned(numberIn(given));
  if (given.k === "Product") given = unsigned(numberIn(given.first));
  if (!is(given, "Int", "Dec")) return "";
  const places = given.k === "Dec" ? given.places : "";
  if (detail === "places" && places.length !== amount) return `it is not given to ${counted(amount, "decimal place")}`;
  if (detail === "figures" && given.k === "Dec") {
    const digits = (given.whole + places).replace(/^0+/, "");
    if (digits.length !== amount) return `it is not given to ${counted(amount, "significant figure")}`;
  }
  return "";
}
function notYetRounded(how, given, key) {
  if (!how.rounding) return false;
  if (!how.unrounded) return roundsTo(how, given, key);
  let node = numberIn(given);
  let worth = exactOr(node, null);
  if (worth && worth.is(how.unrounded)) return true;
  node = asWritten(node);
  worth = exactOr(node, null);
  if (!worth) return false;
  const places = placesOf(node);
  const last = F(ONE, bpow(TEN, Math.min(places, TABLES.places_known - 1)));
  const near = atMost(worth.minus(how.unrounded).abs(), last.over(F(2)));
  const gap = how.unrounded.abs().minus(worth.abs()); // cut off, as a calculator's display is copied
  const cut = worth.times(how.unrounded).n > ZERO && gap.n >= ZERO && gap.less(last);
  return (near || cut) && places > placesOf(numberIn(key));
}
// The dots of 4.1547… say here that digits were left out, not that the last one recurs.
function asWritten(node) {
  if (node.k === "Neg") return Neg(asWritten(node.of));
  return node.k === "Dec" ? Dec(node.whole, node.places + node.recurring) : node;
}
function roundsTo(how, given, key) {
  if (!how.rounding) return false;
  const [detail, amount] = how.rounding, wantedNode = numberIn(key);
  const worth = exactOr(numberIn(given), null), wanted = worth && exactOr(wantedNode, null);
  if (!worth || !wanted) return false;
  let half;
  if (detail === "places") half = F(ONE, TWO * bpow(TEN, amount));
  else if (detail === "nearest") half = F(amount, 2);
  else half = placeOf(wanted, amount).over(F(2));
  const low = wanted.minus(half), high = wanted.plus(half);
  return wanted.n >= ZERO ? atMost(low, worth) && worth.less(high) : low.less(worth) && atMost(worth, high);
}
function placesOf(node) {
  node = node.k === "Neg" ? node.of : node;
  return node.k === "Dec" && !node.recurring ? node.places.length : 0;
}
function placeOf(wanted, figures) {
  const size = wanted.abs(), ten = F(10);
  let place = F(1);
  if (size.zero) return place;
  for (let i = 0; i < 400; i++) {
    if (atMost(ten.times(place), size)) place = place.times(ten);
    else if (size.less(place)) place = place.over(ten);
    else break;
  }
  return place.over(F(bpow(TEN, figures - 1)));
}
function numberIn(node) {
  switch (node.k) {
    case "Neg": return is(node.of, "Money", "Quantity", "Percent") ? numberIn(node.of) : node;
    case "Percent": return numberIn(node.of);
    case "Money": case "Quantity": return node.amount;
    case "Relation": if (node.rest.length === 1 && node.rest[0][0] === "=") return numberIn(node.rest[0][1]);
  }
  return node;
}
function roundedTo([detail, amount]) {
  if (detail === "places") return counted(amount, "decimal place");
  if (detail === "figures") return counted(amount, "significant figure");
  return `the nearest ${amount === 1 ? "whole number" : amount}`;
}
function askedFor(q, fault) {
  const how = q.policy, byForm = TABLES.messages.TOLD_BY_FORM.indexOf(fault) >= 0;
  if (how.rounding && (byForm || ["place", "figure", "round"].some((word) => fault.indexOf(word) >= 0))) {
    const detail = how.rounding[0], what = roundedTo(how.rounding);
    if (fault === NOT_ROUNDED) return how.unrounded ? `Right so far: now round it to ${what}.` : `That rounds to the answer: give it to ${what}.`;
    if (byForm && detail !== "nearest") return `Right value: give it as a decimal, to ${what}.`;
    return `Right value: give it to ${what}.`;
  }
  if (fault === UNIT_MISSING) return `The number is right: give the unit as well${inUnit(q.key)}.`;
  let form = q.form;
  if (form === "simplest") form = { Mixed: "mixed", Frac: "lowest-terms", Int: "integer" }[q.key.k] || form;
  return rightValue(fault, form);
}
function inUnit(key) {
  const found = new Set(walk(key).filter((part) => is(part, "Quantity", "Money"))
    .map((part) => (part.k === "Quantity" ? part.unit : part.sign)));
  return found.size === 1 ? `, in ${unitKnown(found.values().next().value)[3]}` : "";
}
function whatToDo(fault) {
  if (fault === "1 is not a prime number") return "leave out the 1, which is not a prime number";
  for (const [finding, sentence] of TABLES.messages.RULES) {
    const found = fullmatch(finding, fault);
    if (found) return sentence.replace(/\\g<(\w+)>/g, (_, name) => found.groups[name]);
  }
  return "";
}
function rightValue(fault, form) {
  let todo = whatToDo(fault) || TABLES.messages.WANTED[form];
  if (fault === "it is a mixed number" && (form === "fraction" || form === "lowest-terms")) {
    todo += ", with no whole number in front";
  }
  return `Right value: ${todo}.`;
}

// Units beside an answer whose key is a bare number (itembank/marking/form/units_beside).
const hasUnit = (node) => hasAny(node, "Quantity", "Money");
function withoutUnit(q, given) {
  if (!hasUnit(given) || hasUnit(q.key) || hasAny(given, "Ratio")) return [given, ""];
  if (q.about.named && given.k === "MixedUnits") return [given, ""];
  const faults = [];
  const bare_ = bareAmounts(given, (amount, unit) => amountWithout(q.about, amount, unit, faults));
  return [bare_, faults.length ? faults[0] : ""];
}
function inAnotherUnit(q, given) {
  if (!is(given, "Quantity", "Money", "MixedUnits") || hasUnit(q.key)) return "";
  const own = unitOf(given);
  for (const wanted of q.about.units) {
    const size = sizeKnown(wanted);
    if (!own || own[0] !== unitKnown(wanted)[0] || own[1].is(size)) continue;
    const worth = exactOr(given, null), key = worth && exactOr(q.key, null);
    if (!worth || !key) return "";
    if (worth.is(key.times(size))) return unitKnown(wanted)[3];
  }
  return "";
}
function amountWithout(subject, amount, unit, faults) {
  if (subject.units.indexOf(unit) >= 0) return amount;
  const own = unitKnown(unit);
  for (const wanted of subject.units) {
    const other = unitKnown(wanted);
    if (other[0] === own[0] && !subject.named) {
      const worth = exactOr(amount, null);
      if (worth === null) break;
      return decimalNode(worth.times(sizeKnown(unit)).over(sizeKnown(wanted)));
    }
    faults.push(`The number is right, but the unit is not: it is in ${other[3]}.`);
    return amount;
  }
  if (subject.beside.indexOf(unit) >= 0) faults.push(TABLES.messages.STANDS_BESIDE);
  else if (subject.noun) faults.push(`The number is right, but it is a number of ${subject.noun}.`);
  else faults.push("The number is right, but that unit is not: leave it out.");
  return amount;
}
function bareAmounts(node, change) {
  switch (node.k) {
    case "Quantity": return change(node.amount, node.unit);
    case "Money": return change(node.amount, node.sign);
    case "MixedUnits": {
      const last = node.parts[node.parts.length - 1].unit, worth = exactOr(node, null);
      return worth === null ? node : change(decimalNode(worth.over(SIZES[last])), last);
    }
    case "Neg": return Neg(bareAmounts(node.of, change));
    case "Sum": {
      if (!hasLetters(node)) return node;
      const terms = [node.first, ...node.rest.map(([, term]) => term)];
      const unitIn = (term) => (term.k === "Quantity" ? term.unit : term.k === "Money" ? term.sign : "");
      const units = new Set(terms.map(unitIn).filter(Boolean));
      if (units.size !== 1) return node;
      const [head, ...others] = terms.map((term) => (unitIn(term) ? term.amount : term));
      return change(Sum(head, node.rest.map(([op], i) => [op, others[i]])), Array.from(units)[0]);
    }
    case "Relation": {
      const rest = node.rest.map(([op, side]) => [op, bareAmounts(side, change)]);
      return Relation(bareAmounts(node.first, change), rest);
    }
    case "Listing": case "Either": return make(node.k, node.parts.map((part) => bareAmounts(part, change)));
  }
  return node;
}
function countedWrongly(q, answer) {
  const found = search("units_beside.noun", answer);
  if (!found) return "";
  // As it was typed: the pattern may have taken another letter for an i.
  const end = found.index + found[0].length - found[0].match(/[ .!]*$/)[0].length;
  const typed = answer.slice(end - found[1].length, end).toLowerCase(), noun = q.about.noun;
  if (typed.length < 3 || !typed.endsWith("s") || !noun || noun === typed || q.nouns.indexOf(typed) < 0) return "";
  return `The number is right, but it is a number of ${noun}, not of ${typed}.`;
}
