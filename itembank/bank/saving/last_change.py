"""Takes the last change of a bank back, to the byte."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from pathlib import Path

from itembank.bank.saving.bank_lock import locked
from itembank.bank.saving.kept_changes import KeptChange, read_changes, still_done, write_changes
from itembank.bank.saving.save import save
from itembank.errors import ItembankError
from itembank.files.faults import join_words
from itembank.files.snapshot import Snapshot, take_bytes

Going = Callable[[KeptChange, frozenset[str]], None]
"""Told of a change that is to be taken back, and the ids of the questions that go with it."""


def take_last_back(folder: Path, going: Going | None = None) -> KeptChange:
    """Have the files of a bank be what they were before its last change; return that change.

    `going` is told before anything is done, and may refuse it by raising an error.

    Raises:
        ItembankError: no change is known, or somebody has changed one of the files since; all
            stays as it is.
    """
    with locked(folder):
        kept = still_done(folder, read_changes(folder))
        if not kept:
            raise ItembankError("Nothing in this bank can be taken back: no change of it is known.")
        last = kept[-1]
        found: list[tuple[Snapshot, bytes | None]] = []
        changed = []
        for file in last.files:
            now = take_bytes(folder / file.name)
            try:
                found.append((now, file.was(now.raw)))
            except ValueError:
                changed.append(file.name)
        if changed:
            verb = "has" if len(changed) == 1 else "have"
            raise ItembankError(
                f"‘{last.words}’ cannot be taken back: {join_words(changed)} {verb} been changed "
                "since by somebody else, whose work would be lost. Nothing was done."
            )
        if going is not None:
            here = frozenset().union(*(_ids(now.raw) for now, _ in found))
            going(last, here.difference(*(_ids(was) for _, was in found)))
        save(folder, found)
        write_changes(folder, kept[:-1])
    return last


def _ids(raw: bytes | None) -> frozenset[str]:
    """Return the ids of the questions that a file holds."""
    try:
        items = tomllib.loads((raw or b"").decode("utf-8-sig")).get("items", [])
        return frozenset(str(item["id"]) for item in items)
    except (ValueError, LookupError, TypeError, AttributeError):
        return frozenset()
