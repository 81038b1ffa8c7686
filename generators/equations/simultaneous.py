"""Two linear equations in two letters.

Key stage 4, algebra (England, 2014): "solve two simultaneous equations in two variables (linear/
linear) algebraically" (from memory). Key stage 3 finds such solutions from graphs; many schools
begin the algebra in year 9.
"""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators.equations._simultaneous_asked import (
    lots_of,
    other_value,
    pair_question,
    row_of,
    substituted,
)
from generators.equations._simultaneous_mistakes import (
    ADDS,
    HALF_TOTAL,
    LEFT_ONLY,
    PART_ONLY,
    SHARES,
    STOPS,
    SUBTRACTS,
    SWAPPED,
    TOTALS_ONLY,
)
from generators.equations._simultaneous_stories import prices, sum_and_difference
from generators.equations._writing import side
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.measures.years import SIMULTANEOUS_EQUATIONS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_X, _Y = t.Sym("x"), t.Sym("y")


def _support(kind: int, a: int, b: int, x: int, y: int) -> bool:
    """Keep systems in which one letter goes when the equations are added or subtracted."""
    if x == y or a == b:
        return False
    if kind == 0:  # ax + y, bx − y; the wrong way does not come to the values swapped
        return b * x > y and a * x + y != b * x - y and (a - b) * (y - x) != 2 * y
    return a > b and (a + b) * (y - x) != 2 * y


def _core(kind: int, a: int, b: int, c: int, x: int, y: int) -> bool:
    if kind == 0:  # ax + by, cx + y
        apart = (c - a) * x + (1 - b) * y != (b * c - a) * y
        return x != y and b * c != a and a != b and c < 4 and x < 8 and y < 9 and apart
    if kind == 1:  # y = ax + b or ax − b, cx + y
        found = a * x + (b if (a + c + x) % 2 else -b)
        return y == 1 and a != b and found != x and c * x + found != (a + c) * found
    # Two numbers with a sum and a difference.
    return a == 2 and b == 2 and c == 1 and x > 1


def _challenge(kind: int, a: int, b: int, c: int, x: int, y: int) -> bool:
    if kind == 0:  # ax + by, cx − dy
        coprime = gcd(a, c) == gcd(a, b) == gcd(c, _other(b)) == 1
        return coprime and c > 1 and x != y and a * x + b * y > 0 and c * x != _other(b) * y
    # Prices: a and b of two kinds, then c and 2.
    gap = (a - c) * x + (b - 2) * y
    return c < 4 and 1 < y < x - 1 and x > 3 and a * 2 != b * c and abs(gap) not in (0, x, y)


def _other(b: int) -> int:
    """Return the number in front of y in the second equation."""
    return b + 1


@register
class Simultaneous(Topic):
    """A letter goes at once; one equation multiplied or put in; both multiplied, and stories."""

    id = "equations.simultaneous"
    title = "Simultaneous equations"
    statements = ("algebra.linear-equations",)
    prerequisites = ("equations.both-sides",)
    later = {
        Tier.SUPPORT: (Part(SIMULTANEOUS_EQUATIONS),),
        Tier.CORE: (Part(SIMULTANEOUS_EQUATIONS, lambda kind, a, b, c, x, y: kind < 2),),
        Tier.CHALLENGE: (Part(SIMULTANEOUS_EQUATIONS, lambda kind, a, b, c, x, y: kind == 0),),
    }
    misconceptions = (
        *(SWAPPED, SUBTRACTS, ADDS, LEFT_ONLY, PART_ONLY, STOPS, SHARES, HALF_TOTAL),
        TOTALS_ONLY,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, kind=range(2), a=range(1, 6), b=range(1, 5), x=range(1, 8), y=range(1, 8)
        ),
        Tier.CORE: Space(
            _core,
            kind=range(3),
            a=range(2, 6),
            b=range(2, 5),
            c=range(1, 5),
            x=range(1, 10),
            y=(1, 2, 3, 4, 5, 6, 8, 11, 14, 17),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(2),
            a=range(2, 6),
            b=range(2, 5),
            c=range(1, 6),
            x=(2, 3, 4, 5, 6, 7, 8),
            y=(-4, -3, -2, -1, 1, 2, 3, 4, 5),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, kind: int, *values: int) -> Draft:
        """Return the question; the last two parameters are the solution, or stand for it."""
        twin = (str(tier), kind, *values)
        if tier is Tier.SUPPORT:
            return _at_once(twin, kind, *values)
        if tier is Tier.CORE:
            build = (_one_multiplied, _put_in, sum_and_difference)[kind]
            return build(twin, *values)
        return (_both_multiplied, prices)[kind](twin, *values)


