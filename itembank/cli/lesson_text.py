"""Where results are, for the commands of a week."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from itembank.cli.words.tell import tell_copies

if TYPE_CHECKING:
    from itembank.records.store.place import Place


def store_of(folder: Path) -> Place:
    """Return where a department's results are, and tell of copies beside them, once."""
    from itembank.records.store.place import store_place

    tell_copies(folder)
    return store_place(folder)
