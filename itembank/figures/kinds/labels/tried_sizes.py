"""The sizes that a figure of lines is tried at: it is drawn at the first with room for its labels.

Whether there is room at all is asked of every figure that is made, and few of them are drawn. The
largest size says that at once of nearly all: labels are as large in every size, and the lines
between them are longer.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from typing import TypeVar

from itembank.figures.kinds.labels.placed_labels import Sheet

Size = TypeVar("Size")


def least_sheet(made: Callable[[Size], Sheet], sizes: Sequence[Size]) -> Sheet:
    """Return the sheet of the first size at which all labels have a place, or else of the last.

    >>> def row(wide):
    ...     sheet = Sheet(())
    ...     sheet.put("AB", [(0, 0)], "name")
    ...     sheet.put("CD", [(wide, 0)], "name")
    ...     return sheet
    >>> [least_sheet(row, sizes).marks[-1].at.x == 4 for sizes in ((1, 4, 9), (9, 4, 1))]
    [True, False]
    """
    for size in sizes[:-1]:
        sheet = made(size)
        if not sheet.crowded:
            return sheet
    return made(sizes[-1])


MOST_KEPT = 4096
"""How many shapes that have room are kept: a topic has a few hundred."""
_ROOMY: dict[Hashable, None] = {}


def has_room(shape: Hashable, fits: Callable[[], bool]) -> bool:
    """Tell whether all labels of a figure have a place, as `fits` finds out.

    `shape` is all that their places hang on: the kind and the lines of the figure, and how large
    its labels are, whatever they say. Of two figures that are alike in it one has room where the
    other has, so what has room is kept.

    >>> has_room(("doctest", 5), lambda: False), has_room(("doctest", 5), lambda: True)
    (False, True)
    >>> has_room(("doctest", 5), lambda: 1 / 0), has_room(("doctest", 6), lambda: False)
    (True, False)
    """
    if shape in _ROOMY:
        return True
    if not fits():
        return False
    if len(_ROOMY) >= MOST_KEPT:
        _ROOMY.clear()
    _ROOMY[shape] = None
    return True


def homeless_in_all(
    made: Callable[[Size], Sheet], sizes: Sequence[Size], shape: Hashable
) -> list[str]:
    """Return the labels without a place in the last size, or none if some size has room for all.

    They are those that :func:`least_sheet` leaves out, found without it: the last size first.
    `shape` is as in :func:`has_room`.

    >>> def row(wide):
    ...     sheet = Sheet(())
    ...     sheet.put("AB", [(0, 0)], "name")
    ...     sheet.put("CD", [(wide, 0)], "name")
    ...     return sheet
    >>> [homeless_in_all(row, sizes, ("row", sizes)) for sizes in ((1, 4), (4, 1), (0, 1))]
    [[], [], ['CD']]
    """
    if has_room(shape, lambda: any(not made(size).crowded for size in reversed(sizes))):
        return []
    return made(sizes[-1]).homeless
