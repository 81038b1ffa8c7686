"""Keeps what was found on a drawing while one reading of it after another is measured."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import TypeVar

from itembank.figures.drawing import Drawing

Found = TypeVar("Found")


def once_a_drawing(find: Callable[[Drawing], Found]) -> Callable[[Drawing], Found]:
    """Return a function that looks at a drawing once, as long as no other one is looked at.

    All readings of a figure are measured in turn, and each asks where its letters stand. What
    it returns is shared: no caller changes it.

    >>> looked = []
    >>> marks = once_a_drawing(lambda drawing: looked.append(drawing) or len(drawing.marks))
    >>> empty = Drawing((), 0, 0, 0, 0)
    >>> marks(empty), marks(empty), len(looked)
    (0, 0, 1)
    """
    last: tuple[Drawing, Found] | None = None

    @wraps(find)
    def found(drawing: Drawing) -> Found:
        nonlocal last
        kept = last
        if kept is None or kept[0] is not drawing:
            last = kept = (drawing, find(drawing))
        return kept[1]

    return found
