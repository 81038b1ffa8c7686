"""Drawings of charts, tables, lines, shapes and machines that lie about their data are found out.

A lie is one mark that says something else: a bar too high, a number changed, a square too few.
Each true drawing passes the same test, so that it can fail.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from fractions import Fraction

import pytest

from itembank.figures.drawing import Area, Drawing, Fill
from itembank.figures.figure import Figure, drawn, kind_of
from itembank.figures.kinds.chart.bar_chart import BarChart, Series
from itembank.figures.kinds.chart.pictogram import Pictogram
from itembank.figures.kinds.number.balance import Balance
from itembank.figures.kinds.number.function_machine import FunctionMachine
from itembank.figures.kinds.number.growing_pattern import GrowingPattern
from itembank.figures.kinds.number.number_line import NumberLine
from itembank.figures.kinds.number.shaded_shape import ShadedShape
from itembank.figures.kinds.solid.net import Net
from itembank.figures.kinds.symmetry.cut_polygon import CutPolygon
from itembank.figures.kinds.symmetry.shaded_squares import ShadedSquares
from itembank.figures.kinds.table.frequency_table import FrequencyTable
from itembank.figures.kinds.table.two_way_table import TwoWayTable
from itembank.notation import tree as t
from itembank.notation.parse import parse
from tests.figures.every_figure import examples
from tests.figures.held import LIED, holds
from tests.figures.lies import (
    changed,
    found_out,
    moved,
    places,
    relabelled,
    stretched,
    swapped,
    without,
)

BARS = BarChart(("Mon", "Tue", "Wed"), (Series((12, 8, 10)),), 4, 2, "Trays")
PAIRS = BarChart(
    ("Mon", "Tue"), (Series((12, 8), "leeks"), Series((4, 16), "kale")), 4, 1, "Trays sold"
)
GOALS = FrequencyTable("Goals", tuple(map(t.Int, (0, 1, 2))), (4, 5, 6), "Matches")
WAYS = FrequencyTable("Way", tuple(map(t.Label, ("bus", "car"))), (9, 4), "Pupils")
CLASSES = TwoWayTable(
    ("7M", "8K"),
    ("girls", "boys"),
    tuple(tuple(map(t.Int, row)) for row in ((14, 16, 30), (13, 12, 25), (27, 28, 55))),
)
SQUARES = Pictogram(("Monday", "Tuesday"), (10, 7), 4, "trays")
LINE = NumberLine(t.Int(0), t.Int(1), 10, points=(("A", 3), ("B", 7)))
TILES = GrowingPattern(2, 3, "squares")
SHAPE = ShadedShape("rectangle", 2, 4, (0, 1, 5))
SLICES = ShadedShape("circle", 1, 6, (0, 1))
HEXAGON = CutPolygon(6, (0, 2, 4))
SQUARES_SHADED = ShadedSquares(3, 5, (0, 4, 9, 10, 14), (("A", 6), ("B", 8), ("C", 5), ("D", 2)))
CROSS = ((1, 0, 1, 1), (0, 1, 1, 1), (1, 1, 1, 1), (2, 1, 1, 1), (1, 2, 1, 1), (1, 3, 1, 1))
CUBE = Net((CROSS,), letters="ABCDEF")
BOX = Net(
    (((1, 0, 3, 1), (0, 1, 1, 2), (1, 1, 3, 2), (4, 1, 1, 2), (1, 3, 3, 1), (1, 4, 3, 2)),),
    unit="cm",
)
HALF, STEP = Fraction(1, 2), Fraction(11, 10)

LIES: dict[str, tuple[Figure, Callable[[], Drawing]]] = {
    "a bar is higher": (BARS, lambda: stretched(BARS, "bar 0", Fraction(3, 2))),
    "a bar is missing": (BARS, lambda: without(BARS, "bar 0", 1)),
    "two bars have each other's names": (BARS, lambda: swapped(BARS, "category")),
    "a number of the axis is changed": (BARS, lambda: relabelled(BARS, "number", t.Int(5), 1)),
    "a line of the axis is moved": (BARS, lambda: moved(BARS, "line", Fraction(0), HALF, 2)),
    "the kinds of bar are changed over": (PAIRS, lambda: swapped(PAIRS, "series")),
    "a bar of the second kind is higher": (PAIRS, lambda: stretched(PAIRS, "bar 1", Fraction(2))),
    "a frequency is changed": (GOALS, lambda: relabelled(GOALS, "cell", t.Int(7), 4)),
    "a value is changed": (GOALS, lambda: relabelled(GOALS, "cell", t.Int(9), 2)),
    "a frequency is missing": (GOALS, lambda: without(GOALS, "cell", 4)),
    "two names are changed over": (WAYS, lambda: swapped(WAYS, "head", 1, 2)),
    "a line of the table is missing": (GOALS, lambda: without(GOALS, "column line", 2)),
    "a count is changed": (CLASSES, lambda: relabelled(CLASSES, "cell", t.Int(15))),
    "a total is changed": (CLASSES, lambda: relabelled(CLASSES, "cell", t.Int(56), 8)),
    "two columns have each other's names": (CLASSES, lambda: swapped(CLASSES, "head", 0, 1)),
    "a square is missing": (SQUARES, lambda: without(SQUARES, "square")),
    "the key says more": (SQUARES, lambda: relabelled(SQUARES, "key says", "= 5 trays")),
    "two rows have each other's names": (SQUARES, lambda: swapped(SQUARES, "category")),
    "a part of a square is higher": (SQUARES, lambda: _whole_square()),
    "an arrow is moved": (LINE, lambda: moved(LINE, "pointer", Fraction(6, 5), Fraction(0))),
    "two arrows have each other's letters": (LINE, lambda: swapped(LINE, "point")),
    "the end of the line is changed": (LINE, lambda: relabelled(LINE, "number", t.Int(2), 1)),
    "a mark of the line is missing": (LINE, lambda: without(LINE, "tick", 1)),
    "a tile is missing": (TILES, lambda: without(TILES, "tile 2")),
    "a part of a shape is missing": (SHAPE, lambda: without(SHAPE, "part")),
    "a shaded part is larger than the others": (
        SHAPE,
        lambda: stretched(SHAPE, "shaded", Fraction(3, 2)),
    ),
    "a part that is shaded is drawn as one that is not": (
        SHAPE,
        lambda: filled(SHAPE, "shaded", "part", "none"),
    ),
    "a slice of a circle is missing": (SLICES, lambda: without(SLICES, "part")),
    "another triangle of a polygon is shaded": (
        HEXAGON,
        lambda: filled(HEXAGON, "part", "shaded", "shade"),
    ),
    "a triangle of a polygon is missing": (HEXAGON, lambda: without(HEXAGON, "part")),
    "a triangle of a polygon is moved": (
        HEXAGON,
        lambda: moved(HEXAGON, "shaded", HALF, Fraction(0)),
    ),
    "another square of a pattern is shaded": (
        SQUARES_SHADED,
        lambda: filled(SQUARES_SHADED, "square", "shaded", "shade"),
    ),
    "two squares have each other's letters": (
        SQUARES_SHADED,
        lambda: swapped(SQUARES_SHADED, "letter", 1, 2),
    ),
    "a square of a pattern is missing": (
        SQUARES_SHADED,
        lambda: without(SQUARES_SHADED, "square"),
    ),
    "two faces of a net have each other's letters": (CUBE, lambda: swapped(CUBE, "letter", 0, 1)),
    "a face of a net is missing": (CUBE, lambda: without(CUBE, "face 0")),
    "a face of a net stands elsewhere": (
        CUBE,
        lambda: moved(CUBE, "face 0", Fraction(6, 5), Fraction(0)),
    ),
    "the squares of a net are said to be larger": (
        BOX,
        lambda: relabelled(BOX, "scale", "The squares have sides of 2 cm."),
    ),
    "a face of a net is higher": (BOX, lambda: stretched(BOX, "face 0", Fraction(2))),
    "a tile of the last pattern is missing": (TILES, lambda: without(TILES, "tile 3", 1)),
}


def filled(figure: Figure, role: str, other: str, fill: Fill) -> Drawing:
    """Return the drawing of a figure with one area as another role has them."""
    made = drawn(figure)
    at = places(made, role)[0]
    mark = made.marks[at]
    assert isinstance(mark, Area)
    return changed(made, at, dataclasses.replace(mark, role=other, fill=fill))


def _whole_square() -> Drawing:
    made = drawn(SQUARES)
    whole, *_, part = (made.marks[at] for at in places(made, "square"))
    del part
    at = places(made, "square")[2]
    return changed(made, at, whole)


@pytest.mark.parametrize("lie", LIES)
@holds(LIED, *{kind_of(figure).name for figure, _ in LIES.values()})
def test_a_planted_lie_is_found_out(lie: str) -> None:
    figure, false = LIES[lie]
    assert not found_out(figure, drawn(figure))
    assert found_out(figure, false())


BALANCES = list(examples("balance", 12, seed=4))
MACHINES = list(examples("function machine", 12, seed=4))
MODELS = list(examples("bar model", 40, seed=4))
DOUBLE = list(examples("double number line", 12, seed=4))


@pytest.mark.parametrize("figure", BALANCES, ids=range(len(BALANCES)))
@holds(LIED, "balance")
def test_another_weight_on_a_balance_is_found_out(figure: Balance) -> None:
    assert not found_out(figure, drawn(figure))
    assert found_out(figure, relabelled(figure, "weight", parse("997")))
    assert found_out(figure, without(figure, "weight"))


@pytest.mark.parametrize("figure", MACHINES, ids=range(len(MACHINES)))
@holds(LIED, "function machine")
def test_another_rule_on_a_machine_is_found_out(figure: FunctionMachine) -> None:
    assert not found_out(figure, drawn(figure))
    assert found_out(figure, relabelled(figure, "does", "+ 991"))
    known = "output" if figure.input is None else "input"
    assert found_out(figure, relabelled(figure, known, parse("991")))


@holds(LIED, "bar model")
def test_another_amount_on_a_bar_model_is_found_out() -> None:
    tried = 0
    for figure in MODELS:
        made = drawn(figure)
        assert not found_out(figure, made)
        for role in ("bar total", "total"):
            if any(mark.role == role for mark in made.marks):
                content = next(mark.content for mark in made.of(role))  # type: ignore[union-attr]
                if t.symbols(content) if not isinstance(content, str) else True:
                    continue
                assert found_out(figure, relabelled(figure, role, _other(content)))
                tried += 1
    assert tried > 15


def _other(content: t.Node) -> t.Node:
    match content:
        case t.Quantity(_, unit):
            return t.Quantity(t.Int(991), unit)
        case t.Money(_, sign):
            return t.Money(t.Int(991), sign)
    return t.Int(991)


@pytest.mark.parametrize("figure", DOUBLE, ids=range(len(DOUBLE)))
@holds(LIED, "double number line")
def test_another_amount_on_a_double_line_is_found_out(figure: Figure) -> None:
    assert not found_out(figure, drawn(figure))
    for role in ("over", "under"):
        labels = list(drawn(figure).of(role))
        numbers = [
            at
            for at, mark in enumerate(labels)
            if not isinstance(mark.content, str) and not t.symbols(mark.content)  # type: ignore[union-attr]
        ]
        at = numbers[-1]
        false = relabelled(figure, role, _other(labels[at].content), at)  # type: ignore[union-attr]
        assert found_out(figure, false)
