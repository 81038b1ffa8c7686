"""A bank is saved by one person at a time, who first finishes a save that was cut off."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from pathlib import Path

from itembank.errors import ItembankError
from itembank.files.disk import JOURNAL_FILE
from itembank.files.journal import finish
from itembank.people import lock
from itembank.people.lock import Holder, Manners, unwritable

WAIT_SECONDS = 10.0
"""How long somebody else's save is waited for; most take less than a second."""

STUCK_SECONDS = 60
"""Age from which a lock is not waited for: whoever holds it is not just saving."""


@contextlib.contextmanager
def locked(folder: Path | str) -> Iterator[Holder]:
    """Hold the lock of a bank while the body runs; another's is waited for, for a while.

    What one reads, changes and saves in the body is changed by nobody else in between.

    Raises:
        Locked: someone else holds it; the message tells who, and for how long.
        ItembankError: the folder cannot be written to.
    """
    folder = Path(folder)
    manners = Manners("saving this bank", WAIT_SECONDS, STUCK_SECONDS, refused="bank locked")
    nested = lock.holds(folder)
    with lock.locked(folder, manners) as mine:
        if not nested:
            _finish(folder)
        yield mine


def finish_saving(folder: Path | str) -> None:
    """Finish a save that was cut off in the middle, where there is one and it can be done.

    One that is just going on is waited for.
    """
    folder = Path(folder)
    if (folder / JOURNAL_FILE).exists():
        with contextlib.suppress(ItembankError), locked(folder):
            pass


def _finish(folder: Path) -> None:
    if (folder / JOURNAL_FILE).exists():
        try:
            finish(folder)
        except OSError as error:
            raise unwritable(folder, error) from None
