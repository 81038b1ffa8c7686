"""Many pieces of work on several processes, so that none of them can hold up the others.

Each process takes the next pieces as it becomes free, and answers for each. So it is known which
one it is at, and a piece that goes on without end, or ends its process, is told as lost: its
process is ended, another takes its place, and the rest go on. A process that was ended by
somebody else (the system, for want of memory) loses nothing: its piece is tried once more.
"""

from __future__ import annotations

import importlib
import time
from collections.abc import Callable, Generator, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import chain, islice
from typing import Any, TypeAlias, TypeVar, cast

from itembank.processes import machine
from itembank.processes.answer import DONE, Faults, attempt, say
from itembank.processes.child import BEGUN, CannotTravel, Child, Kind
from itembank.processes.kinds import best_kind
from itembank.processes.message_line import Line

P = TypeVar("P")
R = TypeVar("R")

HANDED_OUT = 16
"""Pieces a process is given at a time, at most."""
AHEAD = 4
"""Pieces for each process that are taken ahead of time, where they come one by one."""
ENDED = "ended the process it ran in"
LOOK_EVERY = 1.0
"""Seconds after which those at work are looked at, whether they have spoken or not."""


@dataclass(frozen=True, slots=True)
class Lost:
    """A piece of work that has no result, and why: ``took longer than 30 s``."""

    why: str


Results: TypeAlias = Generator[tuple[int, R | Lost], None, None]
"""The place of each piece, and what came of it, as they come."""


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


class _Worker:
    """A process, what it was given to do, and how long it has been at the first of it."""

    def __init__(self, child: Child, begun: bool = False) -> None:
        self.child = child
        self.todo: list[int] = []
        self.spent = 0.0
        self.begun = begun


