"""Parallel lines: which are, the equation of one through a point, and equations to rearrange.

England's programme of study for key stage 3 (2013) asks pupils to "calculate and interpret
gradients and intercepts of graphs of ... linear equations numerically, graphically and
algebraically" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.graphs._equation_mistakes import (
    ADDS_PRODUCT,
    COORDINATE_AS_INTERCEPT,
    OWN_EQUATION,
    SAME_START,
)
from generators.graphs._equations_told import with_parallels
from generators.graphs._grids import grid, pair
from generators.graphs._lines import Y, drawn, equation, said, signed, spots
from generators.graphs._misconceptions import GRADIENT_SIGN, INTERCEPT_FOR_GRADIENT
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

FOUR = (-6, 6, -5, 5)
_SLOPES = tuple(Fraction(p, q) for p, q in ((2, 1), (-2, 1), (3, 1), (-3, 1), (1, 2), (-1, 2)))
_NAMES = ("LMN", "MNL", "NLM", "PQR")


def _support(slope: int, c: int, other: int, turn: int) -> bool:
    """Keep three lines: one parallel to an equation, one that starts alike, one that falls."""
    apart = abs(c - other) > (2 if slope < 4 else 4) and 0 not in (c, other)
    enough = all(len(spots(_SLOPES[slope], k, FOUR)) > 2 for k in (c, other))
    falls = len(spots(-_SLOPES[slope], c, FOUR)) > 2
    return apart and enough and falls and (slope + c + other + turn) % 2 == 0


def _core(slope: int, c: int, k: int, way: int) -> bool:
    value = _SLOPES[slope]
    enough = len(spots(value, c, FOUR)) > 2
    return enough and 0 not in (c, k) and abs(k - c) > 1 and way == 0 and k not in (value, -c)


def _challenge(m: int, c: int, x: int, y: int) -> bool:
    """Keep points off both axes and off the line, whose wrong ways give other intercepts."""
    right = y - m * x
    wrong = {y, y + m * x, c}
    return (
        len({right, *wrong}) == 4
        and abs(m) > 1
        and 0 not in (x, y, c, right)
        and abs(right) < 25
        and (m + 2 * c + 3 * x + y) % 11 == 0
    )


@register
class ParallelLines(Topic):
    """Lines that never meet have one gradient."""

    id = "graphs.parallel-lines"
    title = "Parallel lines and their equations"
    statements = ("algebra.linear-graphs",)
    prerequisites = ("graphs.equation-of-line",)
    misconceptions = (
        *(SAME_START, GRADIENT_SIGN, OWN_EQUATION),
        *(COORDINATE_AS_INTERCEPT, ADDS_PRODUCT, INTERCEPT_FOR_GRADIENT),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            slope=range(len(_SLOPES)),
            c=range(-4, 5),
            other=range(-4, 5),
            turn=range(len(_NAMES)),
        ),
        Tier.CORE: Space(
            _core, slope=range(len(_SLOPES)), c=range(-4, 5), k=range(-4, 10), way=range(1)
        ),
        Tier.CHALLENGE: Space(
            _challenge, m=range(-5, 7), c=range(-8, 9), x=range(-6, 7), y=range(-9, 13)
        ),
    }
    spaces = with_parallels(kinds.with_statements(spaces))
    spaces = kinds.with_working_spotted(
        spaces, "graphs.parallel-lines", kinds.working_goes_wrong({ADDS_PRODUCT: (e.turned,)})
    )
    spaces = kinds.with_people_asked(spaces, "graphs.parallel-lines", 40)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._which(*values)
        if tier is Tier.CORE:
            slope, c, k, _ = values
            return self._through(_SLOPES[slope], c, k)
        return self._intercept(*values)

    def _which(self, slope: int, c: int, other: int, turn: int) -> Draft:
        value = _SLOPES[slope]
        falling, own, alike = tuple(_NAMES[turn])
        lines = ((own, value, other), (alike, -value, c), (falling, -value, other))
        figure = grid(FOUR, (), tuple(drawn(s, r, FOUR, n) for n, s, r in sorted(lines)))
        text = prompt("Which line is parallel to the line {e}?", e=equation(value, c))
        wrong = slips((SAME_START, t.Label(alike)), (GRADIENT_SIGN, t.Label(falling)))
        return Draft(
            text,
            of_figure(figure, text),
            t.Label(own),
            "name",
            (
                Step(f"The gradient of the line is {said(value)}. Parallel lines share it."),
                Step(f"Line {own} has that gradient too.", t.Label(own)),
            ),
            wrong,
            ("which", slope, c, other, turn),
            figure=figure,
        )

    def _through(self, slope: Fraction, c: int, k: int) -> Draft:
        figure = grid(FOUR, (), (drawn(slope, c, FOUR, "L"),))
        text = prompt(
            "What is the equation of the line through {p} parallel to line L?", p=pair(0, k)
        )
        key = equation(slope, k)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "subject",
            (
                Step(f"Line L has a gradient of {said(slope)}, and so has the other line."),
                Step(f"It crosses the y-axis at {said(k)}.", key),
            ),
            slips(
                (OWN_EQUATION, equation(slope, c)),
                (GRADIENT_SIGN, equation(-slope, k)),
                key=key,
            ),
            ("through", slope, c, k),
            figure=figure,
        )

    def _intercept(self, m: int, c: int, x: int, y: int) -> Draft:
        given = equation(m, c)
        text = prompt(
            "A line is parallel to {e} and goes through {p}. At what value of {y} does it cross "
            "the {y}-axis?",
            e=given,
            p=pair(x, y),
            y=Y,
        )
        slope, rest = t.Sym("m"), t.Sym("k")
        product = t.times(t.num(m), signed(x))
        steps = (
            Step(
                f"Parallel lines have one gradient, {said(m)}. Multiply it by the x-coordinate.",
                t.equals(product, t.num(m * x)),
            ),
            Step(
                "Take that from the y-coordinate: the rest is the intercept.",
                t.equals(t.sub(t.num(y), signed(m * x)), t.num(y - m * x)),
            ),
        )
        u, v = t.Sym("u"), t.Sym("v")
        ask = Find(
            rest,
            (
                # The line that is given goes up by m from 0 to 1; the other has m too.
                t.equals(u, t.add(t.times(t.num(m), t.Int(0)), t.num(c)))
                if c > 0
                else t.equals(u, t.sub(t.times(t.num(m), t.Int(0)), t.Int(-c))),
                t.equals(v, t.add(t.num(m), t.num(c)) if c > 0 else t.sub(t.num(m), t.Int(-c))),
                t.equals(slope, t.sub(v, u)),
                t.equals(t.num(y), t.add(t.times(slope, signed(x)), rest)),
            ),
        )
        return Draft(
            text,
            ask,
            t.num(y - m * x),
            "integer",
            steps,
            slips(
                (COORDINATE_AS_INTERCEPT, y),
                (ADDS_PRODUCT, y + m * x),
                (OWN_EQUATION, c),
            ),
            ("intercept", m, c, x, y),
            constants=(0, 1),
        )
