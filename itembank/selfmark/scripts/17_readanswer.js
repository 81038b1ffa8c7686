// What people type for an answer, brought to what the parser reads (itembank/marking/typing).
const READ = TABLES.constants.read;

function readAnswer(text, q) {
  if (codePoints(text) > READ.LONGEST) {
    throw new Unreadable(`The answer is longer than ${READ.LONGEST} characters: type the answer alone.`);
  }
  let plain = visible(text);
  const key = q.key;
  if (q.reads) return readByKind(plain, q);
  if (key.k === "Label") {
    plain = strip(untagged(plain), " .;,\"'“”‘’");
    if (!plain) throw new Unreadable("There is no answer to read.");
    if (signBeside(plain, q.names)) throw new Unreadable(TABLES.messages.SIGN_BESIDE);
    return Label(named(plain, q.names));
  }
  const doubtful = !hasLetters(key) && fullmatch("part_label.either_way", plain);
  if (doubtful) throw new Unreadable(`${doubtful[1]} ${TABLES.messages.TWO_WAYS}`);
  if (walk(key).some((part) => part.k === "Quantity" && part.unit === "lb")) plain = sub("read.pounds", " lb", plain);
  if (key.k === "Listing") plain = sumsApart(inOrder(plain, q.words, key.parts.length), key.parts.length);
  if (q.sign) {
    const compared = comparedWith(plain, q);
    if (compared) return compared;
  }
  plain = sub("read.reason", "", plain);
  if (q.estimate) plain = sub("read.estimated", "", plain);
  const repeated = !q.repeated && search("read.repeated", plain);
  if (repeated) throw new Unreadable(`‘${repeated[0]}’ cannot be read here: type the answer alone.`);
  plain = respell(plain);
  if (!["p", "c", "P", "C"].some((letter) => q.letters.has(letter))) plain = sub("read.per_cent", "%", plain);
  plain = asTime(ordinal(plain, q), key);
  if (!q.several) plain = sub("read.and_smaller", (m) => `${m[1]} `, plain);
  const fault = timeUnreadable(plain, key);
  if (fault) throw new Unreadable(fault);
  if (!plain) throw new Unreadable("There is no answer to read.");
  if (key.k === "Relation" && "<>=".indexOf(plain) >= 0 && plain.length === 1 && !hasLetters(key)) {
    return Relation(key.first, [[plain, key.rest[0][1]]]);
  }
  if (!q.letters.has("r") && search("read.remainder", plain)) {
    plain = sub("read.no_remainder", "", plain);
    if (search("read.remainder", plain) || !plain) throw new Unreadable(READ.REMAINDER);
  }
  return parseAnswer(asQuestionHasIt(plain, q), plain, q);
}
// The number of the question before an answer (part_label).
function withoutPartLabel(answer, q) {
  const letters = new Set(Array.from(q.letters, casefold));
  const part = matchAt("part_label.part", answer, 0);
  if (q.reads === "line") {
    return part && matchAt("part_label.line", answer, part[0].length) ? answer.slice(part[0].length) : answer;
  }
  const asked_ = matchAt("part_label.question", answer, 0);
  if (q.key.k === "Label" || q.reads) {
    const found = part || asked_;
    const rest = found ? strip(answer.slice(found[0].length), " .") : "";
    const head = strip(casefold(answer.slice(0, 2)), "(");
    if (q.reads === "truth" && head.startsWith("f")) return answer;
    const alike_ = (text) => (codePoints(text) === 1 ? text : casefold(text));
    return q.names.some((name) => alike_(name) === alike_(rest)) ? rest : answer;
  }
  if (part) {
    const rest = answer.slice(part[0].length), name = casefold(part.groups.name);
    const product = part.groups.open !== undefined && (letters.has(name) || /^\p{Nd}+$/u.test(name));
    return product || count(rest, "(") !== count(rest, ")") ? answer : rest;
  }
  const numbered = matchAt("part_label.numbered", answer, 0);
  if (numbered) return answer.slice(numbered[0].length);
  if (!letters.has("q") && asked_) return answer.slice(asked_[0].length);
  const own_ = !is(q.key, "Listing", "Either", "Ratio") && !letters.has("a") && matchAt("part_label.answer", answer, 0);
  return own_ ? answer.slice(own_[0].length) : answer;
}
// What leads up to an answer in its own question (openings).
function withoutOpening(plain, q) {
  const { key, letters } = q, several = is(key, "Listing", "Either");
  const cut = (found) => { plain = plain.slice(found[0].length); };
  let found = several && matchAt("openings.point_name", plain, 0);
  if (found && !letters.has(found[1])) cut(found);
  found = matchAt("openings.side_name", plain, 0);
  if (found && !subset(found[1], letters)) cut(found);
  found = !letters.has("p") && !letters.has("P") && matchAt("openings.chance_of", plain, 0);
  if (found) cut(found);
  if (q.words.indexOf("scale factor") >= 0 && !letters.has("x") && !letters.has("X")) {
    found = matchAt("openings.factor", plain, 0);
    if (found) cut(found);
  }
  plain = sub("openings.times_after", "", plain);
  if (!several && (q.words.indexOf("intercept") >= 0 || q.words.indexOf("cross") >= 0)) {
    plain = sub("openings.on_axis", (m) => m[1], plain);
  }
  if (!hasAny(key, "Ratio")) plain = sub("openings.colon", (m) => (letters.has(m[1]) ? `${m[1]} = ` : m[0]), plain);
  if (letters.has("π")) plain = sub("openings.pi", "π", plain);
  if (walk(key).some((part) => part.k === "Quantity" && part.unit === "°")) plain = sub("openings.ring", "°", plain);
  if (key.k === "Listing" && fullmatch("openings.numbers_apart", plain)) plain = sub("openings.gap", ", ", plain);
  return plain;
}
function comparedWith(plain, q) {
  if (q.key.k !== "Relation" || q.key.rest.length !== 1) return null;
  const left = q.key.first, right = q.key.rest[0][1];
  const said = strip(casefold(plain), READ._STOPS);
  for (const [op, pattern] of READ._SIGN_WORDS) {
    if (fullmatch(pattern, said)) return Relation(left, [[op, right]]);
    const found = fullmatch("read.is", said);
    if (found && op !== "=" && fullmatch(pattern, found.groups.word)) {
      let it;
      try { it = parseAnswer(respell(found.groups.it), found.groups.it, q); } catch (error) {
        if (error instanceof Unreadable) return null;
        throw error;
      }
      for (const [side, other] of [[left, right], [right, left]]) {
        if (same(it, side)) return Relation(side, [[op, other]]);
      }
    }
  }
  return null;
}
function ordinal(plain, q) {
  const found = !hasAny(q.key, "Quantity", "Money") && fullmatch("read.ordinal", plain);
  return found && !subset(found.groups.end.toLowerCase(), q.letters) ? found.groups.n : plain;
}
function asQuestionHasIt(plain, q) {
  const { key, letters } = q;
  plain = withoutOpening(plain, q);
  if (!letters.size && !Array.from(plain).some((char) => isDigit(char) || isNumeric(char))) {
    throw new Unreadable("There is no number in the answer.");
  }
  if (q.leads) plain = sub(q.leads, "", plain);
  if (search("read.long_word", plain) || plain.indexOf("°") >= 0 || plain.indexOf(" of ") >= 0 || plain.endsWith("C")) {
    plain = withoutWords(plain, key, q.words);
  }
  const head = plain.slice(0, 1);
  if ((head === "≤" || head === "≥") && key.k !== "Relation") {
    throw new Unreadable("The answer is a number, without a sign in front.");
  }
  const forLetter = key.k === "Relation" && key.first.k === "Sym";
  if (head && "<>≤≥".indexOf(head) >= 0 && forLetter && key.rest.length === 1 && key.rest[0][0] !== "=") {
    plain = `${key.first.name} ${plain}`;
  }
  if (forLetter && strip(plain.slice(1, 3)).slice(0, 1) === ":") {
    plain = sub(own(`^(${key.first.name}) ?: ?`, "i"), (m) => `${m[1]} = `, plain);
  }
  if (hasAny(key, "Ratio")) plain = sub("read.to", " : ", plain);
  if (!letters.has("x") || (!hasLetters(key) && sub("read.times", "", plain).toLowerCase().indexOf("x") < 0)) {
    plain = sub("read.times", " × ", plain);
    if (!letters.size) plain = sub("read.power_of_ten", (m) => ` × 10^${m[1]}`, plain).split("^+").join("^");
  }
  if (key.k === "Either" && key.parts.some((part) => part.k === "Listing")) {
    plain = plain.replace(/\)[ ,;]*(?:and|or|&)?[ ,;]*\(/gu, ") or (");
    plain = sub("read.point", (m) => `${m[1]}, ${m[2]}`, plain);
  }
  const andFraction = () => sub("read.and_fraction", (m) => `${m[1]} `, plain);
  if (q.several || key.k === "Relation") {
    if (plain.indexOf("±") >= 0 || plain.indexOf("+-") >= 0 || plain.indexOf("+/-") >= 0) plain = bothSigns(plain);
    if (!q.several) plain = andFraction();
    if (key.k === "Listing") plain = sub(own(",? *\\bthen\\b *"), ", ", plain);
    plain = sub(own(",? *(?:\\band\\b|&|;) *"), ", ", plain);
    if (key.k === "Either") plain = sub("read.set_of_roots", (m) => ` ${m[1]}`, plain);
    if (letters.size) plain = sub("read.run_on", ", ", plain);
    if (plain[0] === "(" && plain.endsWith(")") && plain.indexOf(",") >= 0 && count(plain, "(") === 1) {
      plain = plain.slice(1, -1);
    }
  } else plain = andFraction();
  if (key.k === "Listing") {
    if (count(plain, ",") >= key.parts.length) plain = sub("read.close_grouped", (m) => m[0].split(",").join(""), plain);
  } else if (key.k !== "Either") {
    plain = sub(own("(?<![\\d.,])0,(?=\\d+(?![\\d,.]))"), "0.", plain);
    plain = sub("read.grouped", (m) => m[0].replace(/[, ]/g, ""), plain);
    if (!(is(key, "Product", "Power") && !hasAny(key, "Dec"))) {
      plain = sub("read.decimal_comma", (m) => `${m[1]}.${m[2]}`, plain);
    }
  }
  if (plain.indexOf("·") >= 0 && hasAny(key, "Dec")) plain = sub("read.high_point", (m) => `${m[1]}.${m[2]}`, plain);
  const aloneIn = (char) => own(`(?<![A-Za-z]{2})${escaped(char)}(?![A-Za-z]{2})`);
  for (const letter of letters) {
    const capital = letter.toUpperCase(), small = letter.toLowerCase();
    if (isLower(letter) && !letters.has(capital) && plain.indexOf(capital) >= 0) plain = sub(aloneIn(capital), letter, plain);
    if (isUpper(letter) && !letters.has(small) && symbols(key).has(letter)) plain = sub(aloneIn(small), letter, plain);
  }
  if (!letters.has("h") && !letters.has("m") && !isTime(key)) {
    plain = sub("times.hours", (m) => `${m[1]} h ${m[2]} min`, plain);
  }
  if (["si", "co", "ta"].some((start) => plain.indexOf(start) >= 0)) {
    plain = sub("read.ratio_of", (m) => `${m[1].toLowerCase()}${m[2] ? "^-1" : ""}(${m[3]})`, plain);
    plain = sub("read.times_ratio", " × ", plain);
  }
  return withUnits(plain, letters);
}
function withUnits(plain, letters) {
  plain = sub("read.one_amount", (m) => `${m[1]} ÷ `, plain);
  if (!letters.has("p")) plain = sub(own("(?<=\\d) p\\b"), "p", plain);
  if (!letters.has("l") && !letters.has("L")) plain = sub(own("(?<=\\d) ?L\\b"), " l", plain);
  if (!letters.has("m") && !letters.has("M")) plain = sub(own("(?<=[\\dπ]) ?M$"), " m", plain);
  if (!letters.has("m")) plain = sub(own("(?<=[\\dπ]) ?m\\^?([23])(?![\\d.])"), (m) => ` m^${m[1]}`, plain);
  const units = Object.keys(UNITS).filter((name) => name.length === 1 && isAlpha(name) && !letters.has(name)).join("");
  if (units) plain = sub(own(`(?<=\\d)(?=[${units}](?![A-Za-z^(]))`), " ", plain);
  const longer = Object.keys(UNITS).filter((name) => isAlpha(name) && !letters.has(name)).join("|");
  plain = sub(own(`(?<=π)(?=(?:${longer})(?![A-Za-z]))`), " ", plain);
  const single = Array.from(letters).filter((name) => /^[a-z]$/.test(name)).join("");
  if (single) plain = sub(own(`(?<=\\d) (?=[${single}](?![A-Za-z]))`), "", plain);
  return plain;
}
function bothSigns(plain) {
  plain = plain.split("+/-").join("±").split("+-").join("±");
  const found = matchAt("read.plus_minus", plain, 0);
  if (!found || found.groups.tail.indexOf("±") >= 0) return plain;
  const { head, tail } = found.groups;
  if (!strip(head) || rstrip(head).endsWith("=")) return `${head}${strip(tail)} or ${head}-${strip(tail)}`;
  return `${head}+${tail} or ${head}-${tail}`;
}
function parseAnswer(plain, typed, q) {
  const pence = !q.letters.has("p");
  for (const m of findAll("read.long_word", plain)) {
    const word = m[0];
    if (!(word in UNITS) && !subset(word, q.letters) && READ.RATIOS.indexOf(word) < 0) {
      if (word === "and" && !q.several) throw new Unreadable("Only one answer is wanted: decide on one.");
      throw new Unreadable(`‘${word}’ cannot be read here: type the answer alone.`);
    }
  }
  for (const [word] of findAll("read.short_word", plain)) {
    if (!(word in UNITS) && !Array.from(word).some((letter) => q.letters.has(letter)) && READ._SHORT_NAMES.indexOf(word) < 0) {
      throw new Unreadable(`‘${word}’ cannot be read here: type the answer alone.`);
    }
  }
  try {
    return parse(plain, { pence, letters: q.letters, times: isTime(q.key) });
  } catch (error) {
    if (!(error instanceof ParseError)) throw error;
    if (q.key.k === "Listing" && plain.indexOf(",") < 0) {
      let apart = sub("read.amounts_apart", ", ", plain);
      if (count(apart, ",") !== q.key.parts.length - 1) apart = words(plain).join(", ");
      try { return parse(apart, { pence, letters: q.letters, times: false }); } catch (again) {
        if (!(again instanceof ParseError)) throw again;
      }
    }
    if (q.letters.has("x") && search(own("\\d ?x ?\\d"), plain)) {
      throw new Unreadable("x is a letter in this question: write × or * for times.");
    }
    const found = search("read.letter_digit", plain);
    if (found && q.letters.has(found[1])) {
      const [, letter, n] = found;
      throw new Unreadable(`‘${letter}${n}’ can be read in two ways: write ${letter}^${n} for a power, or ${n}${letter} for ${n} times ${letter}.`);
    }
    const of = matchAt("read.word_told", error.message, 0);
    if (of && search("read.for_writers", error.message)) throw new Unreadable(`‘${of[1]}’ cannot be read here: type the answer alone.`);
    const seen = codePoints(plain) === codePoints(typed) ? "" : ` (The answer was read as ‘${plain}’.)`;
    throw new Unreadable(`${sub("read.column", "", error.message)}${seen}`);
  }
}

