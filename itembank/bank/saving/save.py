"""Writes a bank's files: whole or not at all, and never over what somebody else has changed."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from itembank.bank.saving.bank_lock import locked
from itembank.errors import ItembankError
from itembank.files.snapshot import ChangedSince, Snapshot, take, take_bytes
from itembank.files.together import Together

__all__ = ["ChangedSince", "Snapshot", "save", "take", "take_bytes"]


def save(
    folder: Path | str,
    changes: Sequence[tuple[Snapshot, str | bytes | None]],
    words: str = "",
) -> None:
    """Save files of one bank under its lock; each is replaced whole. None takes a file away.

    Text is written as the file writes it, bytes as they are. What the files were is kept
    (:mod:`.kept_changes`) where `words` say what is done, as in *share-3 added*.

    Every file is compared with its snapshot before any is written, and all of them are on the
    disk before the first takes its place. They take their places in the order given; where the
    power fails in between, whoever reads or saves the bank next finishes it.

    Raises:
        ChangedSince: a file is not what it was when it was read. Nothing is written.
        Locked: someone else is saving the bank. Nothing is written.
        ItembankError: the folder cannot be written to. Nothing is written.
    """
    folder = Path(folder)
    with locked(folder):
        new: list[tuple[Snapshot, bytes | None]] = [
            (before, before.encode(text) if isinstance(text, str) else text)
            for before, text in changes
        ]
        for before, _ in changes:
            before.refuse_newer()
        try:
            with Together(folder) as change:
                for before, data in new:
                    if data is not None:
                        change.file(before.path, data, was=before)
                for before, data in new:
                    if data is None:
                        change.take_away(before)
        except OSError as error:
            raise ItembankError(
                f"{error.filename or folder}: this cannot be written ({error.strerror}), "
                "so nothing was saved."
            ) from None
        if words:
            _keep(folder, new, words)


def _keep(folder: Path, changes: Sequence[tuple[Snapshot, bytes | None]], words: str) -> None:
    from itembank.bank.saving.kept_changes import (
        KeptChange,
        file_was,
        read_changes,
        write_changes,
    )
    from itembank.today import today

    files = tuple(file_was(before.path.name, before.raw, data) for before, data in changes)
    write_changes(folder, [*read_changes(folder), KeptChange(words, today(), files)])
