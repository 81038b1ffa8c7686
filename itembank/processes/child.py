"""One other process: how it is started, spoken with and ended.

There are two kinds. A *forked* process is a copy of this one: it begins in a few milliseconds,
has all that was loaded here, and takes any work. A *spawned* process is a new interpreter: that
works on every system and beside threads, takes a tenth of a second and loads everything anew,
and its work has to travel: a function by its name, and data.

Neither outlives this process, even if this one is killed: Linux ends them with it; elsewhere
each reads its line in a thread, and ends when that closes. A Ctrl-C at the keyboard is for this
process alone, which ends the others.
"""

from __future__ import annotations

import contextlib
import os
import signal
import sys
import weakref
from collections.abc import Callable, Iterator, Sequence
from typing import Any, ClassVar, Protocol, TypeAlias

from itembank.processes.line import Line
from itembank.processes.machine import can_fork

Serve: TypeAlias = Callable[[Line], None]
"""What another process does: it is given its end of the line, and ends when this returns."""

BEGUN = None
"""The first message of every process: it is there, and knows what to do."""


class Child(Protocol):
    """Another process, from the side of the one that started it."""

    pid: int
    """Its number; 0 once it has ended."""

    def send(self, message: object) -> None:
        """Send it a message.

        Raises:
            OSError: it is gone.
        """

    def receive(self) -> Any:
        """Wait for its next message; the first is :data:`BEGUN`.

        Raises:
            EOFError: it is gone.
        """

    def end(self) -> None:
        """End it, whatever it does; a second time does nothing."""


class Kind(Protocol):
    """A kind of process: called with what it is to do, it starts one.

    Raises:
        OSError: the system refuses another process.
        CannotTravel: the process would be a new interpreter, and its work cannot go there.
    """

    inherits: bool
    """Whether such a process has all that was loaded and made here."""

    def __call__(self, serve: Serve, /) -> Child:
        """Start one."""

    def ready(self, children: Sequence[Any], seconds: float | None, /) -> list[Any]:
        """Wait until any of these has spoken or is gone, so long at most; return those."""


def best_kind() -> Kind:
    """Return the kind of process that is best on this system.

    >>> best_kind().inherits == can_fork()
    True
    """
    if can_fork():
        return Forked
    from itembank.processes.spawned import Spawned

    return Spawned


class CannotTravel(Exception):
    """Some work cannot go to a new interpreter."""


class Forked:
    """A copy of this process.

    >>> child = Forked(lambda line: line.send(line.receive() + 1))
    >>> child.send(41)
    >>> child.receive() is BEGUN, child.receive()
    (True, 42)
    >>> child.end()
    """

    inherits = True
    # Lines of this process to others. A copy of it has to close them, or they would stay open
    # for as long as it lives.
    _lines: ClassVar[weakref.WeakSet[Line]] = weakref.WeakSet()

    def __init__(self, serve: Serve) -> None:
        parent = os.getpid()
        theirs_in, ours_out = os.pipe()
        ours_in, theirs_out = os.pipe()
        with no_interrupts():
            try:
                self.pid = os.fork()
            except OSError:
                for one in (theirs_in, ours_out, ours_in, theirs_out):
                    os.close(one)
                raise
            if not self.pid:
                try:
                    os.close(ours_in)
                    os.close(ours_out)
                    for line in list(self._lines):
                        line.close()
                    line = Line(theirs_in, theirs_out)
                    serve_line(line if ends_with(parent) else watched(line), lambda _: serve)
                finally:
                    os._exit(0)  # without any of its owner's tidying
        os.close(theirs_in)
        os.close(theirs_out)
        self._line = Line(ours_in, ours_out)
        self._lines.add(self._line)

    def send(self, message: object) -> None:
        """Send it a message."""
        self._line.send(message)

    def receive(self) -> Any:
        """Wait for its next message."""
        return self._line.receive()

    def end(self) -> None:
        """End it, whatever it does."""
        if self.pid:
            self._line.close()
            os.kill(self.pid, signal.SIGKILL)
            os.waitpid(self.pid, 0)
            self.pid = 0

    @staticmethod
    def ready(children: Sequence[Forked], seconds: float | None) -> list[Forked]:
        """Wait until any of these has spoken or is gone, so long at most; return those."""
        import select

        poll = select.poll()
        by_place = {child._line.reading: child for child in children}
        for place in by_place:
            poll.register(place, select.POLLIN)
        return [
            by_place[place] for place, _ in poll.poll(None if seconds is None else seconds * 1000)
        ]


def serve_line(line: Line, work: Callable[[Line], Serve]) -> None:
    """Be another process: settle down, say that it is there, and serve.

    A process that comes to an unforeseen end says nothing of it: that it is gone is told.
    """
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(signal, "pthread_sigmask"):
        signal.pthread_sigmask(signal.SIG_UNBLOCK, [signal.SIGINT])
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    with contextlib.suppress(EOFError, OSError):
        serve = work(line)
        line.send(BEGUN)
        serve(line)


def watched(line: Line) -> Line:
    """Return a line whose closing ends this process, whatever it is at."""
    from itembank.processes.spawned import Watched

    return Watched(line)


@contextlib.contextmanager
def no_interrupts() -> Iterator[None]:
    """Hold back Ctrl-C while a process is started, so that it never meets one unprepared."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, [signal.SIGINT])
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


_PR_SET_PDEATHSIG = 1


def ends_with(parent: int) -> bool:
    """Have the system end this process as soon as its parent ends; tell whether it can."""
    if sys.platform != "linux":
        return False
    try:
        import ctypes

        done: bool = ctypes.CDLL(None).prctl(_PR_SET_PDEATHSIG, int(signal.SIGKILL), 0, 0, 0) == 0
    except (ImportError, OSError, AttributeError):
        return False
    if done and os.getppid() != parent:  # it was gone before we asked
        os._exit(0)
    return done
