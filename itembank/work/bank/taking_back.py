"""Takes changes of a bank back, the last one first."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.planning.department.department import FILE_NAME

if TYPE_CHECKING:
    from itembank.bank.saving.kept_changes import KeptChange


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
        BankChange(change.words, change.on, tuple(file.name for file in change.files))
        for change in reversed(read_changes(folder))
    )


def take_back(folder: Path, home: Path | None = None) -> BankChange:
    """Take the last change of a bank back, to the byte, and return what it was.

    `home` is the department whose plans may ask its questions; the one around the bank's folder
    if left out.

    Raises:
        ItembankError: there is no such bank, no change of it is known, somebody has changed one
            of its files since, or a plan asks a question that would go; all stays as it is.
    """
    from itembank.bank.saving.last_change import take_last_back

    around = home or next(
        (above for above in folder.resolve().parents if (above / FILE_NAME).is_file()), None
    )

    def going(change: KeptChange, ids: frozenset[str]) -> None:
        if around is not None and ids:
            _refuse_asked(around, folder, change, ids)

    last = take_last_back(folder, going)
    return BankChange(last.words, last.on, tuple(file.name for file in last.files))


def _refuse_asked(home: Path, folder: Path, change: KeptChange, ids: frozenset[str]) -> None:
    from itembank.planning.week.plans_asking import plans_asking
    from itembank.work.bank.banks_at_hand import name_and_title

    name, _ = name_and_title(folder)
    asking = plans_asking(home, {f"{name}:{id}" for id in ids}.__contains__)
    if asking:
        first = asking[0]
        raise ItembankError(
            f"‘{change.words}’ is not taken back: {first.class_name} is asked {first.address} by "
            f"{first.path.name}. Take it out of that week first, or retire the question."
        )
