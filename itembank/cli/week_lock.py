"""One ``itembank week`` at a time in a department's folder."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator
from pathlib import Path


@contextlib.contextmanager
def one_at_a_time(folder: Path) -> Iterator[None]:
    """Wait until nobody else plans a week in a department's folder, then hold it.

    The system lets go of it with the process, however that ends. Where folders cannot be held
    (on Windows, on some network drives) two at once are not kept apart; each still writes all
    or nothing.
    """
    handle = None
    with contextlib.suppress(ImportError, OSError):
        import fcntl

        handle = os.open(folder, os.O_RDONLY)
        fcntl.flock(handle, fcntl.LOCK_EX)
    try:
        yield
    finally:
        if handle is not None:
            os.close(handle)
