"""What words say about the answer: its order, rounding, form and how it is to be written.

Each function looks for one thing anywhere in the words. The pieces in capitals are those that the
wordings of whole phrases (:mod:`.answer_tails`) are made of as well.
"""

from __future__ import annotations

import re
from typing import Literal

from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import COUNTS, UNIT

RoundTo = tuple[Literal["places", "figures", "nearest"], int]
Way = Literal["nearest", "down", "up"]

_COUNT = rf"(\d{{1,2}}|{'|'.join(COUNTS)})"
DIGITS = r"(?:decimal places?\b|d\.?\s?p\b|places of decimals\b)"
SIGNIFICANT = r"(?:significant (?:figures?|digits?)\b|sig(?:nificant)? ?figs?\b|s\.?\s?f\b)"
_PLACES = late(rf"\b{_COUNT}\s*{DIGITS}", re.I)
_FIGURES = late(rf"\b{_COUNT}\s*{SIGNIFICANT}", re.I)
_NEAREST: dict[str, RoundTo] = {
    "whole number": ("nearest", 1),
    "integer": ("nearest", 1),
    "whole": ("nearest", 1),
    "unit": ("nearest", 1),
    "one": ("nearest", 1),
    "pound": ("nearest", 1),
    "penny": ("places", 2),
    "tenth": ("places", 1),
    "hundredth": ("places", 2),
    "thousandth": ("places", 3),
    "ten": ("nearest", 10),
    "hundred": ("nearest", 100),
    "thousand": ("nearest", 1_000),
    "ten thousand": ("nearest", 10_000),
    "hundred thousand": ("nearest", 100_000),
    "million": ("nearest", 1_000_000),
}
NEAREST_WORDS = "|".join(sorted(_NEAREST, key=len, reverse=True))
GROUPED = r"\d{1,3}(?:[ ,]?000)*"
# What follows makes it another amount: the nearest ten pence, the nearest 5 mm, the nearest half.
ALONE = rf"(?! (?:{UNIT})\b| [a-z]*th\b)"
_NEAREST_NUMBER = late(rf"\bnearest ({GROUPED})(?![\d.,/]*\d){ALONE}", re.I, needs="nearest")
_NEAREST_WORD = late(rf"\bnearest ({NEAREST_WORDS})\b{ALONE}", re.I, needs="nearest")
_NEAREST_UNIT = late(rf"\bnearest ({UNIT})(?![\w^])", re.I, needs="nearest")


def rounding(words: str) -> RoundTo | None:
    """Return what the words say to round to, or None where they say nothing or two things.

    >>> rounding("Round 3.456 to 2 decimal places."), rounding("to the nearest whole number")
    (('places', 2), ('nearest', 1))
    >>> rounding("Round 3456 to one significant figure."), rounding("to the nearest 1,000")
    (('figures', 1), ('nearest', 1000))
    >>> rounding("to the nearest gram"), rounding("Round it.")
    (('nearest', 1), None)
    """
    found: set[RoundTo] = set()
    for match in _PLACES.finditer(words):
        found.add(("places", _count(match[1])))
    for match in _FIGURES.finditer(words):
        found.add(("figures", _count(match[1])))
    for match in _NEAREST_NUMBER.finditer(words):
        found.add(("nearest", int(re.sub(r"\D", "", match[1]))))
    for match in _NEAREST_WORD.finditer(words):
        found.add(_NEAREST[match[1].lower()])
    if nearest_unit(words):
        # To the nearest gram and to 2 decimal places are two things.
        found.add(("nearest", 1))
    return found.pop() if len(found) == 1 else None


def nearest_unit(words: str) -> str:
    """Return the name of the unit that the words round to the nearest one of, or ``""``.

    >>> nearest_unit("Give it to the nearest gram."), nearest_unit("to the nearest ten")
    ('gram', '')
    """
    match = _NEAREST_UNIT.search(words)
    return match[1] if match and match[1].lower() not in _NEAREST else ""


_DOWN = late(r"\bround(?:ed|ing)?(?: \S+){0,3} down\b|\btruncat|\bdown to the\b", re.I)
_UP = late(r"\bround(?:ed|ing)?(?: \S+){0,3} up\b|\bup to the (?:next|nearest)\b", re.I)


def rounding_way(words: str) -> Way | None:
    """Return which way the words round, or None where they say two ways.

    >>> rounding_way("Round 348 down to the nearest ten."), rounding_way("Round 348.")
    ('down', 'nearest')
    """
    down, up = _DOWN.search(words), _UP.search(words)
    if down and up:
        return None
    return "down" if down else "up" if up else "nearest"


_ROUGH = late(r"\bestimat|\bapproximat|\bround(?:ing)? each\b|\bbounds?\b|\berror interval", re.I)
_ROUNDED = late(
    rf"\b(?:to|the) nearest\b|\bdecimal places?\b|{SIGNIFICANT}|"
    r"\brounded\b|\bround (?:your|the answer|off|to|up|down)\b|\btruncat|"
    r"(?:^|[.?!;,] |\band |\bthen )round it\b|"
    rf"\bto {_COUNT} (?:places?|figures?)\b|\b{_COUNT}\s*(?:d\.?\s?p|s\.?\s?f)\b",
    re.I,
)


def says_rough(words: str) -> bool:
    """Whether the words ask for an estimate or a bound, which no rounding of the answer gives.

    >>> says_rough("Estimate 48 × 21."), says_rough("Work out 48 × 21.")
    (True, False)
    """
    return _ROUGH.search(words) is not None


_EACH = late(r"\bround(?:ed|ing)? (?:each|both|all|the numbers|every)\b", re.I)


