"""How sums with negative numbers are written wrongly."""

from __future__ import annotations

from generators.number import _signs as m
from generators.number._negatives_added import Kind
from itembank.items import kinds
from itembank.notation import tree as t


def gone_wrong(kind: int, a: int, b: int, c: int = 0) -> tuple[kinds.WrongSolution, ...]:
    """Return how sums with negative numbers are written wrongly."""
    wrong, low, A, B = kinds.WrongSolution, t.num(-a), t.Int(a), t.Int(b)
    match kind:
        case Kind.UP:
            return (wrong(m.ADDS_SIZES, (t.Neg(t.Bracket(t.add(A, B))), t.num(-a - b))),)
        case Kind.BELOW:
            return (wrong(m.SMALL_FROM_LARGE, (t.sub(B, A), t.num(b - a))),)
        case Kind.DOWN:
            return (wrong(m.TWO_MINUSES, (t.add(A, B), t.num(a + b))),)
        case Kind.TAKE_NEGATIVE:
            return (wrong(m.DROPS_BRACKET, (t.sub(A, B), t.num(a - b))),)
        case Kind.ADD_NEGATIVE:
            return (
                wrong(m.DROPS_SECOND, (t.add(low, B), t.num(b - a))),
                wrong(m.TWO_MINUSES, (t.sub(low, B), t.num(a + b)), 2),
            )
        case Kind.BOTH_NEGATIVE:
            return (wrong(m.DROPS_BRACKET, (t.sub(low, B), t.num(-a - b))),)
        case Kind.THREE:
            C, right = t.Int(c), t.sub(t.num(b - a), t.Int(c))
            plus, minus = t.Sum(low, (("+", B), ("+", C))), t.Sum(low, (("-", B), ("-", C)))
            lines = (t.Sum(low, (("+", B), ("-", C))), right, t.num(abs(b - a) + c))
            found = (
                wrong(m.DROPS_SECOND, (plus, t.add(t.num(b - a), C), t.num(b - a + c))),
                wrong(m.DROPS_BRACKET, (minus, t.sub(t.num(-a - b), C), t.num(-a - b - c))),
            )
            # −2 − 5 taken for 7: only where two minuses are left.
            return (*found, wrong(m.TWO_MINUSES, lines, 3)) if b < a else found
    return ()
