"""The least height of a question on a slide, known before it is set: most ways to set fail by it.

Each question is set small in a few widths. What is larger or stands in a narrower column is at
least as high, so that many a way need not be tried at all to know that it has no room.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Sequence
from math import inf
from typing import TypeAlias

from itembank.pages.engine.page import theme
from itembank.pages.parts.questions.question_cell import Cell, Setting
from itembank.pages.parts.slide.slide_ways import FIGURES_LEAST, TIGHTEST

LEAST = theme.SLIDE_QUESTION[0]
"""The least size of a question on a slide, in points."""

CLOSEST = TIGHTEST.setting._replace(pictures=FIGURES_LEAST[-1] / LEAST)
"""The closest that a question is set at this size."""

NEAR = 0.02
"""How much lower than told a question may turn out: lines do not break quite evenly."""

Set: TypeAlias = Callable[[int, float, float, Setting], Cell]
"""Sets a question in a column of a width, at a size."""


class LeastHeights:
    """How high each question is at the least, in columns up to some `widths`, the least first.

    `figures` says which of the questions have one.
    """

    def __init__(self, widths: Sequence[float], cell: Set, figures: Sequence[bool]) -> None:
        self.widths, self.cell, self.figures = widths, cell, figures
        self._heights: dict[tuple[int, int], float] = {}

    def least(self, i: int, width: float, size: float, setting: Setting) -> float:
        """Return a height in points that a question is hardly below; infinite if it is too wide."""
        # In ems a larger question has a narrower column.
        place = bisect_left(self.widths, width * LEAST / size)
        if place == len(self.widths):
            return 0.0
        # Where words break sooner, an answer may stand beside the last of them and not below.
        height = min(self._height(i, place), self._height(i, max(0, place - 1)))
        larger = size / LEAST
        if self.figures[i]:
            # Figures grow by their labels, which may be as small in larger questions.
            larger = min(larger, larger * setting.pictures / CLOSEST.pictures)
        return height * larger

    def _height(self, i: int, place: int) -> float:
        height = self._heights.get((i, place))
        if height is None:
            made = self.cell(i, self.widths[place], LEAST, CLOSEST)
            cramped = made.question.cramped or made.answer.cramped
            height = self._heights[i, place] = inf if cramped else made.height * (1 - NEAR)
        return height
