"""Things in a row shared over pages or columns so that none is crammed beside an empty one."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import combinations, pairwise


def splits(count: int, groups: int) -> Iterator[list[range]]:
    """Yield every way to cut `count` things in order into `groups` groups, none of them empty.

    >>> [[len(group) for group in way] for way in splits(3, 2)]
    [[1, 2], [2, 1]]
    """
    for cuts in combinations(range(1, count), groups - 1):
        yield [range(a, b) for a, b in pairwise((0, *cuts, count))]


def evenest(count: int, groups: int, fullness: Callable[[range, int], float]) -> list[range] | None:
    """Return the way to cut `count` things into `groups` whose fullest group is least full.

    `fullness` tells how full a group is in the place it has, from 0 to 1; a way with a group
    fuller than 1 is none. Of ways as good the one with the fewest things in its largest group
    is taken. Returns None where nothing fits.

    >>> heights = [3, 1, 1, 1]
    >>> evenest(4, 2, lambda group, place: sum(heights[i] for i in group) / 4)
    [range(0, 1), range(1, 4)]
    >>> evenest(4, 1, lambda group, place: sum(heights[i] for i in group) / 4) is None
    True
    """
    best: tuple[float, float, int] | None = None
    found = None
    for way in splits(count, groups):
        filled = [fullness(group, place) for place, group in enumerate(way)]
        if max(filled) > 1 + 1e-9:
            continue
        mark = (round(max(filled), 6), -round(min(filled), 6), max(len(group) for group in way))
        if best is None or mark < best:
            best, found = mark, way
    return found
