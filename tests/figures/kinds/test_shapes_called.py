"""A question calls a shape what it is, and says of several which is 1; else it is refused."""

from __future__ import annotations

import pytest

from itembank.figures.figure import Figure, FigureError
from itembank.figures.kinds.number.shaded_shape import ShadedShape
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items.asks.of_figure import as_find, of_figure
from itembank.notation import tree as t
from itembank.notation.line import line


def cm(number: int) -> t.Node:
    return t.Quantity(t.Int(number), "cm")


def corners(*rows: tuple[int, int]) -> tuple[tuple[t.Node, t.Node], ...]:
    return tuple((t.num(x), t.num(y)) for x, y in rows)


RECTANGLE = Polygon(
    corners((0, 0), (7, 0), (7, 5), (0, 5)),
    sides=(("AB", cm(7)), ("BC", cm(5))),
    right="ABCD",
)
CIRCLES = ShadedShape("circle", 1, 4, (0, 1, 2, 3, 4), 2)
BAR = ShadedShape("rectangle", 1, 5, (0, 1))


@pytest.mark.parametrize(
    ("figure", "question", "answer"),
    [
        (RECTANGLE, "Work out the area of the rectangle.", "35 cm^2"),
        (RECTANGLE, "Work out the perimeter of the shape.", "24 cm"),
        (RECTANGLE, "Work out the area of the parallelogram.", "35 cm^2"),
        (RECTANGLE, "Work out the area of the square.", None),
        (RECTANGLE, "Work out the area of the triangle.", None),
        (RECTANGLE, "Work out the perimeter of the rhombus.", None),
        (RECTANGLE, "Work out the area of the rectangle ACBD.", None),
        (CIRCLES, "What mixed number is shaded, if each circle is 1?", "5/4"),
        (CIRCLES, "What fraction is shaded?", None),
        (CIRCLES, "What fraction of the circle is shaded?", None),
        (CIRCLES, "What fraction of each circle is shaded?", None),
        (BAR, "What fraction of the bar is shaded?", "2/5"),
        (BAR, "What fraction of the circle is not shaded?", None),
        (BAR, "What fraction of the square is shaded?", None),
        (BAR, "Each part is worth two. What fraction of the bar is shaded?", None),
    ],
)
def test_shapes_are_called_what_they_are(figure: Figure, question: str, answer: str | None):
    if answer is None:
        with pytest.raises(FigureError):
            of_figure(figure, (question,))
        return
    assert line(as_find(of_figure(figure, (question,))).target) == answer
