"""Linear inequalities with the unknown on one side."""

from __future__ import annotations

from fractions import Fraction

from generators.equations import _misconceptions as m
from generators.equations._asks import (
    asking,
    last_product,
    number_left,
    undo_number,
    undo_product,
)
from generators.equations._balance import take_number
from generators.equations._values_given import BOUND_COUNTS, with_values
from generators.equations._words import Number, shown
from generators.equations._writing import bracket, lead, letter, side
from itembank.items import kinds
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Inequality, Misconception, Step, Tier, prompt
from itembank.items.measures.years import INEQUALITIES, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.notation.line import shown_line

SIGNS: tuple[t.RelationOp, ...] = ("<", ">", "≤", "≥")
TURNED: dict[t.RelationOp, t.RelationOp] = {"<": ">", ">": "<", "≤": "≥", "≥": "≤"}


def _support(kind: int, op: t.RelationOp, a: int, x: int) -> bool:
    # The right-hand side is positive, and the bound is not the other number of the question.
    if kind == 1:
        return x > a
    return a != x


def _core(kind: int, op: t.RelationOp, a: int, b: int, x: int) -> bool:
    # The right-hand side is positive.
    return kind != 1 or a * x > b


def _challenge(kind: int, op: t.RelationOp, a: int, b: int, x: int) -> bool:
    if kind == 2:
        return a < 6 and b * (a + 1) != -a * x
    return b != a * x  # the other side would be 0


def _line(left: t.Node, op: t.RelationOp, right: t.Node, turned: bool) -> t.Relation:
    """Return the inequality, or the same one read from right to left."""
    return t.relate(right, TURNED[op], left) if turned else t.relate(left, op, right)


