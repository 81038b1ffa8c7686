"""Where two drawn lines cross: as a point, as the solution of two equations, and of one.

England's programme of study for key stage 3 (2013) asks pupils to "use linear and quadratic graphs
to estimate values of y for given values of x and vice versa and to find approximate solutions of
simultaneous linear equations" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.graphs._crossing_mistakes import AT_AXIS, READS_Y, SIGN_OF_X, WRONG_LINE
from generators.graphs._crossings_told import with_told
from generators.graphs._grids import grid, pair
from generators.graphs._lines import X, Y, drawn, equation, right_side, said, spots
from generators.graphs._misconceptions import SWAPPED
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

FOUR = (-6, 6, -5, 5)
_WINDOWS = (FOUR, (-5, 7, -5, 5), (-7, 5, -5, 5))
_PAIRS = (
    *((1, 1, -1, 1), (2, 1, -1, 1), (1, 1, -2, 1), (2, 1, -2, 1), (3, 1, -1, 1)),
    *((1, 2, -1, 1), (1, 2, -2, 1), (-1, 2, 2, 1), (-1, 2, 1, 1), (3, 1, 1, 2)),
)


def _slopes(at: int) -> tuple[Fraction, Fraction]:
    a, b, c, d = _PAIRS[at]
    return Fraction(a, b), Fraction(c, d)


def _crosses(at: int, x: int, y: int) -> bool:
    """Tell whether two lines through a place start from whole numbers on the grid."""
    return all(
        (y - slope * x).denominator == 1
        and abs(y - slope * x) < 5
        and len(spots(slope, y - slope * x, FOUR)) > 2
        for slope in _slopes(at)
    )


def _support(at: int, x: int, y: int, turn: int) -> bool:
    inside = 0 < abs(x) < 5 and abs(y) < 4
    return inside and x != y and _crosses(at, x, y) and turn == (x + y + at) % 3


def _core(what: int, at: int, x: int, y: int, way: int) -> bool:
    if not (0 < abs(x) < 5 and 0 < abs(y) < 5 and x != y and _crosses(at, x, y)):
        return False
    first, second = _slopes(at)
    if first.denominator > 1 or second.denominator > 1:
        return False
    rests = (y - first * x, y - second * x)
    if what == 0:  # the two equations; each is told apart from the other by its numbers
        return 0 not in rests
    # One line stands in several pairs, and is asked about once.
    once = not any(_slopes(place)[0] == first and _crosses(place, x, y) for place in range(at))
    return once and first not in (1, -1) and rests[0] not in (0, y) and x != -y


def _challenge(at: int, x: int, y: int, third: int, way: int) -> bool:
    """Keep a third line that crosses one of the two elsewhere, where squares meet."""
    if not (0 < abs(x) < 5 and 0 < abs(y) < 5 and x != y and _crosses(at, x, y)):
        return False
    other = _third(at, x, y, third)
    # Some of these leave no room for a letter.
    crowded = (third == 5 and x == -y and abs(x) == 1) or (at, third) == (3, 0)
    return other is not None and not crowded


_THIRD = (Fraction(1), Fraction(-1), Fraction(2), Fraction(-2), Fraction(1, 2), Fraction(-1, 2))


def _third(at: int, x: int, y: int, third: int) -> tuple[Fraction, int, int, int] | None:
    """Return the gradient and intercept of a third line, and where it crosses the first."""
    slope = _THIRD[third]
    first, second = _slopes(at)
    if slope in (first, second):
        return None
    for u in (x + 3, x - 3, x + 4, x - 4):
        v = y + first * (u - x)
        rest = v - slope * u
        whole = v.denominator == 1 == rest.denominator
        shown = whole and abs(u) < 6 and abs(v) < 5 and abs(rest) < 5 and 0 != u != v
        # Crossings close to one another leave no room for a letter between them.
        near = min(abs(rest - (y - k * x)) for k in (first, second)) < 2
        if (
            shown
            and not near
            and slope * x + rest != y
            and len(spots(slope, rest, FOUR)) > 2
            and u != y
        ):
            return slope, int(rest), u, int(v)
    return None


@register
class Simultaneous(Topic):
    """Solutions read where lines cross."""

    id = "graphs.simultaneous"
    title = "Solving with graphs of lines"
    statements = ("algebra.graph-solutions", "algebra.two-views")
    prerequisites = ("graphs.equation-of-line",)
    misconceptions = (SWAPPED, AT_AXIS, WRONG_LINE, READS_Y, SIGN_OF_X)
    spare = "Lines that cross where squares meet, on a grid that fits a slide, are few."
    spaces = {
        Tier.SUPPORT: Space(
            _support, at=range(len(_PAIRS)), x=range(-4, 5), y=range(-4, 5), turn=range(3)
        ),
        Tier.CORE: Space(
            _core,
            what=range(2),
            at=range(len(_PAIRS)),
            x=range(-4, 5),
            y=range(-4, 5),
            way=range(len(_WINDOWS)),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            at=range(len(_PAIRS)),
            x=range(-4, 5),
            y=range(-4, 5),
            third=range(len(_THIRD)),
            way=range(len(_WINDOWS)),
        ),
    }
    spaces = with_told(kinds.with_statements(spaces))
    spaces = kinds.with_people_asked(spaces, "graphs.simultaneous", 30)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._point(*values)
        if tier is Tier.CHALLENGE:
            return self._of_three(*values)
        what, *rest = values
        return (self._both, self._single)[what](*rest)

    def _point(self, at: int, x: int, y: int, turn: int) -> Draft:
        p, q = (("L", "M"), ("M", "N"), ("P", "Q"))[turn]
        first, second = _slopes(at)
        rests = (y - first * x, y - second * x)
        lines = ((p, first, rests[0]), (q, second, rests[1]))
        figure = grid(FOUR, (), tuple(drawn(s, r, FOUR, n) for n, s, r in lines))
        text = (f"Write down the coordinates of the point where lines {p} and {q} cross.",)
        key = pair(x, y)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "point",
            (Step("Find where the two lines meet. Read along first, then up or down.", key),),
            slips((SWAPPED, pair(y, x)), (AT_AXIS, pair(0, rests[0])), key=key),
            ("point", at, x, y),
            figure=figure,
        )

    def _both(self, at: int, x: int, y: int, way: int) -> Draft:
        first, second = _slopes(at)
        rests = (y - first * x, y - second * x)
        lines = ((first, rests[0], "L"), (second, rests[1], "M"))
        edges = _WINDOWS[way]
        figure = grid(edges, (), tuple(drawn(s, r, edges, n) for s, r, n in lines))
        text = prompt(
            "Use the graph to solve {a} and {b}.",
            a=equation(first, rests[0]),
            b=equation(second, rests[1]),
        )
        wrong = slips((SWAPPED, _solution(y, x)), (AT_AXIS, _solution(0, int(rests[0]))))
        return Draft(
            text,
            of_figure(figure, text),
            _solution(x, y),
            "roots",
            (
                Step("Both equations are true where the two lines cross."),
                Step("Read x and y there.", _solution(x, y)),
            ),
            wrong,
            ("both", at, x, y, way),
            figure=figure,
        )

    def _single(self, at: int, x: int, y: int, way: int) -> Draft:
        slope, _ = _slopes(at)
        rest = y - slope * x
        edges = _WINDOWS[way]
        figure = grid(edges, (), (drawn(slope, rest, edges),))
        text = prompt(
            "Use the graph of {e} to solve {s}.",
            e=equation(slope, rest),
            s=t.equals(right_side(slope, rest), t.num(y)),
        )
        key = t.equals(X, t.num(x))
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "solution",
            (
                Step(f"Find where y is {said(y)} on the line."),
                Step("Read x there.", key),
            ),
            slips((READS_Y, t.equals(X, t.num(y))), (SIGN_OF_X, t.equals(X, t.num(-x)))),
            ("single", at, x, y, way),
            figure=figure,
        )

    def _of_three(self, at: int, x: int, y: int, third: int, way: int) -> Draft:
        first, second = _slopes(at)
        found = _third(at, x, y, third)
        assert found is not None
        slope, rest, u, v = found
        rests = (y - first * x, y - second * x)
        names = ("L", "M", "N") if way % 2 == 0 else ("N", "L", "M")
        lines = [(names[0], first, rests[0]), (names[1], second, rests[1])]
        lines.append((names[2], slope, Fraction(rest)))
        edges = _WINDOWS[way]
        figure = grid(edges, (), tuple(drawn(s, r, edges, n) for n, s, r in sorted(lines)))
        text = prompt(
            "Use the graph to solve {a} and {b}.",
            a=equation(first, rests[0]),
            b=equation(second, rests[1]),
        )
        return Draft(
            text,
            of_figure(figure, text),
            _solution(x, y),
            "roots",
            (
                Step(f"{names[0]} crosses the y-axis at {said(rests[0])}: it is the first line."),
                Step(f"{names[1]} crosses the y-axis at {said(rests[1])}: it is the second line."),
                Step("Read x and y where these two cross.", _solution(x, y)),
            ),
            slips((SWAPPED, _solution(y, x)), (WRONG_LINE, _solution(u, v))),
            ("three", at, x, y, third, way),
            figure=figure,
        )


def _solution(x: int, y: int) -> t.Listing:
    return t.Listing((t.equals(X, t.num(x)), t.equals(Y, t.num(y))))
