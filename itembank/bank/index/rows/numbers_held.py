"""The numbers that stand in an item in digits, and whether its words may say others.

An index keeps them of every item, so that the items that could be twins of one are found without
a look at their texts (:mod:`.could_be_twins`).
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from typing import NamedTuple

from itembank.text.late_pattern import late
from itembank.wording.sentences.number_hints import LARGE, SMALL

_NUMBER = late(r"\d*\.?\d+")
_APART = late("([⁰¹²³⁴-⁹]+|[¼-¾⅐-⅞])")
"""Raised digits, and fractions of one character: numbers by themselves after a digit too."""
_LARGE = late("|".join(map(re.escape, LARGE)))
SAYS_SMALL, SAYS_LARGE = 1, 2
"""What the words of a prompt may say: a number up to twelve, a larger one."""


class NumbersHeld(NamedTuple):
    """The numbers of an item: those in digits with a space on each side, and what words may say."""

    digits: str
    says: int


def numbers_held(prompt: str, others: Iterable[str]) -> NumbersHeld:
    """Return the numbers of an item whose prompt, and other texts that it is read from, are given.

    >>> numbers_held("Work out {0.50 of 030}.", ["30 − 3"])
    NumbersHeld(digits=' 0.5 3 30 ', says=0)
    >>> numbers_held("Find half of twenty.", []).says == SAYS_LARGE
    True
    """
    here = sorted(numbers_in([prompt, *others]))
    words = prompt.casefold()
    says = (SAYS_SMALL if SMALL.search(words) else 0) | (SAYS_LARGE if _LARGE.search(words) else 0)
    return NumbersHeld(f" {' '.join(here)} ", says)


def numbers_in(texts: Iterable[str]) -> set[str]:
    """Return the numbers that stand in texts in digits, each as it is compared.

    >>> sorted(numbers_in(["4² − 0.50", "1½ of 030"]))
    ['0.5', '1', '2', '30', '4']
    """
    joined = " ".join(filter(None, texts))
    if not joined.isascii():
        joined = unicodedata.normalize("NFKC", _APART.sub(r" \1", joined))
    return {plain(number) for number in _NUMBER.findall(joined)}


def plain(number: str) -> str:
    """Return a number in digits as it is compared.

    >>> plain("007"), plain(".50"), plain("3.0")
    ('7', '0.5', '3')
    """
    whole, dot, places = number.partition(".")
    return (whole.lstrip("0") or "0") + (f".{places.rstrip('0')}".rstrip(".") if dot else "")
