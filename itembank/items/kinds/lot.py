"""Chance that is the same every time: what varies from question to question without an axis."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar
from zlib import crc32

Thing = TypeVar("Thing")


def lot(count: int, *values: object) -> int:
    """Return a number from 0 to before `count`, drawn by the values and by nothing else.

    An address names its question for ever, so that this may never be drawn in another way.

    >>> [lot(4, a, 7) for a in range(8)] == [lot(4, (a, 7)) for a in range(8)]
    True
    >>> {lot(3, n) for n in range(20)}
    {0, 1, 2}
    """
    return crc32(",".join(_texts(values)).encode()) % count


def _texts(values: Sequence[object]) -> list[str]:
    texts: list[str] = []
    for value in values:
        texts += _texts(value) if isinstance(value, tuple) else [str(value)]
    return texts


def shuffled(things: Sequence[Thing], *values: object) -> list[Thing]:
    """Return things in an order drawn by lot.

    >>> sorted(shuffled("ABCD", 1)) == list("ABCD"), shuffled("ABCD", 1) == shuffled("ABCD", 1)
    (True, True)
    """
    left, dealt = list(things), []
    while left:
        dealt.append(left.pop(lot(len(left), *values, len(left))))
    return dealt
