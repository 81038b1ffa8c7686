"""Questions in strips across a slide: each strip a few neighbours in one, two or three columns.

Two columns down the whole slide waste room where figures stand among lines of words: a figure in
one column faces words in the other, and a long line breaks that would fit across. In strips the
questions run on from left to right, and from each strip to the one below it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from itertools import combinations, pairwise
from typing import NamedTuple, TypeAlias

from itembank.pages.parts.question_cell import Cell

Set: TypeAlias = Callable[[int, float], Cell | None]
"""Sets a question in a column of a width; None where it is too wide for it."""

COLUMN_SHARES: tuple[tuple[float, ...], ...] = (
    (1.0,),
    *((share, 1 - share) for share in (0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65)),
    (1 / 3, 1 / 3, 1 / 3),
    *((0.4, 0.3, 0.3), (0.3, 0.4, 0.3), (0.3, 0.3, 0.4)),
)
"""How the width of a strip is shared by its columns."""
MOST_IN_STRIP = 6
"""Questions in a strip: more of them are two columns down the slide, which are tried before."""


class Strip(NamedTuple):
    """The questions of a strip, column by column, the width of each column and their height."""

    columns: tuple[range, ...]
    widths: tuple[float, ...]
    height: float


def strips(
    group: range, width: float, room: float, apart: float, between: float, cell: Set
) -> list[Strip] | None:
    """Return the questions of `group` in the fewest strips that fit a room, or None.

    Between columns stands a room `apart`, between questions and between strips at least `between`.
    Of as many strips those are taken that leave the most room.
    """

    @cache
    def strip(start: int, stop: int) -> Strip | None:
        return _lowest(range(start, stop), width, apart, between, cell)

    # By how many questions are placed: the lowest way to place them in so many strips.
    ways: list[list[Strip] | None] = [[], *(None for _ in group)]
    for _ in group:
        longer: list[list[Strip] | None] = [None for _ in ways]
        for placed, before in enumerate(ways):
            if before is None:
                continue
            for stop in range(placed + 1, min(len(group), placed + MOST_IN_STRIP) + 1):
                made = strip(group[placed], group[stop - 1] + 1)
                if made is None:
                    continue
                way, best = [*before, made], longer[stop]
                if best is None or _height(way, between) < _height(best, between):
                    longer[stop] = way
        ways = longer
        last = ways[-1]
        if last is not None and _height(last, between) <= room:
            return last
    return None


def _height(way: Sequence[Strip], between: float) -> float:
    return sum(strip.height for strip in way) + between * (len(way) - 1)


def _lowest(group: range, width: float, apart: float, between: float, cell: Set) -> Strip | None:
    """Return the lowest strip of some questions, or None where one of them fits no column."""

    def column(side: range, wide: float) -> float | None:
        cells = [cell(i, wide) for i in side]
        if not all(cells):
            return None
        return sum(made.height for made in cells if made) + between * (len(side) - 1)

    best: Strip | None = None
    for shares in COLUMN_SHARES:
        count = len(shares)
        if count > len(group) or (count == 1 and len(group) > 1):
            continue
        both = width - apart * (count - 1)
        widths = tuple(round(both * share, 2) for share in shares)
        for cuts in combinations(range(1, len(group)), count - 1):
            sides = tuple(group[a:b] for a, b in pairwise((0, *cuts, len(group))))
            heights = [column(side, wide) for side, wide in zip(sides, widths, strict=True)]
            if any(high is None for high in heights):
                continue
            highest = max(high for high in heights if high is not None)
            if best is None or highest < best.height - 1e-6:
                best = Strip(sides, widths, highest)
    return best
