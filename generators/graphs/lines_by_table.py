"""Points of a line by its equation: y for a value of x, which point is on it, and back to x.

England's programme of study for key stage 3 (2013) asks pupils to "model situations or procedures
by translating them into algebraic expressions or formulae and by using graphs" and to "recognise,
sketch and produce graphs of linear ... functions of one variable with appropriate scaling" (from
memory).
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import gcd
from typing import Any

from generators._drawn import to_draw
from generators.graphs._grids import Spot, grid, pair
from generators.graphs._line_value_mistakes import (
    ADDS_NUMBER,
    FORWARDS,
    MINUS_LOST,
    NUMBER_ALONE,
    SIDE_BY_SIDE,
)
from generators.graphs._lines import X, Y, drawn, equation, said, signed, spots
from generators.graphs._misconceptions import SWAPPED
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Misconception, Run, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

FOUR = (-6, 6, -5, 5)


def _support(m: int, c: int, x: int) -> bool:
    y = m * x + c
    sides = {m + x + c, 10 * m + x + c, m * x}
    return c != 0 and y not in sides and len(sides) == 3 and y > 0 and (m + c + x) % 3 > 0


def _core(what: int, m: int, c: int, x: int) -> bool:
    """Keep negative values of x, and points of which one is on the line, on a grid."""
    if what == 0:
        y = m * x + c
        wrong = {-m * x + c, m + x + c, m * x}
        return -7 < x < 0 and c != 0 and len({*wrong, y}) == 4 and (m + 2 * c + x) % 5 == 0
    y = m * x + c
    near = max(abs(x), abs(y)) < 5 and abs(x - y) > 1 and m * y + c != x and c != 0
    return near and _third(m, c, x) is not None and (m + c + 2 * x) % 2 == 0


def _third(m: int, c: int, x: int) -> tuple[Misconception, int] | None:
    """Return a wrong way whose y is on the grid, and not beside another point, with that y."""
    y = m * x + c
    for mistake, wrong in (
        (MINUS_LOST, c - m * x),
        (ADDS_NUMBER, m + x + c),
        (NUMBER_ALONE, m * x),
    ):
        apart = (x - y) ** 2 + (wrong - x) ** 2 > 3  # from the one with coordinates swapped
        if abs(wrong) < 5 and abs(wrong - y) > 1 and apart and (mistake is not MINUS_LOST or x < 0):
            return mistake, wrong
    return None


def _challenge(what: int, m: int, c: int, x: int) -> bool:
    """Keep lines whose point is known by y, and drawn lines one of which meets a point."""
    y = m * x + c
    if what == 0:
        return (
            x not in (0, 1, y)
            and abs(m) > 1
            and c != 0
            and y - m - c != x
            and (m + 2 * c + 3 * x) % 7 == 0
        )
    return (
        0 < abs(x) < 6
        and 0 < abs(y) < 5
        and abs(m) in (1, 2)
        and 0 < abs(c) < 4
        and m * y + c != x
        and x != -y
        and abs(x - m * y) < 5
        and x - m * y != c
    )


def _line_drawn(top: int, under: int, c: int) -> bool:
    """Keep lines that meet four corners of squares at least, and cross the y-axis there."""
    if gcd(top, under) != 1 or top == 0:
        return False
    return len(spots(Fraction(top, under), c, FOUR)) >= 4


def _to_draw(topic: Topic, tier: Tier, top: int, under: int, c: int) -> Draft:
    """Return an empty grid on which the line y = (top/under)x + c is to be drawn."""
    slope = Fraction(top, under)
    given, shown = grid(FOUR), grid(FOUR, (), (drawn(slope, c, FOUR, "L"),))
    text = prompt("Draw the line {e} and label it L.", e=equation(slope, c))
    first, second, third = _three(spots(slope, c, FOUR))
    places = ", ".join(f"({said(x)}, {said(y)})" for x, y in (first, second))
    steps = (
        Step("Work out y for three values of x."),
        Step(f"The points {places} and ({said(third[0])}, {said(third[1])}) lie on the line."),
        Step("Plot the three points, and draw a straight line through them to both edges."),
    )
    return to_draw(text, given, shown, steps, ("to draw", slope, c))


def _three(places: list[Spot]) -> tuple[Spot, Spot, Spot]:
    """Return three places of a line: those with the smallest numbers for x."""
    near = sorted(sorted(places, key=lambda place: (abs(place[0]), place[0]))[:3])
    return near[0], near[1], near[2]


@register
class LinesByTable(Topic):
    """Values and points of a straight line, from its equation."""

    id = "graphs.lines-by-table"
    title = "Points on a line from its equation"
    statements = ("algebra.graphs", "algebra.two-views")
    prerequisites = ("equations.substitution", "graphs.coordinates")
    misconceptions = (ADDS_NUMBER, SIDE_BY_SIDE, MINUS_LOST, FORWARDS, NUMBER_ALONE, SWAPPED)
    spaces = {
        Tier.SUPPORT: Space(_support, m=range(2, 10), c=range(-9, 10), x=range(2, 10)),
        Tier.CORE: Space(
            _core,
            what=range(2),
            m=(-5, -4, -3, -2, 2, 3, 4, 5, 6),
            c=range(-9, 10),
            x=range(-9, 10),
        ).also(
            _to_draw,
            _line_drawn,
            top=(-3, -2, -1, 1, 2, 3),
            under=(1,),
            c=range(-4, 5),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            what=range(2),
            m=(-4, -3, -2, -1, 1, 2, 3, 4, 5, 6),
            c=range(-8, 9),
            x=range(-7, 10),
        ).also(
            _to_draw,
            _line_drawn,
            top=(-3, -1, 1, 3),
            under=(2, 3),
            c=range(-4, 5),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "graphs.lines-by-table",
        kinds.working_goes_wrong(
            {ADDS_NUMBER: (e.everywhere(e.added),), NUMBER_ALONE: (e.cut_short,)}
        ),
    )
    spaces = kinds.with_people_asked(spaces, "graphs.lines-by-table")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._value(*values)
        what, m, c, x = values
        if tier is Tier.CORE:
            return self._which_point(m, c, x) if what else self._value(m, c, x)
        return self._which_line(m, c, x) if what else self._back(m, c, x)

    def _value(self, m: int, c: int, x: int) -> Draft:
        given = equation(m, c)
        y = m * x + c
        text = prompt(
            "A table of values is made for {e}. What is {y} when {x}?",
            e=given,
            y=Y,
            x=t.equals(X, t.num(x)),
        )
        product = t.times(t.num(m), signed(x))
        steps = (
            Step("Put the number in the place of x and multiply.", t.equals(product, t.num(m * x))),
            Step(
                "Add the number at the end." if c > 0 else "Take away the number at the end.",
                t.equals(
                    t.add(t.num(m * x), t.Int(c)) if c > 0 else t.sub(t.num(m * x), t.Int(-c)),
                    t.num(y),
                ),
            ),
        )
        wrong = slips(
            (MINUS_LOST, -m * x + c if x < 0 else None),
            (ADDS_NUMBER, m + x + c),
            (SIDE_BY_SIDE, 10 * m + x + c if 0 < x < 10 and m > 0 else None),
            (NUMBER_ALONE, m * x),
            key=t.num(y),
        )
        return Draft(
            text,
            Find(Y, (given, t.equals(X, t.num(x)))),
            t.num(y),
            "integer",
            steps,
            wrong,
            ("value", m, c, x),
        )

    def _which_point(self, m: int, c: int, x: int) -> Draft:
        y = m * x + c
        own, swapped, lost = ("ABC", "BCA", "CAB")[(m + c + x) % 3]
        found = _third(m, c, x)
        assert found is not None
        mistake, wrong = found
        figure = grid(FOUR, sorted(((own, (x, y)), (swapped, (y, x)), (lost, (x, wrong)))))
        text = prompt("Which point lies on the line {e}?", e=equation(m, c))
        told = "Put the x of each point into the equation.", "For this point it gives the y."
        wrong_names = {SWAPPED: swapped, mistake: lost}
        return _named(figure, text, own, told, wrong_names, ("which point", m, c, x))

    def _back(self, m: int, c: int, x: int) -> Draft:
        y = m * x + c
        letter = t.Sym("k")
        given = equation(m, c)
        text = prompt(
            "The point {p} lies on the line {e}. Work out the value of {k}.",
            p=t.pair(letter, t.num(y)),
            e=given,
            k=letter,
        )
        product = t.juxt(t.num(m), letter) if m > 0 else t.Neg(t.juxt(t.Int(-m), letter))
        steps = (
            Step(
                "Put the coordinates into the equation.",
                t.equals(
                    t.num(y), t.add(product, t.Int(c)) if c > 0 else t.sub(product, t.Int(-c))
                ),
            ),
            Step("Get the term with k alone.", t.equals(t.num(m * x), product)),
            Step(f"Divide by {m}.".replace("-", "−"), t.equals(letter, t.num(x))),
        )
        wrong = slips(
            (FORWARDS, m * y + c),
            (NUMBER_ALONE, Fraction(y, m)),
            (ADDS_NUMBER, y - m - c),
            key=t.num(x),
        )
        relations = (given, t.equals(X, letter), t.equals(Y, t.num(y)))
        return Draft(
            text, Find(letter, relations), t.num(x), "number", steps, wrong, ("back", m, c, x)
        )

    def _which_line(self, m: int, c: int, x: int) -> Draft:
        y = m * x + c
        own, swapped, third = ("LMN", "MNL", "NLM")[(m + c + x) % 3]
        # A line through the point with its coordinates swapped, and one that only starts alike.
        lines = ((own, m, c), (swapped, m, x - m * y), (third, -m, c))
        figure = grid(FOUR, (), tuple(drawn(Fraction(s), r, FOUR, n) for n, s, r in sorted(lines)))
        text = prompt("Which line passes through {p}?", p=pair(x, y))
        told = "Find the point: along first, then up or down.", "See which line goes through it."
        wrong_names = {SWAPPED: swapped, MINUS_LOST: third}
        return _named(figure, text, own, told, wrong_names, ("which line", m, c, x))


def _named(
    figure: CoordinateGrid,
    text: tuple[Run, ...],
    name: str,
    told: tuple[str, str],
    wrong: Mapping[Misconception, str],
    twin: tuple[object, ...],
) -> Draft:
    """Return the question for the point or the line of a grid that is the right one."""
    look, found = told
    return Draft(
        text,
        of_figure(figure, text),
        t.Label(name),
        "name",
        (Step(look), Step(found, t.Label(name))),
        slips(*((mistake, t.Label(label)) for mistake, label in wrong.items())),
        twin,
        figure=figure,
    )
