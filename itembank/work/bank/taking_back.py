"""Takes changes of a bank back, the last one first."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True, slots=True)
class BankChange:
    """A change of a bank: what was done, on which day, and in which files."""

    words: str
    on: datetime.date
    files: tuple[str, ...]


def changes_of(folder: Path) -> tuple[BankChange, ...]:
    """Return the changes of a bank that are known, the latest first."""
    from itembank.bank.saving.kept_changes import read_changes

    return tuple(
        BankChange(each.words, each.on, tuple(file.name for file in each.files))
        for each in reversed(read_changes(folder))
    )


def take_back(folder: Path) -> BankChange:
    """Take the last change of a bank back, to the byte, and return what it was.

    Raises:
        ItembankError: there is no such bank, no change of it is known, or somebody has changed
            one of its files since; all stays as it is.
    """
    from itembank.bank.saving.last_change import take_last_back

    last = take_last_back(folder)
    return BankChange(last.words, last.on, tuple(file.name for file in last.files))
