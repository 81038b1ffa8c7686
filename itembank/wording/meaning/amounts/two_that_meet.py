"""Two things that change by so much each time, and after how many times they are alike."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.text.late_pattern import late
from itembank.wording.meaning.amounts.so_much_each import unit_size
from itembank.wording.meaning.told.tale import Reading, Tale, reads
from itembank.wording.sentences.prompt import SLOT

_ONE = late(
    rf"[^.]*?\b(?:charges?|costs?|has|had|holds?|is|contains?|starts? (?:at|with)) ({SLOT})(?: [a-z]+){{0,3}}?,? (?:plus|and)(?: (?:it|then|he|she))?"
    rf"(?: (?P<verb>[a-z]+(?: (?:away|down|up|in|out))?))? ({SLOT})(?: [a-z]+){{0,2}}? (?:for |in |with )?(?:each|every|per|an?) (?P<unit>[a-z]+)[^.]*",
    re.I,
)
_DOWN = late(
    r"(?:gives?|loses?|leaks?|uses?|burns?|sells?|spends?|falls?|drops?|shrinks?|pays?)(?: (?:away|down|out|back))?",
    re.I,
)
_UP = late(
    r"(?:gets?|gains?|grows?|rises?|saves?|earns?|adds?|buys?|receives?|puts?|climbs?)(?: (?:up|in))?",
    re.I,
)


def meeting_reading(tale: Tale) -> Reading | None:
    """Return after how many times two amounts are the same, each with a start and a change."""
    if not tale.asks_for(r"\b(?:same|equal(?:ly)?|as (?:much|many|tall|long) as)\b"):
        return None
    if not tale.asks_for(r"\bhow many\b") or len(tale.numbers) != 4 or tale.of("percent", "part"):
        return None
    told = [m for s in tale.sentences if (m := _ONE.fullmatch(s)) is not None]
    if len(told) != 2 or told[0]["unit"].lower() != told[1]["unit"].lower():
        return None
    lines: list[tuple[Fraction, Fraction]] = []
    for match in told:
        start, by, verb = tale.get(match, 1), tale.get(match, 3), match["verb"] or ""
        down = bool(_DOWN.fullmatch(verb))
        if start is None or by is None or (verb and not down and not _UP.fullmatch(verb)):
            return None
        lines.append((start.value, -by.value if down else by.value))
    (a, up), (b, rise) = lines
    if up == rise or (b - a) / (up - rise) <= 0:
        return None
    times = (b - a) / (up - rise)
    return reads(
        "each starts with its own amount and changes by its own each time",
        times,
        times * unit_size(told[0]["unit"]),
    )