function byTheClock(folded, labels) {
  const times = new Map();
  for (const label of labels) {
    const found = fullmatch("choice.clock_label", label);
    if (!found) return "";
    times.set(Number(found[1]) * 60 + Number(found[2]), label);
  }
  const typed = fullmatch("choice.clock_typed", folded);
  if (!typed) return "";
  let hour = Number(typed[1] || typed[3] || typed[5]);
  if (typed[6] && hour >= 1 && hour <= 12) hour = hour % 12 + (typed[6] === "p" ? 12 : 0);
  else if (typed[6] && hour >= (typed[6] === "a" ? 13 : 24)) return "";
  return times.get(hour * 60 + Number(typed[2] || typed[4] || 0)) || "";
}
function named(plain, labels) {
  const clock = byTheClock(casefold(plain), labels);
  if (clock) return clock;
  if (fullmatch("choice.dotted", plain)) plain = plain.replace(/[. ]/g, "");
  plain = hyphened(asPrinted(asOnChart(plain, labels), labels), labels);
  const folded = casefold(plain);
  const last = labels.filter((label) => ` ${casefold(label)}`.endsWith(` ${folded}`));
  if (last.length === 1) return last[0];
  if (labels.map(casefold).indexOf(folded) >= 0) return plain;
  const begun = begunAlike(folded, labels) || fromTheOtherEnd(folded, labels);
  if (begun) return begun;
  const inside = labels.filter((label) => {
    const short = words(casefold(label)).slice(-2).join(" ");
    return search(own(`\\b${escaped(short)}(?!\\w)(?! (?:is |was )?(?:wrong|incorrect|false)\\b)`), folded);
  });
  if (inside.length === 1 && !search("choice.denies", folded) && !andAnother(folded, inside[0], labels)) return inside[0];
  return saidFirst(plain, labels) || plain;
}
function signBeside(plain, labels) {
  const folded = casefold(plain);
  const short = labels.map((label) => words(casefold(label)).slice(-2).join(" "));
  const alone = short.filter((end) => end.slice(-2, -1) === " ").map((end) => end.slice(-1));
  return [...short, ...alone].some((text) => {
    const end = escaped(text);
    if (Array.from(end).some(isDigit)) return false;
    return search(own(`(?<![a-z])[-−–√/×*÷^~¬]+${end}(?!\\w)|[√×*÷^]+ ?${end}(?!\\w)`
      + `|(?<!\\w)${end} ?[+×*÷^/√] ?\\d|(?<!\\w)${end}[-−–]\\d|(?<!\\w)${end} ?[-−–] ?[\\d.]+$`), folded);
  });
}
function andAnother(folded, label, labels) {
  const short = words(casefold(label)).slice(-2).join(" ");
  const ends = labels.filter((other) => other !== label).map((other) => words(casefold(other)).slice(-1)[0]);
  const found = matchAt("choice.and_another", folded.slice(folded.indexOf(short) + short.length), 0);
  return Boolean(found) && ends.indexOf(found[1]) >= 0;
}
function asPrinted(plain, labels) {
  const printed = labels.map(casefold), called = TABLES.constants.choice._CALLED;
  const bare = ` ${words(plain.replace(/[\u2212\u2013\u2010-]/g, " ").toLowerCase()).join(" ")} `;
  for (const other of Object.keys(called)) {
    if (printed.indexOf(called[other]) >= 0 && printed.indexOf(other) < 0 && bare.indexOf(` ${other} `) >= 0) {
      return strip(bare.split(` ${other} `).join(` ${called[other]} `), " ");
    }
  }
  return plain;
}
function hyphened(plain, labels) {
  const bare = (text) => text.replace(/[\u2212\u2013\u2010-]/g, " ").toLowerCase();
  for (const label of labels) {
    const at = bare(plain).indexOf(bare(label));
    if (label.indexOf("-") >= 0 && at >= 0 && bare(plain).length === plain.length) {
      plain = plain.slice(0, at) + label + plain.slice(at + label.length);
    }
  }
  return plain;
}
function asOnChart(plain, labels) {
  const short = new Map(labels.map((label) => [casefold(label), label]));
  return sub("choice.in_full", (m) => short.get(casefold(m[1] || m[2])) || m[0], plain);
}
function begunAlike(folded, labels) {
  const letters = (text) => sub("choice.letters_only", "", text), close = letters(folded);
  const wanted = findAll("choice.words_alone", folded).length;
  if (close.length < 3 || strip(sub("choice.words_alone", "", folded), " -")) return "";
  const found = labels.filter((label) => {
    const own_ = letters(casefold(label));
    return own_.length > 2 && (own_.startsWith(close) || (wanted === 1 && close.startsWith(own_)));
  });
  return found.length === 1 ? found[0] : "";
}
function fromTheOtherEnd(folded, labels) {
  const turned = Array.from(sub("choice.sort_first", "", folded)).reverse().join("").toUpperCase();
  return labels.every((label) => fullmatch("choice.ends", label)) && labels.indexOf(turned) >= 0 ? turned : "";
}
function saidFirst(plain, labels) {
  const ends = {};
  for (const label of labels) {
    const end = words(label).slice(-1)[0];
    if (codePoints(end) === 1) ends[end] = label;
  }
  const found = matchAt("choice.letter_first", plain, 0);
  if (!found || !(found[1] in ends) || search("choice.denies", casefold(plain))) return "";
  const rest = plain.slice(found[0].length);
  const others = findAll(own("(?<![\\w'’])[A-Z](?![\\w'’])"), rest).filter((m) => m[0] in ends);
  return found.groups.why || !others.length ? ends[found[1]] : "";
}

