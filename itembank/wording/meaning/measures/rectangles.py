"""A rectangle whose length is told by its width: twice as long as wide, 4 cm longer than wide."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_LONGER = late(
    rf"\b(?:length\b[^.]*? is ({SLOT}) (?P<way>more|greater|longer|less|shorter) than (?:its|the|his|her) width|"
    rf"(?:is )?({SLOT}) (?P<way2>longer|more|shorter) than (?:it is wide|its width|the width))\b",
    re.I,
)
_WIDER = late(
    rf"\bwidth\b[^.]*? is ({SLOT}) (?P<way>more|greater|less|shorter|smaller) than (?:its|the) length\b",
    re.I,
)
_TIMES = late(
    rf"(?:\b(?P<word>twice|double)|({SLOT}) times) (?:as long as (?:it is wide|its width)|(?:its|the) width|as long as (?:it is )?wide)\b",
    re.I,
)
_ROUND = late(rf"\bperimeter(?: of [a-z ]+)? (?:is|of) ({SLOT})", re.I)


def rectangle_reading(tale: Tale) -> Reading | None:
    """Return a side, or the area, of a rectangle told by its perimeter and how its sides compare."""
    around = _ROUND.search(tale.told)
    perimeter = tale.get(around, 1) if around else None
    if perimeter is None or late_search(r"\bsquares?\b|\btriang|\bx\b", tale.text):
        return None
    half = perimeter.value / 2
    if times := _TIMES.search(tale.told):
        factor = tale.get(times, 2)
        k = factor.value if factor else Fraction(2)
        width, used = half / (1 + k), 1 if factor else 0
    elif longer := _LONGER.search(tale.told):
        number = tale.get(longer, 1) or tale.get(longer, 3)
        way = (longer["way"] or longer["way2"]).lower()
        if number is None or number.measure in ("percent", "part"):
            return None
        by = -number.value if way in ("less", "shorter") else number.value
        width, used = (half - by) / 2, 1
    elif wider := _WIDER.search(tale.told):
        number = tale.get(wider, 1)
        if number is None or number.measure in ("percent", "part"):
            return None
        by = (
            number.value
            if wider["way"].lower() in ("less", "shorter", "smaller")
            else -number.value
        )
        width, used = (half - by) / 2, 1
    else:
        return None
    if used + 1 != len(tale.numbers) or width <= 0 or width >= half:
        return None
    length = half - width
    if tale.asks_for(r"\barea\b"):
        return reads("its area, from both sides", length * width)
    wants_length = tale.asks_for(r"\b(?:length|long|longer side)\b")
    wants_width = tale.asks_for(r"\b(?:width|wide|shorter side)\b")
    if wants_length == wants_width or tale.asks_for(r"\bthan\b"):
        return None
    return reads("a perimeter goes round every side", length if wants_length else width)
