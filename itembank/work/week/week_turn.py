"""One week at a time is planned in a department's folder."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from pathlib import Path

from itembank.people.lock import Manners, Unwritable, Waiting, locked

WAIT_SECONDS = 300.0
"""After so long one who waits is sent away, and a lock was left behind: no week takes that long."""
FILE = ".week-lock"


@contextlib.contextmanager
def one_at_a_time(folder: Path, waiting: Waiting | None = None) -> Iterator[None]:
    """Wait until nobody else plans a week in a department's folder, then hold it.

    Where nothing can be written in the folder, two at once are not kept apart: what they make of
    it goes elsewhere, and is written all or not at all.

    Raises:
        Locked: somebody else has held it for minutes.
    """
    manners = Manners("planning a week here", WAIT_SECONDS, stale=WAIT_SECONDS, file=FILE)
    with contextlib.ExitStack() as stack:
        with contextlib.suppress(Unwritable):
            stack.enter_context(locked(folder, manners, waiting))
        yield
