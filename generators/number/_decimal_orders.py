"""Decimals to be put in order, and the wrong methods that order them otherwise."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from enum import IntEnum
from typing import NamedTuple

from generators.number import _decimal_order_mistakes as m
from generators.number._writing import apart, decimal
from itembank.items.item import Misconception
from itembank.notation import tree as t


class Kind(IntEnum):
    """What is asked about decimals."""

    THREE, SIGN, LINE, DIGIT = range(4)
    FOUR, NEGATIVES, FINE_LINE, STORY, HALFWAY = range(4, 9)
    BETWEEN, NEGATIVE_LINE, FIVE = range(9, 12)


class Decimal(NamedTuple):
    """A decimal as so many units of its last place; all are compared in thousandths."""

    units: int
    places: int

    @property
    def size(self) -> int:
        """Return the number in thousandths."""
        return self.units * (1000, 100, 10, 1)[self.places]

    @property
    def node(self) -> t.Node:
        """Return the number as a tree."""
        return decimal(self.units, self.places)


# What the wrong methods compare.
def _as_whole(number: Decimal) -> tuple[int, ...]:
    return divmod(number.units, (1, 10, 100, 1000)[number.places])


def _by_length(number: Decimal) -> tuple[int, ...]:
    return (number.units // 10**number.places, -number.places, number.units)


def _by_size_alone(number: Decimal) -> tuple[int, ...]:
    return (abs(number.size),)


def _negatives_turned(number: Decimal) -> tuple[int, ...]:
    return (number.units >= 0, abs(number.size))


Method = Callable[[Decimal], tuple[int, ...]]


def in_order(things: Sequence[Decimal], method: Method) -> list[Decimal]:
    """Return decimals in the order that a method, right or wrong, puts them in."""
    return sorted(things, key=method)


def by_size(number: Decimal) -> tuple[int, ...]:
    """Compare decimals by what they are worth, as is right."""
    return (number.size,)


WRONG: dict[int, tuple[tuple[Misconception, Method], ...]] = {
    Kind.THREE: ((m.LONGER, _as_whole), (m.SHORTER, _by_length)),
    Kind.FOUR: ((m.LONGER, _as_whole), (m.SHORTER, _by_length)),
    Kind.STORY: ((m.LONGER, _as_whole), (m.SHORTER, _by_length)),
    Kind.NEGATIVES: ((m.IGNORES_SIGNS, _by_size_alone), (m.NEGATIVES_TURNED, _negatives_turned)),
    Kind.FIVE: ((m.IGNORES_SIGNS, _by_size_alone), (m.NEGATIVES_TURNED, _negatives_turned)),
}


# Orders in which things are printed; one that would be right is turned round.
TURNS: dict[int, tuple[tuple[int, ...], ...]] = {
    3: ((0, 2, 1), (1, 0, 2), (1, 2, 0), (2, 0, 1)),
    4: ((1, 3, 0, 2), (2, 0, 3, 1), (3, 1, 2, 0), (0, 2, 1, 3), (2, 3, 1, 0)),
    5: ((1, 3, 0, 4, 2), (2, 0, 4, 3, 1), (4, 1, 3, 2, 0), (3, 4, 0, 2, 1)),
}


def things_of(kind: int, w: int, p: int, q: int, r: int) -> tuple[Decimal, ...]:
    """Return the decimals of a list to be put in order; w is whole, the others are digits."""
    match kind:
        case Kind.THREE:
            if r % 2:
                return (
                    Decimal(10 * w + p, 1),
                    Decimal(100 * w + 10 * q + r, 2),
                    Decimal(10 * w + (p + q) // 2, 1),
                )
            return (
                Decimal(10 * w + p, 1),
                Decimal(100 * w + q, 2),
                Decimal(100 * w + 10 * p + r, 2),
            )
        case Kind.FOUR:
            return (
                Decimal(100 * w + p, 2),
                Decimal(10 * w + q, 1),
                Decimal(1000 * w + 10 * p + r, 3),
                Decimal(100 * w + 10 * q + r, 2),
            )
        case Kind.STORY:
            return (
                Decimal(10 * w + p, 1),
                Decimal(100 * w + q, 2),
                Decimal(100 * w + 10 * p + r, 2),
                Decimal(100 * w + 10 * (p - 1) + q, 2),
            )
        case Kind.NEGATIVES:
            return (
                Decimal(-10 * w - p, 1),
                Decimal(-100 * w - 10 * q - r, 2),
                Decimal(10 * w + r, 1),
                Decimal(-10 * w - q, 1),
            )
    return (
        Decimal(-10 * w - p, 1),
        Decimal(-100 * w - p, 2),
        Decimal(100 * w + q, 2),
        Decimal(-100 * w - 10 * p - r, 2),
        Decimal(10 * w + q, 1),
    )


def listed_fit(kind: int, w: int, p: int, q: int, r: int) -> bool:
    """Keep lists of different numbers that the wrong methods put in other, different orders."""
    if not apart(p, q, r):
        return False
    things = things_of(kind, w, p, q, r)
    if len({thing.size for thing in things}) < len(things):
        return False
    orders = [in_order(things, by_size)]
    orders += [in_order(things, method) for _, method in WRONG[kind]]
    return apart(*map(tuple, orders))