def _at_once(twin: tuple[object, ...], kind: int, a: int, b: int, x: int, y: int) -> Draft:
    sign = -1 if kind == 0 else 1
    p, q = a * x + y, b * x + sign * y
    count, total = (a + b, p + q) if kind == 0 else (a - b, p - q)
    say = "Add the equations: y goes."
    if kind:
        say = "Subtract the second equation from the first: y goes."
    other, made = (a - b, p - q) if kind == 0 else (a + b, p + q)
    wrong_x = Fraction(made, other)
    return pair_question(
        row_of(a, 1, p),
        row_of(b, sign, q),
        x,
        y,
        (
            Step(say, t.equals(t.juxt(t.num(count), _X), t.num(total))),
            *lots_of(count, total, x),
            *substituted("first", a, 1, p, x, y),
        ),
        [
            (SWAPPED, (y, x)),
            (SUBTRACTS if kind == 0 else ADDS, (wrong_x, other_value(p, a, 1, wrong_x))),
        ],
        twin,
    )


def _one_multiplied(twin: tuple[object, ...], a: int, b: int, c: int, x: int, y: int) -> Draft:
    p, q = a * x + b * y, c * x + y
    count, total = b * c - a, b * q - p
    made = row_of(b * c, b, b * q)
    lots = t.equals(t.juxt(t.num(abs(count)), _X), t.num(abs(total)))
    order = "first equation from the new one" if count > 0 else "new equation from the first"
    wrong_x = Fraction(q - p, count)
    return pair_question(
        row_of(a, b, p),
        row_of(c, 1, q),
        x,
        y,
        (
            Step(f"Multiply the second equation by {b}.", made),
            Step(f"Subtract the {order}: y goes.", lots),
            *lots_of(abs(count), abs(total), x),
            *substituted("second", c, 1, q, x, y),
        ),
        [(SWAPPED, (y, x)), (LEFT_ONLY, (wrong_x, other_value(q, c, 1, wrong_x)))],
        twin,
    )


def _put_in(twin: tuple[object, ...], a: int, b: int, c: int, x: int, _: int) -> Draft:
    plus = b if (a + c + x) % 2 else -b
    y = a * x + plus
    inside = side(a, _X, plus)
    d = c * x + y
    rule = t.equals(_Y, inside)
    lots = t.juxt(t.Int(c), _X)
    second = t.equals(t.add(lots, _Y), t.num(d))
    more: list[tuple[t.SumOp, t.Node]] = [("+", t.juxt(t.Int(a), _X))]
    more.append(("+" if plus > 0 else "-", t.Int(b)))
    put = t.equals(t.Sum(lots, tuple(more)), t.num(d))
    wrong_x = Fraction(d, a + c)
    undo = f"Subtract {b} from both sides." if plus > 0 else f"Add {b} to both sides."
    at = t.equals(_Y, t.add(t.times(t.Int(a), t.Int(x)), t.num(plus)))
    return pair_question(
        rule,
        second,
        x,
        y,
        (
            Step("Substitute the expression for y in the second equation.", put),
            Step("Collect like terms.", t.equals(side(a + c, _X, plus), t.num(d))),
            Step(undo, t.equals(t.juxt(t.Int(a + c), _X), t.num(d - plus))),
            Step(f"Divide both sides by {a + c}.", t.equals(_X, t.Int(x))),
            Step(f"Substitute x = {x} in the first equation.", at),
        ),
        [
            (SWAPPED, (y, x) if y != x else None),
            (PART_ONLY, (wrong_x, a * wrong_x + plus)),
        ],
        twin,
    )


def _both_multiplied(twin: tuple[object, ...], a: int, b: int, c: int, x: int, y: int) -> Draft:
    d = _other(b)
    p, q = a * x + b * y, c * x - d * y
    count, total = a * d + c * b, d * p + b * q
    wrong_x = Fraction(p + q, count)
    other = a * d - c * b
    minus = Fraction(d * p - b * q, other) if other else None
    return pair_question(
        row_of(a, b, p),
        row_of(c, -d, q),
        x,
        y,
        (
            Step(f"Multiply the first equation by {d}.", row_of(a * d, b * d, d * p)),
            Step(f"Multiply the second equation by {b}.", row_of(c * b, -b * d, b * q)),
            Step("Add the equations: y goes.", t.equals(t.juxt(t.Int(count), _X), t.num(total))),
            *lots_of(count, total, x),
            *substituted("first", a, b, p, x, y),
        ),
        [
            (SWAPPED, (y, x)),
            (LEFT_ONLY, (wrong_x, other_value(p, a, b, wrong_x))),
            (SUBTRACTS, None if minus is None else (minus, other_value(p, a, b, minus))),
        ],
        twin,
    )
