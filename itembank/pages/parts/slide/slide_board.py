"""The questions of a starter set on one slide: in columns, in strips across it, or one alone.

A question stands where its words, its figure and its answer have room; which of the ways to set
them is taken is chosen elsewhere (:mod:`itembank.pages.parts.slide.board`).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from itembank.errors import ItembankError
from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine.page import theme
from itembank.pages.engine.text.paragraph import Flow
from itembank.pages.parts.questions.answers import key_on_slide
from itembank.pages.parts.questions.instructions import Instruction
from itembank.pages.parts.questions.question_cell import (
    USUAL,
    Cell,
    Setting,
    cell,
    leaves_word,
    prompt,
)
from itembank.pages.parts.slide.least_heights import LeastHeights
from itembank.pages.parts.slide.slide_places import column_tops, strip_tops, tops_in_strip
from itembank.pages.parts.slide.slide_ways import ROOMY, Spacing, Way
from itembank.pages.parts.slide.strips import SOME_WIDTHS, strips, width_of

LEFT = theme.SLIDE_MARGIN

RIGHT = theme.SLIDE[0] - theme.SLIDE_MARGIN

COLUMN_GAP = 24.0


LAST_RESORT = 18.0
"""A single question that fills more than a slide is set smaller, down to this size."""


class Spot(NamedTuple):
    """A cell at its place: `number` is the question's, `x` its left edge, `top` its top.

    Its `width` is that of its column.
    """

    number: int
    item: PackItem
    cell: Cell
    x: float
    top: float
    width: float


class Slide(NamedTuple):
    """The questions of one slide, and what it says of their answers at its foot."""

    spots: list[Spot]
    size: float
    told: list[str]
    rules: tuple[float, ...] = ()
    """Heights of the lines between strips of questions, which say where to read on."""


def word_left(slide: Slide) -> bool:
    """Tell whether a word stands alone above its equation on a slide."""
    return any(leaves_word(spot.cell.question) for spot in slide.spots)


def _shown_by(items: Sequence[PackItem]) -> dict[int, int]:
    """Return the number of the question that shows the figure of a later one, by its place.

    A figure into which the answer is drawn is its question's own.
    """
    first: dict[str, int] = {}
    found: dict[int, int] = {}
    for i, item in enumerate(items):
        if item.picture is not None and item.key_picture is None:
            shown = first.setdefault(item.picture.model_dump_json(), i)
            if shown != i:
                found[i] = shown + 1
    return found


class SlideBoard:
    """The questions of a starter and the room they have; each is set once at a size and width."""

    def __init__(
        self,
        items: Sequence[PackItem],
        told: Sequence[Instruction],
        top: float,
        bottom: float,
        one_slide: bool = False,
    ) -> None:
        self.items = items
        # On several slides a figure may stand on another than the question that is about it.
        shown_by = _shown_by(items) if one_slide else {}
        self.flows = [
            (Flow(prompt(item, told, True, shown_by.get(i))), Flow(key_on_slide(item)))
            for i, item in enumerate(items)
        ]
        self.top, self.room = top, top - bottom
        self.digits = len(str(len(items)))
        self._cells: dict[tuple[int, float, float, Setting], Cell] = {}
        figures = [
            question.clusters[-1].atoms[-1].picture is not None for question, _ in self.flows
        ]
        some = [width_of(parts, RIGHT - LEFT, COLUMN_GAP) for parts in SOME_WIDTHS]
        self.least = LeastHeights(some, self.cell, figures).least

    def cell(self, i: int, width: float, size: float, setting: Setting = USUAL) -> Cell:
        """Return a question set in a column of a width."""
        found = self._cells.get((i, width, size, setting))
        if found is None:
            made = cell(*self.flows[i], width, size, self.digits, setting)
            found = self._cells[i, width, size, setting] = made
        return found

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
            if made and not (together and word_left(made)):
                return made
        return self._placed((group,), (RIGHT - LEFT,), size, spacing)

    def _placed(
        self, sides: Sequence[range], widths: Sequence[float], size: float, spacing: Spacing
    ) -> Slide | None:
        between, setting = spacing
        columns: list[list[Cell]] = []
        above: list[float] = []
        for side, width in zip(sides, widths, strict=True):
            least = [self.least(i, width, size, setting) for i in side]
            above.append(sum(least) + between * (len(side) - 1))
            if above[-1] > self.room:
                return None
        for side, width, needed in zip(sides, widths, above, strict=True):
            columns.append([])
            for i in side:
                made = self._whole(i, width, size, spacing)
                if made is None:
                    return None
                needed += made.height - self.least(i, width, size, setting)
                if needed > self.room:
                    return None
                columns[-1].append(made)
        lefts = (LEFT, LEFT + widths[0] + COLUMN_GAP)
        numbers = [i for side in sides for i in side]
        cells = [made for column in columns for made in column]
        tops = column_tops(columns, self.top, self.room, ROOMY.between)
        spots = [
            Spot(i + 1, self.items[i], made, lefts[column], y, widths[column])
            for i, made, (column, y) in zip(numbers, cells, tops, strict=True)
        ]
        return Slide(spots, size, [])

    def _whole(self, i: int, width: float, size: float, spacing: Spacing) -> Cell | None:
        """Return a question set in a column, or None where something in it is too wide."""
        made = self.cell(i, width, size, spacing.setting)
        return None if made.question.cramped or made.answer.cramped else made

    def in_strips(
        self, group: range, size: float, spacing: Spacing, together: bool = False
    ) -> Slide | None:
        """Return the questions of `group` in strips across one slide, or None without room.

        `together`: or where a word or two would stand alone above an equation.
        """

        def whole(i: int, width: float) -> Cell | None:
            made = self._whole(i, width, size, spacing)
            return None if together and made and leaves_word(made.question, 2) else made

        def least(i: int, width: float) -> float:
            return self.least(i, width, size, spacing.setting)

        between = spacing.between
        made = strips(group, RIGHT - LEFT, self.room, COLUMN_GAP, between, whole, least)
        if made is None:
            return None
        spots = []
        tops = strip_tops(made, self.top, self.room)
        for strip, top in zip(made, tops, strict=True):
            x = LEFT
            sides = list(zip(strip.columns, strip.widths, strict=True))
            columns = [
                [self.cell(i, width, size, spacing.setting) for i in side] for side, width in sides
            ]
            for (side, width), cells in zip(sides, columns, strict=True):
                starts = tops_in_strip(cells, top, strip.height, columns)
                spots += [
                    Spot(i + 1, self.items[i], made, x, y, width)
                    for i, made, y in zip(side, cells, starts, strict=True)
                ]
                x += width + COLUMN_GAP
        ends = [top - strip.height for strip, top in zip(made, tops, strict=True)]
        rules = tuple((end + top) / 2 for end, top in zip(ends, tops[1:], strict=False))
        return Slide(spots, size, [], rules)

    def alone(self, i: int, size: float) -> Slide:
        """Return one long question on a slide of its own, set smaller as a last resort."""
        while size >= LAST_RESORT:
            made = self.cell(i, RIGHT - LEFT, size)
            if made.height <= self.room:
                spot = Spot(i + 1, self.items[i], made, LEFT, self.top, RIGHT - LEFT)
                return Slide([spot], size, [])
            size -= 2
        raise ItembankError(
            f"Question {i + 1} ({self.items[i].address}) is too long for a slide, even at "
            f"{LAST_RESORT:.0f} point. Choose another item or shorten its words."
        )
