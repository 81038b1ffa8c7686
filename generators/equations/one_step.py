"""One-step equations."""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction
from math import gcd

from generators.equations import _misconceptions as m
from generators.equations._asks import (
    asking,
    lots,
    product,
    undo_division,
    undo_number,
    undo_product,
)
from generators.equations._balance import take_number
from generators.equations._to_solve import to_solve
from generators.equations._words import shown, shown_factor
from generators.equations._writing import letter, side, solution, swap
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t


class Kind(IntEnum):
    """What is done to the letter."""

    PLUS, MINUS, TIMES, OVER, FROM, BELOW, NEGATIVE, PART, TURNED = range(9)


def _support(kind: int, a: int, x: int) -> bool:
    # No number of a question comes twice; products are those of the tables.
    if kind == Kind.MINUS:
        return x > a and x != 2 * a
    return x != a and (kind == Kind.PLUS or x <= 12)


def _core(kind: int, a: int, q: int) -> bool:
    # No number comes twice; products are above 60.
    return a != q and (kind != Kind.TIMES or a * q > 60)


def _challenge(kind: int, a: int, q: int) -> bool:
    # No number comes twice; a fraction is in lowest terms.
    return a != q and (kind != Kind.PART or gcd(a, q) == 1)


@register
class OneStep(Topic):
    """x + a = b and its relatives; later the letter is divided, taken away or negative."""

    id = "equations.one-step"
    title = "One-step equations"
    statements = ("algebra.linear-equations", "number.inverses")
    misconceptions = (
        m.SAME_OPERATION,
        m.DIVIDED_WRONG_WAY,
        m.SUBTRACTED_WRONG_WAY,
        m.SUBTRACTS_MULTIPLIER,
        m.ADDS_DIVISOR,
        m.SWAPPED,
        m.LOST_MINUS,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=(Kind.PLUS, Kind.MINUS, Kind.TIMES), a=range(2, 13), x=range(2, 21)
        ),
        Tier.CORE: Space(
            _core, kind=(Kind.OVER, Kind.TIMES, Kind.FROM), a=range(3, 16), q=range(4, 16)
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=(Kind.BELOW, Kind.NEGATIVE, Kind.PART, Kind.TURNED),
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
        equation: t.Relation
        turn = (a + q) % 2 == 1
        match kind:
            case Kind.PLUS:  # x + a = b
                b = q + a
                equation = t.equals(t.add(t.num(a), x) if turn else side(1, x, a), t.num(b))
                say = take_number(a)
                wrongs = (
                    (asking(m.SAME_OPERATION, undo_number(a)), b + a),
                    (asking(m.SUBTRACTED_WRONG_WAY, _which_subtraction(a, b)), a - b),
                )
            case Kind.MINUS:  # x − a = b
                b = q - a
                equation = t.equals(side(1, x, -a), t.num(b))
                say = take_number(-a)
                wrongs = (
                    (asking(m.SAME_OPERATION, undo_number(-a)), b - a),
                    (asking(m.SWAPPED, _what_from_what(x.name, str(a))), a - b),
                )
            case Kind.TIMES:  # ax = b
                b = a * q
                equation = swap(t.equals(side(a, x), t.num(b)), tier is Tier.CORE)
                say = f"Divide both sides by {a}."
                wrongs = (
                    (asking(m.SUBTRACTS_MULTIPLIER, undo_product(a, x)), b - a),
                    (asking(m.DIVIDED_WRONG_WAY, lots(a, x, b)), Fraction(a, b)),
                )
            case Kind.OVER:  # x/a = q
                value = a * q
                equation = swap(t.equals(t.Frac(x, t.Int(a)), t.num(q)), turn)
                say = f"Multiply both sides by {a}."
                wrongs = (
                    (asking(m.SAME_OPERATION, undo_division(a, x.name)), Fraction(q, a)),
                    (asking(m.ADDS_DIVISOR, _means_division(x.name, a)), q + a),
                )
            case Kind.FROM:  # (a + q) − x = a
                first = a + q
                equation = t.equals(t.sub(t.num(first), x), t.num(a))
                steps = (
                    Step(
                        f"Add {x.name} to both sides.", t.equals(t.num(first), t.add(t.num(a), x))
                    ),
                )
                say = take_number(a)
                wrongs = (
                    (asking(m.SWAPPED, _what_from_what(str(first), x.name)), first + a),
                    (asking(m.LOST_MINUS, f"What is {first} − (−{q})? Is it {a}?"), -q),
                )
            case Kind.BELOW:  # x + a = b with b below a
                b, value = a - q, -q
                equation = t.equals(t.add(t.num(a), x) if turn else side(1, x, a), t.num(b))
                say = take_number(a)
                wrongs = (
                    (asking(m.SUBTRACTED_WRONG_WAY, _which_subtraction(a, b)), q),
                    (asking(m.SAME_OPERATION, undo_number(a)), b + a),
                )
            case Kind.NEGATIVE:  # −ax = b
                value = q if turn else -q
                b = -a * value
                equation = t.equals(side(-a, x), t.num(b))
                say = f"Divide both sides by {shown(-a)}."
                wrongs = (
                    (asking(m.LOST_MINUS, product(-a, -value, b)), -value),
                    (asking(m.SUBTRACTS_MULTIPLIER, undo_product(-a, x)), b + a),
                )
            case Kind.PART:  # ax = q, the solution a fraction
                value = Fraction(q, a)
                equation = swap(t.equals(side(a, x), t.num(q)), turn)
                say = f"Divide both sides by {a}."
                wrongs = (
                    (asking(m.DIVIDED_WRONG_WAY, lots(a, x, q)), Fraction(a, q)),
                    (asking(m.SUBTRACTS_MULTIPLIER, undo_product(a, x)), q - a),
                )
            case _:  # −x/a = q
                value = -a * q
                equation = t.equals(t.Neg(t.Frac(x, t.Int(a))), t.num(q))
                say = f"Multiply both sides by {shown(-a)}."
                wrongs = (
                    (asking(m.LOST_MINUS, _minus_in_front(x.name, a, q)), a * q),
                    (asking(m.SAME_OPERATION, undo_division(-a, x.name)), Fraction(-q, a)),
                )
        key = solution(x, value)
        fraction = kind == Kind.PART
        ending = " Give your answer as a fraction." if fraction else ""
        return to_solve(
            equation, x, value, (*steps, Step(say, key)), wrongs, (int(kind), a, q), ending
        )


def _which_subtraction(a: int, b: int) -> str:
    return (
        f"You subtract {a} from both sides. "
        f"Is the right-hand side now {shown(b)} − {a} or {a} − {shown_factor(b)}?"
    )


def _what_from_what(first: str, second: str) -> str:
    return f"In {first} − {second}, what is subtracted from what?"


def _means_division(name: str, a: int) -> str:
    return f"{name}/{a} means {name} ÷ {a}. What undoes dividing by {a}?"


def _minus_in_front(name: str, a: int, q: int) -> str:
    """Ask what −x/a is with x = aq, without printing −aq, which is the solution."""
    return f"Put {a * q} for {name}: {name}/{a} is {q}. What is −{name}/{a}?"
