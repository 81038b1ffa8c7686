"""Laws of indices: with numbers, with letters, with numbers in front, and several at once.

The programme of study for key stage 3 (England, 2013) asks pupils to "use integer powers" and, in
algebra, to use notation such as a² for a × a and a³ for a × a × a (from memory). The laws follow
from what a power means; simplifying with them is mostly met in year 9.
"""

from __future__ import annotations

from enum import IntEnum
from typing import Any

from generators._turns import by_turns
from generators.number import _index_mistakes as mistakes
from generators.number._writing import apart, worked
from itembank.items import kinds
from itembank.items.item import Draft, Find, Rewrite, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

LETTERS = ("a", "x", "y", "n", "c", "k", "b", "w")


class Kind(IntEnum):
    """Which law is used on what."""

    TIMES, OVER, RAISED, LETTER_TIMES = range(4)
    THREE, LETTER_OVER, LETTER_RAISED, FRONT, BAR = range(4, 9)
    FRONT_RAISED, FRONT_OVER, TWO_LETTERS, NEGATIVE, UNLIKE = range(9, 14)


def _support(kind: int, a: int, m: int, n: int) -> bool:
    """Keep two powers of one number or letter that the mistakes take for something else."""
    match kind:
        case Kind.TIMES | Kind.LETTER_TIMES:
            # The base of a number says nothing new: products of letters, which lead on to the
            # other tiers, are more than those of numbers.
            based = kind == Kind.LETTER_TIMES or a in (2, 3, 7)
            return based and n <= m + 4 and m != n and m * n not in (m + n, 2 * (m + n))
        case Kind.OVER:
            return m > n + 1 and m != 2 * n and m % n == 0
    return m * n != m + n and m**n not in (m * n, m + n) and m <= 6 and n <= 4


def _core(kind: int, a: int, m: int, n: int, c: int) -> bool:
    """Keep three powers, letters over a line or raised, and numbers in front."""
    match kind:
        case Kind.THREE:  # xᵐ × x × xⁿ
            return c == 2 and m != n and m * n > m + n + 1
        case Kind.LETTER_OVER:
            return c == 2 and m > n + 1 and m != 2 * n and m % n == 0
        case Kind.LETTER_RAISED:
            return c == 2 and n <= 4 and m**n not in (m * n, m + n) and m * n != m + n
        case Kind.FRONT:  # axᵐ × cxⁿ
            return a != c and a * c != a + c and m * n != m + n and m != n and m + n <= 9
    # (xᵐ × xⁿ)/xᶜ
    total = m + n
    fits = a == 2 and total > c + 1 and m * n not in (total, total + c)
    return fits and apart(c, m, n)


def _challenge(kind: int, a: int, m: int, n: int, c: int) -> bool:
    """Keep numbers in front that are raised or divided, two letters, and negative indices."""
    match kind:
        case Kind.FRONT_RAISED:  # (axᵐ)ⁿ
            return c == 2 and n <= 4 and a > 1 and a**n <= 250 and a**n != a * n and m * n != m + n
        case Kind.FRONT_OVER:  # acxᵐ over axⁿ
            return (
                a > 1 < c and m > n + 1 and a * c - a != c and a != c and m % n == 0 and m != 2 * n
            )
        case Kind.TWO_LETTERS:  # axᵐy × cxyⁿ
            return 1 < a != c and a * c != a + c and m != n and m + n <= 9 and m * n > 8
        case Kind.NEGATIVE:  # xᵐ ÷ xⁿ with n above m
            return c == 2 and a == 2 and 1 < m < n - 1
    # 4, 8, 9, 25 or 27 times a power of 2, 3 or 5
    return c == 2 and n == 2 and a <= 6 and m not in (a,) and m >= 2


_UNLIKE = ((2, 2), (2, 3), (3, 2), (5, 2), (3, 3), (2, 4))
"""Bases with the index to which the first number of a product is raised: 8 is 2³."""


_NUMBERS = (Kind.TIMES, Kind.OVER, Kind.RAISED)


