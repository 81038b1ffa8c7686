"""The ways to set the questions of a starter on a slide: sizes, columns and room, in turn.

What looks best is tried first; each later way leaves less room or sets smaller.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple, TypeAlias

from itembank.pages.engine.page import theme
from itembank.pages.parts.questions.question_cell import USUAL, Setting


class Spacing(NamedTuple):
    """Least room between one question and the next in points, and how close each is set."""

    between: float
    setting: Setting


ROOMY = Spacing(10.0, USUAL)

CLOSE = Spacing(7.0, USUAL)
"""Where the questions would not fit on one slide otherwise, or only at the least size."""

CLOSEST = Spacing(5.0, Setting(0.12, lowest=True))
"""Where they still do not."""

TIGHTEST = Spacing(4.0, Setting(0.08, lowest=True, pad=4.0))
"""The closest in which lines, boxes and their edges stay clear of each other."""

FIGURES_LEAST = (20.0, theme.SLIDE_SMALL)
"""Type sizes of the labels in a figure on a slide that has no room for larger ones: as small as
anything else that pupils read there."""

Way: TypeAlias = tuple[float, int]
"""The first column's share of the width, and how many questions more than half stand in it."""

ALIKE: tuple[Way, ...] = ((0.5, 0),)

NEARLY: tuple[Way, ...] = tuple(
    (share, more) for more in (0, 1, -1) for share in (0.5, 0.45, 0.55, 0.4, 0.6)
)

_FINER = (0.425, 0.475, 0.525, 0.575, 0.35, 0.65)
"""Shares tried where no rounder one does: a word less on a line can save one."""

ANYHOW: tuple[Way, ...] = (
    *NEARLY,
    *((0.5, more) for more in (2, -2)),
    *((share, more) for more in (0, 1, -1, 2, -2) for share in _FINER),
)


class Pass(NamedTuple):
    """A size to try, the ways to share two columns at it, and the room to leave.

    Where none of them fits, the questions may go in `strips` across the slide.
    """

    size: int
    ways: tuple[Way, ...]
    spacing: Spacing
    strips: bool = False


def passes_of(figures: bool) -> Iterator[Pass]:
    """Yield what to try, the best look first."""
    least, most = map(int, theme.SLIDE_QUESTION)
    larger = range(most, least, -2)
    yield from (Pass(size, ALIKE, ROOMY) for size in larger)
    yield from (Pass(size, NEARLY, ROOMY) for size in larger)
    if figures:
        yield from (Pass(size, NEARLY, labelled(ROOMY, least / size)) for size in larger)
    scales = (least, FIGURES_LEAST[0]) if figures else (least,)
    for size in (least + 4, least + 2):
        for labels in scales:
            yield Pass(size, ANYHOW, labelled(CLOSE, labels / size), strips=True)
    for labels in (least, *(FIGURES_LEAST if figures else ())):
        yield Pass(least + 2, NEARLY, labelled(CLOSEST, labels / (least + 2)), strips=True)
    yield Pass(least, ALIKE, ROOMY)
    yield Pass(least, ANYHOW, ROOMY)
    scales = (least, *(FIGURES_LEAST if figures else ()))
    for spacing in (CLOSE, CLOSEST, TIGHTEST):
        for labels in scales:
            yield Pass(least, ANYHOW, labelled(spacing, labels / least), strips=True)


def labelled(spacing: Spacing, scale: float) -> Spacing:
    """Return a spacing with figures at another size against that of the words."""
    return spacing._replace(setting=spacing.setting._replace(pictures=scale))
