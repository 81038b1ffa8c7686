"""The finite space of parameters that a tier of a topic draws from, as data.

An item's address ends in the index of its point here, and names its question for ever. A space
therefore never changes, it only grows: at its end, by a further part (:meth:`Space.then`).
"""

from __future__ import annotations

import random
from bisect import bisect_right
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cached_property
from itertools import accumulate, chain
from typing import Any

from itembank.items.topics.space_part import Narrowed, OtherKind, Part
from itembank.items.topics.spread import Spread, Threes


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
        return self._of((*self.parts, Part(keep, axes, None, self.parts)))

    def also(
        self, make: Callable[..., Any], keep: Callable[..., bool] | None = None, /, **axes: Any
    ) -> Space:
        """Return this space with a part at its end that asks another kind of question.

        Its questions are made by `make`, from the topic, the tier and the values of its own
        `axes`; its filter gets the values alone. The points that were there keep their indices,
        and the space may grow after it by :meth:`then` and by further kinds.

        >>> def halved(topic, tier, n):
        ...     return f"True or false? Half of {2 * n} is {n}."
        >>> grown = Space(None, a=(1, 2)).also(halved, None, n=range(5, 7)).then(None, a=(3,))
        >>> list(grown)
        [(1,), (2,), (halved, 5), (halved, 6), (3,)]
        >>> grown.own, grown.place(grown[3])
        ([0, 1, 4], 3)
        """
        grown = self._of((*self.parts, Part(keep, axes, OtherKind(make), self.parts)))
        grown._own_part = self._own_part  # the same, and so laid out once for all other kinds
        return grown

    def some(self, count: int, only: Callable[..., bool] | None = None) -> Spread:
        """Return points of the topic's own, evenly spaced: so many, or all there are.

        Where not all will do, `only` tells which.

        A space that grows from this one has the same some, so that questions made from them
        stay what they are.

        >>> list(Space(None, a=range(10)).some(4))
        [(0,), (2,), (5,), (7,)]
        """
        return Spread(self._own_part, count, only)

    def threes(
        self,
        count: int,
        alike: Callable[..., object] | None = None,
        spare: int = 0,
        only: Callable[..., bool] | None = None,
    ) -> Threes:
        """Return threes of points of the topic's own, each from all over: so many, or all.

        The three points of each are `alike`: it gives the same for them, such as their letter.
        With `spare` there are more than three in each, to choose from.

        >>> list(Space(None, a=range(9)).threes(2))
        [((0,), (3,), (6,)), ((1,), (4,), (7,))]
        >>> list(Space(None, a=range(9)).threes(2, lambda a: a % 2))
        [((0,), (2,), (4,)), ((1,), (3,), (5,))]
        """
        return Threes(self._own_part, count, alike, spare, only)

    @cached_property
    def _own_part(self) -> Space:
        own = tuple(part for part in self.parts if part.kind is None)
        return self if len(own) == len(self.parts) else self._of(own)

    @property
    def mixed(self) -> bool:
        """Whether there are points at which another kind of question is asked."""
        return any(part.kind for part in self.parts)

    @property
    def own(self) -> list[int]:
        """Return the indices at which the topic asks its own kind of question."""
        if not self.mixed:
            return list(range(len(self)))
        pairs = zip(self.parts, self.part_indices, strict=True)
        return [index for part, indices in pairs if part.kind is None for index in indices]

    def where(self, suits: Callable[..., bool]) -> Space:
        """Return the space of those points alone that suit, in the same order.

        >>> list(Space(None, a=range(1, 4), b=(5, 6)).where(lambda a, b: a + b == 8))
        [(2, 6), (3, 5)]
        """
        return self._of(tuple(Narrowed(part, suits) for part in self.parts))

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
        own = [part for part in self.parts if part.kind is None]
        return own[0].axes if len(own) == 1 else _joined(own)

    def axes_of(self, point: tuple[Any, ...]) -> Mapping[str, Sequence[Any]]:
        """Return the values that each parameter of a point may take: of its own kind of question.

        >>> def halved(topic, tier, n): ...
        >>> grown = Space(None, a=(1, 2)).also(halved, None, n=range(5, 7))
        >>> grown.axes_of((1,)), grown.axes_of(grown[2])
        ({'a': (1, 2)}, {'kind': (halved,), 'n': (5, 6)})
        """
        kind = point[0] if point and isinstance(point[0], OtherKind) else None
        if kind is None:
            return self.axes
        own = [
            part for part in self.parts if part.kind == kind and len(part.axes) == len(point) - 1
        ]
        return {"kind": (kind,), **_joined(own)}

    @cached_property
    def _ends(self) -> list[int]:
        """How many points there are when each part has ended."""
        return list(accumulate(map(len, self.parts)))

    def forget(self) -> None:
        """Forget what is known of the space, and what follows: its filters are asked anew."""
        vars(self).pop("_ends", None)
        for part in self.parts:
            for axis in part.axes.values():
                if isinstance(axis, Spread):
                    axis.space.forget()
                    axis.forget()
            part.forget()

    @property
    def part_indices(self) -> list[range]:
        """Return the indices at which each part's points stand; a part may have none.

        >>> Space(None, a=(1, 2)).then(None, a=(3,)).part_indices
        [range(0, 2), range(2, 3)]
        """
        ends = self._ends
        return [range(first, end) for first, end in zip([0, *ends], ends, strict=False)]

    def __len__(self) -> int:
        return self._ends[-1]

    def __getitem__(self, index: int) -> tuple[Any, ...]:
        if not 0 <= index < len(self):
            raise IndexError(f"index {index} is not in 0…{len(self) - 1}")
        part = bisect_right(self._ends, index)
        point: tuple[Any, ...] = self.parts[part][index - self._ends[part - 1] if part else index]
        return point

    def __iter__(self) -> Iterator[tuple[Any, ...]]:
        return chain.from_iterable(self.parts)

    def __repr__(self) -> str:
        first, *more = self.parts
        return f"Space({first!r})" + "".join(
            f".{'then' if part.kind is None else 'also'}({part!r})" for part in more
        )

    def place(self, values: tuple[Any, ...]) -> int | None:
        """Return the index of a point, or None where the space does not hold it.

        >>> pairs = Space(lambda a, b: a < b, a=range(1, 4), b=range(1, 4))
        >>> pairs.place((2, 3)), pairs.place((3, 2))
        (2, None)
        """
        for part, indices in zip(self.parts, self.part_indices, strict=True):
            if (place := part.place(values)) is not None:
                return indices[place]
        return None

    def sample(self, count: int, rng: random.Random) -> list[int]:
        """Return `count` different indices in random order.

        Raises
        ------
        ValueError
            If the space holds fewer than `count`.
        """
        return rng.sample(range(len(self)), count)

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
        ends = self._ends
        # By the number of points when a part ended: a later part must not change the draw.
        return rng.sample(range(next((end for end in ends if end >= count), ends[-1])), count)


def _joined(parts: Sequence[Part]) -> dict[str, tuple[Any, ...]]:
    """Return the values each parameter takes in any of some parts, the earlier parts' first."""
    return {
        name: tuple(dict.fromkeys(value for part in parts for value in part.axes[name]))
        for name in parts[0].axes
    }
