"""Where a department's results are; said without loading the database's library."""

from __future__ import annotations

import os
from pathlib import Path

FILE_NAME = "results.sqlite3"
VARIABLE = "ITEMBANK_STORE"
"""The environment variable that names a shared store, so that no password stands in a file."""


def store_place(folder: Path) -> str:
    """Return where a department's results are: the URL in ITEMBANK_STORE, or its own file."""
    return os.environ.get(VARIABLE) or str(folder / FILE_NAME)


def is_there(place: str) -> bool:
    """Tell whether there may be results at a place: a file that exists, or any server."""
    return "://" in place or Path(place).exists()
