"""The axis of a chart: a scale that fits its values, and how a place on it is said."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from itembank.figures.drawing import Mark, Point, Stroke, Text
from itembank.notation import tree as t
from itembank.text.in_words import counted, in_full

MOST_LINES = 8
"""The most numbered lines above 0."""
MOST_BETWEEN = 5
LARGEST = 10**6
LINE = Fraction(11, 10)
"""From one numbered line to the next, at most; never less than a number is high."""


def name_fault(names: Sequence[str], what: str) -> str:
    """Return what is wrong with the names of categories or series, as a clause, or ``""``.

    >>> name_fault(("Mon", "Monday"), "categories")
    'two of its categories have one name'
    """
    # As readings compare them: a day cut short is that day.
    folded = [in_full(name.strip()).casefold() for name in names]
    if not all(folded):
        return f"its {what} are to have names"
    if len({*folded}) != len(folded):
        return f"two of its {what} have one name"
    return ""


def scale_fault(values: Sequence[int], scale: int, between: int) -> str:
    """Return why values cannot be read off a scale, as a clause, or ``""``.

    >>> scale_fault((4, 7), 2, 1)
    'the value 7 does not stand on a line of its axis, which go in steps of 2'
    """
    if any(not 0 <= value <= LARGEST for value in values):
        return f"its values are to be from 0 to {LARGEST:,}"
    if scale < 1 or not 1 <= between <= MOST_BETWEEN:
        return f"its scale is 1 or more, and a step of it is cut into 1 to {MOST_BETWEEN}"
    top = max(values, default=0)
    if not top:
        return "all of its values are 0"
    if top > scale * MOST_LINES:
        return (
            f"a scale in steps of {scale} would need more than {MOST_LINES} lines for {top}; "
            + _other_scale(values, top)
        )
    if 2 * top < scale:
        return f"a scale in steps of {scale} is too coarse for {top}; " + _other_scale(values, top)
    step = Fraction(scale, between)
    for value in values:
        if (value / step).denominator != 1:
            return (
                f"the value {value} does not stand on a line of its axis, which go in steps of "
                f"{step}"
            )
    return ""


def _other_scale(values: Sequence[int], top: int) -> str:
    """Return which scale would show all values, as the end of a sentence, or that none does.

    Scales go in 1, 2, 5, 10, 20, 50, … and a value stands on a line or halfway between two.

    >>> _other_scale((4, 70), 70), _other_scale((1, 9999), 9999)
    ('steps of 10, cut into 5, would fit', 'no scale fits all of its values')
    """
    for size in (step * 10**power for power in range(7) for step in (1, 2, 5)):
        if size * MOST_LINES < top or 2 * top < size:
            continue
        for between in range(1, MOST_BETWEEN + 1):
            if all(value * between % size == 0 for value in values):
                cut = f", cut into {between}," if between > 1 else ""
                return f"steps of {size}{cut} would fit"
    return "no scale fits all of its values"


def step_words(value: int, scale: int, between: int) -> str:
    """Return where a value stands on an axis, in words that do not say the value between lines.

    >>> step_words(12, 4, 1), step_words(15, 10, 2), step_words(6, 10, 5)
    ('at 12', 'halfway between 10 and 20', '3 steps above 0')
    """
    low, over = divmod(value, scale)
    if not over:
        return f"at {value}"
    steps = Fraction(over * between, scale)
    if between == 2:
        return f"halfway between {low * scale} and {(low + 1) * scale}"
    return f"{counted(int(steps), 'step')} above {low * scale}"


def axis_lines(lines: int, scale: int, between: int, across: Fraction) -> list[Mark]:
    """Return the numbered lines of an axis, and the smaller ones between them."""
    marks: list[Mark] = []
    for number in range(lines + 1):
        y = number * LINE
        ends = (Point(-Fraction(1, 5), y), Point(across, y))
        marks.append(Stroke(ends, "line", "normal" if number == 0 else "faint"))
        label = t.Int(number * scale)
        marks.append(Text(Point(-Fraction(3, 10), y), label, "right", role="number"))
        if number < lines:
            for part in range(1, between):
                at = y + LINE * Fraction(part, between)
                marks.append(Stroke((Point(0, at), Point(across, at)), "small line", "faint", True))
    return marks
