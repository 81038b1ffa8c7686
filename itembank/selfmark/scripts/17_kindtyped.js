// Answers about statements, cards and wrong lines (itembank/marking/typing/kind_typed).
const KIND = TABLES.constants.kind_typed;

function readByKind(plain, q) {
  plain = strip(untagged(plain), " .;,\"'“”‘’");
  if (!plain) throw new Unreadable("There is no answer to read.");
  if (q.reads === "truth") {
    const truth = truthTyped(plain);
    if (truth) return Label(truth);
    throw new Unreadable(KIND.NO_TRUTH);
  }
  if (signBeside(plain, q.names)) throw new Unreadable(MESSAGES.SIGN_BESIDE);
  if (q.reads === "cards") return Label(cardTyped(plain, q.cards) || named(plain, q.names));
  if (q.reads === "pairs") {
    const cards = Object.keys(q.cards), partners = pairsTyped(plain, cards, Array.from(q.partners));
    if (!partners.length) throw new Unreadable(KIND.NO_PAIRS);
    return Listing(cards.map((card, i) => Label(`${card}–${partners[i]}`)));
  }
  const [number, said] = lineTyped(plain), rest = sub("read.reason_first", "", said);
  if (!rest || q.key.k !== "Listing" || q.key.parts.length !== 2) throw new Unreadable(KIND.NO_LINE);
  const key = q.key.parts[1];
  const result = readAnswer(rest, Object.assign({}, q, {
    key, several: is(key, "Either", "Listing"), reads: "", names: [], leads: null, sign: false,
  }));
  return Listing([Label(`line ${number}`), lastResult(result, key)]);
}
function lastResult(result, key) {
  if (result.k === "Listing" && !is(key, "Listing", "Either")) result = result.parts[result.parts.length - 1];
  const end = comesTo(result);
  const expression = unknownLetters(key).size && key.k !== "Relation";
  return end.k === "Relation" || expression || !unknownLetters(result).size ? end : result;
}
function truthTyped(plain) {
  const found = matchAt("kind_typed.truth", plain, 0);
  return !found ? "" : found.groups.false ? "false" : "true";
}
function cardTyped(plain, cards) {
  const close = words(plain).join("");
  const found = Object.entries(cards).find(([, line]) => words(line).join("") === close);
  return found ? found[0] : "";
}
function pairsTyped(plain, cards, partners) {
  if (search("kind_typed.not_a_pair", plain)) return [];
  const letters = [];
  for (const m of findAll("kind_typed.card", plain)) {
    for (const letter of m.slice(1)) if (letter) letters.push(letter.toUpperCase());
  }
  const close = words(plain).join("").toUpperCase(), both = [...cards, ...partners];
  if ((close.length === cards.length || close.length === 2 * cards.length) &&
      Array.from(close).every((letter) => both.indexOf(letter) >= 0)) letters.splice(0, letters.length, ...close);
  const chosen = {};
  if (letters.length === cards.length && letters.every((letter) => partners.indexOf(letter) >= 0)) {
    cards.forEach((card, i) => { chosen[card] = letters[i]; });
  } else {
    for (let i = 0; i + 1 < letters.length; i += 2) {
      const [one, other] = letters.slice(i, i + 2);
      const [card, partner] = cards.indexOf(one) >= 0 ? [one, other] : [other, one];
      if (card in chosen || cards.indexOf(card) < 0 || partners.indexOf(partner) < 0) return [];
      chosen[card] = partner;
    }
    if (letters.length !== 2 * cards.length) return [];
  }
  const found = cards.map((card) => chosen[card]);
  return found.every(Boolean) && new Set(found).size === cards.length ? found : [];
}
function lineTyped(plain) {
  let found = fullmatch("kind_typed.line", plain);
  const last = fullmatch("kind_typed.line_last", plain);
  if (last && findAll("kind_typed.says_line", plain).length === 1 && (!found || found.groups.rest)) found = last;
  if (!found) return ["", ""];
  return [found.groups.n || KIND._NUMBERS[found.groups.word.toLowerCase()], strip(found.groups.rest)];
}
function kindHint(q, given) {
  if (q.reads === "truth") return "Look again: work it out, and find a reason.";
  if (given.k !== "Listing" || q.key.k !== "Listing") return "";
  const right = given.parts.slice(0, q.key.parts.length).map((part, i) => same(part, q.key.parts[i]));
  if (q.reads === "pairs") {
    const count = right.filter(Boolean).length;
    if (!count) return "None of the pairs is right yet: work out what each card comes to.";
    return `${count} of the ${right.length} pairs ${count === 1 ? "is" : "are"} right: look again at the rest.`;
  }
  if (q.reads === "line") {
    if (right[0]) return "That is the line. The right answer is another: go on from the line before.";
    if (right[right.length - 1]) {
      return "The answer is right. Which line does not follow from the one before?";
    }
    return "Check each line against the one before: which does not follow?";
  }
  return "";
}
