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
from collections.abc import Callable, Iterator, Sequence
from typing import Any, Protocol, TypeAlias

from itembank.processes.message_line import Line

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


class CannotTravel(Exception):
    """Some work cannot go to a new interpreter."""


def serve_line(line: Line, work: Callable[[Line], Serve]) -> None:
    """Be another process: settle down, say that it is there, and serve.

    A process that comes to an unforeseen end says nothing of it: that it is gone is told.
    """
    # Handlers that a copy has of its parent would tidy up what is the parent's.
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    if hasattr(signal, "pthread_sigmask"):
        signal.pthread_sigmask(signal.SIG_UNBLOCK, [signal.SIGINT])
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    with contextlib.suppress(EOFError, OSError):
        serve = work(line)
        line.send(BEGUN)
        serve(line)


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
