"""Things in a row shared over pages or columns so that none is crammed beside an empty one."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import TypeAlias

Mark: TypeAlias = tuple[int, float, float]
"""How bad a way to cut is: groups that are alone, the fullest group, and unevenness."""


def _never(_group: range) -> bool:
    return False


def evenest(
    count: int,
    groups: int,
    fullness: Callable[[range, int], float],
    alone: Callable[[range], bool] = _never,
) -> list[range] | None:
    """Return `count` things in order cut into `groups`, none empty, the fullest as low as can be.

    `fullness` tells how full a group is in the place it has, from 0 to 1; a group fuller than 1
    does not fit. Groups that stand `alone`, as the one question of a page does, are taken only
    where every other way has as many. Returns None where nothing fits.

    >>> heights = [3, 1, 1, 1]
    >>> evenest(4, 2, lambda group, place: sum(heights[i] for i in group) / 4)
    [range(0, 1), range(1, 4)]
    >>> evenest(4, 2, lambda group, _: len(group) / 4, alone=lambda group: len(group) == 1)
    [range(0, 2), range(2, 4)]
    >>> evenest(4, 1, lambda group, place: sum(heights[i] for i in group) / 4) is None
    True
    """

    @cache
    def best(start: int, place: int) -> tuple[Mark, list[range]] | None:
        last = place == groups - 1
        found: tuple[Mark, list[range]] | None = None
        for end in range(count if last else start + 1, count + 1):
            group = range(start, end)
            full = fullness(group, place) if group else 2.0
            if full > 1 + 1e-9:
                if last:
                    return None
                break  # a longer group is only fuller
            rest = ((0, 0.0, 0.0), []) if last else best(end, place + 1)
            if rest is None:
                continue
            (others, fullest, uneven), after = rest
            # Rounded: of groups as full as each other evenness is to decide, and no sum of floats.
            mark = (others + alone(group), max(fullest, round(full, 6)), uneven + full * full)
            if found is None or mark < found[0]:
                found = (mark, [group, *after])
        return found

    made = best(0, 0)
    return made[1] if made else None
