"""What the words of a prompt say that the mathematics does not: an order, a rounding, a form."""

from __future__ import annotations

import re
from typing import Literal

from itembank.checking.printed import order_said

RoundTo = tuple[Literal["places", "figures", "nearest"], int]

_COUNTS = {
    word: n
    for n, word in enumerate(("one", "two", "three", "four", "five", "six", "seven", "eight"), 1)
}
_COUNT = rf"(\d{{1,2}}|{'|'.join(_COUNTS)})"
_PLACES = re.compile(rf"\b{_COUNT}\s*(?:decimal places?\b|d\.?\s?p\b)", re.I)
_FIGURES = re.compile(rf"\b{_COUNT}\s*(?:significant figures?\b|s\.?\s?f\b)", re.I)
_NEAREST_NUMBER = re.compile(r"\bnearest (\d{1,3}(?:[ ,]?000)*)\b", re.I)
_NEAREST_WORD = re.compile(
    r"\bnearest (whole number|integer|whole|tenth|hundredth|thousandth|ten thousand|"
    r"hundred thousand|ten|hundred|thousand|million|pound|penny)\b",
    re.I,
)
_NEAREST: dict[str, RoundTo] = {
    "whole number": ("nearest", 1),
    "integer": ("nearest", 1),
    "whole": ("nearest", 1),
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


def rounding(words: str) -> RoundTo | None:
    """Return what the words say to round to, or None where they say nothing or two things.

    >>> rounding("Round 3.456 to 2 decimal places."), rounding("to the nearest whole number")
    (('places', 2), ('nearest', 1))
    >>> rounding("Round 3456 to one significant figure."), rounding("to the nearest 1,000")
    (('figures', 1), ('nearest', 1000))
    >>> rounding("Round it.") is None
    True
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
    return found.pop() if len(found) == 1 else None


_ROUGH = re.compile(
    r"\bestimat|\bapproximat|\bround(?:ing)? each\b|\bbounds?\b|\berror interval", re.I
)
_ROUNDED = re.compile(
    r"\bto the nearest\b|\bdecimal places?\b|\bsignificant (?:figure|digit)s?\b|"
    r"\brounded\b|\bround (?:your|the answer|off|to|up|down)\b|"
    rf"\bto {_COUNT} (?:places?|figures?)\b|\b{_COUNT}\s*(?:d\.?\s?p|s\.?\s?f)\b",
    re.I,
)


def says_rough(words: str) -> bool:
    """Whether the words ask for an estimate or a bound, which no rounding of the answer gives.

    >>> says_rough("Estimate 48 × 21."), says_rough("Work out 48 × 21.")
    (True, False)
    """
    return _ROUGH.search(words) is not None


def says_rounded(words: str) -> bool:
    """Whether the words speak of rounding in any way, understood by :func:`rounding` or not.

    >>> says_rounded("Work it out to the nearest gram."), says_rounded("Which is nearest to 1?")
    (True, False)
    """
    return _ROUNDED.search(words) is not None


def letter_said(words: str) -> str:
    """Return the letter whose value the words ask for, or ``""``.

    >>> letter_said("Find y if 2x + 1 = 9."), letter_said("Find a number."), letter_said("Find a.")
    ('y', '', 'a')
    """
    found = set(_LETTER_SAID.findall(words))
    return found.pop() if len(found) == 1 else ""


_LETTER_SAID = re.compile(
    r"\b(?:[Ff]ind|[Ww]ork out|[Cc]alculate|value of) ([A-Za-z])"
    r"(?=\s*(?:[.,?!;:]|$|(?:if|when|given|where)\b))"
)


def _count(word: str) -> int:
    return _COUNTS.get(word.lower()) or int(word)


def order_detail(words: str) -> Literal["ascending", "descending"] | None:
    """Return the order the words ask for, or None where they do not say, or say both.

    >>> order_detail("Write in order, smallest first."), order_detail("In order, please.")
    ('ascending', None)
    """
    return order_said(words)


def subject_letter(words: str) -> str:
    """Return the letter that the words make the subject, or ``""``.

    >>> subject_letter("Make t the subject of v = u + at.")
    't'
    """
    match = re.search(r"\bmake ([A-Za-z]) the subject\b", words, re.I)
    return match[1] if match else ""


_EXPAND = r"\b(?:expand|multiply out|(?:remove|without)(?: the| any)? brackets)\b"
_STATED = (
    ("hcf", r"\b(?:highest|greatest) common (?:factor|divisor)\b|\bHCF\b"),
    ("lcm", r"\b(?:lowest|least) common multiple\b|\bLCM\b"),
    ("prime-factors", r"\bproduct of (?:its |powers of )?(?:its )?prime(?:s| factors| numbers)?\b"),
    ("prime-factors", r"\bprime factori[sz]ation\b"),
    ("nth-term", r"\bn\s*th term\b|\brule for the n\s*th\b"),
    ("make-subject", r"\bmake [A-Za-z] the subject\b"),
    ("expand", _EXPAND),
    ("factorise", r"\bfactori[sz]e\b"),
    ("share", r"\b(?:share|divide|split)\b.*\bin the ratio\b"),
    ("round", r"^\s*round\b|[.:;]\s*round\b"),
)


def task_stated(words: str) -> str:
    """Return the one task that the words name outright, or ``""`` for none or several.

    >>> task_stated("Find the HCF of {12, 18}."), task_stated("Expand and factorise it.")
    ('hcf', '')
    """
    found = {task for task, pattern in _STATED if re.search(pattern, words, re.I)}
    return found.pop() if len(found) == 1 else ""


_VERBS = (
    ("expand", _EXPAND),
    ("factorise", r"\bfactori[sz]e\b"),
    (
        "simplify",
        r"\b(?:simplify|simplest|simply|collect|lowest terms|work out|evaluate|calculate)\b",
    ),
)


def task_in_words(words: str) -> str:
    """Return what the words say to do with an expression or a ratio, or ``""``.

    >>> task_in_words("Expand {3(x + 2)}."), task_in_words("How long is the hedge?")
    ('expand', '')
    """
    found = [task for task, pattern in _VERBS if re.search(pattern, words, re.I)]
    return found[0] if found else ""


def says_simplest(words: str) -> bool:
    """Whether the words ask for the simplest form.

    >>> says_simplest("Simplify 8/12."), says_simplest("Work out 8/12.")
    (True, False)
    """
    pattern = r"\b(?:simplify|simplest|lowest terms|rationali[sz]e)\b"
    return re.search(pattern, words, re.I) is not None


_INTO = r"\b(?:as|to|into)"
_FORMS = (
    ("percentage", rf"{_INTO} (?:a|an exact) percentage\b"),
    ("mixed", rf"{_INTO} a mixed (?:number|fraction)\b"),
    ("improper", rf"{_INTO} an? (?:improper|top-heavy) fraction\b"),
    ("lowest-terms", rf"{_INTO} a (?:simplified |single )?fraction\b"),
    ("decimal", rf"{_INTO} a (?:recurring |terminating )?decimal\b(?! place)"),
    ("standard-form", r"\b(?:in|into|to|using) standard form\b"),
    ("decimal", rf"{_INTO} an ordinary number\b"),
    ("one-to-n", r"\bin the form 1 ?: ?n\b"),
    ("n-to-one", r"\bin the form n ?: ?1\b"),
    ("quantity", r"\b(?:in|to|how many) (?:millimetres|centimetres|metres|kilometres|grams|"
     r"kilograms|tonnes|millilitres|litres|seconds|minutes|hours|mm|cm|m|km|g|kg|ml|cl|l)\b"),
)  # fmt: skip


def form_in_words(words: str) -> str:
    """Return the form that the words ask for, or ``""``.

    >>> form_in_words("Write 3/4 as a percentage.")
    'percentage'
    """
    return next((form for form, pattern in _FORMS if re.search(pattern, words, re.I)), "")
