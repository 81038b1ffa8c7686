"""Which calculations are estimated, by the right way and by the wrong ones."""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction

from generators.number._estimate_mistakes import (
    CUTS_OFF,
    DIVIDES_SMALLER,
    DROPS_NOUGHTS,
    EXACT,
    HALVES_FOR_ROOT,
    NOT_SQUARED,
    ONE_ONLY,
    STOPS,
    TO_WHOLE,
)
from generators.number._rounding import Number, rounded
from itembank.items.item import Misconception


class Kind(IntEnum):
    """What is estimated."""

    TIMES, OVER = range(2)
    BELOW_ONE, COST, SMALL_TIMES, ROOT = range(2, 6)
    BAR, BAR_BELOW_ONE, SQUARE = range(6, 9)


# As they are printed, in hundredths: tens and hundreds, ones, and numbers below 1.
TENS = (1980, 3120, 4870, 5230, 6150, 7890, 8240, 1160, 2830, 3910, 20300, 29700, 41200, 58800)


LARGE = (*TENS, 7210, 34600, 61700, 18900)


ONES = (390, 410, 520, 680, 213, 821, 287, 584, 770, 612)


SMALL = (52, 48, 19, 21, 39, 41, 53, 18)


def number_of(hundredths: int) -> Number:
    """Return a number without noughts at its end."""
    places = 2
    while places and hundredths % 10 == 0:
        hundredths, places = hundredths // 10, places - 1
    return Number(hundredths, places)


def rough(hundredths: int) -> Number:
    """Return a number to 1 significant figure."""
    number = number_of(hundredths)
    first = number.places - len(str(number.units)) + 1
    return rounded(number, first)


def _cut(hundredths: int) -> Fraction:
    number = number_of(hundredths)
    first = number.places - len(str(number.units)) + 1
    return Number(number.units // 10 ** (number.places - first), first).value


def worth_of(kind: int, a: Fraction, b: Fraction, c: Fraction) -> Fraction:
    """Return what a calculation comes to."""
    match kind:
        case Kind.TIMES | Kind.COST | Kind.SMALL_TIMES:
            return a * b
        case Kind.OVER | Kind.BELOW_ONE:
            return a / b
        case Kind.BAR | Kind.BAR_BELOW_ONE:
            return a * b / c
        case Kind.SQUARE:
            return a * a / b
    return b * c  # the root of the first number is c


def answers_of(
    kind: int, a: int, b: int, c: int
) -> tuple[Fraction, list[tuple[Misconception, Fraction]]]:
    """Return the estimate, and what the mistakes come to."""
    x, y, z = (rough(n).value if n else Fraction(0) for n in (a, b, c))
    key = worth_of(kind, x, y, z)
    wrong: list[tuple[Misconception, Fraction]] = []
    dropped = [Fraction(rough(n).units) if n else Fraction(0) for n in (a, b, c)]
    match kind:
        case Kind.ROOT:
            root = Fraction(int(float(x) ** 0.5 + 0.5))
            key = root * y
            wrong += [(HALVES_FOR_ROOT, x / 2 * y), (ONE_ONLY, root * Fraction(b, 100))]
            return key, wrong
        case Kind.SQUARE:
            wrong += [(NOT_SQUARED, 2 * x / y), (CUTS_OFF, worth_of(kind, _cut(a), _cut(b), z))]
        case Kind.BELOW_ONE | Kind.BAR_BELOW_ONE:
            small = y if kind == Kind.BELOW_ONE else z
            wrong.append((DIVIDES_SMALLER, key * small * small))
            if small >= Fraction(1, 2):  # 0.52 is taken for 1; 0.48 would be taken for 0
                wrong.append((TO_WHOLE, key * small))
            wrong.append((CUTS_OFF, worth_of(kind, *(_cut(n) if n else z for n in (a, b, c)))))
            wrong.append((DROPS_NOUGHTS, worth_of(kind, *dropped)))
        case Kind.SMALL_TIMES:
            wrong += [(TO_WHOLE, x), (EXACT, Fraction(a * b, 10_000))]
        case Kind.BAR:
            wrong += [(STOPS, x * y), (DROPS_NOUGHTS, worth_of(kind, *dropped))]
        case _:
            wrong += [
                (DROPS_NOUGHTS, worth_of(kind, *dropped)),
                (CUTS_OFF, worth_of(kind, _cut(a), _cut(b), z)),
            ]
            if kind != Kind.OVER:
                wrong.append((EXACT, Fraction(a * b, 10_000)))
    seen, kept = {key}, []
    for mistake, value in wrong:
        if value not in seen:
            seen.add(value)
            kept.append((mistake, value))
    return key, kept


def _good(kind: int, a: int, b: int, c: int = 0) -> bool:
    key, wrong = answers_of(kind, a, b, c)
    return key.denominator == 1 and key > 1 and len(wrong) >= 2


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep products, and quotients that come out whole."""
    return b in ONES and a in LARGE and _good(kind, a, b)


def core_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep three numbers, numbers below 1, and what many things cost."""
    match kind:
        case Kind.ROOT:
            near = a in NEAR and c == 390
            return near and b in (*LARGE, *ONES) and _good(kind, a, b)
        case Kind.BELOW_ONE | Kind.SMALL_TIMES:
            return a in LARGE and b in (51, 52, 53, 54) and c == 390 and _good(kind, a, b)
    whole = a in (1900, 2100, 2800, 3200, 3800, 4200, 4800, 5300, 6100, 7900, 8200)
    return whole and b in ONES and b < 1000 and c == 390 and _good(kind, a, b)


def challenge_fits(kind: int, a: int, b: int, c: int) -> bool:
    """Keep division by a number below 1, squares over a number, and roots."""
    match kind:
        case Kind.BAR_BELOW_ONE:
            return a in LARGE and b in ONES and c in SMALL and _good(kind, a, b, c)
        case Kind.SQUARE:
            return c == 52 and a in LARGE and a < 10000 and b in ONES and _good(kind, a, b)
    return a in LARGE and b in TENS and a > b and c in ONES and _good(kind, a, b, c)


NEAR = (9700, 10400, 38500, 41300, 870, 910)
"""Numbers that round to 100, 400 and 9, in hundredths."""
