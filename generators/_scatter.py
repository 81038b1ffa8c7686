"""Numbers as data has them: scattered, and the same for ever."""

from __future__ import annotations

from functools import lru_cache
from math import gcd


def scattered(seed: int, count: int, least: int, most: int) -> tuple[int, ...]:
    """Return so many whole numbers from `least` to `most`, which a seed settles for ever.

    A linear congruential generator (its constants are those of the C standard's example, from
    memory): what it gives has to depend on nothing but these numbers, since addresses do.

    >>> scattered(1, 5, 10, 20) == scattered(1, 5, 10, 20)
    True
    >>> len(set(scattered(2, 40, 1, 1000))) > 30
    True
    """
    state = (seed * 2_654_435_761 + count * 40_503 + least) % 2**31
    found = []
    for _ in range(count + 1):
        state = (state * 1_103_515_245 + 12_345) % 2**31
        found.append(least + (state >> 12) % (most - least + 1))
    return tuple(found[1:])


def unlike(number: int, count: int, least: int, most: int) -> tuple[int, ...]:
    """Return so many whole numbers from `least` to `most`: another row for each number.

    Rows come twice only after every row there is has come once.

    >>> len({unlike(number, 3, 1, 5) for number in range(125)})
    125
    """
    base = most - least + 1
    rest = number * _step(base, count) % base**count
    found = []
    for _ in range(count):
        rest, digit = divmod(rest, base)
        found.append(least + digit)
    return tuple(found)


@lru_cache(maxsize=64)
def _step(base: int, count: int) -> int:
    """Return a step through base^count that comes to every place: near the golden section of it."""
    step: int = base**count * 618 // 1000
    while gcd(step, base) != 1:
        step += 1
    return step
