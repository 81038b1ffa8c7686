"""Where the letters of a coordinate grid stand: by what they name, touching nothing else.

All is counted in whole numbers, of which so many make an em: a grid has to be quick to refuse, and
ordinary numbers would be placed by eye.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import lcm
from typing import NamedTuple, TypeAlias

from itembank.figures.drawing import Point
from itembank.figures.kinds.grid.grid_spots import (
    Block,
    Cut,
    Ratio,
    Spot,
    block_around,
    blocks_meet,
    bounded_cut,
    cut_parts_block,
    first_spots,
    smaller_ratio,
    square_of_gap,
    square_to_track,
)
from itembank.figures.label_room import room

Place: TypeAlias = tuple[Ratio, Ratio]
"""A place in the drawing, in ems: both numbers in lowest terms."""
Wanted: TypeAlias = tuple[str, Sequence[Spot], Sequence[tuple[int, int]], bool]
"""A letter, by what and on which sides of it it may stand, and whether that is a point."""
Try: TypeAlias = tuple[Sequence[Cut], int]
"""The strokes that a letter keeps off, and how far it stands from the letters beside it."""

CROSS = Fraction(3, 16)
"""How far the strokes of a point's cross reach."""
_FREE = Fraction(1, 8)
_APART = Fraction(3, 4)
"""Room between letters side by side, where there is any: between their points nobody could tell
at a glance which is which one's."""
_FAR = Fraction(3, 2)
"""The square of how far the letter of a line is from any point: further than that point's own."""
_WAYS: tuple[tuple[int, int], ...] = (
    *((1, 1), (-1, 1), (1, -1), (-1, -1)),
    *((1, 0), (-1, 0), (0, 1), (0, -1)),
)


class Named(NamedTuple):
    """A line or shape as it is drawn, with its letter; a shape has it inside, if there is room."""

    path: tuple[Place, ...]
    name: str
    closed: bool = False


class Surroundings(NamedTuple):
    """What letters have to keep clear of: the edges of a grid, its axes, points, lines, shapes."""

    low: Place
    high: Place
    axes: tuple[tuple[Place, ...], ...]
    points: tuple[tuple[str, Place], ...]
    named: tuple[Named, ...]


class Letters(NamedTuple):
    """Each letter with the middle of its place, counted in `unit` to an em.

    Or the first that has no place, and then none.
    """

    placed: tuple[tuple[str, Spot], ...]
    unit: int
    lost: str = ""

    def points(self) -> list[tuple[str, Point]]:
        """Return each letter with the middle of its place."""
        return [
            (name, Point(Fraction(x, self.unit), Fraction(y, self.unit)))
            for name, (x, y) in self.placed
        ]


def letter_places(around: Surroundings) -> Letters:
    """Return where each letter stands."""
    return _Placing(around).all()


def lost_letter(around: Surroundings) -> str:
    """Return the first letter that has no place however near they stand, or ``""``."""
    return _Placing(around).near().lost


