"""Gradient and intercept from an equation: as y = mx + c, in another order, and to be rearranged.

England's programme of study for key stage 3 (2013) asks pupils to "reduce a given linear equation
in two variables to the standard form y = mx + c; calculate and interpret gradients and intercepts"
(from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.graphs._lines import X, Y, equation, right_side, slope_node
from generators.graphs._misconceptions import GRADIENT_FOR_INTERCEPT, INTERCEPT_FOR_GRADIENT
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

SIGN_LEFT = Misconception(
    "graphs.equation-sign-left",
    "leaves out the sign that stands before the number",
    "Which sign stands before that number? What does it belong to?",
)
NOT_DIVIDED = Misconception(
    "graphs.equation-not-divided",
    "stops before dividing by the number in front of the letter",
    "The letter still has a number in front of it. What is the letter alone?",
)
DENOMINATOR = Misconception(
    "graphs.gradient-denominator",
    "gives the denominator of the gradient",
    "By how much does y grow when x grows by 1? Is that more than 1?",
)
OTHER_AXIS = Misconception(
    "graphs.equation-other-axis",
    "takes the other axis",
    "Is x or y nought on that axis?",
)

_ASKED = ("gradient", "y-intercept")


def _support(what: int, m: int, c: int) -> bool:
    return abs(m) > 1 and c != 0 and abs(c) not in (abs(m), 1)


def _core(what: int, m: int, q: int, c: int) -> bool:
    """Keep y = c − mx, and lines with a fraction for a gradient."""
    if abs(c) in (0, 1, abs(m)) or m == 0:
        return False
    if q > 1:
        return m in (1, -1) and abs(c) != q and what == 0
    return m < 0 and abs(m) > 1


def _challenge(what: int, p: int, q: int, r: int) -> bool:
    """Keep px + qy = r with q more than 1; where it crosses an axis is whole."""
    if what == 0:
        return p % q == 0 and r % q == 0 and abs(p) != q and abs(r) not in (abs(p), q) and r != p
    if what == 1:
        return r % q == 0 and r // q != r // p and abs(r // q) != abs(p) and r % p == 0
    return r % p == 0 and r % q == 0 and r // p not in (r // q, p) and abs(r // p) != abs(p)


@register
class Intercept(Topic):
    """What the numbers of an equation say about its line."""

    id = "graphs.intercept"
    title = "Gradient and intercept from an equation"
    statements = ("algebra.linear-graphs",)
    prerequisites = ("graphs.gradient",)
    misconceptions = (
        *(INTERCEPT_FOR_GRADIENT, GRADIENT_FOR_INTERCEPT, SIGN_LEFT, NOT_DIVIDED),
        *(DENOMINATOR, OTHER_AXIS),
    )
    spaces = {
        Tier.SUPPORT: Space(_support, what=range(2), m=range(2, 10), c=range(-9, 10)),
        Tier.CORE: Space(_core, what=range(2), m=range(-9, 10), q=range(1, 7), c=range(-9, 13)),
        Tier.CHALLENGE: Space(
            _challenge,
            what=range(3),
            p=(-8, -6, -4, -3, -2, 2, 3, 4, 5, 6, 8),
            q=range(2, 7),
            r=(*range(-36, 0, 2), *range(2, 61, 2)),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_people_asked(spaces, "graphs.intercept")

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._rearranged(*values)
        what, m, *rest = values
        q, c = rest if tier is Tier.CORE else (1, *rest)
        slope = Fraction(m, q)
        given = equation(slope, c)
        if tier is Tier.CORE and q == 1:
            # y = 7 - 2x: the gradient comes last.
            given = t.equals(Y, t.sub(t.num(c), t.juxt(t.Int(-m), X)))
        return self._read(what, slope, c, given)

    def _read(self, what: int, slope: Fraction, c: int, given: t.Relation) -> Draft:
        steep = slope_node(slope)
        if what == 0:
            wrong = slips(
                (INTERCEPT_FOR_GRADIENT, c),
                (SIGN_LEFT, slope_node(-slope) if slope < 0 else None),
                (DENOMINATOR, slope.denominator * (1 if slope > 0 else -1))
                if slope.denominator > 1
                else (SIGN_LEFT, slope_node(-slope) if slope > 0 else None),
            )
            key, say = steep, "The number with x is the gradient."
        else:
            wrong = slips((GRADIENT_FOR_INTERCEPT, steep), (SIGN_LEFT, -c))
            key, say = t.num(c), "The number without x says where it crosses the y-axis."
        text = prompt(
            f"What is the {_ASKED[what]} of the line {{line}}?".replace("y-", "{y}-"),
            line=given,
            y=Y,
        )
        return Draft(
            text,
            _ask(what, given),
            key,
            "number",
            (Step(say, key),),
            wrong,
            (what, slope, c),
            constants=(0, 1),
        )

    def _rearranged(self, what: int, p: int, q: int, r: int) -> Draft:
        px, qy = _term(p, X), _term(q, Y)
        given = t.equals(t.add(px, qy) if p > 0 else t.sub(qy, _term(-p, X)), t.num(r))
        if what < 2:
            alone = t.equals(qy, right_side(-p, r))
            solved = equation(Fraction(-p, q), Fraction(r, q))
        steps: tuple[Step, ...]
        if what == 0:
            text = prompt("What is the gradient of the line {line}?", line=given)
            key = slope_node(Fraction(-p, q))
            steps = (
                Step("Get the term with y alone.", alone),
                Step(f"Divide by {q}.", solved),
                Step("The number with x is the gradient.", key),
            )
            wrong = slips((SIGN_LEFT, Fraction(p, q)), (NOT_DIVIDED, -p), (OTHER_AXIS, r // q))
        elif what == 1:
            text = prompt("What is the {y}-intercept of the line {line}?", line=given, y=Y)
            key = t.num(r // q)
            put = t.equals(qy, t.num(r))
            steps = (
                Step("On the y-axis x is 0.", put),
                Step(f"Divide by {q}.", t.equals(Y, key)),
            )
            wrong = slips((NOT_DIVIDED, r), (OTHER_AXIS, r // p))
        else:
            text = prompt(
                "At what value of {x} does the line {line} cross the {x}-axis?", line=given, x=X
            )
            key = t.num(r // p)
            steps = (
                Step("On the x-axis y is 0.", t.equals(px, t.num(r))),
                Step(f"Divide by {p}.".replace("-", "−"), t.equals(X, key)),
            )
            wrong = slips((NOT_DIVIDED, r), (OTHER_AXIS, r // q))
        return Draft(
            text,
            _ask(what, given),
            key,
            "number",
            steps,
            wrong,
            ("rearranged", what, p, q, r),
            constants=(0, 1),
        )


def _term(count: int, letter: t.Node) -> t.Node:
    node = t.juxt(t.Int(abs(count)), letter)
    return node if count > 0 else t.Neg(node)


def _ask(what: int, given: t.Relation) -> Find:
    """Return the question: how far up the line goes for 1 along, or where it meets an axis."""
    if what == 1:
        return Find(Y, (given, t.equals(X, t.Int(0))))
    if what == 2:
        return Find(X, (given, t.equals(Y, t.Int(0))))
    # The line at 0 and at 1: it goes up by the gradient.
    return Find(
        t.sub(Y, t.Sym("v")),
        (given, t.equals(X, t.Int(1)), _with(given, "u", "v"), t.equals(t.Sym("u"), t.Int(0))),
    )


def _with(given: t.Relation, x: str, y: str) -> t.Relation:
    """Return an equation with other letters for x and y."""
    letters: dict[t.Node, t.Node] = {X: t.Sym(x), Y: t.Sym(y)}
    ((op, right),) = given.rest
    return t.Relation(
        _writable(t.replaced(given.first, letters)), ((op, _writable(t.replaced(right, letters))),)
    )


def _writable(node: t.Node) -> t.Node:
    """Return a sum whose products after a minus sign stand in brackets, as they are written."""
    if isinstance(node, t.Neg) and isinstance(node.of, t.Product):
        return t.Neg(t.Bracket(node.of))
    if isinstance(node, t.Sum):
        rest = tuple((op, _writable(term)) for op, term in node.rest)
        return t.Sum(_writable(node.first), rest)
    return node
