"""Gradients: of a segment and of a line drawn, and of a line through two points in words.

England's programme of study for key stage 3 (2013) asks pupils to "reduce a given linear equation
in two variables to the standard form y = mx + c; calculate and interpret gradients and intercepts
of graphs of such linear equations numerically, graphically and algebraically" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.graphs._gradients_told import with_told
from generators.graphs._grids import Spot, grid, pair
from generators.graphs._lines import drawn, quotient, segment, signed, slope_node, spots
from generators.graphs._misconceptions import (
    GRADIENT_SIGN,
    INTERCEPT_FOR_GRADIENT,
    RISE_ALONE,
    UPSIDE_DOWN,
)
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

MIXED_UP = Misconception(
    "graphs.gradient-mixed-order",
    "takes the differences in two different orders",
    "Which point did you start from for y? And for x?",
)
ADDS_GRADIENT = Misconception(
    "graphs.gradient-added-once",
    "adds the gradient once, however far along the other point is",
    "How far along is it from one point to the other?",
)
BACKWARDS = Misconception(
    "graphs.gradient-downwards",
    "goes down instead of up",
    "The gradient is positive. Which of the two points is higher?",
)

FIRST, FOUR = (0, 10, 0, 8), (-6, 6, -5, 5)
_SLOPES = tuple(
    Fraction(sign * p, q)
    for p, q in ((2, 1), (3, 1), (1, 2), (1, 3), (2, 3), (3, 2), (3, 4), (4, 1))
    for sign in (1, -1)
)


def _support(x: int, y: int, run: int, rise: int) -> bool:
    """Keep rising segments in the first quadrant whose gradient is whole, or one over a number."""
    fits = x + run < 9 and y + rise < 8 and run != rise
    simple = rise % run == 0 or run % rise == 0
    return fits and simple and run + rise > 3 and (run > 1 or rise > 2) and (x > 1 or 2 < y < 6)


def _core(what: int, slope: int, c: int, x: int, y: int) -> bool:
    """Keep lines that meet four corners of squares or more, and falling segments."""
    value = _SLOPES[slope]
    if what == 0:
        told = x == y == -4 and c not in (value, 1 / value)
        return told and len(spots(value, c, FOUR)) > 2
    if value > 0 or c not in (1, 2):
        return False
    a, b = (x, y), (x + c * value.denominator, y + c * value.numerator)
    inside = all(-5 < u < 5 and -4 < v < 4 for u, v in (a, b))
    apart = (b[0] - x) ** 2 + (b[1] - y) ** 2 > 8
    return inside and apart and (x + y + slope) % 3 == 0


def _challenge(what: int, x: int, y: int, run: int, rise: int) -> bool:
    """Keep pairs of points with a minus, whose gradient is neither whole nor its own inverse."""
    if min(x, y, x + run, y + rise) >= 0 or 0 in (x, y, x + run, y + rise) or run == 0:
        return False
    if what == 0:
        return abs(run) != abs(rise) and rise % run != 0 and (3 * x + y + run + 2 * rise) % 59 == 0
    whole = run > 1 and rise % run == 0 and rise > 0 and rise != run
    # A gradient that is added once, or taken away, gives another y.
    return whole and (x + y + rise) % 3 == 0


@register
class Gradient(Topic):
    """How steep a line is: how far up for 1 along."""

    id = "graphs.gradient"
    title = "Gradient of a line"
    statements = ("algebra.linear-graphs",)
    prerequisites = ("graphs.coordinates",)
    spare = "Segments on a grid that fits a slide, away from its corners: there letters have room."
    misconceptions = (
        *(UPSIDE_DOWN, GRADIENT_SIGN, RISE_ALONE, INTERCEPT_FOR_GRADIENT),
        *(MIXED_UP, ADDS_GRADIENT, BACKWARDS),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, x=range(1, 8), y=range(1, 6), run=range(1, 7), rise=range(1, 7)
        ),
        Tier.CORE: Space(
            _core,
            what=range(2),
            slope=range(len(_SLOPES)),
            c=range(-4, 5),
            x=range(-4, 5),
            y=range(-4, 5),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            what=range(2),
            x=range(-6, 7),
            y=range(-7, 8),
            run=range(-9, 10),
            rise=range(-9, 10),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "graphs.gradient",
        kinds.working_goes_wrong({UPSIDE_DOWN: (e.swapped,), BACKWARDS: (e.turned,)}),
    )
    spaces = with_told(spaces)
    spaces = kinds.with_people_asked(spaces, "graphs.gradient")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            x, y, run, rise = values
            return self._segment((x, y), (x + run, y + rise), FIRST)
        what, *rest = values
        if tier is Tier.CHALLENGE:
            x, y, run, rise = rest
            made = self._missing if what else self._told
            return made((x, y), (x + run, y + rise))
        slope, c, x, y = rest
        value = _SLOPES[slope]
        if what == 0:
            return self._line(value, c)
        end = (x + c * value.denominator, y + c * value.numerator)
        return self._segment((x, y), end, FOUR)

    def _segment(self, a: Spot, b: Spot, edges: tuple[int, int, int, int]) -> Draft:
        p, q = (("A", "B"), ("P", "Q"), ("C", "D"))[(a[0] + a[1] + b[0]) % 3]
        figure = grid(edges, ((p, a), (q, b)), (segment(a, b),))
        text = (f"What is the gradient of {p}{q}?",)
        run, rise = b[0] - a[0], b[1] - a[1]
        return Draft(
            text,
            of_figure(figure, text),
            slope_node(Fraction(rise, run)),
            "number",
            (_step(a, b, run, rise),),
            _wrong(run, rise),
            ("segment", a, b),
            figure=figure,
        )

    def _line(self, slope: Fraction, c: int) -> Draft:
        figure = grid(FOUR, (), (drawn(slope, c, FOUR),))
        text = ("What is the gradient of the line?",)
        first, second = spots(slope, c, FOUR)[:2]
        run, rise = second[0] - first[0], second[1] - first[1]
        wrong = (
            *_wrong(run, rise),
            *slips((INTERCEPT_FOR_GRADIENT, c if abs(c) > 1 and c != rise else None)),
        )
        return Draft(
            text,
            of_figure(figure, text),
            slope_node(slope),
            "number",
            (_step(first, second, run, rise),),
            wrong,
            ("line", slope, c),
            figure=figure,
        )

    def _told(self, a: Spot, b: Spot) -> Draft:
        run, rise = b[0] - a[0], b[1] - a[1]
        slope = Fraction(rise, run)
        text = prompt(
            "Work out the gradient of the line through {a} and {b}.", a=pair(*a), b=pair(*b)
        )
        up = t.sub(t.num(b[1]), signed(a[1]))
        along = t.sub(t.num(b[0]), signed(a[0]))
        steps = (
            Step("How far up from the first point to the second?", t.equals(up, t.num(rise))),
            Step("How far along?", t.equals(along, t.num(run))),
            Step("Divide the first by the second.", quotient(rise, run)),
        )
        return Draft(
            text,
            Find(t.Sym("m"), _on_line((a, b))),
            slope_node(slope),
            "number",
            steps,
            slips((UPSIDE_DOWN, 1 / slope), (MIXED_UP, -slope), write=slope_node),
            ("told", a, b),
        )

    def _missing(self, a: Spot, b: Spot) -> Draft:
        run, rise = b[0] - a[0], b[1] - a[1]
        slope = rise // run
        letter = t.Sym("k")
        text = prompt(
            "The line through {a} and {b} has a gradient of {m}. Work out the value of {k}.",
            a=pair(*a),
            b=t.pair(t.num(b[0]), letter),
            m=t.num(slope),
            k=letter,
        )
        m, c = t.Sym("m"), t.Sym("c")
        relations = (*_on_line((a,)), t.equals(letter, t.add(t.times(m, t.num(b[0])), c)))
        along = t.sub(t.num(b[0]), signed(a[0]))
        steps = (
            Step("How far along from the first point to the second?", t.equals(along, t.num(run))),
            Step(
                f"It goes up {slope} for each 1 along.",
                t.equals(t.times(t.num(slope), t.num(run)), t.num(rise)),
            ),
            Step(
                "Go up from the first point.",
                t.equals(t.add(t.num(a[1]), t.num(rise)), t.num(b[1])),
            ),
        )
        return Draft(
            text,
            Find(letter, (*relations, t.equals(m, t.num(slope)))),
            t.num(b[1]),
            "integer",
            steps,
            slips((ADDS_GRADIENT, a[1] + slope), (BACKWARDS, a[1] - rise)),
            ("missing", a, b),
        )


def _on_line(points: tuple[Spot, ...]) -> tuple[t.Relation, ...]:
    """Return that points lie on y = mx + c."""
    m, c = t.Sym("m"), t.Sym("c")
    return tuple(t.equals(t.num(y), t.add(t.times(m, signed(x)), c)) for x, y in points)


def _step(a: Spot, b: Spot, run: int, rise: int) -> Step:
    way = f"{abs(rise)} {'up' if rise > 0 else 'down'} for {run} along"
    say = f"From ({a[0]}, {a[1]}) to ({b[0]}, {b[1]}) it goes {way}.".replace("-", "−")
    return Step(say, quotient(rise, run))


def _wrong(run: int, rise: int) -> tuple[Any, ...]:
    slope = Fraction(rise, run)
    return slips(
        (UPSIDE_DOWN, 1 / slope),
        (GRADIENT_SIGN, -slope),
        (RISE_ALONE, rise if run > 1 and rise not in (1 / slope, -slope) else None),
        write=slope_node,
    )
