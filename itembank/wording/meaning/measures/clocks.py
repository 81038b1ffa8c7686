"""Times of day: when something starts, when it ends, and how long it lasts."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.notation import tree as t
from itembank.notation.clock import DAY, clock_seconds
from itembank.wording.meaning.told.tale import Reading, Tale, late_search, reads
from itembank.wording.sentences.prompt import SLOT, index_of

_ENDS = r"\b(?:ready|due|done|served|ends?|finish\w*|arriv\w*|lands?|closes?|gets? (?:there|home|in)|gets? to|over|reach\w*|back)\b"
_STARTS = r"\b(?:start\w*|begin\w*|beg[au]n|leav\w*|left|sets? (?:off|out)|depart\w*|takes off|opens?|goes)\b"


def clock_reading(tale: Tale) -> Reading | None:
    """Return the time of day, or the length of time, that a story asks for by its words."""
    times = [
        (m, tale.said.nodes[index_of(m[0])])
        for m in re.finditer(SLOT, tale.text)
        if isinstance(tale.said.nodes[index_of(m[0])], t.ClockTime)
    ]
    lengths = [n for n in tale.numbers if n.measure == "time"]
    if len(lengths) != len(tale.numbers) or any(tale.asked(n) for n in tale.numbers):
        return None
    if late_search(
        r"\b(?:slow|fast|every|each|ahead|behind|local time|times?\b.*\btable|loses?|gains?)\b",
        tale.text,
    ):
        return None
    asks_length = tale.asks_for(r"\b(?:how long|how many (?:minutes|hours)|how much time)\b")
    asks_time = tale.asks_for(r"\b(?:when|what time|at what time|latest time|earliest time)\b")
    moments = [clock_seconds(node) for _, node in times if isinstance(node, t.ClockTime)]
    if len(moments) == 2 and asks_length:
        gap = Fraction((moments[1] - moments[0]) % DAY)
        stops = [
            n
            for n in lengths
            if late_search(
                r"\b(?:stop\w*|rest\w*|break|lunch|interval|wait\w*|pause\w*)\b", tale.clause_of(n)
            )
        ]
        if not lengths:
            return reads("from the one time to the other", gap)
        if len(stops) == len(lengths) == 1 and tale.asks_for(
            r"\b(?:moving|without|actually|itself|work\w*|play\w*|travel\w*|lessons?|driv\w*|spen[dt] \w+ing|is (?:it|he|she) \w+ing)\b"
        ):
            return reads("the stop is no part of it", gap - stops[0].value)
        return None
    if len(moments) != 1 or not asks_time or not lengths:
        return None
    place, _ = times[0]
    clause = next((c for c in re.split(r",| and |;|[.?]", tale.text) if place[0] in c), "")
    starts, ends = late_search(_STARTS, clause), late_search(_ENDS, clause)
    total = sum((n.value for n in lengths), Fraction(0))
    wants_end, wants_start = tale.asks_for(_ENDS), tale.asks_for(_STARTS)
    if late_search(r"\b(?:early|earlier|before|sooner|less)\b", tale.text):
        return None
    must = late_search(r"\b(?:must|needs? to|has to|wants? to|ready|due|by)\b", clause)
    if tale.asks_for(r"\blatest\b") and ends and must:
        begins = Fraction((moments[0] - total) % DAY)
        return reads("it has to begin so long before it is to be ready", begins)
    if wants_end and starts and not ends and not wants_start:
        return reads("it ends so long after it starts", Fraction((moments[0] + total) % DAY))
    if wants_start and ends and not starts and not wants_end:
        return reads("it starts so long before it ends", Fraction((moments[0] - total) % DAY))
    return None
