"""Several changes of a bank that a person made in one go are one change to take back."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from pathlib import Path

from itembank.bank.saving.bank_lock import locked
from itembank.bank.saving.kept_changes import (
    FileWas,
    KeptChange,
    file_was,
    read_changes,
    write_changes,
)
from itembank.today import today


@contextlib.contextmanager
def as_one_change(folder: Path, words: str) -> Iterator[None]:
    """Have all changes of a bank within the block be taken back in one go, under these words.

    Where the block is broken off by an error, what of it was done is one change too. The bank
    is locked meanwhile.

    Raises:
        Locked: somebody else is saving the bank.
    """
    with locked(folder):
        known = read_changes(folder)
        before = _files(folder)
        try:
            yield
        finally:
            files = tuple(_changed(before, _files(folder)))
            if files and read_changes(folder) != known:
                write_changes(folder, [*known, KeptChange(words, today(), files)])


def _files(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.glob("*.toml"))}


def _changed(before: dict[str, bytes], after: dict[str, bytes]) -> Iterator[FileWas]:
    for name in sorted({*before, *after}):
        if before.get(name) != after.get(name):
            yield file_was(name, before.get(name), after.get(name))
