"""Clears indexes away that nobody uses any more, so that a cache does not grow for ever.

Every version of this program has an index of its own of each bank (:mod:`.index_place`), and a
bank that was moved leaves one behind.
"""

from __future__ import annotations

import contextlib
import os
import re
import time
from pathlib import Path

from itembank.bank.index.store.index_tables import APPLICATION

_OURS = re.compile(r"[0-9a-f]{32}(?:-[0-9a-f]{16})?\.sqlite3")
VERSIONS = 3
"""So many indexes of one bank are kept, each of another version of this program."""
KEPT_FOR = 60 * 24 * 3600.0
"""Seconds after which an index that nobody has used is cleared away."""
_NOTED_EVERY = 24 * 3600.0


def note_use(path: Path) -> None:
    """Note that an index is in use, once a day: its time of change tells it."""
    with contextlib.suppress(OSError):
        if path.stat().st_mtime + _NOTED_EVERY < time.time():
            os.utime(path)


def clear_old(path: Path) -> None:
    """Clear away indexes that are no longer used, now that one was made at `path`.

    They are those of any bank that were not used for :data:`KEPT_FOR`, and those of this bank
    beyond the last :data:`VERSIONS`. Nothing else in the folder is touched.
    """
    with contextlib.suppress(OSError):
        found = sorted(_indexes(path.parent), reverse=True)
        bank = path.name[:32]
        same = [file for _, file in found if file.name.startswith(bank) and file != path]
        old = [file for used, file in found if used + KEPT_FOR < time.time() and file != path]
        for unused in dict.fromkeys([*same[VERSIONS - 1 :], *old]):
            with contextlib.suppress(OSError):  # another program may hold it, or have taken it
                remove_index(unused)


def _indexes(home: Path) -> list[tuple[float, Path]]:
    found = []
    for path in home.iterdir():
        if _OURS.fullmatch(path.name):
            with contextlib.suppress(OSError), path.open("rb") as file:
                # SQLite's file format: the application's mark stands at byte 68.
                if file.read(72)[68:] == APPLICATION.to_bytes(4, "big"):
                    found.append((path.stat().st_mtime, path))
    return found


def remove_index(path: Path) -> None:
    """Take an index off the disk with all that SQLite keeps beside it.

    Raises:
        OSError: it cannot be removed.
    """
    for end in ("", "-journal", "-wal", "-shm"):
        with contextlib.suppress(FileNotFoundError):
            path.with_name(path.name + end).unlink()
