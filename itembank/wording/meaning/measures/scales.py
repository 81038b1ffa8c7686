"""Maps, plans and models: real lengths and drawn ones."""

from __future__ import annotations

import contextlib
import re
from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.value import NotExact, exact
from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT, index_of

_STANDS = late(
    rf"({SLOT}) (?:on (?:the|a) \w+ )?(?:stands? for|represents?|shows?|to|for|means|is) ({SLOT})",
    re.I,
)
_DRAWN = r"\b(?:on|in) (?:the|a|this) (?:\w+ )?(?:map|plan|drawing|diagram)\b|\b(?:the|a|this) (?:scale )?model\b|\bof the model\b|\bdrawn\b"
_REAL = r"\b(?:real\w*|actual\w*|true|in real life|on the ground|full[- ]size\w*)\b"


def scale_reading(tale: Tale) -> Reading | None:
    """Return the length that a story of a scale asks for by its words."""
    if not late_search(r"\b(?:map|plan|drawing|scale|model)\b", tale.text):
        return None
    ratios = _ratios(tale)
    lengths = list(tale.of("length"))
    pair = next(
        (
            m
            for m in _STANDS.finditer(tale.told)
            if tale.get(m, 1) in lengths and tale.get(m, 2) in lengths
        ),
        None,
    )
    if pair is not None:
        single, many = tale.by_char[pair[1]], tale.by_char[pair[2]]
        ratios = [(Fraction(many.value, single.value), pair.start())]
        lengths = [n for n in lengths if n not in (single, many)]
    if not ratios or tale.asks_for(r"\bscale\b(?! of)"):
        return None
    drawn, real = tale.asks_for(_DRAWN), tale.asks_for(_REAL)
    if not (drawn or real) and late_search(_DRAWN, tale.told):
        real = tale.asks_for(r"\b(?:wide|long|high|tall|far|distance|length)\b") and not drawn
    factor = ratios[0][0]
    if drawn and len(ratios) == 2 and len(lengths) == 1:
        following = ratios[1][0]
        if lengths[0].at > ratios[1][1]:
            return None
        if late_search(r"\breal", tale.clause_of(lengths[0])):
            return None
        return reads("drawn on the other scale", lengths[0].value * factor / following)
    if len(ratios) != 1:
        return None
    areas = tale.of("area")
    if areas and len(areas) == 1 and not lengths and tale.asks_for(r"\barea\b"):
        value = areas[0].value
        return reads(
            "an area has the scale twice", value * factor**2 if real else value / factor**2
        )
    if drawn == real and not _plain_real(tale):
        return None
    wants_drawn = drawn and not real
    side = re.search(r"\bhow (wide|long|high|tall|deep)\b", tale.question, re.I)
    if side and len(lengths) > 1:
        lengths = [n for n in lengths if n.after.lower().startswith(side[1].lower())]
    if len(lengths) != 1 or tale.asks_for(r"\b(?:area|perimeter|volume|diagonal)\b"):
        return None
    (length,) = lengths
    mark = tale.sentence_of(length) if not tale.asked(length) else ""
    if wants_drawn and late_search(r"\bon the (?:map|plan|drawing)\b|\bmodel is\b", mark):
        return None
    if not wants_drawn and late_search(_REAL, mark):
        return None
    value = length.value / factor if wants_drawn else length.value * factor
    return reads("a real length is so many times the drawn one", value)


def _plain_real(tale: Tale) -> bool:
    return late_search(_DRAWN, tale.told) and not late_search(_DRAWN, tale.question)


def _ratios(tale: Tale) -> list[tuple[Fraction, int]]:
    found = []
    for match in re.finditer(SLOT, tale.text):
        node = tale.said.nodes[index_of(match[0])]
        if isinstance(node, t.Ratio) and len(node.parts) == 2 and node.parts[0] == t.Int(1):
            with contextlib.suppress(NotExact):  # a scale that is asked for, as 1 : n, is none
                found.append((exact(node.parts[1]), match.start()))
    return found
