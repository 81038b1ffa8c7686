"""Writes a bank's files: whole or not at all, and never over what somebody else has changed."""

from __future__ import annotations

import os
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from itembank.bank.saving.bank_lock import locked
from itembank.bank.saving.journal import begin, end
from itembank.errors import ItembankError
from itembank.files.disk import beside, put_in_place, remove, stage, sync_folder, take_back
from itembank.files.snapshot import ChangedSince, Snapshot, take

__all__ = ["ChangedSince", "Snapshot", "save", "take"]


def save(folder: Path | str, changes: Sequence[tuple[Snapshot, str | None]]) -> None:
    """Save files of one bank under its lock; each is replaced whole. None takes a file away.

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
        for before, _ in changes:
            before.refuse_newer()
        ready: list[tuple[Snapshot, Path]] = []
        try:
            for before, text in changes:
                if text is not None:
                    ready.append((before, stage(_meant(before), before.encode(text))))
            gone = [before for before, text in changes if text is None]
            if len(changes) > 1:
                together = [(new, before.path) for before, new in ready]
                begin(folder, together, [before.path for before in gone])
            _take_places(ready, gone)
            with suppress(OSError):  # the names are right by now, if not yet on the disk
                sync_folder(folder)
        except OSError as error:
            raise ItembankError(
                f"{error.filename or folder}: this cannot be written ({error.strerror}), "
                "so nothing was saved."
            ) from None
        finally:
            if len(changes) > 1:
                end(folder)
            for _, new in ready:
                remove(new)


def _meant(file: Snapshot) -> Path:
    return Path(os.path.realpath(file.path))  # a link to a file stays a link


def _take_places(ready: Sequence[tuple[Snapshot, Path]], gone: Sequence[Snapshot]) -> None:
    """Give every new file its place, then take files away; put all back where one cannot."""
    moved: list[tuple[Path, Path | None]] = []
    try:
        for before, new in ready:
            at = _meant(before)
            moved.append((at, put_in_place(new, at)))
            before.refuse_other(moved[-1][1])
        for before in gone:
            if os.path.lexists(before.path):
                aside = beside(before.path)
                before.path.rename(aside)
                moved.append((before.path, aside))
                before.refuse_other(aside)
    except BaseException:
        for at, old in reversed(moved):
            take_back(at, old)
        raise
    for _, old in moved:
        if old is not None:
            remove(old)
