"""The finite space of parameters that a tier of a topic draws from, as data.

An item's address ends in the index of its point here, and names its question for ever. A space
therefore never changes, it only grows: at its end, by a further part (:meth:`Space.then`).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from typing import Any, NamedTuple


@dataclass(frozen=True, slots=True)
class OtherKind:
    """Marks a point of a space at which another question is asked than the topic's own.

    `make` returns it, from the topic, the tier and the values after this mark.
    """

    make: Callable[..., Any]

    def __repr__(self) -> str:
        return self.make.__qualname__


def is_other_kind(point: tuple[Any, ...]) -> bool:
    """Tell whether another question is asked at a point of a space than the topic's own."""
    return bool(point) and isinstance(point[0], OtherKind)


class Part(NamedTuple):
    """What one part of a space holds: the points of a product that its filter keeps.

    Where the part asks another kind of question, that stands first in each point.
    """

    keep: Callable[..., bool] | None
    axes: Mapping[str, Sequence[Any]]
    kind: OtherKind | None = None

    def points(self) -> Iterable[tuple[Any, ...]]:
        """Return the points in the order of the axes' values, the last axis running fastest."""
        everything: Iterable[tuple[Any, ...]] = product(*self.axes.values())
        if self.keep is not None:
            keep = self.keep
            everything = (values for values in everything if keep(*values))
        kind = self.kind
        return everything if kind is None else ((kind, *values) for values in everything)


class Spread(Sequence[tuple[Any, ...]]):
    """Some points of a space, evenly spaced over it: laid out only when they are looked at."""

    def __init__(self, space: Space, count: int, only: Callable[..., bool] | None = None) -> None:
        self.space, self.most, self.only = space, count, only

    def _every(self) -> list[tuple[Any, ...]]:
        """Return the points to choose from; a space is walked once for all that is made of it."""
        only = self.only
        return [point for point in self.space if only is None or only(*point)]

    @cached_property
    def _points(self) -> list[tuple[Any, ...]]:
        every = self._every()
        count = min(self.most, len(every))
        return [every[n * len(every) // count] for n in range(count)]

    def __len__(self) -> int:
        return len(self._points)

    def __getitem__(self, index: Any) -> Any:
        return self._points[index]

    def __repr__(self) -> str:
        return f"{self.space!r}.some({self.most})"


class Threes(Spread):
    """Threes of points of a space that are alike, each spread over it; no point comes twice."""

    def __init__(
        self,
        space: Space,
        count: int,
        alike: Callable[..., object] | None,
        spare: int = 0,
        only: Callable[..., bool] | None = None,
    ) -> None:
        super().__init__(space, count, only)
        self.alike, self.spare = alike, spare

    def _places(self, n: int, count: int) -> list[int]:
        """Return where the three points of a group stand, and then those to spare."""
        step = count // 3
        spare = ((n + turn * step + step // 2 + turn) % count for turn in range(self.spare))
        return [n, n + step, n + 2 * step, *spare]

    @cached_property
    def _points(self) -> list[tuple[Any, ...]]:
        groups: dict[object, list[tuple[Any, ...]]] = {}
        for point in self._every():
            groups.setdefault(self.alike and self.alike(*point), []).append(point)
        threes = [
            tuple(points[place] for place in self._places(n, len(points)))
            for points in groups.values()
            for n in range(len(points) // 3)
        ]
        count = min(self.most, len(threes))
        return [threes[n * len(threes) // count] for n in range(count)]

    def __repr__(self) -> str:
        return f"{self.space!r}.threes({self.most})"


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
        grown = self._of((*self.parts, Part(keep, axes, OtherKind(make))))
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
        return [index for index, values in enumerate(self) if not is_other_kind(values)]

    def where(self, suits: Callable[..., bool]) -> Space:
        """Return the space of those points alone that suit, in the same order.

        >>> list(Space(None, a=range(1, 4), b=(5, 6)).where(lambda a, b: a + b == 8))
        [(2, 6), (3, 5)]
        """

        def narrowed(part: Part) -> Part:
            def keep(*values: Any) -> bool:
                point = values if part.kind is None else (part.kind, *values)
                return (part.keep is None or part.keep(*values)) and suits(*point)

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

    @property
    def part_indices(self) -> list[range]:
        """Return the indices at which each part's points stand; a part may have none.

        >>> Space(None, a=(1, 2)).then(None, a=(3,)).part_indices
        [range(0, 2), range(2, 3)]
        """
        ends = self._by_part[1]
        return [range(first, end) for first, end in zip([0, *ends], ends, strict=False)]

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
        first, *more = self.parts
        return f"Space({_written(first)})" + "".join(
            f".{'then' if part.kind is None else 'also'}({_written(part)})" for part in more
        )

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


def _joined(parts: Sequence[Part]) -> dict[str, tuple[Any, ...]]:
    """Return the values each parameter takes in any of some parts, the earlier parts' first."""
    return {
        name: tuple(dict.fromkeys(value for part in parts for value in part.axes[name]))
        for name in parts[0].axes
    }


def _written(part: Part) -> str:
    axes = [f"{name}={values!r}" for name, values in part.axes.items()]
    names = [function.__qualname__ for function in (part.keep,) if function]
    return ", ".join([*([repr(part.kind)] if part.kind else []), *names, *axes])
