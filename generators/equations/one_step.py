"""One-step equations."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators.equations import _misconceptions as m
from generators.equations._common import (
    Wrong,
    letter,
    shown,
    side,
    slips,
    solution,
    swap,
    take_number,
)
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.registry import register
from itembank.items.space import Space
from itembank.items.topic import Topic
from itembank.notation.tree import Frac, Int, Neg, Relation, add, equals, num, sub

PLUS, MINUS, TIMES, OVER, FROM, BELOW, NEGATIVE, PART, TURNED = range(9)


def _support(kind: int, a: int, x: int) -> bool:
    if kind == MINUS:
        return x > a and x != 2 * a
    return x != a and (kind == PLUS or x <= 12)


def _core(kind: int, a: int, q: int) -> bool:
    return a != q and (kind != TIMES or a * q > 60)


def _challenge(kind: int, a: int, q: int) -> bool:
    return a != q and (kind != PART or gcd(a, q) == 1)


@register
class OneStep(Topic):
    """x + a = b and its relatives; later the letter is divided, taken away or negative."""

    id = "equations.one-step"
    title = "One-step equations"
    misconceptions = (m.SAME_OPERATION, m.WRONG_WAY, m.MIXED_INVERSE, m.SWAPPED, m.LOST_MINUS)
    spaces = {
        Tier.SUPPORT: Space(_support, kind=(PLUS, MINUS, TIMES), a=range(2, 13), x=range(2, 21)),
        Tier.CORE: Space(_core, kind=(OVER, TIMES, FROM), a=range(3, 16), q=range(4, 16)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=(BELOW, NEGATIVE, PART, TURNED),
            a=range(3, 16),
            q=range(2, 16),
        ),
    }

    def make(self, tier: Tier, kind: int, a: int, q: int) -> Draft:
        """Return the question; `q` is the solution, or the solution's size, or a part of it."""
        x = letter(kind, a, q)
        value: Fraction | int = q
        steps: tuple[Step, ...] = ()
        wrongs: tuple[Wrong, ...]
        equation: Relation
        turn = (a + q) % 2 == 1
        match kind:
            case 0:  # x + a = b
                b = q + a
                equation = equals(add(num(a), x) if turn else side(1, x, a), num(b))
                say = take_number(a)
                wrongs = ((m.SAME_OPERATION, b + a), (m.WRONG_WAY, a - b))
            case 1:  # x − a = b
                b = q - a
                equation = equals(side(1, x, -a), num(b))
                say = take_number(-a)
                wrongs = ((m.SAME_OPERATION, b - a), (m.SWAPPED, a - b))
            case 2:  # ax = b
                b = a * q
                equation = swap(equals(side(a, x), num(b)), tier is Tier.CORE)
                say = f"Divide both sides by {a}."
                wrongs = ((m.MIXED_INVERSE, b - a), (m.WRONG_WAY, Fraction(a, b)))
            case 3:  # x/a = q
                value = a * q
                equation = swap(equals(Frac(x, Int(a)), num(q)), turn)
                say = f"Multiply both sides by {a}."
                wrongs = ((m.SAME_OPERATION, Fraction(q, a)), (m.MIXED_INVERSE, q + a))
            case 4:  # (a + q) − x = a
                first = a + q
                equation = equals(sub(num(first), x), num(a))
                steps = (Step(f"Add {x.name} to both sides.", equals(num(first), add(num(a), x))),)
                say = take_number(a)
                wrongs = ((m.SWAPPED, first + a), (m.LOST_MINUS, -q))
            case 5:  # x + a = b with b below a
                b, value = a - q, -q
                equation = equals(add(num(a), x) if turn else side(1, x, a), num(b))
                say = take_number(a)
                wrongs = ((m.WRONG_WAY, q), (m.SAME_OPERATION, b + a))
            case 6:  # −ax = b
                value = q if turn else -q
                b = -a * value
                equation = equals(side(-a, x), num(b))
                say = f"Divide both sides by {shown(-a)}."
                wrongs = ((m.LOST_MINUS, -value), (m.MIXED_INVERSE, b + a))
            case 7:  # ax = q, the solution a fraction
                value = Fraction(q, a)
                equation = swap(equals(side(a, x), num(q)), turn)
                say = f"Divide both sides by {a}."
                wrongs = ((m.WRONG_WAY, Fraction(a, q)), (m.MIXED_INVERSE, q - a))
            case _:  # −x/a = q
                value = -a * q
                equation = equals(Neg(Frac(x, Int(a))), num(q))
                say = f"Multiply both sides by {shown(-a)}."
                wrongs = ((m.LOST_MINUS, a * q), (m.MIXED_INVERSE, q + a))
        key = solution(x, value)
        fraction = kind == PART
        ending = " Give your answer as a fraction." if fraction else ""
        return Draft(
            prompt("Solve {e}." + ending, e=equation),
            Find(x, (equation,)),
            key,
            "solution",
            (*steps, Step(say, key)),
            slips(x, *wrongs),
            (kind, a, q),
        )
