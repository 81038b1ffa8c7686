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

from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine.page import theme
from itembank.pages.parts.questions.instructions import Instruction, shared
from itembank.pages.parts.slide.even_slides import splits
from itembank.pages.parts.slide.slide_board import Slide, SlideBoard, word_left
from itembank.pages.parts.slide.slide_ways import (
    ANYHOW,
    CLOSE,
    CLOSEST,
    FIGURES_LEAST,
    NEARLY,
    Pass,
    Spacing,
    labelled,
    passes_of,
)

MOST_SMALLER = 4.0
"""How much smaller questions may be set so that a word stays with its equation."""


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


def _together(board: _Board, found: Slide, spacing: Spacing) -> Slide:
    """Return the slide, or one like it on which no word stands alone above its equation."""
    if word_left(found):
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


class _Board(SlideBoard):
    """The questions of a starter, and the ways they are shared out over slides."""

    def __init__(
        self,
        items: Sequence[PackItem],
        told: Sequence[Instruction],
        top: float,
        bottom: float,
        one_slide: bool = False,
    ) -> None:
        super().__init__(items, told, top, bottom, one_slide)
        self._fitting: dict[range, bool] = {}

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
