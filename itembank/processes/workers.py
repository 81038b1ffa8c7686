"""Judges many items on several processes, so that none of them can hold up the others.

Each process takes the next item as it becomes free and says which one it begins, so that an
item whose proof goes on without end, or ends its process, is known: it is left to a person, the
process is ended, and another takes its place. Nothing outlives the call, whatever ends it.
"""

from __future__ import annotations

import os
import signal
import time
from collections.abc import Callable, Generator, Sequence
from contextlib import suppress
from typing import TYPE_CHECKING, Any, TypeAlias, TypeVar

from itembank.proof.outcome import Outcome, State

if TYPE_CHECKING:
    from multiprocessing.connection import Connection
    from multiprocessing.process import BaseProcess

Progress = Callable[[int, int], None]
"""Called with how many items are judged, and how many there are."""

T = TypeVar("T")

FEW = 6
"""So few items are judged here: starting processes would take longer."""
LONGEST = 30.0
"""Seconds that the proof of one item may take before it is left to a person."""
HANDED_OUT = 16
"""Items a process is given at a time."""
CUT_OFF = "Its proof"
BROKE_OFF = "The proof broke off"


def was_cut_off(outcome: Outcome) -> bool:
    """Tell whether a proof was not brought to its end, so that another try may find more.

    >>> was_cut_off(Outcome(State.NEEDS_PERSON, "Its proof took longer than 30 s."))
    True
    >>> was_cut_off(Outcome(State.PROVED))
    False
    """
    return outcome.says.startswith((f"{CUT_OFF} ended ", f"{CUT_OFF} took ", BROKE_OFF))


def judge_all(
    items: Sequence[T],
    how: Callable[[T], Outcome],
    report: Progress | None = None,
    processes: int | None = None,
    longest: float = LONGEST,
) -> list[Outcome]:
    """Return the outcome of every item, in their order.

    Parameters
    ----------
    items
        What is to be judged: items, or what `how` makes them of; each is judged once.
    how
        What judges one of them. It should raise nothing.
    report
        Called after each item with (items judged, items in all).
    processes
        How many to use; default, one for each core. With 1, or where the system cannot fork,
        the items are judged in this process, and `longest` does not hold.
    longest
        Seconds that one item may take; after that it needs a person.
    """
    found: dict[int, Outcome] = {}
    count = processes or os.cpu_count() or 1
    alone = count == 1 or len(items) <= FEW or not hasattr(os, "fork")
    results = _here(items, how) if alone else _apart(items, min(count, len(items)), longest, how)
    try:
        for index, outcome in results:
            found[index] = outcome
            if report:
                report(len(found), len(items))
    finally:
        results.close()
    return [found[index] for index in range(len(items))]


Results: TypeAlias = Generator[tuple[int, Outcome], None, None]


def _here(items: Sequence[Any], how: Callable[[Any], Outcome]) -> Results:
    for index, item in enumerate(items):
        yield index, how(item)


class _Worker:
    """A process and what it was given to do."""

    def __init__(self, items: Sequence[Any], how: Callable[[Any], Outcome]) -> None:
        from multiprocessing import get_context

        fork = get_context("fork")
        self.pipe, theirs = fork.Pipe()
        self.process: BaseProcess = fork.Process(target=_work, args=(items, how, theirs, self.pipe))
        self.process.daemon = True
        self.process.start()
        theirs.close()
        self.todo: list[int] = []
        self.since = time.monotonic()

    def give(self, indices: list[int]) -> None:
        """Give the process work; one that is gone shows when its pipe is read."""
        self.todo, self.since = indices, time.monotonic()
        with suppress(OSError):
            self.pipe.send(indices)

    def end(self) -> None:
        self.process.kill()
        self.process.join()
        self.pipe.close()


def _apart(
    items: Sequence[Any], count: int, longest: float, how: Callable[[Any], Outcome]
) -> Results:
    from multiprocessing.connection import wait

    import sympy  # noqa: F401  # imported once, before the processes part

    waiting = list(range(len(items)))[::-1]
    workers: dict[Connection, _Worker] = {}

    def start() -> None:
        worker = _Worker(items, how)
        workers[worker.pipe] = worker
        supply(worker)

    def supply(worker: _Worker) -> None:
        size = min(HANDED_OUT, max(1, len(waiting) // (2 * count)))
        given = [waiting.pop() for _ in range(min(size, len(waiting)))]
        if given:
            worker.give(given)
        else:
            workers.pop(worker.pipe).end()

    def replace(worker: _Worker, why: str) -> Results:
        workers.pop(worker.pipe).end()
        # It was at its first, or died before it could say which: then that one is blamed too.
        lost, *rest = worker.todo
        waiting.extend(reversed(rest))
        yield lost, Outcome(State.NEEDS_PERSON, why)
        if waiting:
            start()

    try:
        for _ in range(count):
            start()
        while workers:
            ready = wait(list(workers), timeout=min(longest, 1.0))
            for pipe in ready:
                worker = workers[pipe]  # type: ignore[index]
                try:
                    index, outcome = worker.pipe.recv()
                except (EOFError, OSError):
                    yield from replace(worker, f"{CUT_OFF} ended the process it ran in.")
                    continue
                worker.todo.remove(index)
                worker.since = time.monotonic()
                yield index, outcome
                if not worker.todo:
                    supply(worker)
            for worker in list(workers.values()):
                if worker.todo and time.monotonic() - worker.since > longest:
                    yield from replace(worker, f"{CUT_OFF} took longer than {longest:g} s.")
    finally:
        for worker in list(workers.values()):
            worker.end()


def _work(
    items: Sequence[Any], how: Callable[[Any], Outcome], pipe: Connection, parent: Connection
) -> None:
    """Judge what comes down the pipe until it closes."""
    # Ctrl-C reaches every process of the group; the first one ends the others.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    parent.close()
    try:
        while True:
            for index in pipe.recv():
                pipe.send((index, how(items[index])))
    except (EOFError, OSError):
        return
