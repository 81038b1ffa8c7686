"""A number line: equal steps, some numbered, points named by letters, jumps, and a span."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, Mark, Point, Stroke, Text, drawing
from itembank.figures.figure import (
    Asked,
    DrawWording,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    ToDraw,
    Wording,
    asks_reading,
    register_figure,
)
from itembank.figures.kinds.number.line_span import (
    Span,
    span_fault,
    span_marks,
    span_words,
)
from itembank.figures.kinds.number.number_line_read import _read, _readings, number_at, value_at
from itembank.figures.label_room import room
from itembank.notation import tree as t
from itembank.notation.line import shown_line
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
    letters, each at a mark. A `span` is drawn over it: the numbers of an inequality.

    >>> NumberLine(t.Int(0), t.Int(1), 4, points=(("A", 3),)).points
    (('A', 3),)
    """

    first: t.Node
    last: t.Node
    steps: int
    numbered: tuple[int, ...] = ()
    points: tuple[tuple[str, int], ...] = ()
    jumps: tuple[Jump, ...] = ()
    span: Span | None = None


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
    if len({*names}) != len(names) or any(not re.fullmatch("[A-Z]", name) for name in names):
        return "its points are to be named by different single capital letters"
    at = [place for _, place in figure.points]
    if len({*at}) != len(at):
        return "two points stand at one mark"
    if any(jump.start == jump.end for jump in figure.jumps):
        return "a jump goes from a mark to itself"
    for jump in figure.jumps:
        if clause := _lying(figure, jump):
            return clause
    if figure.span is not None:
        if figure.points or figure.jumps:
            return "a span stands where points and jumps would"
        if fault := span_fault(figure.span, figure.steps):
            return fault
    step = _LONG / figure.steps
    shown = sorted({*figure.numbered, 0, figure.steps})
    for (a, left), (b, right) in pairwise([(mark, number_at(figure, mark)) for mark in shown]):
        if (b - a) * step < (room(left).width + room(right).width) / 2 + Fraction(1, 4):
            return f"the numbers {shown_line(left)} and {shown_line(right)} do not fit side by side"
    for a, b in pairwise(sorted(at)):
        if (b - a) * step < Fraction(9, 10):
            return "two points stand so near that their letters touch"
    return ""


def _lying(figure: NumberLine, jump: Jump) -> str:
    """Return how the label of a jump says another length than it has, as a clause, or ``""``.

    A label with a letter is what is asked for; a negative one belongs to a jump to the left.
    """
    if t.symbols(jump.label):
        return ""
    far = value_at(figure, jump.end) - value_at(figure, jump.start)
    try:
        said_far = exact(jump.label)
    except t.NotationError:
        return "the labels of its jumps are to be numbers or letters"
    if said_far in (far, abs(far)):
        return ""
    start, end = (shown_line(number_at(figure, at)) for at in (jump.start, jump.end))
    return f"the jump from {start} to {end} is labelled {shown_line(jump.label)}"


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
                Point(x, -_TALL - Fraction(1, 8)), number_at(figure, at), up="top", role="number"
            )
            marks.append(label)
    for name, at in figure.points:
        x = at * step
        # An arrow from the letter down to its mark: no meaning by colour, none hidden by a tick.
        marks.append(
            Stroke((Point(x, Fraction(5, 4)), Point(x, Fraction(1, 2))), "pointer", arrow="end")
        )
        marks.append(Text(Point(x, Fraction(4, 3)), name, up="bottom", role="point"))
    if figure.span is not None:
        marks += span_marks(figure.span, step, _LONG)
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
        out.append(f"Mark {at} after {said(figure.first)} is {said(number_at(figure, at))}.")
    for name, at in figure.points:
        out.append(f"The arrow {name} points {counted(at, 'step')} after {said(figure.first)}.")
    for jump in figure.jumps:
        out.append(f"A jump of {said(jump.label)} goes from step {jump.start} to step {jump.end}.")
    if figure.span is not None:
        out.append(span_words(figure.span, said(figure.first)))
    return " ".join(out)


_SIZES = {"smallest": "least", "least": "least", "largest": "greatest", "greatest": "greatest"}


def _integer_asked(figure: object, found: re.Match[str]) -> Asked:
    """Return the question for the smallest or the largest integer of a span."""
    size = _SIZES[found["size"].lower()]
    return Asked(t.Sym("r"), (("r", Reading(f"{size} integer")),))


def _printed(figure: NumberLine) -> tuple[t.Node, ...]:
    numbers = sorted({*figure.numbered, 0, figure.steps})
    return (
        *(number_at(figure, at) for at in numbers),
        *(t.Label(name) for name, _ in figure.points),
        *(jump.label for jump in figure.jumps),
    )


def _in_box(figure: NumberLine, found: re.Match[str]) -> Asked:
    """Return the part of the fraction that stands in a box: an arrow shows □/4 or 3/□."""
    r = t.Sym("r")
    readings = (("r", Reading("number", (found["name"],))),)
    if found["under"]:
        return Asked(t.times(r, t.Int(int(found["under"]))), readings)
    return Asked(t.divide(t.Int(int(found["over"])), r), readings)


def _mark(figure: NumberLine, found: re.Match[str]) -> ToDraw:
    """Return that an arrow with a letter is to point to a number."""
    name = found["name"].upper()
    return ToDraw("points", ((Reading("letter", (found["number"],)), t.Label(name)),))


def _show(figure: NumberLine, found: re.Match[str]) -> ToDraw:
    """Return that the numbers of an inequality are to be drawn over the line."""
    try:
        wanted = parse_written(found["range"])
    except ParseError as error:
        raise FigureError(f"‘{found['range']}’ cannot be read") from error
    letters = sorted(t.symbols(wanted))
    if not isinstance(wanted, t.Relation) or len(letters) != 1:
        raise FigureError("what is to be shown is no inequality for one letter")
    return ToDraw("span", ((Reading("inequality", (letters[0],)), wanted),))


NUMBER_LINE = register_figure(
    FigureKind(
        "number line",
        NumberLine,
        fault=_fault,
        bears=dict.fromkeys(("first", "last"), (t.Percent,)),
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        sets=frozenset({"integers"}),
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
            Wording(
                r"which number goes in the box, if arrow (?P<name>[a-z]) shows "
                r"\{(?:□/(?P<under>\d{1,3})|(?P<over>\d{1,3})/□)\}",
                _in_box,
            ),
            Wording(r"what is (?:the size of )?(?:each|one) step(?: worth)?", asks_reading("step")),
            Wording(
                r"(?:write(?: down)?|give|what is) (?:the|an) inequality (?:for|in) "
                r"\{?(?P<letter>[a-z])\}?(?: (?:that|which) (?:the number line shows|is shown))?",
                asks_reading("inequality", "letter"),
            ),
            Wording(
                r"(?:write(?: down)?|list)(?: all)? the integers that \{?[a-z]\}? can be",
                asks_reading("integers"),
            ),
            Wording(
                r"what is the (?P<size>smallest|least|largest|greatest) integer that "
                r"\{?[a-z]\}? can be",
                _integer_asked,
            ),
        ),
        drawn_answers=(
            DrawWording(
                r"mark (?:the number )?\{(?P<number>[^{}]*)\} on the number line with (?:an arrow|"
                r"the letter) (?P<name>[a-z])",
                _mark,
            ),
            DrawWording(
                r"show (?:the inequality )?\{(?P<range>[^{}]*[<>≤≥][^{}]*)\} on the number line",
                _show,
            ),
        ),
    )
)