const isLengthOfTime = (key) => {
  const head = key.k === "MixedUnits" ? key.parts[0] : key;
  return head.k === "Quantity" && UNITS[head.unit][0] === "time";
};
const ofMorning = (key) => key.k === "ClockTime" && !key.half && key.hour < 12;
const HOURS_OF = { afternoon: [1, 6], evening: [4, 11], night: [7, 11] };
function timeInWords(plain, key) {
  let found = fullmatch("times.noon", plain);
  if (found) return found.groups.noon ? "12:00" : "00:00";
  let part = "", before = false, minutes, when;
  found = fullmatch("times.past", plain);
  if (found) {
    part = found.groups.part;
    before = ["to", "before"].indexOf(found.groups.side.toLowerCase()) >= 0;
    minutes = { "1/2": 30, "1/4": 15 }[part] || Number(part);
    when = (found.groups.when || "").toLowerCase();
  } else {
    found = fullmatch("times.oclock", plain);
    if (!found) return plain;
    minutes = Number(found.groups.minute || 0);
    when = (found.groups.when || found.groups.then || "").toLowerCase();
  }
  let hour = Number(found.groups.hour);
  const spoken = when.indexOf("in the") >= 0 || when.indexOf("night") >= 0;
  const fits = Object.entries(HOURS_OF).every(([word, [low, high]]) => when.indexOf(word) < 0 || (low <= hour && hour <= high));
  if ((before && part === "1/2") || (hour === 12 && (spoken || (before && when))) || !fits) return plain;
  if (before) { hour = hour - 1 || 12; minutes = 60 - minutes; }
  if (when) {
    const half = (strip(when)[0] === "a" && !spoken) || when.indexOf("morning") >= 0 ? "am" : "pm";
    return `${hour}:${two(minutes)} ${half}`;
  }
  if (hour === 12 && key.k === "ClockTime" && key.hour === 12 && !key.half) return `12:${two(minutes)}`;
  return ofMorning(key) && hour < 12 ? `${two(hour)}:${two(minutes)}` : plain;
}
function asTime(plain, key) {
  if (isTime(key)) {
    plain = timeInWords(plain, key);
    let found = fullmatch("times.with_half", plain);
    if (found) {
      const half = found[3].toLowerCase();
      return found[2] ? `${found[1]}:${found[2]} ${half}m` : `${found[1]} ${half}m`;
    }
    found = fullmatch("times.clock", plain);
    if (!found) return plain;
    const nought = found[1].length === 1 && (found[1] === "0" || ofMorning(key));
    return `${nought ? "0" : ""}${found[1]}:${found[2]}`;
  }
  if (key.k === "MixedUnits" || isLengthOfTime(key)) plain = sub("times.and", " ", plain);
  if (!isLengthOfTime(key)) return plain;
  plain = sub("times.m_for_minutes", (m) => `${m[1]} min`, plain);
  const found = fullmatch("times.minutes_left_out", plain);
  if (found) return plain.indexOf(" ") < 0 ? `${found[1]}${found[2]} min` : `${found[1]} ${found[2]} min`;
  return plain;
}
function timeUnreadable(plain, key) {
  if (isLengthOfTime(key) && fullmatch("times.colon", plain)) {
    return `${plain} is a time of day: give hours and minutes with their units, as in 2 h 35 min.`;
  }
  if (!isTime(key)) return "";
  if (fullmatch("times.bare", plain)) return TABLES.messages.TIME_IN_FULL;
  if (fullmatch("times.seconds", plain)) return TABLES.messages.NO_SECONDS;
  return fullmatch("times.past", plain) || fullmatch("times.oclock", plain) ? TABLES.messages.WHICH_HALF : "";
}

