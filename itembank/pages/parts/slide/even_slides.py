"""How questions may be shared over several slides, as evenly as it goes."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import accumulate, pairwise, product

UNEVEN = 2
"""How many questions more or fewer than an even share a slide may hold."""

FEW = 4
"""Slides over which other shares than even ones are tried."""


def splits(count: int, slides: int) -> Iterator[list[range]]:
    """Yield the ways to share questions over slides: the most even first, the fuller slides first.

    Questions with large figures do not go by fours; over many slides nobody counts them.

    >>> [[len(group) for group in way] for way in splits(8, 3)][:4]
    [[3, 3, 2], [3, 2, 3], [2, 3, 3], [4, 2, 2]]
    """
    even, over = divmod(count, slides)
    near = range(even - UNEVEN, even + UNEVEN + 1)
    usual = tuple(even + (number < over) for number in range(slides))
    ways = product(near, repeat=slides) if slides <= FEW else [usual]
    fair = (way for way in ways if sum(way) == count and min(way) > 0)
    for way in sorted(fair, key=lambda way: (max(way) - min(way), [-size for size in way])):
        ends = list(accumulate(way, initial=0))
        yield [range(a, b) for a, b in pairwise(ends)]
