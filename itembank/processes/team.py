"""Several processes at some pieces of work: who is at which, and what becomes of one that hangs.

Each process takes the next pieces as it becomes free, and answers for each. So it is known which
one it is at, and a piece that goes on without end, or ends its process, is told as lost: its
process is ended, another takes its place, and the rest go on. A process that was ended by
somebody else (the system, for want of memory) loses nothing: its piece is tried once more.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import islice
from typing import Any, TypeVar, cast

from itembank.processes.answer import DONE, Faults, attempt, say
from itembank.processes.child import BEGUN, CannotTravel, Child, Kind
from itembank.processes.lost import Lost, Results
from itembank.processes.message_line import Line

P = TypeVar("P")
R = TypeVar("R")

HANDED_OUT = 16
"""Pieces a process is given at a time, at most."""

AHEAD = 4
"""Pieces for each process that are taken ahead of time, where they come one by one."""

ENDED = "ended the process it ran in"

STARTING = 60.0
"""Seconds in which a process has to be there, which are no piece's."""

LOOK_EVERY = 1.0
"""Seconds after which those at work are looked at, whether they have spoken or not."""


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
        # The next one stands last, from where it is taken without moving the others.
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
                if worker in ready or not worker.todo:
                    continue
                worker.spent += passed
                if not worker.begun:
                    if worker.spent > STARTING:
                        self._never_there(worker)
                elif self._longest is not None and worker.spent > self._longest:
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
        # Fewer and fewer, so that in the end all of them are through at about the same time.
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
                self._never_there(worker)
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

    def _never_there(self, worker: _Worker) -> None:
        """Leave what a process was given to others: it did not come to be."""
        self._dismiss(worker)
        self._put_back(worker.todo)

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
