"""The finite space of parameters that a tier of a topic draws from, as data."""

from __future__ import annotations

import random
from collections.abc import Callable, Iterator, Sequence
from functools import cached_property
from itertools import product
from typing import Any


class Space:
    """A product of small ranges with a filter.

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
        self.keep = keep
        self.axes = axes

    @cached_property
    def _kept(self) -> list[tuple[Any, ...]]:
        everything = product(*self.axes.values())
        if self.keep is None:
            return list(everything)
        keep = self.keep
        return [values for values in everything if keep(*values)]

    def __len__(self) -> int:
        return len(self._kept)

    def __getitem__(self, index: int) -> tuple[Any, ...]:
        if not 0 <= index < len(self._kept):
            raise IndexError(f"index {index} is not in 0…{len(self._kept) - 1}")
        return self._kept[index]

    def __iter__(self) -> Iterator[tuple[Any, ...]]:
        return iter(self._kept)

    def __repr__(self) -> str:
        axes = ", ".join(f"{name}={values!r}" for name, values in self.axes.items())
        keep = f"{self.keep.__qualname__}, " if self.keep else ""
        return f"Space({keep}{axes})"

    def sample(self, count: int, rng: random.Random) -> list[int]:
        """Return `count` different indices in random order.

        Raises
        ------
        ValueError
            If the space holds fewer than `count`.
        """
        return rng.sample(range(len(self._kept)), count)
