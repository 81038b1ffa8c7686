"""One of two against the other: one piece is 3 m longer than the other, and both are 14 m."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.meaning.told.relation_wordings import LESS, MORE, TOGETHER
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT

_ONE = late(
    rf"\bone(?: of (?:them|the \w+))?(?: [a-z]+)? (?:is|has|gets|costs|weighs|holds|takes|receives) (?:({SLOT})(?: [a-z]+)? (?P<way>{MORE}|{LESS})(?: [a-z]+)? than|"
    rf"(?:(?P<word>twice|double)|({SLOT}) times)(?: as [a-z]+(?: [a-z]+)? as)?) the other\b",
    re.I,
)
_WHOLE = rf"\b(?:cut into|share|sum|add up to|total|{TOGETHER})\b"
_LOW = r"\b(?:shorter|smaller|lesser|lighter|cheaper|least|younger|smallest)\b"
_HIGH = r"\b(?:longer|larger|bigger|greater|heavier|dearer|older|largest)\b"


def one_and_other_reading(tale: Tale) -> Reading | None:
    """Return one of two amounts that make a whole, told by how the one compares with the other."""
    match = _ONE.search(tale.told)
    if match is None:
        return None
    gap = tale.get(match, 1) or tale.get(match, 4)
    rest = [n for n in tale.numbers if n is not gap and not (n.in_words and n.value == 2)]
    if len(rest) != 1 or tale.asked(rest[0]) or not late_search(_WHOLE, tale.told):
        return None
    (whole,) = rest
    if whole.measure in ("percent", "part") or late_search(r"\bdifference\b", tale.text):
        return None
    if match["way"]:
        if gap is None or gap.measure in ("percent", "part"):
            return None
        low = (whole.value - gap.value) / 2
    else:
        low = whole.value / (1 + (gap.value if gap else Fraction(2)))
    high = whole.value - low
    wants_low, wants_high = tale.asks_for(_LOW), tale.asks_for(_HIGH)
    if wants_low == wants_high or tale.asks_for(r"\bthan\b") or min(low, high) <= 0:
        return None
    low, high = sorted((low, high))
    return reads("both make the whole together", low if wants_low else high)