class Team:
    """Several processes at some pieces of work.

    `idle` holds processes that have begun and wait, which are used first, and to which those
    that wait in the end are added: new interpreters, which know nothing of these pieces.
    """

    def __init__(
        self,
        how: Callable[[P], R],
        pieces: Sequence[P],
        count: int,
        longest: float | None,
        kind: Kind,
        idle: list[Child] | None = None,
        feed: Iterator[P] | None = None,
    ) -> None:
        self.pieces: list[Any] = list(pieces) if feed else cast("list[Any]", pieces)
        self.wanted = 0
        """Where there is a feed: the place of the first piece that is still waited for."""
        self._how, self._count, self._feed = how, count, feed
        self._inherits = kind.inherits and feed is None
        self._longest, self._kind, self._idle = longest, kind, idle
        self._waiting = list(range(len(pieces)))[::-1]
        self._stay: list[int] = []  # pieces that cannot travel
        self._workers: list[_Worker] = []
        self._suspects: set[int] = set()  # pieces whose process ended once already
        self._faults = Faults()

    @property
    def left(self) -> list[int]:
        """The pieces that nobody has done: no process would begin, or they cannot travel."""
        return sorted({*self._waiting, *self._stay})

    def work(self, look: Callable[[], None] | None = None) -> Results[Any]:
        """Yield the place and the result of every piece, as they come.

        `look` is called every second or oftener; what it raises ends the work.
        """
        for _ in range(self._count):
            self._hire()
        then = time.monotonic()
        while busy := [worker for worker in self._workers if worker.todo]:
            ready = self._ready(busy)
            if look:
                look()
            for worker in ready:
                yield from self._hear(worker)
            now = time.monotonic()
            # Where all of us stood still (a laptop that slept), no piece is to be blamed.
            passed, then = min(now - then, 2 * LOOK_EVERY), now
            for worker in busy:
                if worker in ready or self._longest is None or not worker.todo:
                    continue
                worker.spent += passed
                if worker.spent > self._longest:
                    place, *rest = worker.todo
                    yield place, Lost(f"took longer than {self._longest:g} s")
                    self._replace(worker, rest)
            for worker in self._workers:
                if not worker.todo:
                    self._supply(worker)
        for place in self._suspects.intersection(self._waiting):  # not to be tried in here
            self._waiting.remove(place)
            yield place, Lost(ENDED)
        self._faults.tell()

    def end(self) -> None:
        """End every process; one that waits is kept where there is a place for it."""
        for worker in self._workers:
            if self._idle is not None and worker.begun and not worker.todo:
                self._idle.append(worker.child)
            else:
                worker.child.end()
        self._workers = []

    def _ready(self, busy: Sequence[_Worker]) -> list[_Worker]:
        spoken = self._kind.ready([worker.child for worker in busy], LOOK_EVERY)
        return [worker for worker in busy if worker.child in spoken]

    def _hire(self) -> None:
        """Set one more process to work, if there is work and the system lets it begin."""
        self._take()
        if not self._waiting:
            return
        if self._idle:
            worker = _Worker(self._idle.pop(), begun=True)
        else:
            serve = (
                partial(_serve_inherited, self._how, self.pieces)
                if self._inherits
                else _serve_given
            )
            try:
                worker = _Worker(self._kind(serve))
            except (OSError, CannotTravel):
                return
        self._workers.append(worker)
        self._supply(worker)

    def _take(self) -> None:
        """Take more pieces from the feed, as long as those ahead of the one wanted are few."""
        while self._feed and len(self.pieces) < self.wanted + AHEAD * self._count:
            for piece in islice(self._feed, 1):
                self._waiting.insert(0, len(self.pieces))
                self.pieces.append(piece)
                break
            else:
                self._feed = None

    def _supply(self, worker: _Worker) -> None:
        """Give a process the next pieces; one that is gone shows when it is listened to."""
        self._take()
        size = min(HANDED_OUT, max(1, len(self._waiting) // (2 * self._count)))
        given: list[int] = []
        while self._waiting and len(given) < size:
            if given and self._suspects.intersection((given[-1], self._waiting[-1])):
                break  # such a one goes alone
            given.append(self._waiting.pop())
        worker.todo, worker.spent = given, 0.0
        if not given:
            return
        message: Any = given
        if not self._inherits:
            message = (self._how, [(place, self.pieces[place]) for place in given])
        try:
            worker.child.send(message)
        except OSError:
            pass
        except Exception:  # pickle has many words for what it cannot do
            worker.todo = []
            self._stay += given

    def _hear(self, worker: _Worker) -> Results[Any]:
        try:
            message = worker.child.receive()
        except EOFError:
            # It was at its first, or gone before it could say what came of it; unless it never
            # came to be, which is no fault of any piece.
            place, *rest = worker.todo
            if not worker.begun:
                self._dismiss(worker)
                self._put_back(worker.todo)
            elif place in self._suspects:
                yield place, Lost(ENDED)
                self._replace(worker, rest)
            else:
                self._suspects.add(place)
                self._waiting.insert(0, place)  # last of all
                self._replace(worker, rest)
            return
        worker.spent = 0.0
        if message is BEGUN:
            worker.begun = True
            return
        answer, place = message
        worker.todo.remove(place)
        if answer[0] == DONE:
            yield place, answer[1]
        else:
            self._faults.note(place, answer)
            self._put_back([])

    def _replace(self, worker: _Worker, rest: Sequence[int]) -> None:
        """Put another process in the place of one that is gone, or is at its piece too long."""
        self._dismiss(worker)
        self._put_back(rest)
        self._hire()

    def _dismiss(self, worker: _Worker) -> None:
        self._workers.remove(worker)
        worker.child.end()

    def _put_back(self, places: Sequence[int]) -> None:
        self._waiting = self._faults.still_wanted([*self._waiting, *reversed(places)])


def _serve_inherited(how: Callable[[P], R], pieces: Sequence[P], line: Line) -> None:
    """Do pieces that this process has of its parent, and is told by their places."""
    while True:
        for place in line.receive():
            say(line, attempt(partial(how, pieces[place])), place)


def _serve_given(line: Line) -> None:
    """Do pieces that are sent, with what is to be done."""
    while True:
        how, given = line.receive()
        for place, piece in given:
            say(line, attempt(partial(how, piece)), place)
