"""The sizes that a figure of lines is tried at: it is drawn at the first with room for its labels.

Whether there is room at all is asked of every figure that is made, and few of them are drawn. The
largest size says that at once of nearly all: labels are as large in every size, and the lines
between them are longer.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from itembank.figures.kinds.placed_labels import Sheet

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


def homeless_in_all(made: Callable[[Size], Sheet], sizes: Sequence[Size]) -> list[str]:
    """Return the labels without a place in the last size, or none if some size has room for all.

    They are those that :func:`least_sheet` leaves out, found without it: the last size first.

    >>> def row(wide):
    ...     sheet = Sheet(())
    ...     sheet.put("AB", [(0, 0)], "name")
    ...     sheet.put("CD", [(wide, 0)], "name")
    ...     return sheet
    >>> homeless_in_all(row, (1, 4)), homeless_in_all(row, (4, 1)), homeless_in_all(row, (0, 1))
    ([], [], ['CD'])
    """
    last = made(sizes[-1])
    if not last.crowded or any(not made(size).crowded for size in sizes[:-1]):
        return []
    return last.homeless
