"""A line whose closing is noticed at once, whatever its process is at."""

from __future__ import annotations

import os
import threading
from queue import SimpleQueue
from typing import Any

from itembank.processes.message_line import Line


class Watched(Line):
    """A line that is read in a thread at once, which ends this process when it closes."""

    def __init__(self, line: Line) -> None:
        super().__init__(line.reading, line.writing)
        self._inbox: SimpleQueue[Any] = SimpleQueue()
        self._line = line
        threading.Thread(target=self._watch, daemon=True).start()

    def _watch(self) -> None:
        while True:
            try:
                self._inbox.put(self._line.receive())
            except Exception:  # nobody is there to be served
                os._exit(0)

    def receive(self) -> Any:
        """Wait for the next message."""
        return self._inbox.get()
