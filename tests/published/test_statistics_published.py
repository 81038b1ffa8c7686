"""Statistics against values published elsewhere."""

from __future__ import annotations

from fractions import Fraction

import pytest

from itembank.figures.figure import Reading, read
from itembank.figures.kinds.chart.scatter_graph import ScatterGraph
from itembank.items.asks import Summary
from itembank.items.forms.form_rules import decimal_node
from itembank.notation import line, parse
from itembank.notation import tree as t
from itembank.proof.exact.exact_road import by_first_road
from itembank.proof.measured.measure import measured
from itembank.proof.sympy.sympy_road import by_second_road

# Anscombe, F. J. (1973). Graphs in statistical analysis. The American Statistician 27, 17–21: the
# values of x and y, and that each x has mean 9 and each y mean 7.50, from memory.
ANSCOMBE = {
    "x1": ("10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5", Fraction(9)),
    "x4": ("8, 8, 8, 8, 8, 8, 8, 19, 8, 8, 8", Fraction(9)),
    "y1": (
        "8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68",
        Fraction("7.50"),
    ),
    "y2": (
        "9.14, 8.14, 8.74, 8.77, 9.26, 8.10, 6.13, 3.10, 9.13, 7.26, 4.74",
        Fraction("7.50"),
    ),
}


@pytest.mark.parametrize("name", ANSCOMBE)
def test_the_means_of_anscombes_quartet(name: str) -> None:
    text, published = ANSCOMBE[name]
    row = parse(text)
    assert isinstance(row, t.Listing)
    # The means of y are published to two decimal places, of which the exact ones fall short.
    exact = sum(map(Fraction, text.split(", ")), Fraction(0)) / 11
    assert round(exact, 2) == published
    ask = Summary(row.parts, "mean")
    for road in (by_first_road, by_second_road):
        assert not road_fault(road, ask, exact)
        assert road_fault(road, ask, exact + 1)


def road_fault(road: object, ask: Summary, value: Fraction) -> str:
    from itembank.items.item import Item, Tier

    assert callable(road)
    item = Item(
        "a.b/core/0", "a.b", Tier.CORE, ("",), ask, decimal_node(value), "value", (), (), (), 1, ()
    )
    fault: str = road(item).fault
    return fault


# Anscombe's x values as they stand there, from memory: their median and range are plain to see.
@pytest.mark.parametrize(
    ("detail", "value"), [("median", Fraction(8)), ("mode", Fraction(8)), ("range", Fraction(11))]
)
def test_the_middle_and_the_spread_of_his_fourth_set(detail: str, value: Fraction) -> None:
    row = parse(ANSCOMBE["x4"][0])
    assert isinstance(row, t.Listing)
    ask = Summary(row.parts, detail)  # type: ignore[arg-type]
    for road in (by_first_road, by_second_road):
        assert not road_fault(road, ask, value)


# Anscombe's third set: all points but one close to a line, and the regression line of all four sets
# is y = 3 + 0.5x; y is rounded here. The point at x = 13 is the outlier (from memory).
THIRD = {10: 7, 8: 7, 13: 13, 9: 7, 11: 8, 14: 9, 6: 6, 4: 5, 12: 8, 7: 6, 5: 6}


def test_the_outlier_of_anscombes_third_set() -> None:
    data = tuple((t.Int(x), t.Int(y)) for x, y in THIRD.items())
    figure = ScatterGraph(
        *("x", "y", 14, 14, 1, 2, data, ((t.Int(0), t.Int(3)), (t.Int(14), t.Int(10))))
    )
    for found in (read(figure, Reading("outlier")), measured(figure, Reading("outlier"))):
        assert line(found) == "(13, 13)"
    for road in (read, measured):
        assert line(road(figure, Reading("estimate", ("x", "8")))) == "7"