function namedWords(sentence, names) {
  let list = findAll("labels.word", sentence).map((m) => m[0]);
  for (const name of names) {
    const begun = list.filter((word) => codePoints(name) === 1 && word[0].toLowerCase() === name);
    const large = begun.filter((word) => isUpper(word[0]));
    const initials = new Set(large.length ? large : begun);
    if (initials.size === 1) list = list.map((word) => (initials.has(word) ? name : word));
  }
  return list.map((word) => word.toLowerCase());
}
function inOrder(plain, text, wanted) {
  if (!search("labels.word", plain) && !search("labels.initial", plain)) return plain;
  const pieces = split("labels.parted", plain).filter((piece) => strip(piece)).map((piece) => fullmatch("labels.piece", piece));
  const values = new Map();
  for (const piece of pieces) {
    if (!piece || (piece.groups.before === undefined) === (piece.groups.after === undefined)) return plain;
    values.set((piece.groups.before || piece.groups.after).toLowerCase(), strip(piece.groups.value));
  }
  if (values.size !== wanted || pieces.length !== wanted) return plain;
  const names = Array.from(values.keys()), orders = new Map();
  for (const sentence of split("labels.sentence", text)) {
    const found = namedWords(sentence, names);
    if (names.every((name) => found.indexOf(name) >= 0)) {
      if (names.some((name) => found.filter((word) => word === name).length > 1)) return plain;
      const order = names.slice().sort((a, b) => found.indexOf(a) - found.indexOf(b));
      orders.set(order.join(" "), order);
    }
  }
  if (orders.size !== 1) return plain;
  return orders.values().next().value.map((name) => values.get(name)).join(", ");
}
const sumsApart = (plain, wanted) => (
  findAll("labels.amount", plain).length === wanted ? sub("labels.amounts_join", "; ", plain) : plain);