def says_each_rounded(words: str) -> bool:
    """Whether the words say that numbers are rounded before the work, and nothing of the answer.

    >>> says_each_rounded("Estimate it by rounding each number to 1 significant figure.")
    True
    >>> says_each_rounded("Give your answer to 1 decimal place.")
    False
    """
    return _EACH.search(words) is not None


_BOUNDS = late(r"\berror intervals?\b|\bbounds?\b", re.I)


def says_bounds(words: str) -> bool:
    """Whether the words ask between which numbers a rounded one lies.

    Then what they say of rounding is about the number that is printed, and not about the answer.

    >>> says_bounds("Write the error interval for x."), says_bounds("Round it to the nearest 10.")
    (True, False)
    """
    return _BOUNDS.search(words) is not None


def says_rounded(words: str) -> bool:
    """Whether the words speak of rounding in any way, understood by :func:`rounding` or not.

    >>> says_rounded("Work it out to the nearest gram."), says_rounded("Which is nearest to 1?")
    (True, False)
    """
    return _ROUNDED.search(words) is not None


_NUMBER_KIND = late(
    r"\b(?:what|which) (fraction|decimal|percentage|mixed number|improper fraction)\b", re.I
)
_AS_DECIMAL = late(r"\bas a (?:percentage|decimal)\b", re.I)


def number_kind_asked(words: str) -> str:
    """Return the kind of number that the words ask for by its name, or ``""``.

    >>> number_kind_asked("What percentage of the shape is shaded?"), number_kind_asked("What is x?")
    ('percentage', '')
    """
    found = _NUMBER_KIND.search(words)
    return found[1].casefold() if found else ""


def says_as_decimal(words: str) -> bool:
    """Whether the words say to write the answer as a decimal or as a percentage.

    >>> says_as_decimal("Write it as a decimal."), says_as_decimal("Which decimal is it?")
    (True, False)
    """
    return _AS_DECIMAL.search(words) is not None


def _count(word: str) -> int:
    return COUNTS.get(word.lower()) or int(word)


ORDER_WORDS = {"ascending": "smallest first", "descending": "largest first"}
"""What a prompt says, in one way or another, so that a list in one order is the only answer."""


def letter_said(words: str) -> str:
    """Return the letter whose value the words ask for, or ``""``.

    >>> letter_said("Find y if 2x + 1 = 9."), letter_said("Find a number."), letter_said("Find a.")
    ('y', '', 'a')
    """
    found = set(_LETTER_SAID.findall(words))
    return found.pop() if len(found) == 1 else ""


_LETTER_SAID = late(
    r"\b(?:[Ff]ind|[Ww]ork out|[Cc]alculate|value of) ([A-Za-z])"
    r"(?=\s*(?:[.,?!;:]|$|(?:if|when|given|where|such|so)\b))"
)

SIMPLEST = (
    r"(?:in |to )?(?:its |the |their |your )?(?:simplest|lowest|simplified|fully simplified) "
    r"(?:possible )?(?:forms?|terms)|fully simplified|simplified(?: fully)?|"
    r"as simply as (?:possible|you can)|simplified as far as possible"
)


def says_simplest(words: str) -> bool:
    """Whether the words ask for the simplest form.

    >>> says_simplest("Simplify 8/12."), says_simplest("Work out 8/12.")
    (True, False)
    """
    pattern = rf"\b(?:simplify|{SIMPLEST}|as simply|rationali[sz]e|reduced?|cancel)\b"
    return re.search(pattern, words, re.I) is not None


_INTO = r"\b(?:as|to|into)"
ARTICLE = r"(?:an? |your )?"
_EQUAL = r"\b(?:(?:what|which) {0}|the {0} (?:that|which)) is (?:equal|equivalent)\b|\bthe (?:equivalent {0}|{0} equivalent)\b"
_FORMS = (
    ("percentage", rf"{_INTO} {ARTICLE}(?:exact )?percentages?\b|{_EQUAL.format('percentage')}"),
    ("mixed", rf"{_INTO} {ARTICLE}(?:simplified )?mixed (?:numbers?|fractions?)\b|{_EQUAL.format('mixed number')}"),
    ("improper", rf"{_INTO} {ARTICLE}(?:simplified )?(?:improper|top-heavy) fractions?\b|{_EQUAL.format('(?:improper|top-heavy) fraction')}"),
    ("lowest-terms", rf"{_INTO} {ARTICLE}(?:simplified |single |proper |exact )*fractions?\b|{_EQUAL.format('fraction')}"),
    ("decimal", rf"{_INTO} {ARTICLE}(?:recurring |terminating |exact )*decimals?\b(?! place)|{_EQUAL.format('decimal')}"),
    ("integer", rf"{_INTO} {ARTICLE}(?:whole number|integer)\b"),
    ("standard-form", r"\b(?:in|into|to|using) standard (?:index )?form\b"),
    ("decimal", rf"{_INTO} an ordinary number\b|\bwithout standard form\b"),
    ("one-to-n", r"\bin the form 1 ?: ?[nN]\b"),
    ("n-to-one", r"\bin the form [nN] ?: ?1\b"),
    ("quantity", r"\b(?:in|to|into|how many) (?:millimetres|centimetres|metres|kilometres|grams|"
     r"kilograms|tonnes|millilitres|litres|seconds|minutes|hours|days|weeks|months|years|inches|feet|"
     r"yards|miles|ounces|stone|pints|gallons|hectares|mm|cm|m|km|g|kg|ml|cl|l)\b"),
)  # fmt: skip


def form_in_words(words: str) -> str:
    """Return the form that the words ask for, or ``""``.

    >>> form_in_words("Write 3/4 as a percentage."), form_in_words("Give it as a whole number.")
    ('percentage', 'integer')
    """
    return next((form for form, pattern in _FORMS if re.search(pattern, words, re.I)), "")
