"""What words say about the answer: its order, rounding, form and how it is to be written.

The functions look for one thing anywhere in the words. :data:`TAILS` are the same phrases as a
sentence may end in them, so that a prompt can be read to its last word.
"""

from __future__ import annotations

import re
from typing import Literal

from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import COUNT, COUNTS, TOGETHER_NAMES, UNIT, UNITS_ASKED
from itembank.wording.sentences.prompt import SLOT

RoundTo = tuple[Literal["places", "figures", "nearest"], int]
Way = Literal["nearest", "down", "up"]

_COUNT = rf"(\d{{1,2}}|{'|'.join(COUNTS)})"
_DIGITS = r"(?:decimal places?\b|d\.?\s?p\b|places of decimals\b)"
_SIGNIFICANT = r"(?:significant (?:figures?|digits?)\b|sig(?:nificant)? ?figs?\b|s\.?\s?f\b)"
_PLACES = late(rf"\b{_COUNT}\s*{_DIGITS}", re.I)
_FIGURES = late(rf"\b{_COUNT}\s*{_SIGNIFICANT}", re.I)
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
_NEAREST_WORDS = "|".join(sorted(_NEAREST, key=len, reverse=True))
_GROUPED = r"\d{1,3}(?:[ ,]?000)*"
# What follows makes it another amount: the nearest ten pence, the nearest 5 mm, the nearest half.
_ALONE = rf"(?! (?:{UNIT})\b| [a-z]*th\b)"
_NEAREST_NUMBER = late(rf"\bnearest ({_GROUPED})(?![\d.,/]*\d){_ALONE}", re.I, needs="nearest")
_NEAREST_WORD = late(rf"\bnearest ({_NEAREST_WORDS})\b{_ALONE}", re.I, needs="nearest")
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
    rf"\b(?:to|the) nearest\b|\bdecimal places?\b|{_SIGNIFICANT}|"
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

_SIMPLEST = (
    r"(?:in |to )?(?:its |the |their |your )?(?:simplest|lowest|simplified|fully simplified) "
    r"(?:possible )?(?:forms?|terms)|fully simplified|simplified(?: fully)?|"
    r"as simply as (?:possible|you can)|simplified as far as possible"
)


def says_simplest(words: str) -> bool:
    """Whether the words ask for the simplest form.

    >>> says_simplest("Simplify 8/12."), says_simplest("Work out 8/12.")
    (True, False)
    """
    pattern = rf"\b(?:simplify|{_SIMPLEST}|as simply|rationali[sz]e|reduced?|cancel)\b"
    return re.search(pattern, words, re.I) is not None


