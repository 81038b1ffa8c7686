"""The numbers from one mark of a number line to another, drawn over it with a circle at each end.

An open circle leaves its number out, a filled one counts it; where there is no end an arrow goes
on (the convention of English classrooms, common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import Arc, Mark, Point, Stroke
from itembank.notation import tree as t
from itembank.text.in_words import counted

HEIGHT = Fraction(9, 10)
"""How high over the line it is drawn, in ems."""
CIRCLE = Fraction(1, 4)
MOST_LISTED = 40
"""So many integers at most are listed one by one: as many as a line has marks."""
PAST = Fraction(1, 2)
"""How far past the last mark an arrow goes."""


@dataclass(frozen=True, slots=True)
class Span:
    """A part of a number line from mark `low` to mark `high`, counted from 0.

    Where an end is not given it has none on that side. An end counts itself where
    `low_counts` or `high_counts` says so.

    >>> Span(low=2, low_counts=True).high is None
    True
    """

    low: int | None = None
    high: int | None = None
    low_counts: bool = False
    high_counts: bool = False


def span_fault(span: Span, steps: int) -> str:
    """Return what is wrong with a span of a line of so many steps, as a clause, or ``""``."""
    if span.low is None and span.high is None:
        return "its span has no end on either side"
    if any(end is not None and not 0 <= end <= steps for end in (span.low, span.high)):
        return f"the ends of its span are marks from 0 to {steps}"
    if span.low is not None and span.high is not None and span.low >= span.high:
        return "its span ends before it begins"
    if (span.low is None and span.low_counts) or (span.high is None and span.high_counts):
        return "an end of its span that is not there cannot count"
    return ""


def span_marks(span: Span, step: Fraction, long: Fraction) -> list[Mark]:
    """Return how a span is drawn: a heavy line between circles, or with an arrow past the end."""
    ends = [
        (at * step, counts)
        for at, counts in ((span.low, span.low_counts), (span.high, span.high_counts))
        if at is not None
    ]
    marks: list[Mark] = [_circle(x, counts) for x, counts in ends]
    if len(ends) == 2:
        (left, _), (right, _) = ends
        path = Point(left + CIRCLE, HEIGHT), Point(right - CIRCLE, HEIGHT)
        return [Stroke(path, "span", "heavy"), *marks]
    ((x, _),) = ends
    if span.low is not None:
        path = Point(x + CIRCLE, HEIGHT), Point(long + PAST, HEIGHT)
    else:
        path = Point(x - CIRCLE, HEIGHT), Point(-PAST, HEIGHT)
    return [Stroke(path, "span", "heavy", arrow="end"), *marks]


def _circle(x: Fraction, counts: bool) -> Arc:
    centre, rim = Point(x, HEIGHT), Point(x + CIRCLE, HEIGHT)
    return Arc(centre, CIRCLE, rim, rim, "end of span", "ink" if counts else "paper")


def span_words(span: Span, first: str) -> str:
    """Return what is said of a span: where its circles stand, and which way it goes on."""

    def place(at: int, counts: bool) -> str:
        kind = "a filled circle" if counts else "an open circle"
        return f"{kind} {counted(at, 'step')} after {first}"

    if span.low is not None and span.high is not None:
        start, end = place(span.low, span.low_counts), place(span.high, span.high_counts)
        return f"A thick line goes from {start} to {end}."
    if span.low is not None:
        return f"A thick arrow goes to the right from {place(span.low, span.low_counts)}."
    assert span.high is not None
    return f"A thick arrow goes to the left from {place(span.high, span.high_counts)}."


def span_relation(span: Span, letter: str, number: Callable[[int], t.Node]) -> t.Relation:
    """Return what a span says of a letter: x > 2, x ≤ 5 or 2 < x ≤ 5."""
    x = t.Sym(letter)
    if span.low is not None and span.high is not None:
        low: t.RelationOp = "≤" if span.low_counts else "<"
        high: t.RelationOp = "≤" if span.high_counts else "<"
        return t.Relation(number(span.low), ((low, x), (high, number(span.high))))
    if span.low is not None:
        return t.relate(x, "≥" if span.low_counts else ">", number(span.low))
    assert span.high is not None
    return t.relate(x, "≤" if span.high_counts else "<", number(span.high))


def span_integers(span: Span, value: Callable[[int], Fraction]) -> tuple[int | None, int | None]:
    """Return the least and the greatest whole number of a span; None where it has none.

    >>> span = Span(low=4, high=9)
    >>> span_integers(span, lambda at: Fraction(at))
    (5, 8)
    >>> span_integers(span, lambda at: Fraction(at, 10))
    (None, None)
    """
    least = greatest = None
    if span.low is not None:
        low = value(span.low)
        least = -(-low.numerator // low.denominator)
        least += least == low and not span.low_counts
    if span.high is not None:
        high = value(span.high)
        greatest = high.numerator // high.denominator
        greatest -= greatest == high and not span.high_counts
    if least is not None and greatest is not None and least > greatest:
        return None, None
    return least, greatest
