"""A new interpreter as the other process: on systems that cannot fork, and beside threads."""

from __future__ import annotations

import contextlib
import json
import os
import pickle
import subprocess
import sys
import threading
import time
from collections.abc import Sequence
from queue import SimpleQueue
from typing import Any, cast

from itembank.processes.child import CannotTravel, Serve, ends_with, no_interrupts, serve_line
from itembank.processes.message_line import Line
from itembank.processes.watched import Watched

_BEGIN = (
    "import sys, json; sys.path[:] = json.loads(sys.argv[1]); "
    "from itembank.processes.spawned import main; main(int(sys.argv[2]))"
)
_GONE = object()


class Spawned:
    """A new interpreter that serves.

    What it says is read in a thread, since not every system can wait for several lines at once.
    """

    inherits = False
    _spoken = threading.Condition()

    def __init__(self, serve: Serve) -> None:
        try:
            pickle.dumps(serve)
        except Exception as error:  # pickle has many words for what it cannot do
            raise CannotTravel(str(error)) from None
        if not sys.executable:
            raise OSError("there is no interpreter to start")
        # The new interpreter is to find modules where this one does, however that came about.
        command = [sys.executable, "-c", _BEGIN, json.dumps(sys.path), str(os.getpid())]
        # On Windows a group of its own is what keeps Ctrl-C from it.
        group = getattr(subprocess, "CREATE_NEW_PROCESS_GROUP", 0)
        with no_interrupts():
            self._process = subprocess.Popen(
                command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, creationflags=group
            )
        self.pid = self._process.pid
        assert self._process.stdin is not None
        assert self._process.stdout is not None
        self._line = Line(self._process.stdout.fileno(), self._process.stdin.fileno())
        self._inbox: SimpleQueue[Any] = SimpleQueue()
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()
        with contextlib.suppress(OSError):
            self._line.send(serve)

    def _read(self) -> None:
        while True:
            try:
                message = self._line.receive()
            except Exception:  # gone, or what it said makes no sense here
                message = _GONE
            with self._spoken:
                self._inbox.put(message)
                self._spoken.notify_all()
            if message is _GONE:
                return

    def send(self, message: object) -> None:
        """Send it a message."""
        self._line.send(message)

    def receive(self) -> Any:
        """Wait for its next message."""
        self.ready([self], None)
        message = self._inbox.get()
        if message is _GONE:
            self._inbox.put(message)
            raise EOFError
        return message

    def end(self) -> None:
        """End it, whatever it does."""
        self.pid = 0
        self._process.kill()
        self._process.wait()
        self._reader.join()
        for pipe in (self._process.stdin, self._process.stdout):
            with contextlib.suppress(OSError):
                cast("Any", pipe).close()

    @classmethod
    def ready(cls, children: Sequence[Spawned], seconds: float | None) -> list[Spawned]:
        """Wait until any of these has spoken or is gone, so long at most; return those."""
        end = None if seconds is None else time.monotonic() + seconds
        with cls._spoken:
            while True:
                found = [child for child in children if not child._inbox.empty()]
                left = 0.5 if end is None else end - time.monotonic()
                if found or left <= 0:
                    return found
                # Not for ever at once: some systems take a Ctrl-C only between two waits.
                cls._spoken.wait(min(left, 0.5))


def main(parent: int) -> None:
    """Be a new interpreter that serves: what it is to do comes as its first message."""
    line = Line(os.dup(0), os.dup(1))
    # What anything prints here is not for the line.
    nowhere = os.open(os.devnull, os.O_RDWR)
    os.dup2(nowhere, 0)
    os.dup2(nowhere if sys.stderr is None else 2, 1)
    ends_with(parent)
    try:
        serve_line(Watched(line), lambda line: cast("Serve", line.receive()))
    finally:
        os._exit(0)
