"""Sets in symbols: A ∩ B, A ∪ B′, (A ∪ B)′, and which regions of two sets they are."""

from __future__ import annotations

import re

from itembank.figures.figure import FigureError

BOTH, FIRST, SECOND, NEITHER = "both", "first", "second", "neither"
ALL = frozenset((BOTH, FIRST, SECOND, NEITHER))
"""The regions of two sets that overlap."""
_IN_FIRST, _IN_SECOND = frozenset((FIRST, BOTH)), frozenset((SECOND, BOTH))

ATOM = r"(?:[A-Z]['’′]?|\([A-Z]['’′]? [∩∪] [A-Z]['’′]?\)['’′]?)"
SETS = rf"(?P<sets>{ATOM}(?: [∩∪] {ATOM})?)"
"""A set in symbols, as far as it is understood."""


def regions_of(text: str, first: str, second: str) -> frozenset[str]:
    """Return the regions that a set in symbols is made of.

    Raises
    ------
    FigureError
        If it is no such set, or names another letter.

    >>> sorted(regions_of("A ∩ B′", "A", "B")), sorted(regions_of("(A ∪ B)′", "A", "B"))
    (['first'], ['neither'])
    """
    if not re.fullmatch(SETS, text):
        raise FigureError(f"‘{text}’ is not a set in symbols that is understood")
    found, rest = _joined(text.replace("'", "′").replace("’", "′"), first, second)
    if rest:
        raise FigureError(f"‘{text}’ is not a set in symbols that is understood")
    return found


def _joined(text: str, first: str, second: str) -> tuple[frozenset[str], str]:
    left, rest = _single(text, first, second)
    if sign := re.match(r" ([∩∪]) ", rest):
        right, rest = _single(rest[3:], first, second)
        left = left & right if sign[1] == "∩" else left | right
    return left, rest


def _single(text: str, first: str, second: str) -> tuple[frozenset[str], str]:
    if text.startswith("("):
        found, rest = _joined(text[1:], first, second)
        rest = rest.removeprefix(")")
    elif text[0] not in (first, second):
        raise FigureError(f"it shows no set {text[0]}")
    else:
        found, rest = _IN_FIRST if text[0] == first else _IN_SECOND, text[1:]
    return (ALL - found, rest[1:]) if rest.startswith("′") else (found, rest)
