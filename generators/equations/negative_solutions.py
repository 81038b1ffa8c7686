"""Equations with negative or fractional solutions."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators.equations import _misconceptions as m
from generators.equations._common import (
    Wrong,
    balance,
    lead,
    letter,
    over,
    side,
    slips,
    solution,
)
from itembank.items.item import Draft, Find, Tier, prompt
from itembank.items.registry import register
from itembank.items.space import Space
from itembank.items.topic import Topic
from itembank.notation.tree import equals, num

TOPS = (-13, -11, -7, -5, -3, -1, 1, 2, 3, 5, 7, 11)


def _support(sign: int, a: int, b: int, x: int) -> bool:
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
    misconceptions = (
        m.SMALLER_FROM_LARGER,
        m.ANSWER_SIGN,
        m.LOST_MINUS,
        m.SAME_OPERATION,
        m.WRONG_ORDER,
        m.WRONG_WAY,
        m.ADDS_LETTERS,
        m.ADDS_NUMBERS,
    )
    prerequisites = ("equations.two-step",)
    spaces = {
        Tier.SUPPORT: Space(
            _support, sign=(1, -1), a=range(2, 10), b=range(2, 13), x=range(-9, -1)
        ),
        Tier.CORE: Space(_core, kind=range(3), a=range(2, 10), b=range(2, 10), n=range(-11, 12)),
        Tier.CHALLENGE: Space(
            _challenge, a=range(3, 10), c=(-4, -3, -2, 2, 3, 4, 5), b=(-7, -4, 2, 5, 9), n=TOPS
        ),
    }

    def make(self, tier: Tier, *values: int) -> Draft:
        """Return the question: ax + b = c, or ax + b = cx + d."""
        x = letter(*values)
        value: int | Fraction
        wrong: tuple[Wrong, ...]
        text = "Solve {e}."
        if tier is Tier.CHALLENGE:
            a, c, b, n = values
            d, k = b + n, a - c
            value = Fraction(n, k)
            equation = equals(side(a, x, b), lead(d, c, x) if c < 0 else side(c, x, d))
            steps = balance(x, a, b, c, d)
            wrong = (
                (m.ADDS_LETTERS, over(n, a + c)),
                (m.ADDS_NUMBERS, over(n + 2 * b, k)),
                (m.WRONG_WAY, over(k, n)),
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
            equation = equals(left, num(c))
            steps = balance(x, -a if away else a, b, 0, c)
            wrong = (
                (m.LOST_MINUS, -value if away else None),
                # In −43 − 2 no number is taken from a larger one: only the sign is lost.
                (
                    m.SMALLER_FROM_LARGER if b * c > 0 else m.ANSWER_SIGN,
                    -value if n < 0 and not away else None,
                ),
                (m.SAME_OPERATION, Fraction(c + b, a)),
                (m.WRONG_WAY, Fraction(a, n) if tier is Tier.CORE else None),
                (m.WRONG_ORDER, Fraction(c, a) - b if not away else None),
            )
        if tier is not Tier.SUPPORT:
            text += " Give your answer as a fraction in its simplest form."
        return Draft(
            prompt(text, e=equation),
            Find(x, (equation,)),
            solution(x, value),
            "solution",
            steps,
            slips(x, *wrong),
            values,
        )
