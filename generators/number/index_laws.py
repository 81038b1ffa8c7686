"""Laws of indices: with numbers, with letters, with numbers in front, and several at once.

The programme of study for key stage 3 (England, 2013) asks pupils to "use integer powers" and, in
algebra, to use notation such as a² for a × a and a³ for a × a × a (from memory). The laws follow
from what a power means; simplifying with them is mostly met in year 9.
"""

from __future__ import annotations

from typing import Any

from generators.number import _index_mistakes as mistakes
from generators.number._index_letters import ADD, MULTIPLY, SUBTRACT, with_letters
from generators.number._index_numbers import UNLIKE, Kind, challenge_fits, core_fits, support_fits
from generators.number._index_wrong_lines import NUMBERS, gone_wrong, power_of
from generators.number._writing import worked
from itembank.items import kinds
from itembank.items.item import Draft, Find, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

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
        return () if kind in (*NUMBERS, Kind.NEGATIVE) else gone_wrong(kind, *of)

    claims = kinds.with_claims(space, only=plain)
    return kinds.with_odd_lines(kinds.with_mistakes(claims, letters), gone_wrong)


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
                support_fits,
                kind=tuple(Kind)[:4],
                a=(2, 3, 5, 6, 7, 8),
                m=range(2, 13),
                n=range(2, 8),
            )
        ),
        Tier.CORE: _others(
            Space(
                core_fits,
                kind=tuple(Kind)[4:9],
                a=range(2, 8),
                m=range(2, 13),
                n=range(2, 8),
                c=range(2, 8),
            )
        ),
        Tier.CHALLENGE: _others(
            Space(
                challenge_fits,
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
                return _unlike(*UNLIKE[a - 1], m, twin)
        return with_letters(kind, a, m, n, c, twin)


def _numbers(kind: int, a: int, m: int, n: int, twin: tuple[object, ...]) -> Draft:
    base = t.Int(a)
    first, second = power_of(base, m), power_of(base, n)
    match kind:
        case Kind.TIMES:
            asked: t.Node = t.times(first, second)
            say, join, found = ADD, t.add(t.Int(m), t.Int(n)), m + n
            wrong: tuple[Wrong, ...] = (
                (mistakes.MULTIPLIES_INDICES, power_of(base, m * n)),
                (mistakes.MULTIPLIES_BASES, power_of(t.Int(a * a), m + n)),
            )
        case Kind.OVER:
            asked = t.divide(first, second)
            say, join, found = SUBTRACT, t.sub(t.Int(m), t.Int(n)), m - n
            wrong = (
                (mistakes.DIVIDES_INDICES, power_of(base, m // n)),
                (mistakes.BASES_CANCEL, power_of(t.Int(1), m - n)),
            )
        case _:
            asked = t.Power(t.Bracket(first), t.Int(n))
            say, join, found = MULTIPLY, t.times(t.Int(m), t.Int(n)), m * n
            wrong = (
                (mistakes.ADDS_INDICES, power_of(base, m + n)),
                (mistakes.RAISES_INDEX, power_of(base, m**n)),
            )
    key = power_of(base, found)
    steps = worked(asked, (say, t.Power(base, join)), ("Work out the index.", key))
    text = prompt("Write {e} as a single power of {a}.", e=asked, a=base)
    return Draft(text, Find(asked), key, "power", steps, slips(*wrong), twin)


def _unlike(base: int, index: int, m: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a number that is a power itself, times a power, as one power."""
    node = t.Int(base)
    number, other = t.Int(base**index), power_of(node, m)
    asked = t.times(number, other)
    key = power_of(node, index + m)
    steps = worked(
        asked,
        (f"Write {base**index} as a power of {base}.", t.times(power_of(node, index), other)),
        (ADD, key),
    )
    wrong = slips(
        (mistakes.NOT_CHANGED, power_of(t.Int(base**index * base), m)),
        (
            mistakes.MULTIPLIES_INDICES,
            power_of(node, index * m) if index * m != index + m else None,
        ),
        (mistakes.NO_INDEX, power_of(node, m + 1)),
    )
    text = prompt("Write {e} as a single power of {a}.", e=asked, a=node)
    return Draft(text, Find(asked), key, "power", steps, wrong, twin)
