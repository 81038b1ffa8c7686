"""What words say of how an answer is written: with its unit, as a power, in terms of π.

Each function looks for one thing anywhere in the words of a prompt.
"""

from __future__ import annotations

import re

from itembank.notation.units import CURRENCY, UNITS
from itembank.text.late_pattern import late
from itembank.wording.sentences.phrases import unit_names

_UNITS_ASKED = late(
    r"\b(?:with|includ\w*|stat\w*|giv\w*|writ\w*) (?:\w+ ){0,4}units?\b(?! (?:price|cost|form))",
    re.I,
)
_WITHOUT_UNITS = late(r"\bwithout (?:the |its |any )?units?\b|\bno units?\b", re.I)
_INDEX = late(
    r"\bindex (?:form|notation)\b|\bwith (?:indices|an index)\b|\busing (?:indices|powers|index)\b|"
    r"\bas (?:a|one) (?:single )?power\b|\bas a product of powers\b",
    re.I,
)
_PI = late(r"\bin terms of (?:π|pi)\b", re.I)
_FORM = late(r"\bin the form\b", re.I)
_HOW_MANY = late(r"\bhow many\b", re.I)
_WHAT_FRACTION = late(r"\b(?:what|which) fraction\b", re.I)
_COIN = late(r"\bto the nearest (pound|penny|euro|dollar)\b", re.I)
_LAST = late(
    r"(?:^|(?<=[.?!]))\s+"
    r"(?P<said>(?:(?:Give|Leave) your answer\b[^.?!]*|Be\sready\sto\ssay\swhy)\.)\s*$"
)
_AT_A_TIME = late(
    r"\b(?:at|until|till|before|after|since|from|between|and|to|is|by) "
    r"\{(?:[01]\d|2[0-3]):[0-5]\d\}"
)
_OF_TIME = late(
    r"\b(?:times?|minutes?|hours?|how long|clock|starts?|begins?|ends?|finish(?:es)?|leaves?|"
    r"arrives?|lasts?|late|early)\b",
    re.I,
)
_OF_RATIOS = late(r"\bratios?\b|\bscales?\b|\bshare", re.I)


def asks_units(words: str) -> bool:
    """Tell whether the words ask for the unit to stand in the answer.

    >>> asks_units("Include the units."), asks_units("Give your answer without units.")
    (True, False)
    """
    return bool(_UNITS_ASKED.search(words)) and not _WITHOUT_UNITS.search(words)


def asks_powers(words: str) -> bool:
    """Tell whether the words ask for powers.

    >>> asks_powers("Write it in index form."), asks_powers("Work it out.")
    (True, False)
    """
    return bool(_INDEX.search(words))


def names_base(words: str) -> bool:
    """Tell whether the words ask for a power of a base that they name: *as a power of 2*.

    >>> names_base("Write it as a single power of ."), names_base("Write it as a power.")
    (True, False)
    """
    return bool(re.search(r"\bas an? (?:single )?power of\b", words))


def names_unit(words: str, unit: str) -> bool:
    """Tell whether a question asks for its answer in this unit, as *in centimetres* does."""
    known = UNITS.get(unit) or CURRENCY.get(unit)
    if known is None:
        return False
    names = "|".join(re.escape(name) for name in (unit, known.singular, known.many))
    return bool(re.search(rf"\b(?i:in|to|into|how many) (?:{names})(?!\w)", words))


def in_terms_of_pi(words: str) -> bool:
    """Tell whether the words ask for π to stay."""
    return bool(_PI.search(words))


def names_a_form(words: str) -> bool:
    """Tell whether the words name a form by its shape: *in the form a + b√3*."""
    return bool(_FORM.search(words))


def asks_how_many(words: str) -> bool:
    """Tell whether the words ask how many there are."""
    return bool(_HOW_MANY.search(words))


def asks_what_fraction(words: str) -> bool:
    """Tell whether the words ask which fraction something is."""
    return bool(_WHAT_FRACTION.search(words))


def nearest_coin(words: str) -> str:
    """Return the coin that money is rounded to, or an empty string.

    >>> nearest_coin("Give your answer to the nearest penny.")
    'p'
    """
    match = _COIN.search(words)
    return unit_names()[match[1].lower()] if match else ""


def speaks_of_digits(words: str) -> bool:
    """Tell whether the words are about the digits of a number."""
    return "digit" in words.lower()


def truncates(words: str) -> bool:
    """Tell whether the words have what is left over cut off."""
    return "truncat" in words.lower()


def last_instruction(words: str) -> str:
    r"""Return the sentence at the end that says how the answer is to be given, or an empty string.

    What stands before it may be a formula, so the words may begin with it.

    >>> last_instruction("Work it out. Give your answer in its simplest form.")
    'Give your answer in its simplest form.'
    >>> last_instruction("\nBe ready to say why."), last_instruction("Is it? Be ready.")
    ('Be ready to say why.', '')
    """
    found = _LAST.search(words)
    return found["said"] if found else ""


def says_times(prompt: str) -> bool:
    """Whether 10:20 in a prompt is a time of day by its words: *from* {10:20}, of minutes.

    >>> says_times("How long is it from {10:20} to {11:40}?"), says_times("Simplify {10:20}.")
    (True, False)
    """
    return (
        ":" in prompt
        and _AT_A_TIME.search(prompt) is not None
        and _OF_TIME.search(prompt) is not None
        and not _OF_RATIOS.search(prompt)
    )
