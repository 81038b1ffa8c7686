"""Number lines with a jump on them, for working: from a number, so far up or down, to another."""

from __future__ import annotations

from itembank.figures.figure import fault
from itembank.figures.kinds.number.number_line import Jump, NumberLine
from itembank.notation import tree as t

MOST = 26
"""The most steps of such a line: more are tedious to count."""


def jump_line(start: int, change: int) -> NumberLine | None:
    """Return a line in ones with a jump from `start`, or None where it would be too long.

    The numbers at both ends of the jump are printed, and 0 where there is room for it.

    >>> line = jump_line(-3, 5)
    >>> line.jumps[0].label if line else None
    Int(n=5)
    >>> jump_line(-30, 60) is None
    True
    """
    end = start + change
    for margin in range(1, 7):
        low, high = min(start, end) - margin, max(start, end) + margin
        if high - low > MOST or change == 0:
            return None
        shown = {start - low, end - low}
        with_nought = shown | ({-low} if low < 0 < high else set())
        for numbered in (with_nought, shown):
            line = NumberLine(
                t.num(low),
                t.num(high),
                high - low,
                tuple(sorted(numbered)),
                jumps=(Jump(start - low, end - low, t.num(change)),),
            )
            if not fault(line):
                return line
    return None
