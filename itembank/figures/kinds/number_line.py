"""A number line: equal steps, some of them numbered, points named by letters, and jumps."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from itembank.figures.drawing import Drawing, Mark, Point, Stroke, Text, drawing
from itembank.figures.figure import (
    Figure,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.label_room import room
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.line import line, shown_line
from itembank.notation.parse import ParseError, parse_written
from itembank.notation.value import exact
from itembank.notation.words import words as said
from itembank.text.in_words import counted

MOST_STEPS = 40
_LONG = Fraction(12)


@dataclass(frozen=True, slots=True)
class Jump:
    """A jump from one mark of the line to another, counted from 0, with what stands over it."""

    start: int
    end: int
    label: t.Node


@dataclass(frozen=True, slots=True)
class NumberLine(Figure):
    """A line with `first` at its left end and `last` at its right, in so many equal `steps`.

    `numbered` names the marks between that have their number too, counted from 0; `points` are
    letters, each at a mark.

    >>> NumberLine(t.Int(0), t.Int(1), 4, points=(("A", 3),)).points
    (('A', 3),)
    """

    first: t.Node
    last: t.Node
    steps: int
    numbered: tuple[int, ...] = ()
    points: tuple[tuple[str, int], ...] = ()
    jumps: tuple[Jump, ...] = ()


def _value(figure: NumberLine, mark: int) -> Fraction:
    low, high = exact(figure.first), exact(figure.last)
    return low + (high - low) * Fraction(mark, figure.steps)


def _fault(figure: NumberLine) -> str:
    if not 1 <= figure.steps <= MOST_STEPS:
        return f"it may have 1 to {MOST_STEPS} steps"
    try:
        low, high = exact(figure.first), exact(figure.last)
    except t.NotationError:
        return "its ends are to be numbers"
    if not low < high:
        return "its first number is to be less than its last"
    places = [*figure.numbered, *(at for _, at in figure.points)]
    places += [at for jump in figure.jumps for at in (jump.start, jump.end)]
    if any(not 0 <= at <= figure.steps for at in places):
        return f"its marks are counted from 0 to {figure.steps}"
    names = [name for name, _ in figure.points]
    if len({*names}) != len(names) or any(len(name) != 1 or not name.isalpha() for name in names):
        return "its points are to be named by different single letters"
    at = [place for _, place in figure.points]
    if len({*at}) != len(at):
        return "two points stand at one mark"
    if any(jump.start == jump.end for jump in figure.jumps):
        return "a jump goes from a mark to itself"
    step = _LONG / figure.steps
    shown = sorted({*figure.numbered, 0, figure.steps})
    for a, b in pairwise(shown):
        left, right = _number(figure, a), _number(figure, b)
        if (b - a) * step < (room(left).width + room(right).width) / 2 + Fraction(1, 4):
            return f"the numbers {shown_line(left)} and {shown_line(right)} do not fit side by side"
    for a, b in pairwise(sorted(at)):
        if (b - a) * step < Fraction(9, 10):
            return "two points stand so near that their letters touch"
    return ""


def _number(figure: NumberLine, mark: int) -> t.Node:
    """Return the number at a mark as it is printed: as its ends are written."""
    if mark == 0:
        return figure.first
    if mark == figure.steps:
        return figure.last
    value = _value(figure, mark)
    return written_as(value, figure.first, figure.last)


_TICK, _TALL = Fraction(1, 4), Fraction(2, 5)
_OVER = Fraction(1)


def _drawing(figure: NumberLine) -> Drawing:
    step = _LONG / figure.steps
    numbered = {*figure.numbered, 0, figure.steps}
    marks: list[Mark] = [
        Stroke((Point(-Fraction(1, 2), 0), Point(_LONG + Fraction(1, 2), 0)), "line")
    ]
    for at in range(figure.steps + 1):
        high = _TALL if at in numbered else _TICK
        x = at * step
        marks.append(Stroke((Point(x, -high), Point(x, high)), "tick"))
        if at in numbered:
            label = Text(
                Point(x, -_TALL - Fraction(1, 8)), _number(figure, at), up="top", role="number"
            )
            marks.append(label)
    for name, at in figure.points:
        x = at * step
        # An arrow from the letter down to its mark: no meaning by colour, none hidden by a tick.
        marks.append(
            Stroke((Point(x, Fraction(5, 4)), Point(x, Fraction(1, 2))), "pointer", arrow="end")
        )
        marks.append(Text(Point(x, Fraction(4, 3)), name, up="bottom", role="point"))
    base = Fraction(5, 2) if figure.points else Fraction(3, 5)
    for jump in figure.jumps:
        a, b = jump.start * step, jump.end * step
        top = base + Fraction(1, 2)
        path = (Point(a, base), Point(a, top), Point(b, top), Point(b, base))
        marks.append(Stroke(path, "jump", arrow="end"))
        marks.append(
            Text(
                Point((a + b) / 2, top + Fraction(1, 8)), jump.label, up="bottom", role="jump size"
            )
        )
    return drawing(marks)


def _words(figure: NumberLine) -> str:
    step = "1 step" if figure.steps == 1 else f"{figure.steps} equal steps"
    out = [f"A number line goes from {said(figure.first)} to {said(figure.last)} in {step}."]
    inner = [at for at in sorted({*figure.numbered}) if 0 < at < figure.steps]
    for at in inner:
        out.append(f"Mark {at} after {said(figure.first)} is {said(_number(figure, at))}.")
    for name, at in figure.points:
        out.append(f"The arrow {name} points {counted(at, 'step')} after {said(figure.first)}.")
    for jump in figure.jumps:
        out.append(f"A jump of {said(jump.label)} goes from step {jump.start} to step {jump.end}.")
    return " ".join(out)


def _read(figure: NumberLine, reading: Reading) -> t.Node:
    places = dict(figure.points)
    if reading.name == "number" and len(reading.of) == 1:
        at = places.get(reading.of[0].upper())
        if at is not None:
            return written_as(_value(figure, at), figure.first, figure.last)
    if reading.name == "letter" and len(reading.of) == 1:
        try:
            wanted = exact(parse_written(reading.of[0]))
        except (ParseError, t.NotationError):
            raise not_shown(reading) from None
        for name, at in figure.points:
            if _value(figure, at) == wanted:
                return t.Label(name)
    if reading == Reading("step"):
        return written_as(_value(figure, 1) - _value(figure, 0), figure.first, figure.last)
    raise not_shown(reading)


def _readings(figure: NumberLine) -> tuple[Reading, ...]:
    numbers = [Reading("number", (name,)) for name, _ in figure.points]
    letters = [
        Reading("letter", (line(written_as(_value(figure, at), figure.first, figure.last)),))
        for _, at in figure.points
    ]
    return (*numbers, *letters, Reading("step"))


def _printed(figure: NumberLine) -> tuple[t.Node, ...]:
    numbers = sorted({*figure.numbered, 0, figure.steps})
    return (
        *(_number(figure, at) for at in numbers),
        *(t.Label(name) for name, _ in figure.points),
        *(jump.label for jump in figure.jumps),
    )


NUMBER_LINE = register_figure(
    FigureKind(
        "number line",
        NumberLine,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                r"what (?:number|fraction|decimal|mixed number) "
                r"(?:is (?:shown )?at (?:arrow )?|does (?:the )?arrow )"
                r"(?P<name>[a-z])(?: point to| show)?",
                asks_reading("number", "name"),
            ),
            Wording(
                r"which (?:letter|arrow) (?:is at|shows|points to|marks) \{(?P<number>[^}]*)\}",
                asks_reading("letter", "number"),
            ),
            Wording(r"what is (?:the size of )?(?:each|one) step(?: worth)?", asks_reading("step")),
        ),
    )
)
