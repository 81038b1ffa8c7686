"""Questions in strips across a slide: each strip a few neighbours in one to four columns.

Two columns down the whole slide waste room where figures stand among lines of words: a figure in
one column faces words in the other, and a long line breaks that would fit across. In strips the
questions run on down each column and from left to right, and from each strip to the one below it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache, partial
from itertools import accumulate
from typing import NamedTuple, TypeAlias

from itembank.pages.parts.questions.question_cell import Cell

Set: TypeAlias = Callable[[int, float], Cell | None]
"""Sets a question in a column of a width; None where it is too wide for it."""

Least: TypeAlias = Callable[[int, float], float]
"""Says, before a question is set in a column of a width, how high it is there at the least."""

UNITS = 24
"""Parts of a slide's width that columns are made of: halves, thirds and quarters among them."""
NARROWEST = 6
"""Parts in the narrowest column: beside its number stand some 15 characters of the least size."""
MOST_IN_STRIP = 8
"""Questions in a strip."""
SOME_WIDTHS = (NARROWEST, 8, 10, 12, 14, 16, UNITS)
"""Widths of columns, in parts, that tell nearly how little of a slide a question takes."""
NEARLY = 1.03
"""How much more of it a question may take in one of them than in the best of all widths."""


def width_of(parts: int, width: float, apart: float) -> float:
    """Return how wide a column of some parts is, on a slide so wide with columns so far apart."""
    return round(parts * (width + apart) / UNITS - apart, 2)


class Strip(NamedTuple):
    """The questions of a strip, column by column, the width of each column and their height."""

    columns: tuple[range, ...]
    widths: tuple[float, ...]
    height: float


class _Row(NamedTuple):
    """The first columns of a strip: their height, how uneven they are, where each ends, its width.

    Compared as tuples: the lowest is the best, and of as low ones that of the fewest and evenest
    columns.
    """

    height: float
    columns: int
    uneven: int
    sides: tuple[tuple[int, int, int], ...]


def strips(
    group: range,
    width: float,
    room: float,
    apart: float,
    between: float,
    cell: Set,
    least: Least,
) -> list[Strip] | None:
    """Return the questions of `group` in the fewest strips that fit a room, or None.

    Between columns stands a room `apart`, between questions and between strips at least `between`.
    Of as many strips those are taken that leave the most room.
    """
    wide = [width_of(parts, width, apart) for parts in range(UNITS + 1)]

    @cache
    def low(start: int, stop: int, parts: int) -> float:
        """Return how high a column of some questions is at the least."""
        above = low(start, stop - 1, parts) if stop - start > 1 else -between
        return above + between + least(stop - 1, wide[parts])

    @cache
    def column(start: int, stop: int, parts: int) -> float | None:
        """Return how high a column of some questions is; None where they do not fit it."""
        above = column(start, stop - 1, parts) if stop - start > 1 else -between
        if above is None or above + between + least(stop - 1, wide[parts]) > room:
            return None
        made = cell(stop - 1, wide[parts])
        high = room + 1 if made is None else above + between + made.height
        return None if high > room else high

    def areas_of(i: int) -> list[tuple[float, int]]:
        """Return what a question takes at the least in some widths, the least of them first."""
        return sorted((parts * (low(i, i + 1, parts) + between), parts) for parts in SOME_WIDTHS)

    def area(i: int) -> float:
        """Return about the least area that a question takes, with the room after it."""
        best = UNITS * 2 * room
        for least_area, parts in areas_of(i):
            if least_area >= best:
                break  # in no other width does it take less
            high = column(i, i + 1, parts)
            if high is not None:
                best = min(best, parts * (high + between))
        return best

    # What takes more than all there is need not be shared out in every way to know it, nor all of
    # it be set.
    most = NEARLY * UNITS * (room + between)
    areas = {i: min(areas_of(i)[0][0], UNITS * 2 * room) for i in group}
    needed = sum(areas.values())
    for i in group:
        if needed > most:
            return None
        first, areas[i] = areas[i], area(i)
        needed += areas[i] - first
    if needed > most:
        return None
    sums = accumulate(areas.values(), initial=0.0)
    before = dict(zip(range(group.start, group.stop + 1), sums, strict=True))

    def has_room(start: int, stop: int, parts: int, height: float) -> bool:
        """Tell whether the other questions have room if these take so much of a strip."""
        return parts * (height + between) - before[stop] + before[start] + needed <= most

    @cache
    def lowest(start: int) -> dict[int, Strip]:
        """Return the lowest strip that begins with a question, by where it ends."""
        rows: dict[tuple[int, int], _Row] = {(start, 0): _Row(0.0, 0, 0, ())}
        end = min(group.stop, start + MOST_IN_STRIP)
        # In order: what ends at a place is lengthened when all that ends there is known.
        for at in range(start, end):
            for used in range(UNITS - NARROWEST + 1):
                row = rows.get((at, used))
                if row is not None:
                    _lengthen(rows, row, at, used, end, column, low, partial(has_room, start))
        return {
            at: Strip(
                tuple(range(a, b) for a, b, _ in row.sides),
                tuple(wide[parts] for *_, parts in row.sides),
                row.height,
            )
            for (at, used), row in rows.items()
            if used == UNITS
        }

    return _fewest(group, room, between, lowest)


def _lengthen(
    rows: dict[tuple[int, int], _Row],
    row: _Row,
    at: int,
    used: int,
    end: int,
    column: Callable[[int, int, int], float | None],
    low: Callable[[int, int, int], float],
    has_room: Callable[[int, int, float], bool],
) -> None:
    """Note what strips there are with one column more, each the best of its length and width."""
    for stop in range(at + 1, end + 1):
        for parts in range(NARROWEST, UNITS - used + 1):
            if 0 < UNITS - used - parts < NARROWEST:
                continue  # no room would be left for another column
            if parts == UNITS and stop - at > 1:
                continue  # one column across the slide is as many strips
            if not has_room(stop, used + parts, row.height):
                break  # still less in a wider column
            least = max(row.height, low(at, stop, parts))
            best = rows.get((stop, used + parts))
            if best is not None and best.height < least - 0.01:
                continue
            if not has_room(stop, used + parts, least):
                continue
            high = column(at, stop, parts)
            if high is None:
                continue
            height = round(max(row.height, high), 2)
            if not has_room(stop, used + parts, height):
                continue
            place = (stop, used + parts)
            best = rows.get(place)
            if best is not None and best.height < height:
                continue  # most are higher: nothing else of them need be known
            longer = _Row(
                height,
                row.columns + 1,
                row.uneven + parts * parts,
                (*row.sides, (at, stop, parts)),
            )
            if best is None or longer < best:
                rows[place] = longer


def _fewest(
    group: range, room: float, between: float, lowest: Callable[[int], dict[int, Strip]]
) -> list[Strip] | None:
    # By how many questions are placed: the lowest way to place them in so many strips.
    ways: dict[int, list[Strip]] = {group.start: []}
    for _ in group:
        longer: dict[int, list[Strip]] = {}
        for placed, before in ways.items():
            for stop, made in lowest(placed).items() if placed < group.stop else ():
                way, best = [*before, made], longer.get(stop)
                high = _height(way, between)
                if high <= room and (best is None or high < _height(best, between)):
                    longer[stop] = way
        ways = longer
        if group.stop in ways:
            return ways[group.stop]
    return None


def _height(way: Sequence[Strip], between: float) -> float:
    return sum(strip.height for strip in way) + between * (len(way) - 1)
