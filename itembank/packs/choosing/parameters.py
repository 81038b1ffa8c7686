"""Points of a space compared by their parameters."""

from __future__ import annotations

from typing import Any

from itembank.items.topics.space import Space
from itembank.items.topics.space_part import OtherKind


def differing(first: tuple[Any, ...], other: tuple[Any, ...]) -> int:
    """Return in how many parameters two points of a space differ.

    >>> differing((1, 2, 3), (1, 5, 3))
    1
    """
    if kind_at(first) != kind_at(other) or len(first) != len(other):
        return max(len(first), len(other))
    if kind_at(first) is not None:
        first, other = _flat(first), _flat(other)
        if len(first) != len(other):
            return max(len(first), len(other))
    return sum(a != b for a, b in zip(first, other, strict=True))


def kind_at(point: tuple[Any, ...]) -> OtherKind | None:
    """Return which other kind of question a point asks, or None for the topic's own."""
    return point[0] if point and isinstance(point[0], OtherKind) else None


def _flat(point: tuple[Any, ...]) -> tuple[Any, ...]:
    """Return a point with the points that it is made of laid open."""
    flat: list[Any] = []
    for value in point:
        flat += _flat(value) if isinstance(value, tuple) else [value]
    return tuple(flat)


def along(space: Space, index: int, axis: int) -> list[int]:
    """Return the other indices of `space` that differ from `index` in one axis alone.

    >>> along(Space(None, a=(1, 2), b=(5, 6, 7)), 1, 1)
    [0, 2]
    """
    here = space[index]
    there = (
        space.place((*here[:axis], value, *here[axis + 1 :]))
        for value in list(space.axes_of(here).values())[axis]
        if value != here[axis]
    )
    return [place for place in there if place is not None]


def along_two(space: Space, index: int, axes: tuple[int, int], most: int) -> list[int]:
    """Return other indices of `space` that differ from `index` in two axes and no other.

    At most `most` are looked up, spread evenly over the values of both axes.

    >>> along_two(Space(None, a=(1, 2), b=(5, 6, 7)), 1, (0, 1), 10)
    [3, 5]
    """
    here = space[index]
    values = list(space.axes_of(here).values())
    first, second = axes
    pairs = [
        (a, b)
        for a in values[first]
        if a != here[first]
        for b in values[second]
        if b != here[second]
    ]
    found = []
    for a, b in pairs[:: -(-len(pairs) // most) or 1]:
        point = list(here)
        point[first], point[second] = a, b
        if (place := space.place(tuple(point))) is not None:
            found.append(place)
    return found
