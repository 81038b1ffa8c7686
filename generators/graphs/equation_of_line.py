"""The equation of a drawn line: found among lines, and written as y = mx + c.

England's programme of study for key stage 3 (2013) asks pupils to "recognise, sketch and produce
graphs of linear and quadratic functions" and to "calculate and interpret gradients and intercepts
of graphs" (from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.graphs._equation_mistakes import (
    ADDS_PRODUCT,
    CHANGED_OVER,
    COORDINATE_AS_INTERCEPT,
    X_CROSSING,
)
from generators.graphs._equations_told import with_equations
from generators.graphs._grids import grid
from generators.graphs._lines import drawn, equation, said, spots
from generators.graphs._lines_rearranged import MISTAKES, with_rearranged
from generators.graphs._misconceptions import GRADIENT_SIGN, UPSIDE_DOWN
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_WINDOWS = ((-6, 6, -5, 5), (-4, 7, -5, 5), (-7, 4, -5, 5), (-6, 6, -6, 6))
_RISING = tuple(Fraction(p) for p in (1, 2, 3, 4, -1, -2, -3))
_SLOPES = tuple(
    Fraction(sign * p, q) for p, q in ((1, 2), (1, 3), (3, 2), (2, 3), (3, 4)) for sign in (1, -1)
)
_NAMES = ("LMN", "MNL", "NLM", "PQR", "QRP", "RPQ")


def _support(m: int, c: int, turn: int, way: int) -> bool:
    """Keep y = mx + c that is told from y = cx + m, and from one that falls."""
    apart = abs(m) > 1 and abs(c) > 1 and m != c and (m > 0 or c > 0)
    # In one of the windows two of the lines leave no room for a letter.
    return apart and (m + c + turn + way) % 3 > 0 and ((m, c) != (3, 2) or way == 0)


def _written(slopes: tuple[Fraction, ...]) -> Callable[[int, int, int], bool]:
    def keep(slope: int, c: int, way: int) -> bool:
        """Keep lines that meet the y-axis off 0, and are not told by one number alone."""
        value = slopes[slope]
        seen = len(spots(value, c, _WINDOWS[way])) > 2
        return seen and c not in (0, value, -value) and (way == 0 or (c + slope + way) % 3 > 0)

    return keep


@register
class EquationOfLine(Topic):
    """The equation of a straight line on a grid."""

    id = "graphs.equation-of-line"
    title = "Equation of a line from its graph"
    statements = ("algebra.linear-graphs", "algebra.two-views")
    prerequisites = ("graphs.gradient", "graphs.intercept")
    misconceptions = (
        *(CHANGED_OVER, GRADIENT_SIGN, UPSIDE_DOWN, X_CROSSING),
        *(COORDINATE_AS_INTERCEPT, ADDS_PRODUCT),
        *MISTAKES,
    )
    spare = "Gradients and intercepts that can be read off a grid that fits a slide are few."
    spaces = {
        Tier.SUPPORT: Space(
            _support, m=(-3, -2, 2, 3), c=range(-4, 5), turn=range(len(_NAMES)), way=range(2)
        ),
        Tier.CORE: Space(
            _written(_RISING), slope=range(len(_RISING)), c=range(-4, 5), way=range(4)
        ),
        Tier.CHALLENGE: Space(
            _written(_SLOPES), slope=range(len(_SLOPES)), c=range(-4, 5), way=range(4)
        ),
    }
    spaces = with_equations(kinds.with_statements(spaces))
    spaces = kinds.with_people_asked(spaces, "graphs.equation-of-line")
    spaces = with_rearranged(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._which(*values)
        slope, c, way = values
        value = (_RISING if tier is Tier.CORE else _SLOPES)[slope]
        return self._written(value, c, _WINDOWS[way])

    def _which(self, m: int, c: int, turn: int, way: int) -> Draft:
        own, changed, falling = tuple(_NAMES[turn])
        lines = ((own, m, c), (changed, c, m), (falling, -m, c))
        edges = _WINDOWS[way]
        figure = grid(
            edges, (), tuple(drawn(Fraction(s), r, edges, n) for n, s, r in sorted(lines))
        )
        text = prompt("Which line has the equation {e}?", e=equation(m, c))
        upwards = "up" if m > 0 else "down"
        return Draft(
            text,
            of_figure(figure, text),
            t.Label(own),
            "name",
            (
                Step(
                    f"It crosses the y-axis at {said(c)}, and goes {abs(m)} {upwards} for 1 along.",
                    t.Label(own),
                ),
            ),
            slips((CHANGED_OVER, t.Label(changed)), (GRADIENT_SIGN, t.Label(falling))),
            ("which", m, c, turn, way),
            figure=figure,
        )

    def _written(self, slope: Fraction, c: int, edges: tuple[int, int, int, int]) -> Draft:
        figure = grid(edges, (), (drawn(slope, c, edges),))
        ways = (
            "Write the equation of the line in the form {f}.",
            "What is the equation of the line in the form {f}?",
        )
        m, x = t.Sym("m"), t.Sym("x")
        general = t.equals(t.Sym("y"), t.add(t.juxt(m, x), t.Sym("c")))
        text = prompt(by_turns(ways, c + slope.numerator), f=general)
        key = equation(slope, c)
        at_x = -Fraction(c) / slope
        wrong = slips(
            (CHANGED_OVER, equation(c, slope)),
            (GRADIENT_SIGN, equation(-slope, c)),
            (UPSIDE_DOWN, equation(1 / slope, c)),
            (X_CROSSING, equation(slope, at_x) if at_x.denominator == 1 else None),
            key=key,
        )
        first, second = spots(slope, c, edges)[:2]
        run, rise = second[0] - first[0], second[1] - first[1]
        way = f"{abs(rise)} {'up' if rise > 0 else 'down'} for {run} along"
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "subject",
            (
                Step(f"It crosses the y-axis at {said(c)}."),
                *(
                    (
                        Step(f"It goes {way}."),
                        Step(f"Divide how far up by how far along: {said(slope)}."),
                    )
                    if slope.denominator > 1
                    else (Step(f"It goes {way}: the gradient is {said(slope)}."),)
                ),
                Step("Write both into the equation.", key),
            ),
            wrong,
            ("written", slope, c, edges),
            figure=figure,
        )
