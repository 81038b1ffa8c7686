"""The finite space of parameters that a tier of a topic draws from, as data.

An item's address ends in the index of its point here, and names its question for ever. A space
therefore never changes, it only grows: at its end, by a further part (:meth:`Space.then`).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from itertools import product
from typing import Any, NamedTuple


class Part(NamedTuple):
    """What one part of a space holds: the points of a product that its filter keeps."""

    keep: Callable[..., bool] | None
    axes: Mapping[str, Sequence[Any]]

    def points(self) -> Iterable[tuple[Any, ...]]:
        """Return the points in the order of the axes' values, the last axis running fastest."""
        everything = product(*self.axes.values())
        if self.keep is None:
            return everything
        keep = self.keep
        return (values for values in everything if keep(*values))


class Space:
    """A product of small ranges with a filter, and whatever was added to it later.

    Parameters
    ----------
    keep
        Called with one value of each axis, by position; true for parameters worth asking.
        It throws out blind and dull items, so it has to be quick: plain integer work.
    axes
        The values each parameter takes, by name, in the order of `keep`'s arguments.

    >>> pairs = Space(lambda a, b: a < b, a=range(1, 4), b=range(1, 4))
    >>> len(pairs), pairs[0], list(pairs)
    (3, (1, 2), [(1, 2), (1, 3), (2, 3)])
    >>> pairs.sample(2, random.Random(1))
    [0, 2]
    """

    def __init__(self, keep: Callable[..., bool] | None = None, /, **axes: Sequence[Any]) -> None:
        self.parts: tuple[Part, ...] = (Part(keep, axes),)

    def then(self, keep: Callable[..., bool] | None = None, /, **axes: Sequence[Any]) -> Space:
        """Return this space with a further part at its end: the way a tier grows.

        The points of this space keep their indices, whatever the new part holds. A filter
        belongs to its own part. Points that are there already do not come a second time, so a
        part may name wider ranges that include the old ones.

        Raises
        ------
        ValueError
            If the new part's axes are not this space's, by name and in the same order.

        >>> pairs = Space(lambda a, b: a < b, a=range(1, 4), b=range(1, 4))
        >>> list(pairs.then(lambda a, b: b == 4 or a > b, a=range(2, 4), b=range(1, 5)))
        [(1, 2), (1, 3), (2, 3), (2, 1), (2, 4), (3, 1), (3, 2), (3, 4)]
        >>> pairs.then(None, a=(9,))
        Traceback (most recent call last):
        ...
        ValueError: A further part has the same axes, a and b, and not: a.
        """
        names = tuple(self.parts[0].axes)
        if tuple(axes) != names:
            raise ValueError(
                f"A further part has the same axes, {' and '.join(names)}, "
                f"and not: {', '.join(axes) or 'none'}."
            )
        return self._of((*self.parts, Part(keep, axes)))

    def where(self, suits: Callable[..., bool]) -> Space:
        """Return the space of those points alone that suit, in the same order.

        >>> list(Space(None, a=range(1, 4), b=(5, 6)).where(lambda a, b: a + b == 8))
        [(2, 6), (3, 5)]
        """

        def narrowed(part: Part) -> Part:
            def keep(*values: Any) -> bool:
                return (part.keep is None or part.keep(*values)) and suits(*values)

            return part._replace(keep=keep)

        return self._of(tuple(map(narrowed, self.parts)))

    @staticmethod
    def _of(parts: tuple[Part, ...]) -> Space:
        space = Space()
        space.parts = parts
        return space

    @property
    def axes(self) -> Mapping[str, Sequence[Any]]:
        """Return the values each parameter takes in any part, by name, the earlier parts' first.

        >>> Space(None, a=(1, 3)).then(None, a=range(1, 5)).axes
        {'a': (1, 3, 2, 4)}
        """
        if len(self.parts) == 1:
            return self.parts[0].axes
        return {
            name: tuple(dict.fromkeys(value for part in self.parts for value in part.axes[name]))
            for name in self.parts[0].axes
        }

    @cached_property
    def _by_part(self) -> tuple[list[tuple[Any, ...]], list[int]]:
        """Every point, and how many there are when each part has ended."""
        kept = list(self.parts[0].points())
        ends = [len(kept)]
        if len(self.parts) > 1:
            there = set(kept)
            for part in self.parts[1:]:
                kept += (values for values in part.points() if values not in there)
                there.update(kept[ends[-1] :])
                ends.append(len(kept))
        return kept, ends

    @cached_property
    def _kept(self) -> list[tuple[Any, ...]]:
        return self._by_part[0]

    @cached_property
    def _places(self) -> dict[tuple[Any, ...], int]:
        return {values: index for index, values in enumerate(self._kept)}

    def __len__(self) -> int:
        return len(self._kept)

    def __getitem__(self, index: int) -> tuple[Any, ...]:
        if not 0 <= index < len(self._kept):
            raise IndexError(f"index {index} is not in 0…{len(self._kept) - 1}")
        return self._kept[index]

    def __iter__(self) -> Iterator[tuple[Any, ...]]:
        return iter(self._kept)

    def __repr__(self) -> str:
        first, *more = map(_written, self.parts)
        return f"Space({first})" + "".join(f".then({part})" for part in more)

    def place(self, values: tuple[Any, ...]) -> int | None:
        """Return the index of a point, or None where the space does not hold it.

        >>> pairs = Space(lambda a, b: a < b, a=range(1, 4), b=range(1, 4))
        >>> pairs.place((2, 3)), pairs.place((3, 2))
        (2, None)
        """
        return self._places.get(values)

    def sample(self, count: int, rng: random.Random) -> list[int]:
        """Return `count` different indices in random order.

        Raises
        ------
        ValueError
            If the space holds fewer than `count`.
        """
        return rng.sample(range(len(self._kept)), count)

    def lasting_sample(self, count: int, rng: random.Random) -> list[int]:
        """Return `count` different indices in random order, which growth will not change.

        They come from the fewest parts, the earliest, that hold so many. What a bank's file
        names by a seed is drawn like this: it stays what it was when the space grows.

        Raises
        ------
        ValueError
            If the space holds fewer than `count`.

        >>> grown = Space(None, a=range(10)).then(None, a=range(100))
        >>> max(grown.lasting_sample(10, random.Random(1)))
        9
        >>> len(grown.lasting_sample(11, random.Random(1)))
        11
        """
        ends = self._by_part[1]
        # By the number of points when a part ended: a later part must not change the draw.
        return rng.sample(range(next((end for end in ends if end >= count), ends[-1])), count)


def _written(part: Part) -> str:
    axes = ", ".join(f"{name}={values!r}" for name, values in part.axes.items())
    return f"{part.keep.__qualname__}, {axes}" if part.keep else axes