function withoutWords(plain, key, text) {
  const kept = TABLES.constants.nouns._KEPT;
  const known = new Set([
    ...findAll(own("[a-z]+"), text.toLowerCase()).map((m) => stem(m[0])), ...TABLES.constants.nouns._SMALL_WORDS,
  ]);
  const units = new Set(walk(key).filter((part) => part.k === "Quantity").map((part) => part.unit));
  if ((units.size === 1 && units.has("°C")) || (!units.size && search("nouns.heat", text))) {
    plain = sub("nouns.celsius", "", plain);
  }
  const of = search("nouns.of_what", plain);
  if (of && known.has(stem((of[1] || of[2] || "it").toLowerCase()))) plain = plain.slice(0, of.index);
  const spoken = (word) => {
    const folded = word.toLowerCase();
    return known.has(stem(folded)) && kept.indexOf(folded) < 0 && !(folded in UNITS);
  };
  let after = search("nouns.words_after", plain);
  if (after && subset(words(after[1].toLowerCase()), askedWords(text))) plain = plain.slice(0, after.index);
  after = search("nouns.tail", plain);
  while (after && spoken(after[1] || after[2])) {
    plain = rstrip(plain.slice(0, after.index), " ,.");
    after = search("nouns.tail", plain);
  }
  let before = matchAt("nouns.head", plain, 0);
  const bounds = TABLES.constants.nouns._BOUNDS;
  while (before && spoken(before[1]) && bounds.indexOf(before[1].toLowerCase()) < 0) {
    plain = lstrip(plain.slice(before[0].length), " :=");
    before = matchAt("nouns.head", plain, 0);
  }
  return plain;
}
function askedWords(text) {
  const last = split(own("(?<=[.?!])\\s+"), strip(text)).slice(-1)[0];
  return new Set(findAll(own("[a-z]+"), last.toLowerCase()).map((m) => m[0])
    .filter((word) => !(word in UNITS) && TABLES.constants.nouns._KEPT.indexOf(word) < 0));
}
function stem(word) {
  for (const ending of ["es", "s"]) {
    if (word.length > 3 && word.endsWith(ending)) return word.slice(0, -ending.length).replace(/e+$/, "");
  }
  return word.replace(/e+$/, "");
}
