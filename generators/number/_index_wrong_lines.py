"""How the laws of indices are used wrongly, line by line."""

from __future__ import annotations

from generators._turns import by_turns
from generators.number import _index_mistakes as mistakes
from generators.number._index_numbers import Kind
from itembank.items import kinds
from itembank.notation import tree as t

LETTERS = ("a", "x", "y", "n", "c", "k", "b", "w")


NUMBERS = (Kind.TIMES, Kind.OVER, Kind.RAISED)


def gone_wrong(kind: int, a: int, m: int, n: int, c: int = 2) -> tuple[kinds.WrongSolution, ...]:
    """Return how the laws of indices are used wrongly, line by line."""
    if m * n > 60:  # a power to the 77 is too large to be held against another
        return ()
    wrong, M, N = kinds.WrongSolution, t.Int(m), t.Int(n)
    numbers = kind in NUMBERS
    lines: tuple[t.Node, ...]
    x: t.Node = t.Int(a) if numbers else t.Sym(by_turns(LETTERS, a + m + 2 * n + c))
    first, second = power_of(x, m), power_of(x, n)
    match kind:
        case Kind.TIMES | Kind.LETTER_TIMES:
            lines = (t.Power(x, t.times(M, N)), power_of(x, m * n))
            found = (wrong(mistakes.MULTIPLIES_INDICES, lines),)
            if kind == Kind.LETTER_TIMES:
                return found
            both = (t.Power(t.Int(a * a), t.add(M, N)), power_of(t.Int(a * a), m + n))
            bases = wrong(mistakes.MULTIPLIES_BASES, both)
            return (*found, bases)
        case Kind.OVER | Kind.LETTER_OVER:
            lines = (t.Power(x, t.divide(M, N)), power_of(x, m // n))
            return (wrong(mistakes.DIVIDES_INDICES, lines),)
        case Kind.RAISED | Kind.LETTER_RAISED:
            return (wrong(mistakes.ADDS_INDICES, (t.Power(x, t.add(M, N)), power_of(x, m + n))),)
        case Kind.THREE:
            lines = (t.Power(x, t.Sum(M, (("+", t.Int(0)), ("+", N)))), power_of(x, m + n))
            return (wrong(mistakes.NO_INDEX, lines),)
        case Kind.FRONT:
            added = (t.times(t.Int(a + c), first, second), with_front(a + c, power_of(x, m + n)))
            times = (
                with_front(a * c, t.Power(x, t.times(M, N))),
                with_front(a * c, power_of(x, m * n)),
            )
            return (
                wrong(mistakes.ADDS_FRONT, added),
                wrong(mistakes.MULTIPLIES_INDICES, times),
            )
        case Kind.BAR:
            lines = (t.Frac(power_of(x, m * n), power_of(x, c)), power_of(x, m * n - c))
            return (wrong(mistakes.MULTIPLIES_INDICES, lines),)
        case Kind.FRONT_RAISED:
            raised = t.Power(t.Bracket(first), N)
            kept = (t.times(t.Int(a), raised), with_front(a, power_of(x, m * n)))
            return (
                wrong(mistakes.FRONT_NOT_RAISED, kept),
                wrong(
                    mistakes.FRONT_TIMES,
                    (t.times(t.Int(a * n), raised), with_front(a * n, power_of(x, m * n))),
                ),
            )
        case Kind.FRONT_OVER:
            less = a * c - a
            lines = (
                t.times(t.Int(less), t.Frac(first, second)),
                with_front(less, power_of(x, m - n)),
            )
            return (wrong(mistakes.SUBTRACTS_FRONT, lines),)
        case Kind.NEGATIVE:
            return (wrong(mistakes.SIGN_LOST, (t.Power(x, t.sub(N, M)), power_of(x, n - m))),)
    return ()


def power_of(base: t.Node, n: int) -> t.Node:
    """Return a power as it is written: without the index 1."""
    if n == 1:
        return base
    return t.Power(base, t.num(n))


def with_front(front: int, *powers: t.Node) -> t.Node:
    """Return powers with a number in front of them, as one term."""
    return t.juxt(t.Int(front), *powers)
