"""Words for more and less of something: *larger*, *coldest*, *fastest first*.

Most of them mean the same of any numbers. Some depend on what is measured: the fastest time is
the least, the fastest speed the greatest, and of bare numbers nothing is known.

>>> size_meant("coldest", ()), size_meant("fastest", (Quantity(Int(9), "s"),))
('least', 'least')
>>> size_meant("fastest", (Quantity(Int(9), "km/h"),)), size_meant("fastest", (Int(9),))
('greatest', '')
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Literal

from itembank.notation.tree import (
    ClockTime,
    Dec,
    Frac,
    Int,
    Listing,
    MixedUnits,
    Node,
    Percent,
    Quantity,
)
from itembank.notation.units import UNITS
from itembank.text.late_pattern import late

Size = Literal["least", "greatest"]
Direction = Literal["ascending", "descending"]

_LEAST = [
    "smaller",
    "smallest",
    "lesser",
    "least",
    "lower",
    "lowest",
    "lighter",
    "lightest",
    "shorter",
    "shortest",
    "cheaper",
    "cheapest",
    "colder",
    "coldest",
    "cooler",
    "coolest",
    "fewer",
    "fewest",
    "narrower",
    "narrowest",
    "thinner",
    "thinnest",
    "shallower",
    "shallowest",
]
_GREATEST = [
    "larger",
    "largest",
    "greater",
    "greatest",
    "bigger",
    "biggest",
    "higher",
    "highest",
    "heavier",
    "heaviest",
    "longer",
    "longest",
    "dearer",
    "dearest",
    "warmer",
    "warmest",
    "hotter",
    "hottest",
    "taller",
    "tallest",
    "wider",
    "widest",
    "thicker",
    "thickest",
    "deeper",
    "deepest",
]
_ALWAYS: dict[str, Size] = {
    **dict.fromkeys(_LEAST, "least"),
    **dict.fromkeys(_GREATEST, "greatest"),
    **dict.fromkeys(("least expensive", "less expensive"), "least"),
    **dict.fromkeys(("most expensive", "more expensive"), "greatest"),
}
_BY_KIND: tuple[tuple[str, dict[str, Size]], ...] = (
    ("faster fastest quicker quickest", {"time": "least", "speed": "greatest"}),
    ("slower slowest", {"time": "greatest", "speed": "least"}),
    ("earlier earliest", {"clock": "least", "year": "least"}),
    ("later latest", {"clock": "greatest", "year": "greatest"}),
    ("younger youngest", {"age": "least"}),
    ("older oldest", {"age": "greatest"}),
    ("better best", {"score": "greatest"}),
    ("worse worst", {"score": "least"}),
)
_KINDS = {word: kinds for words, kinds in _BY_KIND for word in words.split()}
SIZES = "|".join(sorted((*_ALWAYS, *_KINDS), key=len, reverse=True))
"""Every such word, as a pattern."""


def size_meant(word: str, things: Sequence[Node], words: str = "") -> Size | Literal[""]:
    """Return which end of the things a word means, or ``""`` where that is not known.

    `words` are the words of the prompt, which may say what bare numbers are: ages, years, scores.

    >>> size_meant("youngest", (Int(11), Int(9)), "Order the ages, youngest first.")
    'least'
    """
    word = " ".join(word.lower().split())
    if word in _ALWAYS:
        return _ALWAYS[word]
    return _KINDS.get(word, {}).get(_kind(_listed(things), words), "")


def _listed(things: Sequence[Node]) -> tuple[Node, ...]:
    if len(things) == 1 and isinstance(things[0], Listing):
        return things[0].parts
    return tuple(things)


def _kind(things: Sequence[Node], words: str) -> str:
    """Return what is measured, where all the things are of one kind."""
    kinds = {_kind_of(node) for node in things}
    kind = kinds.pop() if len(kinds) == 1 else ""
    if kind == "calendar time":
        return "age"
    if kind == "number" and re.search(r"\bages\b", words, re.I):
        return "age"
    if kind == "number" and re.search(r"\byears\b(?! of| when| in which)", words, re.I):
        return "year" if all(isinstance(t, Int) and 1000 <= t.n < 2200 for t in things) else ""
    if kind == "part" and re.search(r"\b(?:scores?|marks?|results?)\b", words, re.I):
        return "score"
    return kind


def _kind_of(node: Node) -> str:
    match node:
        case Quantity(_, unit):
            return UNITS[unit].dimension
        case MixedUnits(parts):
            return UNITS[parts[0].unit].dimension
        case ClockTime():
            return "clock"
        case Int() | Dec():
            return "number"
        case Frac() | Percent():
            return "part"
    return ""


_NAMED = r"(?: (?:one|number|value|fraction|amount|time|length|temperature))?"
_ORDER = late(
    rf"\b(?P<first>{SIZES}){_NAMED} first\b|\b(?P<last>{SIZES}){_NAMED} last\b"
    rf"|\b(?P<one>{SIZES}){_NAMED} to (?:the )?(?P<other>{SIZES})\b"
    rf"|\b(?:starting|beginning|start|begin) (?:with|from) the (?P<start>{SIZES})\b"
    rf"|\b(?:ending|finishing|end|finish) with the (?P<end>{SIZES})\b"
    r"|\b(?P<up>ascending|increasing order)\b|\b(?P<down>descending|decreasing order)\b",
    re.I,
)
_STARTS: dict[Size, Direction] = {"least": "ascending", "greatest": "descending"}
_ENDS: dict[Size, Direction] = {"least": "descending", "greatest": "ascending"}


def order_said(words: str, things: Sequence[Node] = ()) -> Direction | None:
    """Return the order the words ask for, or None where they do not say, or say both.

    >>> order_said("Write the times in order, shortest first."), order_said("In order, please.")
    ('ascending', None)
    >>> order_said("Order them from largest to smallest.")
    'descending'
    >>> order_said("Fastest first.", (Quantity(Int(9), "s"), Quantity(Int(8), "s")))
    'ascending'
    """
    found: set[Direction | None] = set()
    for match in _ORDER.finditer(words):
        if match["up"] or match["down"]:
            found.add("ascending" if match["up"] else "descending")
            continue
        for word, way in (
            (match["first"] or match["start"] or match["one"], _STARTS),
            (match["last"] or match["end"] or match["other"], _ENDS),
        ):
            if word:
                size = size_meant(word, things, words)
                found.add(way[size] if size else None)
    return found.pop() if len(found) == 1 else None
