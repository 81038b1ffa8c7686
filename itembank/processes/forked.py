"""A copy of this process as the other one: quickly there, with all that was loaded here."""

from __future__ import annotations

import os
import select
import signal
import weakref
from collections.abc import Sequence
from typing import Any, ClassVar

from itembank.processes.child import Serve, ends_with, no_interrupts, serve_line
from itembank.processes.message_line import Line
from itembank.processes.watched import Watched


class Forked:
    """A copy of this process.

    >>> from itembank.processes.child import BEGUN
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
                for end in (theirs_in, ours_out, ours_in, theirs_out):
                    os.close(end)
                raise
            if not self.pid:
                try:
                    os.close(ours_in)
                    os.close(ours_out)
                    for line in list(self._lines):
                        line.close()
                    line = Line(theirs_in, theirs_out)
                    serve_line(line if ends_with(parent) else Watched(line), lambda _: serve)
                finally:
                    os._exit(0)  # without any of its owner's tidying
        # Held open here, these ends would keep it from showing that the other process is gone.
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
        poll = select.poll()
        by_place = {child._line.reading: child for child in children}
        for place in by_place:
            poll.register(place, select.POLLIN)
        return [
            by_place[place] for place, _ in poll.poll(None if seconds is None else seconds * 1000)
        ]
