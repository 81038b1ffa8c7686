"""Where the questions of a starter stand: worked out once, used by both slides.

Question and answer slides show every question at the same place, in the same size, broken at
the same words. Answers stand at the right edge of their column, where eyes find them; words
are broken early only where a line would run into its own answer. What several questions ask
of their answers is said once, at the foot.

All questions stand on one slide if they can: in two columns alike, at the largest size that
fits; else in columns of other widths, or with a question more in one of them; and at the least
size in any of these ways, and with lines set closer at the last. Where a word such as *Solve*
would stand alone above its equation, a way that keeps them together is taken, at a size a little
smaller if need be.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple, TypeAlias

from itembank.errors import ItembankError
from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine import theme
from itembank.pages.engine.paragraph import Flow
from itembank.pages.parts.answers import key_on_slide
from itembank.pages.parts.even_slides import splits
from itembank.pages.parts.instructions import Instruction, shared
from itembank.pages.parts.question_cell import LINE_GAP, Cell, cell, leaves_word, prompt

LEFT = theme.SLIDE_MARGIN

RIGHT = theme.SLIDE[0] - theme.SLIDE_MARGIN

COLUMN_GAP = 24.0


class Spacing(NamedTuple):
    """Least room between one question and the next in points, between its own lines in ems."""

    between: float
    lines: float


ROOMY = Spacing(10.0, LINE_GAP)

CLOSE = Spacing(7.0, LINE_GAP)
"""At the least size, where the questions would not fit on one slide otherwise."""

CLOSEST = Spacing(7.0, 0.12)
"""Where they still do not."""

MOST_BETWEEN = 64.0
"""Most room between questions: with more they no longer look like one list."""

MOST_SMALLER = 4.0
"""How much smaller questions may be set so that a word stays with its equation."""

LAST_RESORT = 18.0
"""A single question that fills more than a slide is set smaller, down to this size."""


class Spot(NamedTuple):
    """A cell at its place: `number` is the question's, `x` its left edge, `top` its top."""

    number: int
    item: PackItem
    cell: Cell
    x: float
    top: float


class Slide(NamedTuple):
    """The questions of one slide, and what it says of their answers at its foot."""

    spots: list[Spot]
    size: float
    columns: int
    told: list[str]


def arrange(items: Sequence[PackItem], top: float, bottom: float) -> list[Slide]:
    """Place all questions on as few slides as the type size allows, evenly shared out.

    Raises:
        ItembankError: one question alone is too long for a whole slide.
    """
    least, most = theme.SLIDE_QUESTION
    told = shared(items)
    board = _Board(items, told, top, bottom)
    everything = range(len(items))
    for size, ways, spacing in _passes(int(least), int(most)):
        if whole := board.slide(everything, size, ways, spacing):
            return [_telling(_together(board, whole, spacing), told)]
    filled = board.filled(least)
    spacing = CLOSE
    if groups := next(filter(board.fit, splits(len(items), len(filled))), None):
        for size, ways, spacing in _passes(int(least), int(most)):
            made = [board.slide(group, size, ways, spacing) for group in groups]
            if all(made):
                filled = [slide for slide in made if slide]
                break
    return [_telling(_together(board, slide, spacing), told) for slide in filled]


def _word_left(slide: Slide) -> bool:
    """Tell whether a word stands alone above its equation on a slide."""
    return any(leaves_word(spot.cell.question) for spot in slide.spots)


def _together(board: _Board, found: Slide, spacing: Spacing) -> Slide:
    """Return the slide, or one like it on which no word stands alone above its equation."""
    if _word_left(found):
        group = range(found.spots[0].number - 1, found.spots[-1].number)
        least = int(max(theme.SLIDE_QUESTION[0], found.size - MOST_SMALLER))
        size = found.size
        while size >= least:
            if made := board.slide(group, size, _NEARLY, spacing, together=True):
                return made
            size -= 2
        if made := board.slide(group, least, _ANYHOW, CLOSEST, together=True):
            return made
    return found


Way: TypeAlias = tuple[float, int]
"""The first column's share of the width, and how many questions more than half stand in it."""

_ALIKE: tuple[Way, ...] = ((0.5, 0),)

_NEARLY: tuple[Way, ...] = tuple(
    (share, more) for more in (0, 1, -1) for share in (0.5, 0.45, 0.55, 0.4, 0.6)
)

_FINER = (0.425, 0.475, 0.525, 0.575, 0.35, 0.65)
"""Shares tried where no rounder one does: a word less on a line can save one."""

_ANYHOW: tuple[Way, ...] = (
    *_NEARLY,
    *((0.5, more) for more in (2, -2)),
    *((share, more) for more in (0, 1, -1, 2, -2) for share in _FINER),
)


def _passes(least: int, most: int) -> Iterator[tuple[int, tuple[Way, ...], Spacing]]:
    """Yield sizes, the ways to try at each and the room to leave, the best look first."""
    larger = range(most, least, -2)
    yield from ((size, _ALIKE, ROOMY) for size in larger)
    yield from ((size, _NEARLY, ROOMY) for size in larger)
    yield least, _ALIKE, ROOMY
    yield least, _ANYHOW, ROOMY
    yield least, _ANYHOW, CLOSE
    yield least, _ANYHOW, CLOSEST


def _telling(slide: Slide, told: Sequence[Instruction]) -> Slide:
    here = [spot.number for spot in slide.spots]
    return slide._replace(
        told=[words for instruction in told if (words := instruction.words(here))]
    )


