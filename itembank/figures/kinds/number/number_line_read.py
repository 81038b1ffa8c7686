"""What is read from a number line: its marks and arrows, its jumps, and its span."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from itembank.figures.figure import Reading, not_shown
from itembank.figures.kinds.number.line_span import MOST_LISTED, Span, span_integers, span_relation
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import ParseError, parse_written
from itembank.notation.value import exact

if TYPE_CHECKING:
    from itembank.figures.kinds.number.number_line import NumberLine


def value_at(figure: NumberLine, mark: int) -> Fraction:
    """Return the number that a mark stands at, counted from the first."""
    low, high = exact(figure.first), exact(figure.last)
    return low + (high - low) * Fraction(mark, figure.steps)


def number_at(figure: NumberLine, mark: int) -> t.Node:
    """Return the number at a mark as it is printed: as its ends are written."""
    if mark == 0:
        return figure.first
    if mark == figure.steps:
        return figure.last
    value = value_at(figure, mark)
    return written_as(value, figure.first, figure.last)


def _read(figure: NumberLine, reading: Reading) -> t.Node:
    places = dict(figure.points)
    if reading.name == "number" and len(reading.of) == 1:
        at = places.get(reading.of[0].upper())
        if at is not None:
            return written_as(value_at(figure, at), figure.first, figure.last)
    if reading.name == "letter" and len(reading.of) == 1:
        try:
            wanted = exact(parse_written(reading.of[0]))
        except (ParseError, t.NotationError):
            raise not_shown(reading) from None
        for name, at in figure.points:
            if value_at(figure, at) == wanted:
                return t.Label(name)
    if (jumped := _read_jump(figure, reading)) is not None:
        return jumped
    if reading == Reading("step"):
        return written_as(value_at(figure, 1) - value_at(figure, 0), figure.first, figure.last)
    if figure.span is not None and (found := read_span(figure, figure.span, reading)) is not None:
        return found
    raise not_shown(reading)


def _read_jump(figure: NumberLine, reading: Reading) -> t.Node | None:
    """Return where a jump ends, or how far its label says it goes; jumps are counted from 1."""
    if reading.name not in ("jump end", "jump size") or len(reading.of) != 1:
        return None
    place = int(reading.of[0]) - 1 if reading.of[0].isdecimal() else -1
    if not 0 <= place < len(figure.jumps):
        return None
    jump = figure.jumps[place]
    if reading.name == "jump end":
        return written_as(value_at(figure, jump.end), figure.first, figure.last)
    if t.symbols(jump.label):
        return None
    return written_as(abs(exact(jump.label)), figure.first, figure.last)


def read_span(figure: NumberLine, span: Span, reading: Reading) -> t.Node | None:
    """Return what is read from a span; None where the reading is of something else."""
    if reading.name == "inequality" and len(reading.of) == 1:
        return span_relation(span, reading.of[0], lambda at: number_at(figure, at))
    least, greatest = span_integers(span, lambda at: value_at(figure, at))
    if reading == Reading("least integer"):
        return None if least is None else t.num(least)
    if reading == Reading("greatest integer"):
        return None if greatest is None else t.num(greatest)
    if least is None or greatest is None or not 0 < greatest - least < MOST_LISTED:
        return None
    inside = t.Listing(tuple(map(t.num, range(least, greatest + 1))))
    return inside if reading == Reading("integers") else None


def _readings(figure: NumberLine) -> tuple[Reading, ...]:
    numbers = [Reading("number", (name,)) for name, _ in figure.points]
    letters = [
        Reading("letter", (line(written_as(value_at(figure, at), figure.first, figure.last)),))
        for _, at in figure.points
    ]
    jumps = [
        Reading(name, (str(n),))
        for n, jump in enumerate(figure.jumps, 1)
        for name in ("jump end", *(() if t.symbols(jump.label) else ("jump size",)))
    ]
    return (*numbers, *letters, *jumps, Reading("step"), *_readings_of_span(figure))


def _readings_of_span(figure: NumberLine) -> tuple[Reading, ...]:
    if figure.span is None:
        return ()
    asked = (
        Reading("inequality", ("x",)),
        *map(Reading, ("integers", "least integer", "greatest integer")),
    )
    return tuple(
        reading for reading in asked if read_span(figure, figure.span, reading) is not None
    )
