"""Lines that inequalities are shown on: where they end, what a step is worth, what they tell."""

from __future__ import annotations

from fractions import Fraction

from itembank.figures.figure import Reading, read
from itembank.figures.kinds.number.line_span import Span
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Step
from itembank.notation import tree as t

STEPS = 10


def one_ended(at: int, way: int, counts: int) -> Span:
    """Return the span from a mark up, or down to it where `way` is negative."""
    if way > 0:
        return Span(low=at, low_counts=bool(counts))
    return Span(high=at, high_counts=bool(counts))


def two_ended(low: int, wide: int, ends: int) -> Span:
    """Return the span between two marks; the bits of `ends` say which of them counts."""
    return Span(low, low + wide, bool(ends & 1), bool(ends >> 1))


def line_from(first: int, step: Fraction | int, span: Span | None) -> NumberLine:
    """Return a line of ten steps; every second mark has its number."""
    inner = tuple(range(2, STEPS, 2))
    return NumberLine(t.num(first), t.num(first + int(STEPS * step)), STEPS, inner, span=span)


def line_of_halves(first: int, span: Span) -> NumberLine:
    """Return a line of ten half steps; the integers have their numbers."""
    return line_from(first, Fraction(1, 2), span)


def worth_of_step(line: NumberLine) -> Fraction:
    """Return what a step is worth, as the numbers of the line say."""
    from itembank.notation.value import exact

    return exact(read(line, Reading("step")))


def as_ones(line: NumberLine) -> NumberLine:
    """Return the line as it is read by who counts every mark as 1."""
    from itembank.notation.value import exact

    first = int(exact(line.first))
    return NumberLine(line.first, t.num(first + STEPS), STEPS, span=line.span)


def told_by_line(line: NumberLine, x: t.Sym, key: t.Node) -> tuple[Step, ...]:
    """Return the steps from the line to what its span says."""
    span = line.span
    assert span is not None
    steps = []
    if (step := worth_of_step(line)) != 1:
        wide = t.divide(number_node(step * STEPS), t.Int(STEPS))
        steps.append(Step("Find what one step is worth.", t.equals(wide, number_node(step))))
    for at, counts in ((span.low, span.low_counts), (span.high, span.high_counts)):
        if at is not None:
            circle = "filled" if counts else "open"
            verb = "counts" if counts else "does not count"
            steps.append(Step(f"The {circle} circle {verb} its own number."))
    if span.low is None:
        say = "The arrow goes to the left, so the values are less."
    elif span.high is None:
        say = "The arrow goes to the right, so the values are greater."
    else:
        say = f"{x.name} lies between the two numbers."
    return (*dict.fromkeys(steps), Step(say, key))


def whole_of(node: t.Node) -> int:
    """Return the whole number that a node is."""
    from itembank.notation.value import exact

    return int(exact(node))
