"""Numbers as data has them: scattered, and the same for ever."""

from __future__ import annotations


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