@register
class Inequalities(Topic):
    """One step, then two steps, then a letter taken away or a negative multiple."""

    id = "equations.inequalities"
    title = "Inequalities with the unknown on one side"
    statements = ("algebra.linear-equations",)
    misconceptions = (
        m.SAME_OPERATION,
        m.TURNS_SIGN,
        m.SWAPS_SIDES,
        m.KEEPS_SIGN,
        m.FIRST_TERM_ONLY,
        m.LOST_MINUS,
        BOUND_COUNTS,
    )
    prerequisites = ("equations.two-step",)
    later = {tier: (Part(INEQUALITIES),) for tier in Tier}
    spaces = {
        Tier.SUPPORT: Space(_support, kind=range(3), op=SIGNS, a=range(2, 10), x=range(2, 13)),
        Tier.CORE: Space(
            _core, kind=range(3), op=SIGNS, a=range(2, 8), b=range(1, 12, 2), x=range(2, 10)
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(3),
            op=SIGNS,
            a=range(2, 8),
            b=(1, 4, 5, 7, 10, 12),
            x=(-8, -6, -5, -3, -2, 2, 3, 4, 7, 9),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_values(spaces, "equations.inequalities")

    def make(self, tier: Tier, kind: int, op: t.RelationOp, a: int, *rest: int) -> Draft:
        """Return the question; the last parameter is the bound."""
        value = rest[-1]
        x = letter(kind, SIGNS.index(op), a, *rest)
        build = {Tier.SUPPORT: _one, Tier.CORE: _two, Tier.CHALLENGE: _three}[tier]
        relation, steps, wrong, bound, sign = build(kind, op, x, a, rest[0], value)
        key = t.relate(x, sign, t.num(bound))
        if steps[-1].maths != key:
            steps = (*steps, Step("Swap the sides and turn the inequality sign round.", key))
        return Draft(
            prompt("Solve {e}.", e=relation),
            Inequality(relation),
            key,
            "inequality",
            steps,
            slips(
                *(
                    (which, t.relate(x, wrong_sign, number_node(number)))
                    for which, wrong_sign, number in wrong
                )
            ),
            (kind, op, a, *rest),
        )


Built = tuple[
    t.Relation,
    tuple[Step, ...],
    tuple[tuple[Misconception, t.RelationOp, Number], ...],
    int,
    t.RelationOp,
]


def _try(x: t.Sym, op: t.RelationOp, bound: int, relation: t.Relation, by: int = 1) -> str:
    """Ask to try a number on the wrong side of the bound: `by` away, so that it divides well."""
    number = bound + by if op in "<≤" else bound - by
    asked = shown_line(relation).replace("-", "−")
    return f"Try {x.name} = {shown(number)}, which fits your answer. Is {asked} true?"


def _read_back(x: t.Sym, op: t.RelationOp, bound: int) -> str:
    """Ask for the last line of working read from right to left: the key is ``x op bound``."""
    which = {
        "<": f"more than {bound}, or less than {bound}",
        ">": f"more than {bound}, or less than {bound}",
        "≤": f"{bound} or more, or {bound} or less",
        "≥": f"{bound} or more, or {bound} or less",
    }[op]
    return f"You have {bound} {TURNED[op]} {x.name}. Is {x.name} {which}?"


def _one(kind: int, op: t.RelationOp, x: t.Sym, a: int, _: int, value: int) -> Built:
    """Return x + a, x − a or ax, compared with a number."""
    key = t.relate(x, op, t.num(value))
    if kind == 2:
        c = a * value
        relation = t.relate(side(a, x), op, t.num(c))
        plus, say, same = 0, f"Divide both sides by {a}.", c * a
    else:
        plus = a if kind == 0 else -a
        c = value + plus
        relation = t.relate(side(1, x, plus), op, t.num(c))
        say, same = take_number(plus), c + plus
    undo = undo_product(a, x) if kind == 2 else undo_number(plus)
    wrong = (
        (asking(m.SAME_OPERATION, undo), op, same),
        (asking(m.TURNS_SIGN, _try(x, op, value, relation)), TURNED[op], value),
    )
    return relation, (Step(say, key),), wrong, value, op


def _two(kind: int, op: t.RelationOp, x: t.Sym, a: int, b: int, value: int) -> Built:
    """Return ax + b, ax − b or x/a + b, compared with a number on either side."""
    turned = (a + b + value) % 2 == 1
    if kind == 2:
        bound = a * value
        relation = _line(t.add(t.Frac(x, t.Int(a)), t.num(b)), op, t.num(value + b), turned)
        steps = (
            Step(take_number(b), _line(t.Frac(x, t.Int(a)), op, t.num(value), turned)),
            Step(f"Multiply both sides by {a}.", _line(x, op, t.num(bound), turned)),
        )
        plus, c = b, value + b
        same: Number = a * (c + b)
    else:
        plus, bound = (b if kind == 0 else -b), value
        c = a * value + plus
        relation = _line(side(a, x, plus), op, t.num(c), turned)
        steps = (
            Step(take_number(plus), _line(side(a, x), op, t.num(a * value), turned)),
            Step(f"Divide both sides by {a}.", _line(x, op, t.num(value), turned)),
        )
        same = Fraction(c + plus, a)
    # Read from right to left, the sides are swapped at the end: that is where the sign turns.
    turn = (
        asking(m.SWAPS_SIDES, _read_back(x, op, bound))
        if turned
        else asking(m.TURNS_SIGN, _try(x, op, bound, relation, a if kind == 2 else 1))
    )
    wrong = (
        (asking(m.SAME_OPERATION, number_left(plus, c)), op, same),
        (turn, TURNED[op], bound),
    )
    return relation, steps, wrong, bound, op


def _three(kind: int, op: t.RelationOp, x: t.Sym, a: int, b: int, value: int) -> Built:
    """Return b − ax, −ax + b … or a bracket, compared with a number."""
    if kind == 2:
        c = a * (value + b)
        relation = t.relate(bracket(a, side(1, x, b)), op, t.num(c))
        steps: tuple[Step, ...] = (
            Step("Expand the bracket.", t.relate(side(a, x, a * b), op, t.num(c))),
            Step(take_number(a * b), t.relate(side(a, x), op, t.num(a * value))),
            Step(f"Divide both sides by {a}.", t.relate(x, op, t.num(value))),
        )
        wrong: tuple[tuple[Misconception, t.RelationOp, Number], ...] = (
            (asking(m.FIRST_TERM_ONLY, last_product(a, b)), op, Fraction(c - b, a)),
            (asking(m.TURNS_SIGN, _try(x, op, value, relation)), TURNED[op], value),
        )
        return relation, steps, wrong, value, op
    plus = b if kind == 0 else -b
    c = plus - a * value
    first = lead(plus, -a, x) if kind == 0 else side(-a, x, plus)
    relation = t.relate(first, op, t.num(c))
    steps = (
        Step(take_number(plus), t.relate(side(-a, x), op, t.num(-a * value))),
        Step(
            f"Divide both sides by {shown(-a)} and turn the inequality sign round.",
            t.relate(x, TURNED[op], t.num(value)),
        ),
    )
    wrong = (
        (
            asking(
                m.KEEPS_SIGN,
                f"−{a} < {a} is true. Divide both sides by −{a}. Which side is greater now?",
            ),
            op,
            value,
        ),
        (
            asking(
                m.LOST_MINUS,
                f"You have −{a}{x.name} {op} {shown(-a * value)}. What do you divide by to find "
                f"{x.name}?",
            ),
            op,
            -value,
        ),
        (
            asking(m.SAME_OPERATION, number_left(plus, c)),
            TURNED[op],
            Fraction(c + plus, -a),
        ),
    )
    return relation, steps, wrong, value, TURNED[op]
