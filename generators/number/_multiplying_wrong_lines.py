"""How products and quotients of negative numbers are written wrongly."""

from __future__ import annotations

from generators.number import _signs as m
from generators.number._negatives_multiplied import Kind
from generators.number._writing import inside
from itembank.items import kinds
from itembank.notation import tree as t


def gone_wrong(kind: int, a: int, b: int, c: int = 0) -> tuple[kinds.WrongSolution, ...]:
    """Return how products and quotients of negative numbers are written wrongly."""
    wrong, A, B = kinds.WrongSolution, t.Int(a), t.Int(b)
    match kind:
        case Kind.NEGATIVE_FIRST:
            return (wrong(m.LOSES_SIGN, (t.times(A, B), t.Int(a * b))),)
        case Kind.NEGATIVE_SECOND:
            return (wrong(m.READS_AS_TAKE, (t.sub(A, B), t.num(a - b))),)
        case Kind.BOTH:
            return (
                wrong(m.READS_AS_TAKE, (t.sub(t.num(-a), B), t.num(-a - b))),
                wrong(m.KEEPS_MINUS, (t.Neg(t.Bracket(t.times(A, B))), t.num(-a * b))),
            )
        case Kind.DIVIDE:
            return (wrong(m.LOSES_SIGN, (t.divide(t.Int(a * b), B), A)),)
        case Kind.DIVIDE_BOTH:
            over = t.Neg(t.Bracket(t.divide(t.Int(a * b), B)))
            return (wrong(m.KEEPS_MINUS, (over, t.num(-a))),)
        case Kind.SQUARE:
            return (
                wrong(m.SQUARE_NEGATIVE, (t.add(t.num(-a * a), B), t.num(b - a * a))),
                wrong(m.DOUBLES, (t.add(t.num(-2 * a), B), t.num(b - 2 * a))),
            )
        case Kind.THREE:
            return (
                wrong(m.KEEPS_MINUS, (t.times(t.num(-a * b), inside(-c)), t.num(-a * b * c)), 2),
            )
        case Kind.MIXED:
            less = t.sub(A, inside(-b * c))
            return (
                wrong(m.LOSES_SIGN, (less, t.sub(A, t.Int(b * c)), t.num(a - b * c)), 2),
                wrong(m.LEFT_TO_RIGHT, (t.times(t.num(a - b), inside(-c)), t.num((b - a) * c))),
            )
        case Kind.POWERS:
            cube = t.num(-(a**3))
            lines = (t.sub(cube, inside(-b * b)), t.add(cube, t.Int(b * b)), t.num(b * b - a**3))
            double = (t.sub(t.num(-3 * a), inside(-2 * b)), t.num(2 * b - 3 * a))
            return wrong(m.SQUARE_NEGATIVE, lines), wrong(m.DOUBLES, double)
    return ()
