"""How a calculation is written that is done in the wrong order."""

from __future__ import annotations

from generators.number._order_mistakes import (
    ADDS_FIRST,
    LEFT_TO_RIGHT,
    NO_BRACKETS,
    SQUARES_ALL,
    SQUARES_EACH,
    TIMES_FIRST,
)
from generators.number._order_numbers import Kind
from itembank.items import kinds
from itembank.notation import tree as t


def gone_wrong(kind: int, a: int, b: int, c: int, d: int = 0) -> tuple[kinds.WrongSolution, ...]:
    """Return how calculations are written that are done in the wrong order."""
    wrong, A, B, C, D = kinds.WrongSolution, *map(t.Int, (a, b, c, d))
    two, inner = t.Int(2), c + d * d
    match kind:
        case Kind.PLUS_TIMES:
            return (wrong(LEFT_TO_RIGHT, (t.times(t.Int(a + b), C), t.Int((a + b) * c))),)
        case Kind.MINUS_OVER if a > b and (a - b) % c == 0:
            return (wrong(LEFT_TO_RIGHT, (t.divide(t.Int(a - b), C), t.Int((a - b) // c))),)
        case Kind.BRACKET_TIMES:
            return (wrong(NO_BRACKETS, (t.sub(A, t.Int(b * c)), t.num(a - b * c))),)
        case Kind.MINUS_PLUS:
            return (wrong(ADDS_FIRST, (t.sub(A, t.Int(b + c)), t.num(a - b - c))),)
        case Kind.PLUS_SQUARE:
            squared, all_squared = t.Int(c * c), t.Int((b * c) ** 2)
            lines = (t.add(A, t.times(B, squared)), t.times(t.Int(a + b), squared))
            return (
                wrong(LEFT_TO_RIGHT, (*lines, t.Int((a + b) * c * c)), 2),
                wrong(
                    SQUARES_ALL,
                    (
                        t.add(A, t.Power(t.Int(b * c), two)),
                        t.add(A, all_squared),
                        t.Int(a + (b * c) ** 2),
                    ),
                ),
            )
        case Kind.OVER_TIMES if a % (b * c) == 0:
            return (wrong(TIMES_FIRST, (t.divide(A, t.Int(b * c)), t.Int(a // (b * c)))),)
        case Kind.MINUS_BRACKET:
            rest = t.Int(c - d)
            lines = (t.sub(A, t.times(B, rest)), t.times(t.num(a - b), rest))
            open_ = t.Sum(A, (("-", t.Int(b * c)), ("-", D)))
            return (
                wrong(LEFT_TO_RIGHT, (*lines, t.num((a - b) * (c - d))), 2),
                wrong(NO_BRACKETS, (open_, t.num(a - b * c - d))),
            )
        case Kind.SQUARE_INSIDE:
            lines = (t.sub(A, t.times(B, t.Int(inner))), t.times(t.num(a - b), t.Int(inner)))
            power = t.sub(A, t.times(B, t.Power(t.Int(c + d), two)))
            squared_sum = t.sub(A, t.times(B, t.Int((c + d) ** 2)))
            return (
                wrong(LEFT_TO_RIGHT, (*lines, t.num((a - b) * inner)), 2),
                wrong(SQUARES_ALL, (power, squared_sum, t.num(a - b * (c + d) ** 2))),
            )
        case Kind.SQUARE_AND_ROOT:
            rooted = t.times(t.Root(t.Int(c * c)), D)
            start = t.Sum(t.Power(A, two), (("+", t.Power(B, two)), ("-", rooted)))
            then = t.Sum(t.Int(a * a), (("+", t.Int(b * b)), ("-", t.Int(c * d))))
            return (wrong(SQUARES_EACH, (start, then, t.num(a * a + b * b - c * d))),)
    return ()
