"""Several files of a bank that take their places together, even if the power fails in between.

Before the first takes its place, a hidden file says which are to. Whoever holds the bank's lock
next, or reads the bank, finishes what it says.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from itembank.files.disk import JOURNAL_FILE, remove, sync_folder, write_first
from itembank.files.renaming import put_in_place


def begin(folder: Path, new: Iterable[tuple[Path, Path]], gone: Iterable[Path]) -> None:
    """Say which staged files are to take which places in a folder, and which files are to go.

    A file that is staged lies beside what its place is a link to, if that is a link.

    Raises:
        OSError: it cannot be written.
    """
    record = {
        "new": [[beside.name, at.name, _mark(at), _mark(beside)] for beside, at in new],
        "gone": [[at.name, _mark(at)] for at in gone],
    }
    write_first(folder / JOURNAL_FILE, json.dumps(record).encode())


def end(folder: Path) -> None:
    """Say that all is done, or undone."""
    remove(folder / JOURNAL_FILE)


def finish(folder: Path) -> None:
    """Finish what a killed program began; the bank's lock is held.

    A file that somebody has changed since then is left as it is.

    Raises:
        OSError: it cannot be written.
    """
    for staged, place, was, mark in _rows(folder, "new", 4):
        if not (staged and place):
            continue
        at = Path(os.path.realpath(folder / place))
        new = at.with_name(staged)
        # Only where both are as they were left: anything else, somebody has done since.
        if _mark(at) == was != mark and _mark(new) == mark:
            old = put_in_place(new, at)
            if old is not None:
                remove(old)
        elif _mark(at) == mark:
            remove(new)
    for place, was in _rows(folder, "gone", 2):
        if place and was is not None and _mark(folder / place) == was:
            remove(folder / place)
    with contextlib.suppress(OSError):
        sync_folder(folder)
    end(folder)


def _rows(folder: Path, kind: str, wide: int) -> list[list[Any]]:
    """Return what the journal says of one kind; one that cannot be read says nothing."""
    try:
        rows = json.loads((folder / JOURNAL_FILE).read_text("utf-8"))[kind]
        return [row for row in rows if len(row) == wide and all(map(_is_name_or_mark, row))]
    except (OSError, ValueError, LookupError, TypeError, RecursionError):
        return []


def _is_name_or_mark(part: object) -> bool:
    """Tell whether a part of the journal is no path: it speaks of this folder's files alone."""
    # A journal may be anybody's file: a path in it could reach out of the folder.
    return part is None or (isinstance(part, str) and Path(part).name == part)


def _mark(path: Path) -> str | None:
    """Return what tells a file's content from any other, or None where there is no file."""
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except FileNotFoundError:
        return None