def _gone_wrong(kind: int, a: int, m: int, n: int, c: int = 2) -> tuple[kinds.WrongSolution, ...]:
    """Return how the laws of indices are used wrongly, line by line."""
    if m * n > 60:  # a power to the 77 is too large to be held against another
        return ()
    wrong, M, N = kinds.WrongSolution, t.Int(m), t.Int(n)
    numbers = kind in _NUMBERS
    lines: tuple[t.Node, ...]
    x: t.Node = t.Int(a) if numbers else t.Sym(by_turns(LETTERS, a + m + 2 * n + c))
    first, second = _power(x, m), _power(x, n)
    match kind:
        case Kind.TIMES | Kind.LETTER_TIMES:
            lines = (t.Power(x, t.times(M, N)), _power(x, m * n))
            found = (wrong(mistakes.MULTIPLIES_INDICES, lines),)
            if kind == Kind.LETTER_TIMES:
                return found
            both = (t.Power(t.Int(a * a), t.add(M, N)), _power(t.Int(a * a), m + n))
            bases = wrong(mistakes.MULTIPLIES_BASES, both)
            return (*found, bases)
        case Kind.OVER | Kind.LETTER_OVER:
            lines = (t.Power(x, t.divide(M, N)), _power(x, m // n))
            return (wrong(mistakes.DIVIDES_INDICES, lines),)
        case Kind.RAISED | Kind.LETTER_RAISED:
            return (wrong(mistakes.ADDS_INDICES, (t.Power(x, t.add(M, N)), _power(x, m + n))),)
        case Kind.THREE:
            lines = (t.Power(x, t.Sum(M, (("+", t.Int(0)), ("+", N)))), _power(x, m + n))
            return (wrong(mistakes.NO_INDEX, lines),)
        case Kind.FRONT:
            added = (t.times(t.Int(a + c), first, second), _term(a + c, _power(x, m + n)))
            times = (_term(a * c, t.Power(x, t.times(M, N))), _term(a * c, _power(x, m * n)))
            return (
                wrong(mistakes.ADDS_FRONT, added),
                wrong(mistakes.MULTIPLIES_INDICES, times),
            )
        case Kind.BAR:
            lines = (t.Frac(_power(x, m * n), _power(x, c)), _power(x, m * n - c))
            return (wrong(mistakes.MULTIPLIES_INDICES, lines),)
        case Kind.FRONT_RAISED:
            raised = t.Power(t.Bracket(first), N)
            kept = (t.times(t.Int(a), raised), _term(a, _power(x, m * n)))
            return (
                wrong(mistakes.FRONT_NOT_RAISED, kept),
                wrong(
                    mistakes.FRONT_TIMES,
                    (t.times(t.Int(a * n), raised), _term(a * n, _power(x, m * n))),
                ),
            )
        case Kind.FRONT_OVER:
            less = a * c - a
            lines = (t.times(t.Int(less), t.Frac(first, second)), _term(less, _power(x, m - n)))
            return (wrong(mistakes.SUBTRACTS_FRONT, lines),)
        case Kind.NEGATIVE:
            return (wrong(mistakes.SIGN_LOST, (t.Power(x, t.sub(N, M)), _power(x, n - m))),)
    return ()


# With 0 for a letter below the line there is no quotient, so that nothing holds for every number.
_WHOLE = (
    Kind.TIMES,
    Kind.OVER,
    Kind.RAISED,
    Kind.LETTER_TIMES,
    Kind.THREE,
    Kind.LETTER_RAISED,
    Kind.FRONT,
    Kind.FRONT_RAISED,
    Kind.TWO_LETTERS,
)


def _others(space: Space) -> Space:
    """Return a tier with statements and wrong solutions at its end."""

    def plain(kind: int, a: int, m: int, n: int, c: int = 2) -> bool:
        # 2 to the power 256 is a wrong answer that nobody can hold against another.
        raised = kind in (Kind.RAISED, Kind.LETTER_RAISED)
        return kind in _WHOLE and m * n <= 60 and (not raised or m**n <= 60)

    def letters(kind: int, *of: int) -> tuple[kinds.WrongSolution, ...]:
        # A power of a number is worked out, or it is one power: the answer is not one thing.
        return () if kind in (*_NUMBERS, Kind.NEGATIVE) else _gone_wrong(kind, *of)

    claims = kinds.with_claims(space, only=plain)
    return kinds.with_odd_lines(kinds.with_mistakes(claims, letters), _gone_wrong)


@register
class IndexLaws(Topic):
    """Products, quotients and powers of powers; then letters with numbers in front."""

    id = "number.index-laws"
    title = "Laws of indices"
    statements = ("number.powers-roots", "algebra.notation")
    prerequisites = ("number.powers-and-roots",)
    misconceptions = (
        mistakes.MULTIPLIES_INDICES,
        mistakes.MULTIPLIES_BASES,
        mistakes.DIVIDES_INDICES,
        mistakes.BASES_CANCEL,
        mistakes.ADDS_OVER,
        mistakes.ADDS_INDICES,
        mistakes.RAISES_INDEX,
        mistakes.NO_INDEX,
        mistakes.ADDS_FRONT,
        mistakes.SUBTRACTS_FRONT,
        mistakes.FRONT_NOT_RAISED,
        mistakes.FRONT_TIMES,
        mistakes.FIRST_TWO,
        mistakes.SIGN_LOST,
        mistakes.NOT_CHANGED,
    )
    spaces = {
        Tier.SUPPORT: _others(
            Space(
                _support, kind=tuple(Kind)[:4], a=(2, 3, 5, 6, 7, 8), m=range(2, 13), n=range(2, 8)
            )
        ),
        Tier.CORE: _others(
            Space(
                _core,
                kind=tuple(Kind)[4:9],
                a=range(2, 8),
                m=range(2, 13),
                n=range(2, 8),
                c=range(2, 8),
            )
        ),
        Tier.CHALLENGE: _others(
            Space(
                _challenge,
                kind=tuple(Kind)[9:],
                a=range(1, 8),
                m=range(2, 13),
                n=range(2, 9),
                c=range(2, 8),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, m, n, c = (*values, 2)[:5]
        twin = (int(kind), a, m, n, c)
        match kind:
            case Kind.TIMES | Kind.OVER | Kind.RAISED:
                return _numbers(kind, a, m, n, twin)
            case Kind.UNLIKE:
                return _unlike(*_UNLIKE[a - 1], m, twin)
        return _letters(kind, a, m, n, c, twin)


ADD = "To multiply powers of the same base, add the indices."
SUBTRACT = "To divide powers of the same base, subtract the indices."
MULTIPLY = "To raise a power to a power, multiply the indices."


def _power(base: t.Node, n: int) -> t.Node:
    if n == 1:
        return base
    return t.Power(base, t.num(n))


def _numbers(kind: int, a: int, m: int, n: int, twin: tuple[object, ...]) -> Draft:
    base = t.Int(a)
    first, second = _power(base, m), _power(base, n)
    match kind:
        case Kind.TIMES:
            asked: t.Node = t.times(first, second)
            say, join, found = ADD, t.add(t.Int(m), t.Int(n)), m + n
            wrong: tuple[Wrong, ...] = (
                (mistakes.MULTIPLIES_INDICES, _power(base, m * n)),
                (mistakes.MULTIPLIES_BASES, _power(t.Int(a * a), m + n)),
            )
        case Kind.OVER:
            asked = t.divide(first, second)
            say, join, found = SUBTRACT, t.sub(t.Int(m), t.Int(n)), m - n
            wrong = (
                (mistakes.DIVIDES_INDICES, _power(base, m // n)),
                (mistakes.BASES_CANCEL, _power(t.Int(1), m - n)),
            )
        case _:
            asked = t.Power(t.Bracket(first), t.Int(n))
            say, join, found = MULTIPLY, t.times(t.Int(m), t.Int(n)), m * n
            wrong = (
                (mistakes.ADDS_INDICES, _power(base, m + n)),
                (mistakes.RAISES_INDEX, _power(base, m**n)),
            )
    key = _power(base, found)
    steps = worked(asked, (say, t.Power(base, join)), ("Work out the index.", key))
    text = prompt("Write {e} as a single power of {a}.", e=asked, a=base)
    return Draft(text, Find(asked), key, "power", steps, slips(*wrong), twin)


def _unlike(base: int, index: int, m: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a number that is a power itself, times a power, as one power."""
    node = t.Int(base)
    number, other = t.Int(base**index), _power(node, m)
    asked = t.times(number, other)
    key = _power(node, index + m)
    steps = worked(
        asked,
        (f"Write {base**index} as a power of {base}.", t.times(_power(node, index), other)),
        (ADD, key),
    )
    wrong = slips(
        (mistakes.NOT_CHANGED, _power(t.Int(base**index * base), m)),
        (mistakes.MULTIPLIES_INDICES, _power(node, index * m) if index * m != index + m else None),
        (mistakes.NO_INDEX, _power(node, m + 1)),
    )
    text = prompt("Write {e} as a single power of {a}.", e=asked, a=node)
    return Draft(text, Find(asked), key, "power", steps, wrong, twin)


def _term(front: int, *powers: t.Node) -> t.Node:
    return t.juxt(t.Int(front), *powers)


def _letters(kind: int, a: int, m: int, n: int, c: int, twin: tuple[object, ...]) -> Draft:
    x = t.Sym(by_turns(LETTERS, a + m + 2 * n + c))
    first, second = _power(x, m), _power(x, n)
    wrong: tuple[Wrong, ...]
    match kind:
        case Kind.LETTER_TIMES:
            asked: t.Node = t.times(first, second)
            lines = [(ADD, _power(x, m + n))]
            wrong = (
                (mistakes.MULTIPLIES_INDICES, _power(x, m * n)),
                (mistakes.ADDS_FRONT, _term(2, _power(x, m + n))),
            )
        case Kind.THREE:
            asked = t.times(first, x, second)
            lines = [
                (
                    f"{x.name} by itself is {x.name} to the power 1.",
                    t.times(_power(x, m + 1), second),
                ),
                (ADD, _power(x, m + n + 1)),
            ]
            wrong = (
                (mistakes.NO_INDEX, _power(x, m + n)),
                (mistakes.MULTIPLIES_INDICES, _power(x, m * n)),
            )
        case Kind.LETTER_OVER:
            asked = t.Frac(first, second)
            lines = [(SUBTRACT, _power(x, m - n))]
            wrong = (
                (mistakes.DIVIDES_INDICES, _power(x, m // n)),
                (mistakes.ADDS_OVER, _power(x, m + n)),
            )
        case Kind.LETTER_RAISED:
            asked = t.Power(t.Bracket(first), t.Int(n))
            lines = [(MULTIPLY, _power(x, m * n))]
            wrong = (
                (mistakes.ADDS_INDICES, _power(x, m + n)),
                (mistakes.RAISES_INDEX, _power(x, m**n)),
            )
        case Kind.FRONT:
            asked = t.times(_term(a, first), _term(c, second))
            lines = [
                (
                    "Multiply the numbers in front and the powers.",
                    t.times(t.Int(a * c), first, second),
                ),
                (ADD, _term(a * c, _power(x, m + n))),
            ]
            wrong = (
                (mistakes.ADDS_FRONT, _term(a + c, _power(x, m + n))),
                (mistakes.MULTIPLIES_INDICES, _term(a * c, _power(x, m * n))),
            )
        case Kind.BAR:
            asked = t.Frac(t.times(first, second), _power(x, c))
            lines = [
                (ADD, t.Frac(_power(x, m + n), _power(x, c))),
                (SUBTRACT, _power(x, m + n - c)),
            ]
            wrong = (
                (mistakes.FIRST_TWO, _power(x, m + n)),
                (mistakes.MULTIPLIES_INDICES, _power(x, m * n - c)),
            )
        case Kind.FRONT_RAISED:
            asked = t.Power(t.Bracket(_term(a, first)), t.Int(n))
            raised = t.Power(t.Int(a), t.Int(n))
            lines = [
                (
                    "Raise the number in front and the power.",
                    t.times(raised, t.Power(t.Bracket(first), t.Int(n))),
                ),
                (MULTIPLY, t.times(raised, _power(x, m * n))),
                ("Work out the number in front.", _term(a**n, _power(x, m * n))),
            ]
            wrong = (
                (mistakes.FRONT_NOT_RAISED, _term(a, _power(x, m * n))),
                (mistakes.FRONT_TIMES, _term(a * n, _power(x, m * n))),
            )
        case Kind.FRONT_OVER:
            asked = t.Frac(_term(a * c, first), _term(a, second))
            lines = [
                ("Divide the numbers in front.", t.times(t.Int(c), t.Frac(first, second))),
                (SUBTRACT, _term(c, _power(x, m - n))),
            ]
            wrong = (
                (mistakes.SUBTRACTS_FRONT, _term(a * c - a, _power(x, m - n))),
                (mistakes.DIVIDES_INDICES, _term(c, _power(x, m // n))),
            )
        case Kind.TWO_LETTERS:
            y = t.Sym(by_turns(LETTERS, a + m + 2 * n + c + 3))
            first_y, second_y = y, _power(y, n)
            letters = sorted((x, y), key=lambda letter: letter.name)

            def product(number: int, of_x: int, of_y: int) -> t.Node:
                powers = {x: _power(x, of_x), y: _power(y, of_y)}
                return _term(number, *(powers[letter] for letter in letters))

            asked = t.times(product(a, m, 1), product(c, 1, n))
            lines = [
                (
                    "Multiply the numbers in front.",
                    t.times(t.Int(a * c), first, x, first_y, second_y),
                ),
                (
                    f"Add the indices of {x.name}.",
                    t.times(t.Int(a * c), _power(x, m + 1), first_y, second_y),
                ),
                (f"Add the indices of {y.name}.", product(a * c, m + 1, n + 1)),
            ]
            wrong = (
                (mistakes.NO_INDEX, product(a * c, m, n)),
                (mistakes.ADDS_FRONT, product(a + c, m + 1, n + 1)),
            )
        case _:
            asked = t.divide(first, second)
            lines = [
                (SUBTRACT, t.Power(x, t.sub(t.Int(m), t.Int(n)))),
                ("Work out the index.", _power(x, m - n)),
            ]
            wrong = ((mistakes.SIGN_LOST, _power(x, n - m)), (mistakes.ADDS_OVER, _power(x, m + n)))
    key = lines[-1][1]
    steps = worked(asked, *lines)
    if kind == Kind.NEGATIVE:
        text = prompt("Write {e} as a single power of {a}.", e=asked, a=x)
        return Draft(text, Find(asked), key, "power", steps, slips(*wrong), twin)
    return Draft(
        prompt("Simplify {e}.", e=asked),
        Rewrite(asked, "simplify"),
        key,
        "simplified",
        steps,
        slips(*wrong),
        twin,
    )
