"""Clocks that do not agree: one that is fast or slow, and the times of two places."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.clock import DAY, clock_seconds
from itembank.text.late_pattern import late
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT, index_of

_WRONG = late(
    rf"\b(?:clock|watch)\b[^.]* (?:is|runs) ({SLOT})(?: [a-z]+)? (?P<way>fast|slow)\b", re.I
)
_LATE = late(rf"({SLOT})(?: [a-z]+)? (?P<way>late|early)\b", re.I)
_SHOWS = r"\b(?:shows?|says?|reads?)\b"
_APART = late(
    rf"(?P<a>[A-Z][a-z]+(?: [A-Z][a-z]+)?) is ({SLOT})(?: [a-z]+)? (?P<way>ahead of|behind|in front of) (?:the time in )?(?P<b>[A-Z][a-z]+(?: [A-Z][a-z]+)?)"
)


def clocks_apart_reading(tale: Tale) -> Reading | None:
    """Return the right time, or the time in another place, by the words of a story."""
    times = [
        (m[0], node)
        for m in re.finditer(SLOT, tale.text)
        if isinstance(node := tale.said.nodes[index_of(m[0])], t.ClockTime)
    ]
    lengths = tale.of("time")
    if len(times) != 1 or len(lengths) != len(tale.numbers):
        return None
    (char, node) = times[0]
    moment = Fraction(clock_seconds(node))
    sentence = next((s for s in tale.sentences if char in s), "")
    if (wrong := _WRONG.search(tale.told)) and len(lengths) == 1:
        by = lengths[0].value if wrong["way"].lower() == "fast" else -lengths[0].value
        if late_search(_SHOWS, sentence) and tale.asks_for(
            r"\b(?:correct|right|real|true|actual)\b"
        ):
            return reads("a clock that is fast shows a later time", (moment - by) % DAY)
        if tale.asks_for(_SHOWS) and late_search(
            r"\b(?:correct|right|real|true|actual)\b", sentence
        ):
            return reads("a clock that is fast shows a later time", (moment + by) % DAY)
        return None
    if (late_by := _LATE.search(tale.told)) and len(lengths) == 1 and late_by[1] == lengths[0].char:
        by = lengths[0].value if late_by["way"].lower() == "late" else -lengths[0].value
        due = late_search(r"\b(?:should|due|was to|is to|meant to|normally|usually)\b", sentence)
        if due and tale.asks_for(r"\b(?:arrive|leave|start|begin|come|get)\b"):
            return reads("what is late comes after its time", (moment + by) % DAY)
        return None
    apart = _APART.search(tale.told) or re.search(
        rf"[Tt]he time in (?P<a>[A-Z][a-z]+) is ({SLOT})(?: [a-z]+)? (?P<way>ahead of|behind|in front of) (?:the time in |that in )?(?P<b>[A-Z][a-z]+)",
        tale.told,
    )
    if not apart:
        return None
    gap = tale.by_char.get(apart[2])
    if gap is None or late_search(r"\b(?:stop\w*|before|early|earlier|late|later)\b", tale.text):
        return None
    sign = -1 if apart["way"] == "behind" else 1
    rest = [n for n in lengths if n is not gap]
    if len(rest) > 1 or (
        rest and not late_search(rf"\b(?:takes?|lasts?)\b[^.]*{rest[0].char}", tale.told)
    ):
        return None
    took = rest[0].value if rest else Fraction(0)
    if rest and not tale.asks_for(r"\b(?:lands?|arrives?|ends?|finishes|gets? there)\b"):
        return None
    here = [
        name
        for name in (apart["a"], apart["b"])
        if re.search(rf"\b(?:in|leaves?|from) {name}\b|\b{name} time\b", sentence)
    ]
    there = [
        name
        for name in (apart["a"], apart["b"])
        if re.search(rf"\b(?:in|at) {name}\b|\b{name} time\b", tale.question)
    ]
    if len(here) != 1 or len(there) != 1:
        return None
    shift = 0 if here == there else (sign if there[0] == apart["a"] else -sign)
    return reads(
        "a place that is ahead has the later time", (moment + took + shift * gap.value) % DAY
    )
