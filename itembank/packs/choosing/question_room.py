"""How much room a question takes on a slide, near enough to choose between questions by.

Only whoever draws it can say for certain. What is told here is how high a question stands in half
a slide at the least size: its words above its figure or right of it, whichever is lower.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

from itembank.figures.figure import Figure
from itembank.packs.choosing.candidate import FULL, Candidate

LINE_HIGH = 1.25
"""How high a line of words stands, in ems."""
COLUMN = 17.5
"""How wide half a slide is beside the question's number, in ems."""
SMALLEST = 0.75
"""How small a slide sets figures against its words, where it has to."""
BESIDE = 7.0
"""The least room for words beside a figure, in ems."""
GAP = 1.0
"""Room between a figure and the words beside it, in ems."""


REFERRING = 31
"""Characters that say where the figure of a question is, if another has the same."""


def shared_figure(candidate: Candidate) -> Figure | None:
    """Return a question's figure if another question may be asked about it, or None.

    Where the answer is drawn into it, it is the question's own.
    """
    item = candidate.item
    return item.figure if item.key_figure is None else None


def room_of_all(candidates: Iterable[Candidate]) -> float:
    """Return about how high questions stand below each other: a figure that they share once."""
    seen: set[Figure] = set()
    high = 0.0
    for candidate in candidates:
        figure = shared_figure(candidate)
        high += room_without(candidate) if figure in seen else room_of(candidate)
        seen |= {figure} if figure else set()
    return high


def room_without(candidate: Candidate) -> float:
    """Return about how high a question stands that says where its figure is."""
    return LINE_HIGH * (candidate.length + REFERRING) / FULL


def room_of(candidate: Candidate) -> float:
    """Return about how high a question stands in half a slide, in ems of its words."""
    length = candidate.length
    words = LINE_HIGH * max(1.0, length / FULL)
    if candidate.figure_size is None:
        return words
    wide, high = (SMALLEST * side for side in candidate.figure_size)
    # Words stand beside a figure only where some of them fit on a line.
    left = COLUMN - wide - GAP
    if left < BESIDE:
        return words + high
    beside = LINE_HIGH * ceil(length / (FULL * left / COLUMN))
    return min(words + high, max(beside, high))
