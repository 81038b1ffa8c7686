"""A function machine: a number goes in, something is done to it in order, a number comes out."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from itembank.data_class import dataclass
from itembank.figures.drawing import Area, Drawing, Mark, Point, Stroke, Text, drawing, rectangle
from itembank.figures.figure import (
    Figure,
    FigureKind,
    Reading,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.label_room import room, text_width
from itembank.figures.written_as import written_as
from itembank.notation import tree as t
from itembank.notation.value import exact, exact_or_none
from itembank.notation.words import words as said

MOST_STEPS = 3
Sign = Literal["+", "−", "×", "÷"]
_HIGH = Fraction(9, 5)
_ARROW = Fraction(13, 10)
_EDGE = Fraction(2, 5)
UNKNOWN = "?"


@dataclass(frozen=True, slots=True)
class Does:
    """What one box of a machine does: a sign and a number."""

    sign: Sign
    number: t.Node


@dataclass(frozen=True, slots=True)
class FunctionMachine(Figure):
    """A machine of one to three boxes; one of `input` and `output` is given, the other asked for.

    >>> FunctionMachine((Does("×", t.Int(3)), Does("+", t.Int(5))), input=t.Int(4)).output is None
    True
    """

    does: tuple[Does, ...]
    input: t.Node | None = None
    output: t.Node | None = None


def _fault(figure: FunctionMachine) -> str:
    if not 1 <= len(figure.does) <= MOST_STEPS:
        return f"a machine has 1 to {MOST_STEPS} boxes"
    if (figure.input is None) == (figure.output is None):
        return "give the number that goes in or the number that comes out, and not both"
    for node in (*(box.number for box in figure.does), figure.input, figure.output):
        if node is not None and exact_or_none(node) is None:
            return "what goes in, comes out and stands in its boxes are numbers"
    if any(box.sign in "×÷" and exact(box.number) == 0 for box in figure.does):
        return "no box multiplies or divides by 0"
    return ""


def _through(value: Fraction, box: Does, back: bool) -> Fraction:
    number = exact(box.number)
    sign = {"+": "−", "−": "+", "×": "÷", "÷": "×"}[box.sign] if back else box.sign
    if sign == "+":
        return value + number
    if sign == "−":
        return value - number
    return value * number if sign == "×" else value / number


def _numbers(figure: FunctionMachine) -> tuple[Fraction, Fraction]:
    """Return what goes in and what comes out."""
    if figure.input is not None:
        low = value = exact(figure.input)
        for box in figure.does:
            value = _through(value, box, back=False)
        return low, value
    assert figure.output is not None
    high = value = exact(figure.output)
    for box in reversed(figure.does):
        value = _through(value, box, back=True)
    return value, high


def _box_text(box: Does) -> str | t.Node:
    from itembank.notation.line import shown_line

    return f"{box.sign} {shown_line(box.number)}"


def _drawing(figure: FunctionMachine) -> Drawing:
    marks: list[Mark] = []
    x = Fraction(0)

    def label(content: str | t.Node, role: str) -> None:
        nonlocal x
        wide = room(content).width
        marks.append(Text(Point(x + wide / 2, 0), content, role=role))
        x += wide

    def arrow() -> None:
        nonlocal x
        x += Fraction(1, 4)
        marks.append(Stroke((Point(x, 0), Point(x + _ARROW, 0)), "arrow", arrow="end"))
        x += _ARROW + Fraction(1, 4)

    label(UNKNOWN if figure.input is None else figure.input, "input")
    for box in figure.does:
        arrow()
        text = _box_text(box)
        wide = text_width(str(text)) + 2 * _EDGE
        # The arrow's tip stands at the box.
        x -= Fraction(1, 4)
        marks.append(Area(rectangle(x, -_HIGH / 2, x + wide, _HIGH / 2), "machine"))
        marks.append(Text(Point(x + wide / 2, 0), text, role="does"))
        x += wide - Fraction(1, 4)
    x += Fraction(1, 4)
    arrow()
    label(UNKNOWN if figure.output is None else figure.output, "output")
    return drawing(marks)


_SAYS = {"+": "adds {}", "−": "subtracts {}", "×": "multiplies by {}", "÷": "divides by {}"}


def _words(figure: FunctionMachine) -> str:
    steps = ", then ".join(_SAYS[box.sign].format(said(box.number)) for box in figure.does)
    if figure.input is not None:
        ends = f"{said(figure.input)} goes in, and what comes out is not shown."
    else:
        assert figure.output is not None
        ends = f"{said(figure.output)} comes out, and what goes in is not shown."
    return f"A function machine {steps}. The number {ends}"


def _read(figure: FunctionMachine, reading: Reading) -> t.Node:
    low, high = _numbers(figure)
    like = [node for node in (figure.input, figure.output) if node is not None]
    like += [box.number for box in figure.does]
    if reading == Reading("output"):
        return written_as(high, *like)
    if reading == Reading("input"):
        return written_as(low, *like)
    raise not_shown(reading)


def _printed(figure: FunctionMachine) -> tuple[t.Node, ...]:
    ends = (node for node in (figure.input, figure.output) if node is not None)
    return (*ends, *(box.number for box in figure.does))


FUNCTION_MACHINE = register_figure(
    FigureKind(
        "function machine",
        FunctionMachine,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=lambda figure: (Reading("input"), Reading("output")),
        read=_read,
        wordings=(
            Wording(
                r"(?:what is|work out|find) the output(?: of (?:the|this)(?: function)? machine)?|"
                r"what (?:number )?comes out(?: of (?:the|this)(?: function)? machine)?",
                asks_reading("output"),
            ),
            Wording(
                r"(?:what is|work out|find) the input(?: of (?:the|this)(?: function)? machine)?|"
                r"what (?:number )?(?:goes|was put) in(?:to (?:the|this)(?: function)? machine)?",
                asks_reading("input"),
            ),
        ),
    )
)
