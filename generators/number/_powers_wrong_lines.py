"""How powers and roots are worked out wrongly, line by line."""

from __future__ import annotations

from generators.number import _power_mistakes as m
from generators.number._powers_numbers import Kind
from itembank.items import kinds
from itembank.notation import tree as t


def gone_wrong(
    kind: int, a: int, b: int, c: int = 0, d: int = 0
) -> tuple[kinds.WrongSolution, ...]:
    """Return how powers and roots are worked out wrongly, line by line."""
    wrong, A, B = kinds.WrongSolution, t.Int(a), t.Int(b)
    match kind:
        case Kind.POWER:
            found = (wrong(m.TIMES_INDEX, (t.times(A, B), t.Int(a * b))),)
            return (
                (*found, wrong(m.SWAPS, (written_out(B, a), t.Int(b**a)))) if a in (3, 4) else found
            )
        case Kind.ROOT_OF_SUM:
            join, end = (t.add, a + b) if d == 2 else (t.sub, a - b)
            apart_ = join(t.Root(t.Int(a * a)), t.Root(t.Int(b * b)))
            return (wrong(m.ROOTS_EACH, (apart_, join(A, B), t.num(end))),)
        case Kind.DIFFERENCE:
            lines = (t.sub(t.Int(a * c), t.Int(b * d)), t.num(a * c - b * d))
            return (wrong(m.TIMES_INDEX, lines),)
        case Kind.PRODUCT:
            times = (t.times(t.Int(a * c), t.Int(b * d)), t.Int(a * c * b * d))
            joined = (power_of(a * b, c + d), t.Int((a * b) ** (c + d)))
            found = (wrong(m.TIMES_INDEX, times),)
            return (*found, wrong(m.JOINS, joined)) if joined[1].n <= 1300 else found
        case Kind.NOUGHT:
            return (
                wrong(m.NOUGHT_IS_NOUGHT, (t.add(t.Int(0), B), B)),
                wrong(m.NOUGHT_CHANGES_NOTHING, (t.add(A, B), t.Int(a + b))),
            )
        case Kind.NEGATIVE_INDEX:
            return (wrong(m.NEGATIVE_ANSWER, (t.Neg(power_of(a, b)), t.num(-(a**b)))),)
    return ()


def power_of(a: int, n: int) -> t.Power:
    """Return a power of a whole number."""
    return t.Power(t.Int(a), t.Int(n))


def written_out(a: t.Node, n: int) -> t.Node:
    """Return a power as a product."""
    return t.times(a, *[a] * (n - 1))