_INTO = r"\b(?:as|to|into)"
_A = r"(?:an? |your )?"
_EQUAL = r"\b(?:(?:what|which) {0}|the {0} (?:that|which)) is (?:equal|equivalent)\b|\bthe (?:equivalent {0}|{0} equivalent)\b"
_FORMS = (
    ("percentage", rf"{_INTO} {_A}(?:exact )?percentages?\b|{_EQUAL.format('percentage')}"),
    ("mixed", rf"{_INTO} {_A}(?:simplified )?mixed (?:numbers?|fractions?)\b|{_EQUAL.format('mixed number')}"),
    ("improper", rf"{_INTO} {_A}(?:simplified )?(?:improper|top-heavy) fractions?\b|{_EQUAL.format('(?:improper|top-heavy) fraction')}"),
    ("lowest-terms", rf"{_INTO} {_A}(?:simplified |single |proper |exact )*fractions?\b|{_EQUAL.format('fraction')}"),
    ("decimal", rf"{_INTO} {_A}(?:recurring |terminating |exact )*decimals?\b(?! place)|{_EQUAL.format('decimal')}"),
    ("integer", rf"{_INTO} {_A}(?:whole number|integer)\b"),
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


_KIND = (
    rf"{_A}(?:(?:single|simplified|proper|exact|recurring|terminating|algebraic) )*"
    r"(?:improper fractions?|top-heavy fractions?|mixed numbers?|mixed fractions?|fractions?|"
    r"decimals?|percentages?|whole numbers?|integers?|ordinary numbers?|ratio of whole numbers|"
    r"ratios?|surds?|inequalit(?:y|ies)|expressions?|sums? of money)"
)
_ANSWER = (
    r"(?:(?:give|giving|given|write|writing|written|expressed|leave|leaving|express|expressing|state|show|put|round|"
    r"rounding) )?(?:(?:an? |any )(?:fraction|mixed number|decimal|ratio)s? |(?:your|the|each|all|any|both|every)(?: of your)?(?: final| exact)? "
    r"(?:answers?|results?|solutions?|values?) |it |them )?"
)
GLUE = r"(?:,|and|but|then)? ?"
GLUE_AND_ANSWER = GLUE + _ANSWER
"""What may stand before a phrase about the answer: *, and give your answer* to 1 decimal place."""
TAILS = (
    rf"(?:correct |rounded |accurate |off |exact )*(?:up |down )?to {COUNT} {_DIGITS}",
    rf"(?:correct |rounded |accurate |off |exact )*(?:up |down )?to {COUNT} {_SIGNIFICANT}",
    rf"(?:correct |rounded |accurate |off )*(?:up |down )?to the nearest "
    rf"(?:{_NEAREST_WORDS}|{_GROUPED}|{UNIT}|{SLOT}){_ALONE}",
    rf"(?:as|into|to) {_KIND}",
    r"in standard (?:index )?form",
    r"(?:in|to) index (?:form|notation)",
    r"(?:using|use|with) (?:index notation|powers)",
    r"as (?:a |one )?(?:single )?powers? of (?:<M>|\d{1,2}|[a-z](?![a-z]))",
    r"as a (?:single )?power",
    r"as a (?:single term|product of powers|product)",
    _SIMPLEST,
    r"simplify(?: (?:it|them|fully|completely|your answers?|the answers?|the result|"
    r"if (?:you can|possible|necessary)|where possible))*",
    r"in the form (?:<M>|1 ?: ?n|n ?: ?1)",
    r"in terms of (?:π|pi|<M>)",
    r"(?:(?:with|using|in) (?:only |a )?positive|without (?:any )?negative)(?: integer)? "
    r"(?:indices|powers|index|power)(?: only)?",
    r"(?:with|without|including|include|in(?:clude)?)(?: the| its| their| any| a| correct)* units?",
    r"(?:completely|fully|exactly|exact|in full|as far as possible)",
    r"exact (?:answer|value)s?",
    r"in (?:exact |simplest |simplified )?surd form",
    r"(?:as|in) (?:a )?surds?",
    r"(?:any )?square roots in your answers?",
    rf"(?:in|to|into) (?:{TOGETHER_NAMES}|{UNITS_ASKED})",
    r"(?:without|not using|using) a calculator",
    r"show(?:ing)? (?:all )?(?:your |the )?(?:working|method|steps)",
    r"with dots over the digits that recur",
    r"dots over the digits that recur",
    r"(?:using|with) dot notation",
    r"(?:remember(?:ing)?(?: to (?:use|follow))?|(?:using|by using|following|with|use)) "
    r"(?:the (?:correct |right )?order of operations|bidmas|bodmas|(?:(?:a|an|the) )?(?:written|column|formal|efficient|"
    r"grid|long|short) (?:methods?|addition|subtraction|multiplication|division))",
    r"(?:mentally|in your head|without writing anything down|by hand)",
    r"using algebra",
    r"check(?:ing)? (?:your |the )?(?:answers?|solutions?|it)",
    r"first",
    r"please",
)
"""Phrases about the answer that a question may go on with."""

METHODS = (
    r"by (?:factorising|completing the square|elimination|substitution)",
    r"(?:using|by using) the (?:quadratic )?formula",
)
"""How equations are to be solved, which leaves their solutions as they are."""

ASIDES = (
    r"(?:please )?show (?:all )?(?:of )?(?:your|each step of your|each line of(?: your)?) working(?: out)?(?: clearly)?",
    r"(?:do not|don't) use a calculator",
    r"(?:you may |you can )?use a calculator",
    r"(?:this is )?(?:a )?(?:non-)?calculator(?: question| allowed| not allowed)?",
    r"no calculators?(?: allowed)?",
    r"check your answers?",
    r"(?:you must |make sure you |write down |show )+(?:all )?(?:of )?(?:your |the )?(?:working|method|steps)(?: out)?(?: clearly)?",
    r"(?:remember|use|follow) (?:the (?:correct |right )?order of operations|bidmas|bodmas)",
    r"(?:use a written method|work mentally|take care|be careful|think carefully)",
    r"set out your working(?: clearly)?",
    r"remember(?: to)? (?:check|show) your (?:answer|working)",
    r"simplify(?: your answers?)?(?: fully| where possible| if possible)?",
    r"use index notation",
    r"put dots over the digits that recur",
    r"all (?:lengths|measurements|distances) are in <UNIT>",
)
"""Whole sentences that say how to work or to write, and nothing of what is asked."""
