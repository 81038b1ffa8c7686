"""Equations with the unknown on both sides."""

from __future__ import annotations

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, one_of
from generators.equations._balance import balance
from generators.equations._to_solve import to_solve
from generators.equations._worked_wrongly import wrong_solutions
from generators.equations._writing import lead, letter, side
from generators.equations._wrong_lines import across, below_zero
from itembank.items import kinds
from itembank.items.item import Draft, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

NUMBERS = (-9, -7, -4, -2, 1, 3, 5, 6, 8, 10)
POSITIVE = (1, 3, 5, 8, 10, 12)
SOLUTIONS = (-6, -5, -4, -3, -2, 2, 3, 4, 5, 6)


def _support(sign: int, a: int, c: int, x: int) -> bool:
    # At least two of the letter are left: with one, stopping early would be right.
    return a - c >= 2


def _core(a: int, c: int, b: int, x: int) -> bool:
    d = (a - c) * x + b
    # The same equation with its sides exchanged is kept once.
    return abs(a - c) >= 2 and d != 0 and (a > c or d not in NUMBERS)


def _challenge(kind: int, a: int, b: int, c: int, x: int) -> bool:
    if kind == 0:  # ax + b = d − cx
        total = (a + c) * x
        return a != c and total + b != 0 and total * (a + c) != (total + 2 * b) * (a - c)
    d = b - (a - c) * x  # b − ax = d − cx
    return a != c and d != 0 and (a < c or d not in POSITIVE or a > 6)


@register
class BothSides(Topic):
    """ax = cx + d, then ax + b = cx + d, then letters that are taken away."""

    id = "equations.both-sides"
    title = "Equations with the unknown on both sides"
    statements = ("algebra.linear-equations",)
    misconceptions = (
        m.LETTER_ACROSS,
        m.NUMBER_ACROSS,
        m.STOPS_EARLY,
        m.SMALLER_FROM_LARGER,
        m.ANSWER_SIGN,
        m.SUBTRACTS_MULTIPLIER,
    )
    prerequisites = ("equations.two-step",)
    spaces = {
        Tier.SUPPORT: kinds.with_matches(
            kinds.with_claims(
                Space(_support, sign=(1, -1), a=range(4, 11), c=range(2, 9), x=range(2, 11))
            ),
            letter,
        ),
        Tier.CORE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _core,
                    a=range(2, 9),
                    c=range(2, 9),
                    b=NUMBERS,
                    x=range(2, 8),
                )
            ),
            letter,
        ),
        Tier.CHALLENGE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _challenge,
                    kind=(0, 1),
                    a=range(2, 8),
                    b=POSITIVE,
                    c=range(2, 7),
                    x=SOLUTIONS,
                )
            ),
            letter,
        ),
    }
    spaces = kinds.with_working_gone_wrong(
        spaces, wrong_solutions, only={Tier.CHALLENGE: lambda kind, a, b, c, x: abs(a - c) > 1}
    )

    def make(self, tier: Tier, *values: int) -> Draft:
        """Return the question; the last parameter is the solution."""
        x, value = letter(*values), values[-1]
        wrong: tuple[Wrong, ...]
        twin: tuple[object, ...] = values
        if tier is Tier.SUPPORT:  # ax = cx + d or ax − d = cx
            sign, a, c, _ = values
            d = (a - c) * value
            left, right = ((a, 0), (c, d)) if sign > 0 else ((a, -d), (c, 0))
            if value % 3 == 0:
                left, right = right, left
            equation = t.equals(side(left[0], x, left[1]), side(right[0], x, right[1]))
            steps = balance(x, *left, *right)
            wrong = (
                across(x, *left, *right)[0],
                (asking(m.STOPS_EARLY, one_of(a - c, x)), d),
            )
        elif tier is Tier.CORE:  # ax + b = cx + d
            a, c, b, _ = values
            d = (a - c) * value + b
            equation = t.equals(side(a, x, b), side(c, x, d))
            steps = balance(x, a, b, c, d)
            twin = tuple(sorted(((a, b), (c, d))))
            k = abs(a - c)
            wrong = (*across(x, a, b, c, d), (asking(m.STOPS_EARLY, one_of(k, x)), k * value))
        else:
            kind, a, b, c, _ = values
            if kind == 0:  # ax + b = d − cx
                d = (a + c) * value + b
                equation = t.equals(side(a, x, b), lead(d, -c, x))
                steps = balance(x, a, b, -c, d)
                wrong = across(x, a, b, -c, d)
            else:  # b − ax = d − cx
                d = b - (a - c) * value
                equation = t.equals(lead(b, -a, x), lead(d, -c, x))
                steps = balance(x, -a, b, -c, d)
                sign_lost = below_zero(*((b, d) if a > c else (d, b)))
                twin = tuple(sorted(((-a, b), (-c, d))))
                wrong = (
                    *across(x, -a, b, -c, d),
                    (sign_lost, -value if value < 0 else None),
                    (asking(m.STOPS_EARLY, one_of(abs(a - c), x)), abs(a - c) * value),
                )
        return to_solve(equation, x, value, steps, wrong, twin)
