"""Where many pieces of work are done: on this machine's processes, or on a cluster.

Who has work to be done is given a place, and need not know which.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Protocol, TypeAlias, TypeVar

from itembank.processes.child import Kind
from itembank.processes.lost import Lost, Results
from itembank.processes.pool import each

P = TypeVar("P")
R = TypeVar("R")

Progress: TypeAlias = Callable[[int, int], None]
"""Called with how many pieces are done, and how many there are."""


class Place(Protocol):
    """Where pieces of work are done."""

    def each(
        self,
        how: Callable[[P], R],
        pieces: Sequence[P],
        *,
        longest: float | None = None,
        few: int = 1,
        loads: Sequence[str] = (),
    ) -> Results[R]:
        """Yield the place and the result of every piece, as they come; see :func:`.pool.each`."""


class ThisMachine:
    """The processes of this machine: as many as are asked for, or one for each core."""

    def __init__(self, processes: int | None = None, kind: Kind | None = None) -> None:
        self._processes, self._kind = processes, kind

    def each(
        self,
        how: Callable[[P], R],
        pieces: Sequence[P],
        *,
        longest: float | None = None,
        few: int = 1,
        loads: Sequence[str] = (),
    ) -> Results[R]:
        """Yield the place and the result of every piece, as they come; see :func:`.pool.each`."""
        return each(
            how,
            pieces,
            processes=self._processes,
            longest=longest,
            few=few,
            loads=loads,
            kind=self._kind,
        )


def all_or_lost(
    place: Place,
    how: Callable[[P], R],
    pieces: Sequence[P],
    report: Progress | None = None,
    *,
    longest: float | None = None,
    few: int = 1,
    loads: Sequence[str] = (),
) -> list[R | Lost]:
    """Return the result of every piece, in their order; of one that has none, why.

    `report` is called after each piece with (pieces done, pieces in all).

    >>> all_or_lost(ThisMachine(2), abs, [-1, 2, -3])
    [1, 2, 3]
    """
    found: dict[int, R | Lost] = {}
    results = place.each(how, pieces, longest=longest, few=few, loads=loads)
    try:
        for index, result in results:
            found[index] = result
            if report:
                report(len(found), len(pieces))
    finally:
        results.close()
    return [found[index] for index in range(len(pieces))]


def all_of(
    place: Place,
    how: Callable[[P], R],
    pieces: Sequence[P],
    report: Progress | None = None,
    *,
    few: int = 1,
) -> list[R]:
    """Return the result of every piece, in their order; `report` as in :func:`all_or_lost`.

    >>> all_of(ThisMachine(2), abs, [-1, 2, -3])
    [1, 2, 3]

    Raises:
        ItembankError: a piece raised it; a CheckFailed likewise.
        RuntimeError: a piece raised anything else, or ended its process.
    """
    found: list[R] = []
    for result in all_or_lost(place, how, pieces, report, few=few):
        if isinstance(result, Lost):
            raise RuntimeError(f"a piece of work {result.why}")
        found.append(result)
    return found
