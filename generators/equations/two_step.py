"""Two-step equations."""

from __future__ import annotations

from fractions import Fraction

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, last_done, number_left, one_of, undo_number
from generators.equations._balance import balance, take_letter, take_number
from generators.equations._to_solve import to_solve
from generators.equations._worked_wrongly import wrong_solutions
from generators.equations._writing import lead, letter, side, solution, swap
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

Parts = tuple[t.Relation, int, tuple[Step, ...], tuple[Wrong, ...]]


def _support(sign: int, a: int, b: int, x: int) -> bool:
    # The right-hand side is positive and not the number that is subtracted.
    return sign > 0 or (a * x > b and a * x != 2 * b)


def _core(kind: int, a: int, b: int, q: int) -> bool:
    # The right-hand side is positive, and so is the solution.
    if kind == 1:
        return q > b
    return kind != 2 or a * q > b + 1


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    # Divisions come out whole. Kinds 0 and 3 divide by nothing, so one divisor stands for all.
    if kind in (0, 3):
        return c == 2
    total = a * x + (b if kind == 1 else -b)
    return total > c and total % c == 0


def _divided(kind: int, x: t.Sym, a: int, b: int, q: int) -> Parts:
    """Return an equation whose letter, or a sum with the letter, is divided."""
    if kind < 2:
        plus = b if kind == 0 else -b
        c, value = q + plus, a * q
        equation = t.equals(t.add(t.Frac(x, t.Int(a)), t.num(plus)), t.num(c))
        steps = (
            Step(take_number(plus), t.equals(t.Frac(x, t.Int(a)), t.num(q))),
            Step(f"Multiply both sides by {a}.", solution(x, value)),
        )
        wrong: tuple[Wrong, ...] = (
            (asking(m.WRONG_ORDER, last_done(a, plus, False)), a * c - plus),
            (asking(m.SAME_OPERATION, undo_number(plus)), a * (c + plus)),
        )
        return equation, value, steps, wrong
    plus = b if kind == 2 else -b
    value = a * q - plus
    equation = t.equals(t.Frac(side(1, x, plus), t.Int(a)), t.num(q))
    steps = (
        Step(f"Multiply both sides by {a}.", t.equals(side(1, x, plus), t.num(a * q))),
        Step(take_number(plus), solution(x, value)),
    )
    wrong = (
        (asking(m.WRONG_ORDER, last_done(a, plus, False, False)), a * (q - plus)),
        (asking(m.SAME_OPERATION, undo_number(plus)), a * q + plus),
    )
    return equation, value, steps, wrong


def _harder(kind: int, x: t.Sym, a: int, b: int, c: int, value: int) -> Parts:
    """Return an equation whose letter is taken away, or has three things done to it."""
    steps: tuple[Step, ...]
    if kind == 0:  # first − ax = b
        first = b + a * value
        equation = t.equals(lead(first, -a, x), t.num(b))
        steps = (
            Step(take_letter(-a, x), t.equals(t.num(first), lead(b, a, x))),
            Step(take_number(b), t.equals(t.num(first - b), side(a, x))),
            Step(f"Divide both sides by {a}.", solution(x, value)),
        )
        wrong: tuple[Wrong, ...] = (
            (
                asking(m.LOST_MINUS, f"What is {first} − {a} × (−{value})? Is it {b}?"),
                -value,
            ),
            (asking(m.SAME_OPERATION, number_left(b, first)), Fraction(first + b, a)),
        )
        return equation, value, steps, wrong
    if kind == 3:  # first − x/a = b
        first, size = b + value, a * value
        part = t.Frac(x, t.Int(a))
        equation = t.equals(t.sub(t.num(first), part), t.num(b))
        steps = (
            Step(
                f"Add {x.name}/{a} to both sides.",
                t.equals(t.num(first), t.add(t.num(b), part)),
            ),
            Step(take_number(b), t.equals(t.num(value), part)),
            Step(f"Multiply both sides by {a}.", solution(x, size)),
        )
        wrong = (
            (asking(m.LOST_MINUS, f"What is {first} − (−{value})? Is it {b}?"), -size),
            (asking(m.SAME_OPERATION, number_left(b, first)), a * (first + b)),
        )
        return equation, size, steps, wrong
    plus = b if kind == 1 else -b
    d = (a * value + plus) // c
    equation = t.equals(t.Frac(side(a, x, plus), t.Int(c)), t.num(d))
    steps = (
        Step(f"Multiply both sides by {c}.", t.equals(side(a, x, plus), t.num(c * d))),
        *balance(x, a, plus, 0, c * d),
    )
    wrong = (
        (
            asking(m.WRONG_ORDER, last_done(c, plus, False, False)),
            Fraction(c * (d - plus), a),
        ),
        (asking(m.STOPS_EARLY, one_of(a, x)), c * d - plus),
        (asking(m.SAME_OPERATION, number_left(plus, c * d)), Fraction(c * d + plus, a)),
    )
    return equation, value, steps, wrong


@register
class TwoStep(Topic):
    """ax + b = c; then the letter divided; then it is taken away or has three steps."""

    id = "equations.two-step"
    title = "Two-step equations"
    statements = ("algebra.linear-equations",)
    misconceptions = (
        m.WRONG_ORDER,
        m.SAME_OPERATION,
        m.STOPS_EARLY,
        m.LOST_MINUS,
        m.SUBTRACTS_MULTIPLIER,
    )
    prerequisites = ("equations.one-step",)
    spaces = {
        Tier.SUPPORT: kinds.with_matches(
            kinds.with_claims(
                Space(_support, sign=(1, -1), a=range(2, 13), b=range(1, 13), x=range(2, 11))
            ),
            letter,
        ),
        Tier.CORE: kinds.with_matches(
            kinds.with_claims(
                Space(_core, kind=range(4), a=range(3, 10), b=range(2, 12), q=range(3, 13))
            ),
            letter,
        ),
        Tier.CHALLENGE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _challenge,
                    kind=range(4),
                    a=range(2, 8),
                    b=range(3, 12),
                    c=range(2, 6),
                    x=range(3, 10),
                )
            ),
            letter,
        ),
    }
    spaces = kinds.with_working_gone_wrong(
        spaces, wrong_solutions, only={Tier.CORE: lambda kind, a, b, q: kind != 1 or q != 2 * b}
    )

    def make(self, tier: Tier, *values: int) -> Draft:
        """Return the question; the last parameter leads to the solution."""
        x = letter(*values)
        if tier is Tier.SUPPORT:
            sign, a, b, value = values
            b *= sign
            c = a * value + b
            equation = t.equals(side(a, x, b), t.num(c))
            steps = balance(x, a, b, 0, c)
            wrong: tuple[Wrong, ...] = (
                (
                    asking(m.WRONG_ORDER, last_done(a, b)),
                    Fraction(c, a) - b,
                ),
                (asking(m.SAME_OPERATION, undo_number(b)), Fraction(c + b, a)),
                (asking(m.STOPS_EARLY, one_of(a, x)), c - b),
            )
        elif tier is Tier.CORE:
            kind, a, b, q = values
            equation, value, steps, wrong = _divided(kind, x, a, b, q)
            equation = swap(equation, (a + b + q) % 3 == 0)
        else:
            kind, a, b, c, value = values
            equation, value, steps, wrong = _harder(kind, x, a, b, c, value)
        return to_solve(equation, x, value, steps, wrong, values)