class _Placing:
    def __init__(self, around: Surroundings) -> None:
        every = [around.low, around.high, *(at for _, at in around.points)]
        every += [at for path in around.axes for at in path]
        every += [at for shape in around.named for at in shape.path]
        # Halves of letters' rooms, sixteenths of lines, and thirds and quarters of shapes.
        self.unit = lcm(4800, *(48 * size for size in {size for at in every for _, size in at}))
        self.low, self.high = self._spot(around.low), self._spot(around.high)
        axes = [tuple(map(self._spot, path)) for path in around.axes]
        self.points = {name: self._spot(at) for name, at in around.points}
        self.names = [shape.name for shape in around.named]
        self.tracks = [tuple(map(self._spot, shape.path)) for shape in around.named]
        self.cuts = [bounded_cut(*ends) for track in self.tracks for ends in pairwise(track)]
        self.all_cuts = self.cuts + [
            bounded_cut(*ends) for track in axes for ends in pairwise(track)
        ]
        self.closed = [shape.closed for shape in around.named]
        self.free, self.cross = self._whole(_FREE), self._whole(CROSS)
        self.apart = self._whole(_APART)
        far = self.cross + self.free // 2
        self.crosses = [block_around(at, far, far) for at in self.points.values()]

    def _whole(self, value: Fraction | int) -> int:
        return value.numerator * self.unit // value.denominator

    def _spot(self, at: Place) -> Spot:
        (x, across), (y, up) = at
        return x * self.unit // across, y * self.unit // up

    def near(self) -> Letters:
        """Return the letters where each finds its first place, as near to others as may be."""
        return self._placed(self._wanted(), [(self.all_cuts, self.free), (self.cuts, self.free)])

    def all(self) -> Letters:
        """Return the letters apart where there is room, else near, else which has no place."""
        near = self.near()
        if near.lost:
            return near
        wanted = self._wanted()
        off, on = self.all_cuts, self.cuts
        # Apart, in either order, and off the axes; then on an axis too; last as near as may be.
        apart = [(off, self.apart)]
        for order, tries in (
            (wanted, apart),
            (wanted[::-1], apart),
            (wanted, [*apart, (on, self.apart)]),
        ):
            found = self._placed(order, tries)
            if not found.lost:
                return found
        return near

    def _wanted(self) -> list[Wanted]:
        wanted: list[Wanted] = [(name, [at], _WAYS, True) for name, at in self.points.items()]
        for name, track, closed in zip(self.names, self.tracks, self.closed, strict=True):
            if name:
                ways = ((0, 0), *_WAYS) if closed else _WAYS
                wanted.append((name, first_spots(track, closed), ways, False))
        return wanted

    def _placed(self, wanted: Sequence[Wanted], tries: Sequence[Try]) -> Letters:
        """Return where letters stand that find their places in turn, or the first with none."""
        placed: list[tuple[str, Spot]] = []
        letters: list[Block] = []
        for name, starts, ways, of_point in wanted:
            found = self._place(name, starts, ways, letters, tries, of_point=of_point)
            if found is None:
                return Letters((), self.unit, name)
            at, (left, bottom, right, top) = found
            placed.append((name, at))
            free = self.free
            letters.append((left - free, bottom - free, right + free, top + free))
        return Letters(tuple(placed), self.unit)

    def _place(
        self,
        name: str,
        starts: Sequence[Spot],
        ways: Sequence[tuple[int, int]],
        letters: Sequence[Block],
        tries: Sequence[Try],
        *,
        of_point: bool,
    ) -> tuple[Spot, Block] | None:
        need = room(name)
        wide, high = self._whole(need.width / 2), self._whole(need.height / 2)
        reach_x, reach_y = wide + self.cross + self.free, high + self.cross // 2
        for cuts, apart in tries:
            for x, y in starts:
                for dx, dy in ways:
                    far_y = high + self.cross + self.free if dx == 0 else reach_y
                    at = (x + dx * reach_x, y + dy * far_y)
                    block = block_around(at, wide, high)
                    if self._clear(block, letters, cuts, apart) and self._own(name, at, of_point):
                        return at, block
        return None

    def _clear(
        self, block: Block, letters: Sequence[Block], cuts: Sequence[Cut], apart: int
    ) -> bool:
        left, bottom, right, top = block
        free = self.free
        if not (
            left >= self.low[0] + free
            and right <= self.high[0] - free
            and bottom >= self.low[1] + free // 2
            and top <= self.high[1] - free // 2
        ):
            return False
        if any(blocks_meet(block, cross) for cross in self.crosses):
            return False
        aside = (left - apart + free, bottom, right + apart - free, top)
        if any(blocks_meet(aside, letter) for letter in letters):
            return False
        wide = left, bottom, right, top = left - free, bottom - free, right + free, top + free
        for a, b, (first, least, last, most) in cuts:
            if last <= left or first >= right or most <= bottom or least >= top:
                continue  # it lies to one side of the letter, as most do
            if cut_parts_block(a, b, wide):
                return False
        return True

    def _own(self, name: str, at: Spot, of_point: bool) -> bool:
        """Tell whether a letter stands plainly by what it names: its own point, or its own line."""
        if of_point:
            twice = 2 * square_of_gap(at, self.points[name])
            return all(
                twice < square_of_gap(at, spot)
                for point, spot in self.points.items()
                if point != name
            )
        far = self._whole(_FAR) * self.unit
        if any(square_of_gap(at, spot) <= far for spot in self.points.values()):
            return False
        if len(self.tracks) == 1:
            return True
        mine_away = square_to_track(at, self.tracks[self.names.index(name)])
        twice_away = (2 * mine_away[0], mine_away[1])
        return all(
            owner == name or smaller_ratio(twice_away, square_to_track(at, track))
            for owner, track in zip(self.names, self.tracks, strict=True)
        )
