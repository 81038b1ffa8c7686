"""One part of a space: the points of a product that its filter keeps, by their numbers in it.

A product of ranges is counted off like the digits of a number, so that any point can be found
from its number without the others. Which numbers a part holds is decided by its filter, once;
where that is known beforehand (:mod:`itembank.items.topics.layout`) no filter is asked.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cached_property
from itertools import product
from typing import Any

from itembank.data_class import dataclass


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


class Decided:
    """Something that holds some of many: by number, decided once by asking a filter of each.

    `known` is called before any filter is asked, and returns the numbers where they are known.
    """

    known: Callable[[], Sequence[int] | None] | None = None

    @cached_property
    def numbers(self) -> Sequence[int]:
        """The numbers of what is held."""
        known = None if self.known is None else self.known()
        return self.decided() if known is None else known

    def decided(self) -> Sequence[int]:
        """Return the numbers of what is held, by the filter."""
        raise NotImplementedError

    def forget(self) -> None:
        """Forget what is known, and whatever followed from it."""
        for name in ("known", "numbers", "_size", "_positions", "_from_last"):
            vars(self).pop(name, None)


class Part(Decided, Sequence[tuple[Any, ...]]):
    """What one part of a space holds: the points of a product that its filter keeps.

    Where the part asks another kind of question, that stands first in each point. A point of the
    parts before it is not held a second time.

    >>> part = Part(lambda a, b: a < b, {"a": range(1, 4), "b": range(1, 4)})
    >>> list(part.numbers), list(part), part[2], part.place((2, 3))
    ([1, 2, 5], [(1, 2), (1, 3), (2, 3)], (2, 3), 2)
    """

    def __init__(
        self,
        keep: Callable[..., bool] | None,
        axes: Mapping[str, Sequence[Any]],
        kind: OtherKind | None = None,
        before: Sequence[Part] = (),
    ) -> None:
        self.keep, self.axes, self.kind, self.before = keep, axes, kind, tuple(before)

    def decided(self) -> Sequence[int]:
        """Return the numbers of the points that the filter keeps, the last axis running fastest."""
        rivals = [part for part in self.before if part.kind == self.kind and len(part)]
        if self.keep is None and not rivals:
            return range(self._size)
        every: Iterator[tuple[int, tuple[Any, ...]]] = enumerate(product(*self.axes.values()))
        if self.keep is not None:
            keep = self.keep
            every = ((number, values) for number, values in every if keep(*values))
        if rivals:
            every = (
                (number, values)
                for number, values in every
                if all(part.number(values) is None for part in rivals)
            )
        return [number for number, _ in every]

    def number(self, values: tuple[Any, ...]) -> int | None:
        """Return which one held is of these values of the axes, or None where none is."""
        if len(values) != len(self._positions):
            return None
        number = 0
        for (positions, length), value in zip(self._positions, values, strict=True):
            at = positions.get(value)
            if at is None:
                return None
            number = number * length + at
        at = bisect_left(self.numbers, number)
        return at if at < len(self.numbers) and self.numbers[at] == number else None

    def place(self, point: tuple[Any, ...]) -> int | None:
        """Return which one held is a point, or None where it is not held."""
        if self.kind is None:
            return None if is_other_kind(point) else self.number(point)
        return self.number(point[1:]) if point[:1] == (self.kind,) else None

    @cached_property
    def _size(self) -> int:
        size = 1
        for axis in self.axes.values():
            size *= len(axis)
        return size

    @cached_property
    def _positions(self) -> list[tuple[dict[Any, int], int]]:
        """For each axis, where each of its values stands, and how long it is."""
        return [
            ({value: at for at, value in enumerate(axis)}, len(axis)) for axis in self.axes.values()
        ]

    @cached_property
    def _from_last(self) -> tuple[tuple[Sequence[Any], int], ...]:
        """Each axis with how long it is, the last first."""
        return tuple((axis, len(axis)) for axis in reversed(list(self.axes.values())))

    def _point(self, number: int) -> tuple[Any, ...]:
        """Return the point of a number in the product."""
        values = []
        for axis, length in self._from_last:
            number, at = divmod(number, length)
            values.append(axis[at])
        if self.kind is not None:
            values.append(self.kind)
        return tuple(reversed(values))

    def __len__(self) -> int:
        return len(self.numbers)

    def __getitem__(self, index: Any) -> Any:
        return self._point(self.numbers[index])

    def __iter__(self) -> Iterator[tuple[Any, ...]]:
        return map(self._point, self.numbers)

    def __repr__(self) -> str:
        axes = [f"{name}={values!r}" for name, values in self.axes.items()]
        names = [function.__qualname__ for function in (self.keep,) if function]
        return ", ".join([*([repr(self.kind)] if self.kind else []), *names, *axes])


class Narrowed(Part):
    """Those points of a part alone that suit."""

    def __init__(self, part: Part, suits: Callable[..., bool]) -> None:
        super().__init__(part.keep, part.axes, part.kind)
        self.part, self.suits = part, suits

    def decided(self) -> Sequence[int]:
        """Return the numbers of those of the part's points that suit."""
        suits = self.suits
        pairs = zip(self.part.numbers, self.part, strict=True)
        return [number for number, point in pairs if suits(*point)]
