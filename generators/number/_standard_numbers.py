"""Which numbers are asked for in standard form, and which are put in order."""

from __future__ import annotations

from enum import IntEnum

from generators.number._standard import Standard
from generators.number._writing import apart


class Kind(IntEnum):
    """What is changed into what."""

    TO_LARGE, FROM_LARGE, TO_SMALL, FROM_SMALL = range(4)
    TO_LONG, FROM_LONG, FACT, THREE = range(4, 8)
    PUT_RIGHT, FRACTION, FOUR = range(8, 11)


# What is so large or so small: the words, the digits and the power of ten.
FACTS = (
    ("The distance from the Earth to the Moon is about {n} kilometres.", 384, 3),
    ("The distance from the Earth to the Sun is about {n} kilometres.", 15, 7),
    ("The distance round the Earth is about {n} kilometres.", 4, 4),
    ("Light travels about {n} metres in a second.", 3, 8),
    ("About {n} people live in the United Kingdom.", 69, 6),
    ("There are about {n} seconds in a year.", 315, 5),
    ("A human body has about {n} cells.", 3, 13),
    ("A red blood cell is about {n} metres across.", 8, -6),
    ("A grain of pollen is about {n} metres across.", 3, -5),
    ("A human hair is about {n} metres thick.", 7, -5),
    ("A sheet of paper is about {n} metres thick.", 1, -4),
    ("A grain of rice has a mass of about {n} kilograms.", 25, -6),
    ("A bacterium is about {n} metres long.", 2, -6),
    ("The mass of a honey bee is about {n} kilograms.", 1, -4),
    ("The diameter of the Sun is about {n} kilometres.", 139, 4),
    ("The oldest rocks of the Earth are about {n} years old.", 4, 9),
    ("The dinosaurs died out about {n} years ago.", 66, 6),
    ("The distance from the Sun to Neptune is about {n} kilometres.", 45, 8),
)


def digits_of(a: int, b: int) -> int:
    """Return the digits of the first number as a whole number."""
    return a * 10 + b if b else a


def support_fits(kind: int, a: int, b: int, n: int) -> bool:
    """Keep one or two figures and short indices."""
    if kind in (Kind.TO_LARGE, Kind.FROM_LARGE):
        return 3 <= n <= 7 and b > 0
    return -6 <= n <= -3


def core_fits(kind: int, a: int, b: int, n: int) -> bool:
    """Keep three figures and more, real sizes, and three numbers to be put in order."""
    match kind:
        case Kind.TO_LONG:
            return b % 10 != 0 and (5 <= n <= 8 or -6 <= n <= -2)
        case Kind.FROM_LONG:
            return b % 10 != 0 and (4 <= n <= 7 or -5 <= n <= -2)
        case Kind.FACT:
            return a < 3 and b == 12 and n < len(FACTS) and (a < 2 or n >= 0) and a > 0 and n >= 0
    return b < 40 and -5 <= n <= -3 and _order_tells(three_numbers(a, b, n))


def challenge_fits(kind: int, a: int, b: int, n: int) -> bool:
    """Keep numbers to be put right, fractions, and four numbers in different forms."""
    match kind:
        case Kind.PUT_RIGHT:
            # ab × 10ⁿ or 0.ab × 10ⁿ
            return b % 10 != 0 and n not in (-1, 0, 1, 2) and -7 <= n <= 8
        case Kind.FRACTION:
            return b in (12, 13, 15, 16) and 2 <= n <= 5 and a != 5
    return b < 60 and b % 10 != 0 and -4 <= n <= -2 and _order_tells(four_numbers(a, b, n))


def three_numbers(a: int, b: int, n: int) -> tuple[Standard, ...]:
    """Return three numbers close together, to be put in order."""
    c = b // 10
    return (
        Standard(10 * a + b % 10, 1, n),
        Standard(10 * c + 5, 1, n - 1),
        Standard(10 * (c + 2) + b % 10, 1, n + 1 if n % 2 else n - 2),
    )


def four_numbers(a: int, b: int, n: int) -> tuple[Standard, ...]:
    """Return four numbers close together, to be put in order."""
    c = b // 10
    return (
        Standard(10 * a + b % 10, 1, n),
        Standard(10 * c + 9, 1, n - 1),
        Standard(c * 10, 0, n - 1),
        Standard(a, -n - 1, 0),
    )


def _as_seen(number: Standard) -> tuple[float, ...]:
    return (number.digits * 10 ** (3 - number.places), -number.power)


def _without_minus(number: Standard) -> tuple[float, ...]:
    return (abs(number.power), number.digits * 10 ** (3 - number.places))


def orders_of(things: tuple[Standard, ...]) -> list[tuple[Standard, ...]]:
    """Return numbers in the right order, and in those of the mistakes."""
    return [
        tuple(sorted(things, key=lambda thing: thing.size)),
        tuple(sorted(things, key=_as_seen)),
        tuple(sorted(things, key=_without_minus)),
    ]


def _order_tells(things: tuple[Standard, ...]) -> bool:
    if not apart(*(thing.size for thing in things)) or not apart(*map(_as_seen, things)):
        return False
    if not apart(*map(_without_minus, things)):
        return False
    return apart(*orders_of(things))
