"""The line between two processes: whole messages, one after another, both ways."""

from __future__ import annotations

import contextlib
import os
import pickle
import struct
from typing import Any

_LENGTH = struct.Struct("<Q")


class Line:
    """One end of the line: messages are read from one descriptor and written to another.

    >>> reading, writing = os.pipe()
    >>> line = Line(reading, writing)
    >>> line.send(["a", 1])
    >>> line.receive()
    ['a', 1]
    >>> line.close()
    """

    def __init__(self, reading: int, writing: int) -> None:
        self.reading, self.writing = reading, writing
        self._open = True

    def send(self, message: object) -> None:
        """Send a message; nothing is sent of one that cannot be pickled.

        Raises:
            OSError: nobody reads at the other end.
        """
        data = pickle.dumps(message, pickle.HIGHEST_PROTOCOL)
        left = memoryview(_LENGTH.pack(len(data)) + data)
        while left:
            left = left[os.write(self.writing, left) :]

    def receive(self) -> Any:
        """Wait for the next message and return it.

        Raises:
            EOFError: the other end is closed.
        """
        (length,) = _LENGTH.unpack(self._read(_LENGTH.size))
        return pickle.loads(self._read(length))

    def _read(self, size: int) -> bytearray:
        data = bytearray()
        while len(data) < size:
            try:
                # os.read sets aside all the room it is asked for, whatever comes.
                part = os.read(self.reading, min(size - len(data), 1 << 20))
            except OSError:
                part = b""
            if not part:
                raise EOFError
            data += part
        return data

    def close(self) -> None:
        """Close this end; a second time does nothing."""
        if self._open:
            self._open = False
            for end in {self.reading, self.writing}:
                with contextlib.suppress(OSError):
                    os.close(end)
