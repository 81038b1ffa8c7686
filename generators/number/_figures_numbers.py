"""Which numbers are rounded to significant figures, and what the mistakes give."""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction
from math import gcd

from generators.number import _rounding as r
from generators.number._rounding import Number, rounded


class Kind(IntEnum):
    """What is rounded, and to how many figures."""

    LARGE, MIXED, SMALL, TWO = range(4)
    INNER, SMALL_TWO, CARRIED, STORY = range(4, 8)
    FRACTION, PRODUCT, NINES = range(8, 11)


def number_of(kind: int, a: int, b: int) -> tuple[Number, int]:
    """Return the number, and how many figures are asked for."""
    match kind:
        case Kind.LARGE:
            return Number(a * 10 + b, 0), 1
        case Kind.MIXED:
            return Number(a * 10 + b, 2), 1
        case Kind.SMALL:
            return Number(a, 4 if b % 2 else 5), 1
        case Kind.TWO:
            return Number(a * 10 + b, 0), 2
        case Kind.INNER:
            # Digits with a nought between: a 0 b, in hundredths or thousandths.
            return Number(a // 10 * 1000 + a % 10 * 10 + b, 2 if b % 2 else 3), 3
        case Kind.SMALL_TWO:
            return Number(a * 10 + b, 5 if b % 2 else 6), 2
        case Kind.CARRIED:
            # Two figures, then a 9 and what takes it up: 29.97 to 3 figures.
            return Number(a * 100 + 90 + b, 2 if b % 2 else 3), 3
        case Kind.STORY:
            return Number(a * 1000 + b * 100 + a % 97, 0), 2 if b % 2 else 1
    return Number(9900 + a, 2 if b % 2 else 4), 2


def first_place(number: Number) -> int:
    """Return the decimal place of the first figure: 0 for ones, 1 for tenths, −1 for tens."""
    return number.places - len(str(number.units)) + 1


def place_of(number: Number, figures: int) -> int:
    """Return the place of the last of so many significant figures."""
    return first_place(number) + figures - 1


def rounded_to(number: Number, figures: int) -> Number:
    """Return a number rounded, with the places that its figures need: 99.6 to two is 100."""
    found = rounded(number, place_of(number, figures))
    return rounded(found, place_of(found, figures))


def mistakes_of(number: Number, figures: int) -> list[r.Wrong]:
    """Return what the mistakes make of a number that is rounded."""
    key, place = rounded_to(number, figures), place_of(number, figures)
    first = first_place(number)
    digits = str(number.units)
    wrong = []
    if place < 0:
        wrong.append((r.DROPS_NOUGHTS, Number(key.units, 0)))
    if first > 0:
        # 0.0382 with the nought before the point as its first figure
        wrong.append((r.LEADING_NOUGHTS, rounded(number, figures - 1)))
    wrong += r.basic_mistakes(number, place, number.places)[:2]
    if first >= 0:
        wrong.append((r.COUNTS_PLACES, rounded(number, min(figures, number.places))))
    elif number.places:
        wrong.append((r.WRONG_PLACE, rounded(number, 0)))
    if "0" in digits[:figures]:
        wrong.append((r.SKIPS_NOUGHTS, rounded(number, min(place + 1, number.places))))
    if place > 0 and digits[figures - 1] == "9" and key.value > r.cut(number, place).value:
        low = r.cut(number, place)
        wrong.append((r.NO_CARRY, Number(low.units // 10 * 100 + 10, place + 1)))
    return r.told_apart(key, wrong)


def _plain(kind: int, a: int, b: int) -> bool:
    number, figures = number_of(kind, a, b)
    return (
        number.units % 10 != 0
        and len(str(number.units)) > figures
        and len(mistakes_of(number, figures)) >= 2
    )


def support_fits(kind: int, a: int, b: int) -> bool:
    """Keep numbers of two to four figures."""
    match kind:
        case Kind.LARGE:
            suits = a >= 110 and a % 2 == 1 and a // 10 % 10 != 9
        case Kind.MIXED:
            suits = a >= 110 and a % 2 == 0 and a // 100 != 9
        case Kind.SMALL:
            suits = b <= 2 and a // 10 % 10 != 9
            return suits and _plain(kind, a, b)
        case _:
            suits = a >= 110 and a % 10 != 9
    return suits and a % 7 == b % 7 and _plain(kind, a, b)


def core_fits(kind: int, a: int, b: int) -> bool:
    """Keep noughts inside and in front, numbers that carry, and large numbers in stories."""
    match kind:
        case Kind.INNER:
            suits = a < 100 and a % 10 != 0
        case Kind.SMALL_TWO:
            suits = a < 100 or a % 100 // 10 == 0
        case Kind.CARRIED:
            suits = a < 100 and a % 10 != 0 and b >= 5
        case _:
            suits = a >= 110 and a % 3 == 0 and b != 9
    return suits and _plain(kind, a, b)


def challenge_fits(kind: int, a: int, b: int) -> bool:
    """Keep fractions as decimals, products that are rounded, and numbers of nines."""
    match kind:
        case Kind.FRACTION:
            good = b in (3, 6, 7, 9, 11, 12, 13, 17, 19, 23) and a < b and gcd(a, b) == 1
            return good and len(fraction_wrong(a, b)) >= 2
        case Kind.PRODUCT:
            good = a >= 12 and b >= 12 and a % 10 != 0 != b % 10 and a <= 99
            return good and len(product_wrong(a, b)) >= 2
    return 50 <= a < 99 and a % 10 != 0 and b <= 2 and _plain(kind, a, b)


def quotient_of(a: int, b: int, figures: int) -> Number:
    """Return a / b rounded to so many significant figures."""
    exact, first = Fraction(a, b), 0
    while exact * 10**first < 1:
        first += 1
    place = first + figures - 1
    found = Number(int(exact * 10**place + Fraction(1, 2)), place)
    return rounded(found, place_of(found, figures))


def fraction_wrong(a: int, b: int) -> list[r.Wrong]:
    """Return what the mistakes make of a fraction that is rounded."""
    key = quotient_of(a, b, 2)
    low = Number(int(Fraction(a, b) * 10**key.places), key.places)
    tenths = Number(int(Fraction(a, b) * 10 + Fraction(1, 2)), 1)
    return r.told_apart(
        key,
        [
            (r.CUTS_OFF, low) if key != low else (r.ALWAYS_UP, Number(low.units + 1, key.places)),
            (r.OTHER_WAY, rounded(Number(int(Fraction(b, a) * 1000), 3), 1)),
            (r.LEADING_NOUGHTS, tenths),
        ],
    )


def product_of(a: int, b: int) -> Number:
    """Return a tenths times b ten-thousandths: 4.5 × 0.0203, in units of the last place."""
    return Number(a * b, 5)


def product_wrong(a: int, b: int) -> list[r.Wrong]:
    """Return what the mistakes make of a product that is rounded."""
    exact = product_of(a, b)
    if len(str(exact.units)) < 4:
        return []
    key, place = rounded_to(exact, 2), place_of(exact, 2)
    early = Number(rounded_to(Number(a, 1), 1).units * rounded_to(Number(b, 4), 1).units, 0)
    shift = rounded_to(Number(a, 1), 1).places + rounded_to(Number(b, 4), 1).places
    return r.told_apart(
        key,
        [
            (r.TOO_EARLY, Number(early.units, shift)),
            *r.basic_mistakes(exact, place, exact.places)[:1],
            (r.COUNTS_PLACES, rounded(exact, 2)),
        ],
    )
