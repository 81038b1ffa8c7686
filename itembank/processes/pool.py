"""Many pieces of work on several processes: each with its result as it comes, or all in order."""

from __future__ import annotations

import importlib
from collections.abc import Callable, Generator, Iterable, Sequence
from itertools import chain, islice
from typing import TypeVar

from itembank.processes import machine
from itembank.processes.child import Kind
from itembank.processes.lost import Lost, Results
from itembank.processes.process_kinds import best_kind
from itembank.processes.team import Team

P = TypeVar("P")
R = TypeVar("R")


def each(
    how: Callable[[P], R],
    pieces: Sequence[P],
    *,
    processes: int | None = None,
    longest: float | None = None,
    few: int = 1,
    loads: Sequence[str] = (),
    kind: Kind | None = None,
) -> Results[R]:
    """Yield the place and the result of every piece, as they come.

    Closing the generator, or an interrupt, ends every process.

    Parameters
    ----------
    how
        What is done with a piece. For a new interpreter it has to be a function of a module.
    pieces
        What it is done with; each once.
    processes
        How many to use; default, one for each core. With 1, or where the system refuses another
        process, the pieces are done in this one, one after another.
    longest
        Seconds that one piece may take; then it is lost. Nothing holds a piece done here.
    few
        So few pieces are done here: starting processes would take longer. With 0, a single one
        is done by another process too, where nothing it does can end this one.
    loads
        Modules that are loaded here first, where the processes are copies of this one, so that
        not each has to load them.
    kind
        The kind of process; default, the best on this system.

    Raises
    ------
    ItembankError
        A piece raised it; a CheckFailed likewise. Of several, it is that of the first piece.
    RuntimeError
        A piece raised anything else.

    >>> sorted(each(abs, [-1, 2, -3], processes=2))
    [(0, 1), (1, 2), (2, 3)]
    """
    count = processes or machine.cores()
    if count < 2 or len(pieces) <= few:
        yield from _here(how, pieces, range(len(pieces)))
        return
    kind = kind or best_kind()
    for name in loads if kind.inherits else ():
        importlib.import_module(name)
    team = Team(how, pieces, min(count, len(pieces)), longest, kind)
    try:
        yield from team.work()
    finally:
        team.end()
    yield from _here(how, pieces, team.left)


def stream(
    how: Callable[[P], R],
    pieces: Iterable[P],
    *,
    processes: int | None = None,
    kind: Kind | None = None,
) -> Generator[R, None, None]:
    """Yield the result of every piece, in order; a piece is taken when it is soon to be done.

    So many pieces, and what comes of them, never stand in memory at once. A single one is done
    in this process.

    >>> list(stream(abs, iter([-1, 2, -3]), processes=2))
    [1, 2, 3]

    Raises:
        ItembankError: a piece raised it; a CheckFailed likewise.
        RuntimeError: a piece raised anything else, or ended its process.
    """
    source = iter(pieces)
    first = list(islice(source, 2))
    source = chain(first, source)
    count = processes or machine.cores()
    if count < 2 or len(first) < 2:
        yield from map(how, source)
        return
    team = Team(how, [], count, None, kind or best_kind(), feed=source)
    held: dict[int, R] = {}
    try:
        for place, result in team.work():
            if isinstance(result, Lost):
                raise RuntimeError(f"a piece of work {result.why}")
            held[place] = result
            while team.wanted in held:
                result = held.pop(team.wanted)
                team.wanted += 1
                yield result
    finally:
        team.end()
    left = set(team.left)
    for place in range(team.wanted, len(team.pieces)):
        yield how(team.pieces[place]) if place in left else held[place]
    yield from map(how, source)


def _here(how: Callable[[P], R], pieces: Sequence[P], places: Sequence[int]) -> Results[R]:
    for place in places:
        yield place, how(pieces[place])
