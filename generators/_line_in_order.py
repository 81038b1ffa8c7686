"""Number lines on which numbers of a list stand, for working that puts them in order."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from string import ascii_uppercase

from itembank.figures.figure import fault
from itembank.figures.kinds.number.number_line import MOST_STEPS, NumberLine
from itembank.notation import tree as t

TOLD = "The letters are in the order of the question."
"""What has to be said of the letters beside such a line."""
DECIMAL_STEPS = (
    *(Fraction(1, 10**places * part) for places in range(3) for part in (1, 2, 5)),
    Fraction(1, 1000),
)
"""From 1 to a thousandth: the longest of these steps that leads to all numbers is taken."""


def in_decimals(
    values: Sequence[Fraction], write: Callable[[Fraction], t.Node]
) -> NumberLine | None:
    """Return a line in tenths, hundredths or halves and fifths of them on which all numbers stand.

    A, B, C, … point to the numbers as they come; `write` gives the numbers that are printed. None
    where no such line of at most 40 steps has room for all letters.

    >>> from itembank.items.forms.form_rules import decimal_node
    >>> line = in_decimals([Fraction(n, 100) for n in (230, 247, 235)], decimal_node)
    >>> line.steps, line.points if line else None
    (20, (('A', 0), ('B', 17), ('C', 5)))
    """
    for step in DECIMAL_STEPS:
        if all((value / step).denominator == 1 for value in values):
            return _first(_lines(values, step, (10 * step, 5 * step), write))
    return None


def in_parts(values: Sequence[Fraction], parts: int) -> NumberLine | None:
    """Return a line from a whole number to another, each of so many equal parts, as above.

    >>> line = in_parts([Fraction(3, 4), Fraction(1, 6)], 12)
    >>> (line.steps, line.points) if line else None
    (12, (('A', 9), ('B', 2)))
    """
    step = Fraction(1, parts)
    return _first(_lines(values, step, (Fraction(1),), lambda value: t.num(int(value))))


def _first(lines: Iterable[NumberLine]) -> NumberLine | None:
    return next((line for line in lines if not fault(line)), None)


def _lines(
    values: Sequence[Fraction],
    step: Fraction,
    ends: Sequence[Fraction],
    write: Callable[[Fraction], t.Node],
) -> Iterator[NumberLine]:
    """Yield lines of this step, from a multiple of one of `ends` to another, best first."""
    for end in ends:
        low, high = min(values) // end * end, -(-max(values) // end) * end
        steps = int((high - low) / step)
        if not 2 <= steps <= MOST_STEPS:
            continue
        points = tuple(
            (letter, int((value - low) / step))
            for letter, value in zip(ascii_uppercase, values, strict=False)
        )
        every = int(end / step)
        for numbered in (tuple(range(every, steps, every)), ()):
            yield NumberLine(write(low), write(high), steps, numbered, points)
