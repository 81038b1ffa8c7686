"""Values of quadratics, as in a table: squares and a number, minus values of x, and back to x.

England's programme of study for key stage 3 (2013) asks pupils to "recognise, sketch and produce
graphs of linear and quadratic functions of one variable" and to "use linear and quadratic graphs
to estimate values of y for given values of x and vice versa" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators.graphs._lines import X, Y, signed
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Solve, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.measures.years import QUADRATIC_EQUATIONS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

DOUBLES = Misconception(
    "graphs.quadratic-doubles",
    "doubles x instead of squaring it",
    "What does the small 2 say: how many times 2, or x times x?",
)
SQUARE_NEGATIVE = Misconception(
    "graphs.quadratic-square-negative",
    "makes the square of a negative number negative",
    "What is a negative number times a negative number?",
)
TERM_SIGN = Misconception(
    "graphs.quadratic-term-sign",
    "loses the minus of x in the middle term",
    "What is the middle term when x is negative? Work it out by itself.",
)
STRAIGHT_ON = Misconception(
    "graphs.quadratic-one-root",
    "gives the positive value alone",
    "Which other number has the same square?",
)
HALVES = Misconception(
    "graphs.quadratic-halves",
    "halves instead of taking the square root",
    "What times itself makes that number?",
)

LAST_SIGN = Misconception(
    "graphs.quadratic-last-sign",
    "adds where it is to be taken away, or takes away where it is to be added",
    "Which sign stands before the last number?",
)
NO_ROOT = Misconception(
    "graphs.quadratic-no-root",
    "stops at the square of x",
    "That is x times x. What is x?",
)

_SQUARE = t.Power(X, t.Int(2))


def _quadratic(a: int, b: int, c: int) -> t.Node:
    """Return ax^2 + bx + c."""
    first: t.Node = _SQUARE if a == 1 else t.juxt(t.Int(a), _SQUARE)
    middle = X if abs(b) == 1 else t.juxt(t.Int(abs(b)), X)
    return _sum(
        first, [(count, node) for count, node in ((b, middle), (c, t.Int(abs(c)))) if count]
    )


def _sum(first: t.Node, terms: list[tuple[int, t.Node]]) -> t.Node:
    """Return a sum of terms, each added or taken away by the sign of its number."""
    if not terms:
        return first
    return t.Sum(first, tuple(("+" if count > 0 else "-", node) for count, node in terms))


def _support(a: int, c: int, x: int) -> bool:
    right = a * x * x + c
    return c != 0 and x != 2 and right > 0 and len({right, 2 * a * x + c, a * x * x - c}) == 3


def _core(b: int, c: int, x: int) -> bool:
    right = x * x + b * x + c
    wrong = {-x * x + b * x + c, x * x - b * x + c, 2 * x + b * x + c}
    return b != 0 and c != 0 and len({right, *wrong}) == 4 and (b + 2 * c + x) % 2 == 0


def _challenge(a: int, x: int, c: int) -> bool:
    """Keep ax^2 + c = k, which two values of x solve."""
    return c != 0 and a * x * x + c not in (0, c)


@register
class QuadraticTable(Topic):
    """Values of y for x, and of x for y, where x is squared."""

    id = "graphs.quadratic-table"
    title = "Tables of values for quadratics"
    statements = ("algebra.graphs", "algebra.substitution")
    later = {Tier.CHALLENGE: (Part(QUADRATIC_EQUATIONS),)}
    prerequisites = ("graphs.lines-by-table",)
    # Both values of x are worked out, and not read off a graph as at key stage 3.
    misconceptions = (DOUBLES, SQUARE_NEGATIVE, TERM_SIGN, STRAIGHT_ON, HALVES, LAST_SIGN, NO_ROOT)
    spaces = {
        Tier.SUPPORT: Space(_support, a=(1, 2, 3), c=range(-9, 10), x=range(2, 10)),
        Tier.CORE: Space(_core, b=range(-6, 7), c=range(-9, 10), x=range(-6, 0)),
        Tier.CHALLENGE: Space(_challenge, a=range(1, 5), x=range(2, 11), c=range(-12, 13)),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "graphs.quadratic-table",
        kinds.working_goes_wrong({LAST_SIGN: (e.turned,), TERM_SIGN: (e.turned,)}),
    )

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._back(*values)
        if tier is Tier.SUPPORT:
            a, c, x = values
            return self._value(a, 0, c, x)
        return self._value(1, *values)

    def _value(self, a: int, b: int, c: int, x: int) -> Draft:
        given = t.equals(Y, _quadratic(a, b, c))
        y = a * x * x + b * x + c
        text = prompt(
            "A table of values is made for {e}. What is {y} when {x}?",
            e=given,
            y=Y,
            x=t.equals(X, t.num(x)),
        )
        squared = t.Power(signed(x), t.Int(2))
        steps = [Step("Square x.", t.equals(squared, t.Int(x * x)))]
        if a > 1:
            steps.append(
                Step(
                    f"Multiply by {a}.",
                    t.equals(t.times(t.Int(a), t.Int(x * x)), t.Int(a * x * x)),
                )
            )
        if b:
            steps.append(
                Step(
                    "Work out the middle term.",
                    t.equals(t.times(t.num(b), signed(x)), t.num(b * x)),
                )
            )
        terms = [k for k in (b * x, c) if k]
        total = _sum(t.Int(a * x * x), [(term, t.Int(abs(term))) for term in terms])
        steps.append(Step("Put the terms together.", t.equals(total, t.num(y))))
        wrong = [(DOUBLES, 2 * a * x + b * x + c)]
        if x < 0:
            wrong += [(SQUARE_NEGATIVE, -x * x + b * x + c), (TERM_SIGN, x * x - b * x + c)]
        else:
            wrong.append((LAST_SIGN, a * x * x - c))
        return Draft(
            text,
            Find(Y, (given, t.equals(X, t.num(x)))),
            t.num(y),
            "integer",
            tuple(steps),
            slips(*wrong),
            ("value", a, b, c, x),
        )

    def _back(self, a: int, x: int, c: int) -> Draft:
        y = a * x * x + c
        given = t.equals(_quadratic(a, 0, c), t.num(y))
        text = prompt(
            "For the curve {e}, find both values of {x} where {y}.",
            e=t.equals(Y, _quadratic(a, 0, c)),
            x=X,
            y=t.equals(Y, t.num(y)),
        )
        product: t.Node = _SQUARE if a == 1 else t.juxt(t.Int(a), _SQUARE)
        steps = [Step("Get the term with the square alone.", t.equals(product, t.Int(a * x * x)))]
        if a > 1:
            steps.append(Step(f"Divide by {a}.", t.equals(_SQUARE, t.Int(x * x))))
        key = t.Either((t.equals(X, t.num(-x)), t.equals(X, t.Int(x))))
        steps.append(Step("Two numbers have that square.", key))
        half = x * x // 2 if x * x % 2 == 0 and x != 2 else None
        wrong = slips(
            (STRAIGHT_ON, t.equals(X, t.Int(x))),
            (NO_ROOT, t.equals(X, t.Int(x * x))),
            (HALVES, None if half is None else t.equals(X, t.Int(half))),
        )
        return Draft(text, Solve((given,)), key, "roots", tuple(steps), wrong, ("back", a, x, c))