class _Board:
    """The questions of a starter and the room they have; each is set once at a size and width."""

    def __init__(
        self, items: Sequence[PackItem], told: Sequence[Instruction], top: float, bottom: float
    ) -> None:
        self.items = items
        self.flows = [
            (Flow(prompt(item, told, answered=True)), Flow(key_on_slide(item))) for item in items
        ]
        self.top, self.room = top, top - bottom
        self.digits = len(str(len(items)))
        self._cells: dict[tuple[int, float, float, float], Cell] = {}
        self._fitting: dict[range, bool] = {}

    def cell(self, i: int, width: float, size: float, lines: float = LINE_GAP) -> Cell:
        """Return a question set in a column of a width, with so much room between its lines."""
        found = self._cells.get((i, width, size, lines))
        if found is None:
            made = cell(*self.flows[i], width, size, self.digits, lines)
            found = self._cells[i, width, size, lines] = made
        return found

    def fit(self, groups: Iterable[range]) -> bool:
        """Tell whether each group has room on a slide, at the least size and set the closest."""
        least = int(theme.SLIDE_QUESTION[0])
        for group in groups:
            if group not in self._fitting:
                made = self.slide(group, least, _ANYHOW, CLOSEST)
                self._fitting[group] = made is not None
            if not self._fitting[group]:
                return False
        return True

    def filled(self, size: float) -> list[Slide]:
        """Return the slides got by putting as many questions on each as fit at a size."""
        out: list[Slide] = []
        start, count = 0, len(self.items)
        while start < count:
            best = self.alone(start, size)
            for end in range(count, start + 1, -1):
                if made := self.slide(range(start, end), size, _ANYHOW, CLOSE):
                    best = made
                    break
            out.append(best)
            start += len(best.spots)
        return out

    def slide(
        self,
        group: range,
        size: float,
        ways: Sequence[Way],
        spacing: Spacing,
        together: bool = False,
    ) -> Slide | None:
        """Return the questions of `group` placed on one slide, or None where they do not fit.

        `together`: or where a word would stand alone above its equation.
        """
        half = (len(group) + 1) // 2
        for share, more in ways if len(group) > 1 else ():
            split = half + more
            if not 0 < split < len(group):
                continue
            both = RIGHT - LEFT - COLUMN_GAP
            widths = (round(both * share, 2), round(both * (1 - share), 2))
            sides = (group[:split], group[split:])
            made = self._placed(sides, widths, size, spacing)
            if made and not (together and _word_left(made)):
                return made
        return self._placed((group,), (RIGHT - LEFT,), size, spacing)

    def _placed(
        self, sides: Sequence[range], widths: Sequence[float], size: float, spacing: Spacing
    ) -> Slide | None:
        columns: list[list[Cell]] = []
        for side, width in zip(sides, widths, strict=True):
            columns.append([])
            needed = -spacing.between
            for i in side:
                made = self.cell(i, width, size, spacing.lines)
                needed += made.height + spacing.between
                if needed > self.room or made.question.cramped or made.answer.cramped:
                    return None
                columns[-1].append(made)
        lefts = (LEFT, LEFT + widths[0] + COLUMN_GAP)
        numbers = [i for side in sides for i in side]
        cells = [made for column in columns for made in column]
        tops = _tops(cells, len(sides[0]), self.top, self.room)
        spots = [
            Spot(i + 1, self.items[i], made, lefts[column], y)
            for i, made, (column, y) in zip(numbers, cells, tops, strict=True)
        ]
        return Slide(spots, size, len(sides), [])

    def alone(self, i: int, size: float) -> Slide:
        """Return one long question on a slide of its own, set smaller as a last resort."""
        while size >= LAST_RESORT:
            made = self.cell(i, RIGHT - LEFT, size)
            if made.height <= self.room:
                return Slide([Spot(i + 1, self.items[i], made, LEFT, self.top)], size, 1, [])
            size -= 2
        raise ItembankError(
            f"Question {i + 1} ({self.items[i].address}) is too long for a slide, even at "
            f"{LAST_RESORT:.0f} point. Choose another item or shorten its words."
        )


def _tops(cells: Sequence[Cell], split: int, top: float, room: float) -> list[tuple[int, float]]:
    """Return the column and the top of each cell; where it fits, rows share their baseline."""
    sides = (cells[:split], cells[split:])
    rows = [
        [side[row] for side in sides if row < len(side)]
        for row in range(max(len(side) for side in sides))
    ]
    above = [max(made.baseline for made in row) for row in rows]
    below = [max(made.height - made.baseline for made in row) for row in rows]
    needed = sum(above) + sum(below)
    out: list[tuple[int, float]] = []
    if needed + ROOMY.between * (len(rows) - 1) <= room:
        extra = min(MOST_BETWEEN, (room - needed) / len(rows))
        starts = [top]
        for up, down in zip(above, below, strict=True):
            starts.append(starts[-1] - up - down - extra)
        for column, side in enumerate(sides):
            for made, start, up in zip(side, starts, above, strict=False):
                out.append((column, start - up + made.baseline))
        return out
    for column, side in enumerate(sides):
        spare = room - sum(made.height for made in side)
        extra = min(MOST_BETWEEN, spare / max(1, len(side)))
        y = top
        for made in side:
            out.append((column, y))
            y -= made.height + extra
    return out
