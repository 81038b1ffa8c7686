"""Equations with negative or fractional solutions."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators.equations import _misconceptions as m
from generators.equations._asks import asking, last_done, lots, number_left
from generators.equations._balance import balance
from generators.equations._to_solve import to_solve
from generators.equations._words import shown, shown_factor
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

TOPS = (-13, -11, -7, -5, -3, -1, 1, 2, 3, 5, 7, 11)


def _support(sign: int, a: int, b: int, x: int) -> bool:
    # The right-hand side is neither 0 nor twice the product.
    return sign * b != -a * x and sign * b != a * x


def _core(kind: int, a: int, b: int, n: int) -> bool:
    if gcd(a, n) != 1:
        return False
    if kind == 2:  # b − ax = b − n
        return n not in (b, 2 * b)
    return n not in ((-b, -2 * b) if kind == 0 else (b, 2 * b))


def _challenge(a: int, c: int, b: int, n: int) -> bool:
    k = a - c
    # With fewer letters on the left it would be the same equation, its sides exchanged.
    return k >= 2 and gcd(k, n) == 1 and b + n != 0 and a != -c


@register
class NegativeSolutions(Topic):
    """Whole negative solutions, then fractions, then fractions from letters on both sides."""

    id = "equations.negative-solutions"
    title = "Equations with negative or fractional solutions"
    statements = ("algebra.linear-equations",)
    misconceptions = (
        m.SMALLER_FROM_LARGER,
        m.ANSWER_SIGN,
        m.LOST_MINUS,
        m.SAME_OPERATION,
        m.WRONG_ORDER,
        m.DIVIDED_WRONG_WAY,
        m.LETTER_ACROSS,
        m.NUMBER_ACROSS,
        m.SUBTRACTS_MULTIPLIER,
    )
    prerequisites = ("equations.two-step",)
    spaces = {
        Tier.SUPPORT: kinds.with_matches(
            kinds.with_claims(
                Space(_support, sign=(1, -1), a=range(2, 10), b=range(2, 13), x=range(-9, -1))
            ),
            letter,
        ),
        Tier.CORE: kinds.with_matches(
            kinds.with_claims(
                Space(_core, kind=range(3), a=range(2, 10), b=range(2, 10), n=range(-11, 12))
            ),
            letter,
        ),
        Tier.CHALLENGE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    _challenge,
                    a=range(3, 10),
                    c=(-4, -3, -2, 2, 3, 4, 5),
                    b=(-7, -4, 2, 5, 9),
                    n=TOPS,
                )
            ),
            letter,
        ),
    }
    spaces = kinds.with_working_gone_wrong(spaces, wrong_solutions)

    def make(self, tier: Tier, *values: int) -> Draft:
        """Return the question: ax + b = c, or ax + b = cx + d."""
        x = letter(*values)
        value: int | Fraction
        wrong: tuple[Wrong, ...]
        ending = ""
        if tier is Tier.CHALLENGE:
            a, c, b, n = values
            d, k = b + n, a - c
            value = Fraction(n, k)
            equation = t.equals(side(a, x, b), lead(d, c, x) if c < 0 else side(c, x, d))
            steps = balance(x, a, b, c, d)
            wrong = (
                *across(x, a, b, c, d),
                (asking(m.DIVIDED_WRONG_WAY, lots(k, x, n)), Fraction(k, n)),
            )
        else:
            kind, a, b, last = values
            n = a * last if tier is Tier.SUPPORT else last
            value = Fraction(n, a)
            if kind == (1 if tier is Tier.CORE else -1):  # … − b
                b = -b
            away = kind == 2
            c = b - n if away else n + b
            first = away or (tier is Tier.SUPPORT and b > 0 and a % 2 == 1)
            left = lead(b, -a if away else a, x) if first else side(a, x, b)
            equation = t.equals(left, t.num(c))
            steps = balance(x, -a if away else a, b, 0, c)
            # The printed working takes b from c; where ax is subtracted, c from b.
            first_number, taken = (b, c) if away else (c, b)
            wrong = (
                (
                    asking(
                        m.LOST_MINUS,
                        f"{a} × {shown_factor(-value)} is {shown(-n)}. "
                        f"What is {b} − {shown_factor(-n)}? Is it {shown(c)}?",
                    ),
                    -value if away else None,
                ),
                (below_zero(c, b), -value if n < 0 and not away else None),
                (asking(m.SAME_OPERATION, number_left(taken, first_number)), Fraction(c + b, a)),
                (
                    asking(m.DIVIDED_WRONG_WAY, lots(a, x, n)),
                    Fraction(a, n) if tier is Tier.CORE else None,
                ),
                (
                    asking(m.WRONG_ORDER, last_done(a, b)),
                    Fraction(c, a) - b if not away else None,
                ),
            )
        if tier is not Tier.SUPPORT:
            ending = " Give your answer as a fraction in its simplest form."
        return to_solve(equation, x, value, steps, wrong, values, ending)
