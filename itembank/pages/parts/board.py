"""Where the questions of a starter stand: worked out once, used by both slides.

Question and answer slides show every question at the same place, in the same size, broken at
the same words. Answers stand at the right edge of their column, where eyes find them; words
are broken early only where a line would run into its own answer. What several questions ask
of their answers is said once, at the foot.

All questions stand on one slide if they can: in two columns alike, at the largest size that
fits; else in columns of other widths, or with a question more in one of them; then with figures
no larger than the least size asks, or in strips across the slide; and at the least size in any of
these ways, with smaller figures, and with lines set closer at the last. On one slide a figure that
questions share stands once. Where a word such as *Solve* would stand alone above its equation, a
way that keeps them together is taken, at a size a little smaller if need be.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from itembank.errors import ItembankError
from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine.page import theme
from itembank.pages.engine.text.paragraph import Flow
from itembank.pages.parts.answers import key_on_slide
from itembank.pages.parts.even_slides import splits
from itembank.pages.parts.instructions import Instruction, shared
from itembank.pages.parts.least_heights import LeastHeights
from itembank.pages.parts.question_cell import USUAL, Cell, Setting, cell, leaves_word, prompt
from itembank.pages.parts.slide_places import column_tops, strip_tops, tops_in_strip
from itembank.pages.parts.slide_ways import (
    ANYHOW,
    CLOSE,
    CLOSEST,
    FIGURES_LEAST,
    NEARLY,
    ROOMY,
    Pass,
    Spacing,
    Way,
    labelled,
    passes_of,
)
from itembank.pages.parts.strips import SOME_WIDTHS, strips, width_of

LEFT = theme.SLIDE_MARGIN

RIGHT = theme.SLIDE[0] - theme.SLIDE_MARGIN

COLUMN_GAP = 24.0


MOST_SMALLER = 4.0
"""How much smaller questions may be set so that a word stays with its equation."""

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


def arrange(items: Sequence[PackItem], top: float, bottom: float) -> list[Slide]:
    """Place all questions on as few slides as the type size allows, evenly shared out.

    Raises:
        ItembankError: one question alone is too long for a whole slide.
    """
    told = shared(items)
    board = _Board(items, told, top, bottom, one_slide=True)
    everything = range(len(items))
    passes = list(passes_of(any(item.picture is not None for item in items)))
    # Whatever looks better takes more room.
    whole = board.fit([everything], passes[-1]) and board.looking_best([everything], passes)
    if whole:
        return [_telling(_together(board, whole[0][0], whole[1]), told)]
    board = _Board(items, told, top, bottom)
    filled = board.filled(theme.SLIDE_QUESTION[0])
    made = (filled, CLOSE)
    for count in range(2, len(filled) + 1):
        ways = (groups for groups in splits(len(items), count) if board.fit(groups, passes[-1]))
        if (groups := next(ways, None)) and (found := board.looking_best(groups, passes)):
            made = found
            break
    return [_telling(_together(board, slide, made[1]), told) for slide in made[0]]


def fits_slides(items: Sequence[PackItem], top: float, bottom: float, count: int) -> bool:
    """Tell whether all questions have room on so many slides, set the closest."""
    board = _Board(items, shared(items), top, bottom, one_slide=count == 1)
    *_, closest = passes_of(any(item.picture is not None for item in items))
    ways = [[range(len(items))]] if count == 1 else splits(len(items), count)
    return any(board.fit(groups, closest) for groups in ways)


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
            # Labels in figures stay as large as they may be the least.
            labels = max(spacing.setting.pictures, FIGURES_LEAST[-1] / size)
            near = labelled(spacing, labels)
            if made := board.slide(group, size, NEARLY, near, together=True):
                return made
            size -= 2
        labels = max(spacing.setting.pictures, FIGURES_LEAST[-1] / least)
        closest = labelled(CLOSEST, labels)
        if made := board.slide(group, least, ANYHOW, closest, together=True):
            return made
        if made := board.in_strips(group, least, closest, together=True):
            return made
    return found


def _telling(slide: Slide, told: Sequence[Instruction]) -> Slide:
    here = [spot.number for spot in slide.spots]
    return slide._replace(
        told=[words for instruction in told if (words := instruction.words(here))]
    )


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


class _Board:
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
        self._fitting: dict[range, bool] = {}

    def cell(self, i: int, width: float, size: float, setting: Setting = USUAL) -> Cell:
        """Return a question set in a column of a width."""
        found = self._cells.get((i, width, size, setting))
        if found is None:
            made = cell(*self.flows[i], width, size, self.digits, setting)
            found = self._cells[i, width, size, setting] = made
        return found

    def looking_best(
        self, groups: Sequence[range], passes: Iterable[Pass]
    ) -> tuple[list[Slide], Spacing] | None:
        """Return a slide for each group, all set in the way that looks best, or None."""
        for tried in passes:
            made: list[Slide] = []
            for group in groups:
                slide = self._tried(group, tried)
                if slide is None:
                    break
                made.append(slide)
            else:
                return made, tried.spacing
        return None

    def _tried(self, group: range, tried: Pass) -> Slide | None:
        if tried.ways and (made := self.slide(group, tried.size, tried.ways, tried.spacing)):
            return made
        if not tried.strips:
            return None
        made = self.in_strips(group, tried.size, tried.spacing)
        return made and (self.in_strips(group, tried.size, tried.spacing, together=True) or made)

    def fit(self, groups: Iterable[range], closest: Pass) -> bool:
        """Tell whether each group has room on a slide, set the closest."""
        for group in groups:
            if group not in self._fitting:
                self._fitting[group] = self._tried(group, closest) is not None
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
                if made := self.slide(range(start, end), size, ANYHOW, CLOSE):
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
