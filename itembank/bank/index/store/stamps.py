"""Tells whether a file is what it was, without reading it where that is certain.

A file is known by the hash of what it holds. Its *stamp* (size, time of change and so on) only
saves the reading, and only where a change could not go unseen:

* the system keeps a time of change that no program can set (``st_ctime`` on POSIX systems), so
  that neither ``touch`` nor a program that puts the old time back can hide an edit. On other
  systems every file is read every time;
* the stamp was old already when the file was hashed. Clocks of file systems tick slowly (2 s on
  FAT), so two edits within one tick may leave the same stamp; and the clock of a share may not
  be ours. So a stamp counts only where it is :data:`SETTLED` old.
"""

from __future__ import annotations

import hashlib
import os
import stat
import time
from pathlib import Path

SETTLED = 60 * 10**9
"""Nanoseconds after which a file that changes again is sure to have another stamp."""


def hash_of(data: bytes) -> bytes:
    """Return the hash that stands for what a file holds."""
    return hashlib.sha256(data).digest()


def stamp_of(path: Path) -> tuple[str, bool]:
    """Return a file's stamp, and whether it is settled: to be trusted when it comes again.

    The file is opened for it, since a share is bound to tell the truth only of what is opened.

    Raises:
        OSError: there is no such file, or it cannot be opened.
    """
    now = time.time_ns()
    handle = os.open(path, os.O_RDONLY | getattr(os, "O_BINARY", 0) | getattr(os, "O_NONBLOCK", 0))
    try:
        return _stamp(os.fstat(handle), now)
    finally:
        os.close(handle)


def _stamp(found: os.stat_result, now: int) -> tuple[str, bool]:
    parts = (found.st_size, found.st_mtime_ns, found.st_ctime_ns, found.st_ino, found.st_dev)
    newest = max(found.st_mtime_ns, found.st_ctime_ns)
    kept = os.name == "posix" and stat.S_ISREG(found.st_mode)
    return " ".join(map(str, parts)), kept and newest + SETTLED < now


def read_stamped(path: Path) -> tuple[bytes, str, bool]:
    """Return what a file holds with its stamp; settled only where it stayed the same meanwhile.

    Raises:
        OSError: there is no such file, or it cannot be read.
    """
    now = time.time_ns()
    with path.open("rb") as file:
        before, _ = _stamp(os.fstat(file.fileno()), now)
        data = file.read()
        after, settled = _stamp(os.fstat(file.fileno()), now)
    return data, after, settled and before == after
