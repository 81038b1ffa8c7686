"""One ``itembank week`` at a time in a department's folder."""

from __future__ import annotations

import contextlib
import os
import time
from collections.abc import Iterator
from pathlib import Path

from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError

SILENT_SECONDS = 2.0
"""After so long one who waits is told what for."""

WAIT_SECONDS = 300.0
"""After so long one who waits is sent away: no week takes that long to make."""


@contextlib.contextmanager
def one_at_a_time(folder: Path) -> Iterator[None]:
    """Wait until nobody else plans a week in a department's folder, then hold it.

    The system lets go of it with the process, however that ends, and nothing is left in the
    folder. Where folders cannot be held (on Windows, on some network drives) two at once are
    not kept apart; each still writes all or nothing.

    Raises:
        ItembankError: somebody else has held it for minutes.
    """
    handle = None
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
    try:
        if handle is not None:
            _hold(handle, folder)
        yield
    finally:
        if handle is not None:
            os.close(handle)


def _hold(handle: int, folder: Path) -> None:
    try:
        import fcntl
    except ImportError:
        return
    begun = time.monotonic()
    told = False
    while True:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
            return
        except BlockingIOError:
            waited = time.monotonic() - begun
        except OSError:  # folders cannot be held here
            return
        if waited > WAIT_SECONDS:
            raise ItembankError(
                f"{folder}: somebody has been planning a week here for minutes, so nothing was "
                "done. End that ‘itembank week’ if it hangs, then try again."
            )
        if waited > SILENT_SECONDS and not told:
            told = True
            say(f"Waiting: somebody else is planning a week in {folder}.", err=True)
        time.sleep(0.05)
