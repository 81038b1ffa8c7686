"""Perimeters and angles of shapes that are drawn, with expressions on them."""

from __future__ import annotations

from generators._corners import at, low_triangle, triangle_corners
from generators._turns import by_turns
from generators.equations import _misconceptions as m
from generators.equations._asks import asking, number_left
from generators.equations._balance import balance
from generators.equations._story import X, metres
from generators.equations._writing import side, solution
from itembank.figures.figure import Figure
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def angles_fit(a: int, value: int) -> bool:
    """Tell whether x, x + b and ax degrees, in order of size, make a triangle to ask about."""
    b = 180 - (a + 2) * value
    return 0 < b < (a - 1) * value and a * value < 125 and 90 not in (a * value, value + b)


def triangle_drawn(a: int, value: int) -> Draft:
    """Return a triangle with the angles x, x + b and ax degrees; the letter is asked for."""
    count, b = a + 2, 180 - (a + 2) * value
    labels = {
        value: t.Quantity(X, "°"),
        value + b: t.Quantity(t.Bracket(side(1, X, b)), "°"),
        a * value: t.Quantity(side(a, X), "°"),
    }
    low, middle, high = sorted(labels)
    order = (low, middle, high) if value % 2 else (middle, low, high)
    drawn = low_triangle(*order)
    figure = Polygon(
        triangle_corners(drawn[0], drawn[1]),
        angles=tuple((corner, labels[size]) for corner, size in zip("ABC", order, strict=True)),
        accurate=False,
    )
    text = prompt(by_turns(("Work out the value of {x}.", "Find the value of {x}."), value), x=X)
    steps = (
        Step(
            "The angles of a triangle add up to 180°.",
            t.equals(t.add(X, t.Bracket(side(1, X, b)), side(a, X)), t.num(180)),
        ),
        Step("Collect like terms.", t.equals(side(count, X, b), t.num(180))),
        *balance(X, count, b, 0, 180),
    )
    wrong = (
        (m.FULL_TURN, solution(X, 180 // count + value) if 180 % count == 0 else None),
        (
            asking(m.SAME_OPERATION, number_left(b, 180)),
            solution(X, 360 // count - value) if 360 % count == 0 else None,
        ),
        (m.LETTER_ONLY, None),
    )
    return Draft(
        text,
        of_figure(figure, text),
        solution(X, value),
        "solution",
        steps,
        slips(*wrong),
        ("drawn triangle", a, value),
        figure=figure,
    )


def rectangle_drawn(a: int, b: int, c: int, value: int) -> Draft:
    """Return the opposite sides ax + b and cx + d of a rectangle; its perimeter is asked for."""
    d = b + (a - c) * value
    length = a * value + b
    width = max(3, length // 3) + b % 3
    labels = [t.Quantity(t.Bracket(part), "m") for part in (side(a, X, b), side(c, X, d))]
    if value % 2:
        labels.reverse()
    figure: Figure = Polygon(
        at((0, 0), (length, 0), (length, width), (0, width)),
        sides=(("AB", labels[0]), ("BC", metres(width)), ("CD", labels[1])),
        right="ABCD",
        accurate=False,
    )
    text = (
        by_turns(
            ("Work out the perimeter of the rectangle.", "Find the perimeter of this rectangle."),
            value + b // 2,
        ),
    )
    key = metres(2 * (length + width))
    worked = t.Bracket(t.add(t.times(t.num(a), t.num(value)), t.num(b)))
    steps = (
        Step("Opposite sides of a rectangle are equal.", t.equals(side(a, X, b), side(c, X, d))),
        *balance(X, a, b, c, d),
        Step(f"Substitute x = {value}.", t.equals(t.Quantity(worked, "m"), metres(length))),
        Step(
            "Add all four sides.",
            t.equals(
                t.add(metres(length), metres(width), metres(length), metres(width)),
                key,
            ),
        ),
    )
    wrong = (
        (
            asking(m.LETTER_ONLY, f"That is x. How long is a side of {a}x + {b} metres?"),
            metres(value),
        ),
        (m.STOPS_EARLY, metres(length)),
        (m.TWO_SIDES, metres(length + width)),
    )
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "quantity",
        steps,
        slips(*wrong, key=key),
        ("drawn rectangle", a, b, c, value),
        figure=figure,
    )
