"""Whether a number that is said not to be needed may be left out.

A number counts if its clause speaks of what the question asks about, if the question itself says
it, if *each of the four* are paid, or if the rest is what is asked for. It may be left out where it
stands between others whose largest or smallest is asked for, or only counts what is listed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from fractions import Fraction

from itembank.items.item import Run
from itembank.notation import tree as t
from itembank.notation.value import exact, exact_or_none
from itembank.wording.meaning.parts.parts_of import content
from itembank.wording.meaning.told.tale import Number, Tale, late_search
from itembank.wording.sentences.numbers_said import CARDINALS, MULTIPLES
from itembank.wording.story.asked.fractions_of_things import stem

_COMMON = frozenset(
    stem(word)
    for word in [
        "cost",
        "costs",
        "much",
        "many",
        "long",
        "far",
        "old",
        "weigh",
        "weighs",
        "take",
        "takes",
        "is",
        "are",
        "number",
        "numbers",
        "give",
        "gives",
        "get",
        "gets",
        "need",
        "needs",
        "use",
        "uses",
        "work",
        "out",
        "find",
        "calculate",
        "what",
        "how",
        "one",
        "time",
        "times",
        "go",
        "goes",
        "pay",
        "pays",
        "buy",
        "buys",
        "hold",
        "holds",
        "make",
        "makes",
        "in",
        "of",
        "degrees",
        "hours",
        "minutes",
        "seconds",
        "days",
        "weeks",
        "years",
        "metres",
        "centimetres",
        "kilometres",
        "grams",
        "kilograms",
        "litres",
        "pounds",
        "pence",
        "euros",
        "cm",
        "km",
        "kg",
        "ml",
        "more",
        "less",
        "than",
        "each",
        "same",
        "only",
        "together",
    ]
)
_EXTREME = r"\b(?:(?:warm|cold|hot|larg|small|great|high|low|long|short|tall|heav|light|old|young|fast|slow|cheap|dear)\w*est|highest|lowest|range|most|least)\b"
_GOES_ON = r"(?:it|they|she|he|this|that|these|both|all|the (?:two|three|four))\b"


def needed_fault(
    runs: Sequence[Run], reasons: Mapping[str, str] | None, used: frozenset[Fraction]
) -> str:
    """Return why a number that is said not to be needed counts after all, or ``""``."""
    if not reasons:
        return ""
    tale = Tale(runs)
    for text in reasons:
        value = _said(text)
        for number in tale.numbers:
            if _stands_for(number, text, value) and (why := _why(tale, number, used)):
                return f"‘{text}’ is said not to be needed, but {why}."
        if ":" in text and late_search(r"\bratio\b", tale.question):
            return f"‘{text}’ is said not to be needed, but the question asks for a ratio."
        word = text.strip().lower()
        if word in MULTIPLES or word in ("half", "quarter", "third"):
            clause = next(
                (c for c in re.split(r"[.?!,]", tale.text) if late_search(rf"\b{word}\b", c)), ""
            )
            if late_search(rf"\b(?:every|each|per) {word}|\b{word} of\b|\b{word} the\b", clause):
                return f"‘{text}’ is said not to be needed, but the words count by it."
    return ""


def measured_left_out(
    runs: Sequence[Run], reasons: Mapping[str, str] | None, used: frozenset[Fraction]
) -> str:
    """Return a measured amount that is said not to be needed, in a story nobody else has read.

    A stop of 10 minutes, a box of 20 g: why such an amount is told is for a reader to say.
    """
    tale = Tale(runs)
    sizes = {abs(value) for value in used}
    for text in reasons or ():
        value = _said(text)
        for number in tale.numbers:
            amount = exact_or_none(number.node)
            if number.counts or number.in_words or not _stands_for(number, text, value):
                continue
            if amount is not None and abs(amount) not in sizes:
                return (
                    f"‘{text}’ is said not to be needed, and the story is not read a second time: "
                    "a person has to look why it is told."
                )
    return ""


def _said(text: str) -> Fraction | None:
    word = text.strip().lower()
    if word in CARDINALS:
        return CARDINALS[word]
    from itembank.notation import parse

    try:
        return exact(parse(text))
    except t.NotationError:
        return None


def _stands_for(number: Number, text: str, value: Fraction | None) -> bool:
    if number.in_words != (text.strip().lower() in CARDINALS):
        return False
    return value is not None and exact_or_none(number.node) == value


def _why(tale: Tale, number: Number, used: frozenset[Fraction]) -> str:
    if _only_counts(tale, number):
        return ""
    if tale.asked(number):
        return "the question itself says it"
    if tale.asks_for(_EXTREME):
        own = [
            n.value
            for n in tale.numbers
            if n is not number
            and (n.measure == number.measure or not number.measure or not n.measure)
            and exact_or_none(n.node) in used
        ]
        if own and min(own) < number.value < max(own):
            return ""
        if own and tale.asks_for(r"\brange\b|\bdifference\b"):
            return "it is the largest or the smallest of them"
    if tale.asks_for(r"\b(?:mean|average|total|sum)\b") and _listed(tale, number):
        return "the question asks about all of the numbers"
    if re.search(rf"\beach of (?:the|its|his|her|their|these) {number.char}", tale.text, re.I):
        return "the words speak of each of them"
    if re.search(rf"{number.char} [^.,;?!]*\beach\b", tale.text, re.I) and number.counts:
        return "the words count so many of them"
    if number.measure == "money" and late_search(
        r"\bplus\b|\bfixed\b|\bfee\b|\bto join\b", tale.sentence_of(number)
    ):
        return "it is a part of what is paid"
    bought = rf"\b(?:buys?|bought)\b[^.]*\bfor {number.char}"
    asks_all = tale.asks_for(r"\b(?:change|spend|spent|pay|total|altogether|left)\b")
    if number.measure == "money" and asks_all and late_search(bought, tale.text):
        return "it is a part of what is paid"
    how = re.search(
        r"\bhow (long|tall|high|deep|heavy|wide) (?:is|will|was) it\b", tale.question, re.I
    )
    size = re.match(r"(long|tall|high|deep|wide)\b", number.after, re.I)
    unused = how and size and size[1].lower() != how[1].lower()  # its length, where it is how wide
    if how and not unused and number.measure == ("mass" if how[1].lower() == "heavy" else "length"):
        return "it is said of the same thing that the question asks about"
    shared = (content(tale.clause_of(number)) & content(tale.question)) - _COMMON
    if shared:
        return f"it is said of what the question asks about: ‘{min(shared)}’"
    sentences = tale.sentences
    place = next((i for i, s in enumerate(sentences) if number.char in s), -1)
    follows = place >= 0 and place + 1 < len(sentences) and sentences[place + 1] == tale.question
    if (
        follows
        and late_search(r"\b(?:they|do they|it moving|she|he)\b", tale.question)
        and late_search(rf"^(?:{_GOES_ON}|{number.char} )", sentences[place])
    ):
        return "the question goes on from that sentence"
    goes_on = late_search(rf"^{_GOES_ON}", sentences[place] if place >= 0 else "")
    if goes_on and number.measure in ("time", "length", "mass", "volume", "speed"):
        return "it is said of the same thing that the question asks about"
    clause = tale.clause_of(number)
    rest = tale.sentence_of(number).partition(clause)[2]
    if late_search(r"^\W*(?:and |but )?(?:\w+ ){0,2}(?:the (?:others?|rest|remaining))\b", rest):
        return "the rest is what the words go on with"
    return ""


def _only_counts(tale: Tale, number: Number) -> bool:
    """Whether a number only says how many numbers follow, or are consecutive."""
    sentence = tale.sentence_of(number)
    cut = rf"\b(?:into|of) {number.char} (?:pieces|parts|lengths)\b"
    if number.in_words and re.search(cut, sentence) and not late_search(r"\bequal", sentence):
        return True
    if late_search(r"\bconsecutive\b", sentence) and number.counts:
        return True
    if number.value == 1 and not tale.asked(number):
        return True
    listed = [n for n in tale.numbers if n is not number and n.char in sentence and not n.in_words]
    return number.counts and number.value == len(listed) > 1


def _listed(tale: Tale, number: Number) -> bool:
    others = [n for n in tale.numbers if n is not number and n.char in tale.sentence_of(number)]
    return len(others) > 1 and all(n.measure == number.measure for n in others)
