"""Some points of a space, chosen evenly over it: what further kinds of question are made from."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from itembank.items.topics.space_part import Decided

if TYPE_CHECKING:
    from itembank.items.topics.space import Space


class Spread(Decided, Sequence[tuple[Any, ...]]):
    """Some points of a space, evenly spaced over it: chosen only when they are looked at.

    Its numbers are the indices of the points in the space.
    """

    def __init__(self, space: Space, count: int, only: Callable[..., bool] | None = None) -> None:
        self.space, self.most, self.only = space, count, only

    def _every(self) -> Sequence[int]:
        """Return the indices of the points to choose from."""
        only = self.only
        if only is None:
            return range(len(self.space))
        return [index for index, point in enumerate(self.space) if only(*point)]

    def decided(self) -> Sequence[int]:
        """Return the indices in the space of the points chosen."""
        every = self._every()
        count = min(self.most, len(every))
        return [every[n * len(every) // count] for n in range(count)]

    def __len__(self) -> int:
        return len(self.numbers)

    def __getitem__(self, index: Any) -> Any:
        return self.space[self.numbers[index]]

    def __repr__(self) -> str:
        return f"{self.space!r}.some({self.most})"


class Threes(Spread):
    """Threes of points of a space that are alike, each spread over it; no point comes twice.

    Its numbers are the indices of the first three in the space and of those to spare, and so on.
    """

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

    def decided(self) -> Sequence[int]:
        """Return the indices in the space of the points of each three chosen, one after another."""
        groups: dict[object, list[int]] = {}
        for index in self._every():
            alike = self.alike and self.alike(*self.space[index])
            groups.setdefault(alike, []).append(index)
        threes = [
            [points[place] for place in self._places(n, len(points))]
            for points in groups.values()
            for n in range(len(points) // 3)
        ]
        count = min(self.most, len(threes))
        return [index for n in range(count) for index in threes[n * len(threes) // count]]

    def __len__(self) -> int:
        return len(self.numbers) // (3 + self.spare)

    def __getitem__(self, index: Any) -> Any:
        if not 0 <= index < len(self):
            raise IndexError(index)
        width = 3 + self.spare
        return tuple(self.space[n] for n in self.numbers[index * width : (index + 1) * width])

    def __repr__(self) -> str:
        return f"{self.space!r}.threes({self.most})"
