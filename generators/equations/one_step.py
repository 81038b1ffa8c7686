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
from itembank.items import kinds
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


_SUPPORT = Space(_support, kind=(Kind.PLUS, Kind.MINUS, Kind.TIMES), a=range(2, 13), x=range(2, 21))
_CORE = Space(_core, kind=(Kind.OVER, Kind.TIMES, Kind.FROM), a=range(3, 16), q=range(4, 16))
_CHALLENGE = Space(
    _challenge,
    kind=(Kind.BELOW, Kind.NEGATIVE, Kind.PART, Kind.TURNED),
    a=range(3, 16),
    q=range(2, 16),
)


def _value(kind: int, a: int, q: int) -> Fraction:
    """Return the solution of a question of the topic's own."""
    turn = (a + q) % 2 == 1
    match kind:
        case Kind.OVER:
            return Fraction(a * q)
        case Kind.BELOW:
            return Fraction(-q)
        case Kind.NEGATIVE:
            return Fraction(q if turn else -q)
        case Kind.PART:
            return Fraction(q, a)
        case Kind.TURNED:
            return Fraction(-a * q)
    return Fraction(q)


def _solutions_differ(of: tuple[tuple[int, int, int], ...]) -> bool:
    return len({_value(*point) for point in of}) == len(of)


def _odd(x: int, a: int, c: int, d: int) -> bool:
    # No number comes twice in a card, and no sum is the product.
    return len({a, c, d, x}) == 4 and (x + 2 * a + 3 * c + d) % 8 == 0


def _wrong(kind: int, a: int, q: int) -> bool:
    return _core(kind, a, q) and (a + q) % 2 == 0


def _odd_solution(topic: Topic, tier: Tier, x: int, a: int, c: int, d: int) -> Draft:
    """Return three equations with one solution, and one that has it by the wrong operation."""
    y = letter(x, a, c, d)
    others = (
        t.equals(side(1, y, a), t.num(x + a)),
        t.equals(side(c, y), t.num(c * x)),
        t.equals(side(1, y, -2), t.num(x - 2)) if d != 2 else t.equals(side(1, y, 3), t.num(x + 3)),
    )
    odd = t.equals(side(1, y, -d), t.num(x + d))
    return kinds.odd_one_out(
        odd,
        others,
        mistakes=(
            (asking(m.SAME_OPERATION, undo_number(a)), 0),
            (asking(m.SUBTRACTS_MULTIPLIER, undo_product(c, y)), 1),
        ),
        steps=(
            Step(f"{d} is subtracted: add {d} to both sides.", solution(y, x + 2 * d)),
            Step("Solve the others in the same way: they agree.", solution(y, x)),
        ),
        twin=(x, a, c, d),
        same="solution",
    )


def _wrong_line(topic: Topic, tier: Tier, kind: int, a: int, q: int) -> Draft:
    """Return a solution of x/a = q or of (a + q) − x = a in which an operation is not undone."""
    x = letter(kind, a, q)
    asked = topic.make(tier, kind, a, q)
    if kind == Kind.OVER:
        equation = t.equals(t.Frac(x, t.Int(a)), t.num(q))
        lines: tuple[t.Node, ...] = (t.equals(x, t.add(t.num(q), t.num(a))), solution(x, q + a))
        return kinds.spot_the_mistake(
            equation,
            lines,
            1,
            asked.key,
            mistake=asking(m.ADDS_DIVISOR, _means_division(x.name, a)),
            steps=asked.steps,
            twin=(int(kind), a, q),
            does="solves",
        )
    first = a + q
    equation = t.equals(t.sub(t.num(first), x), t.num(a))
    lines = (
        t.equals(t.num(first), t.add(t.num(a), x)),
        t.equals(x, t.add(t.num(first), t.num(a))),
        solution(x, first + a),
    )
    return kinds.spot_the_mistake(
        equation,
        lines,
        2,
        asked.key,
        mistake=asking(m.SAME_OPERATION, undo_number(a)),
        steps=asked.steps,
        twin=(int(kind), a, q),
        does="solves",
    )


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
        Tier.SUPPORT: _SUPPORT.also(kinds.claim, of=_SUPPORT.some(150))
        .also(kinds.match_answers, _solutions_differ, of=_SUPPORT.threes(150, letter))
        .also(_odd_solution, _odd, x=range(4, 13), a=range(2, 10), c=range(2, 6), d=range(2, 8)),
        Tier.CORE: _CORE.also(kinds.claim, of=_CORE.some(150))
        .also(kinds.match_answers, _solutions_differ, of=_CORE.threes(150, letter))
        .also(_wrong_line, _wrong, kind=(Kind.OVER, Kind.FROM), a=range(3, 16), q=range(4, 16)),
        Tier.CHALLENGE: _CHALLENGE.also(kinds.claim, of=_CHALLENGE.some(150)).also(
            kinds.match_answers, _solutions_differ, of=_CHALLENGE.threes(150, letter)
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
