"""Where a department's results are; said without loading the database's library."""

from __future__ import annotations

import os
from pathlib import Path

from itembank.data_class import dataclass

FILE_NAME = "results.sqlite3"
VARIABLE = "ITEMBANK_STORE"
"""The environment variable that names a shared store, so that no password stands in a file."""


@dataclass(frozen=True, slots=True)
class StorePlace:
    """A results store: the path of its file, or its URL, and the department's folder."""

    where: str
    folder: Path

    @property
    def is_file(self) -> bool:
        """Tell whether it is a file, and not on a server."""
        return "://" not in self.where

    @property
    def path(self) -> Path:
        """Return the path of its file."""
        return Path(self.where)

    def may_be_there(self) -> bool:
        """Tell whether there may be results: a file that exists, or any server."""
        return not self.is_file or self.path.exists()

    def __str__(self) -> str:
        """Return the path or the URL."""
        return self.where


def store_place(folder: Path) -> StorePlace:
    """Return where a department's results are: the URL in ITEMBANK_STORE, or its own file."""
    return StorePlace(os.environ.get(VARIABLE) or str(folder / FILE_NAME), folder)


def place_of(where: str | StorePlace) -> StorePlace:
    """Return a place as such; a path alone is in the folder of its department.

    >>> place_of("school/results.sqlite3").folder.as_posix()
    'school'
    """
    if isinstance(where, StorePlace):
        return where
    return StorePlace(where, Path.cwd() if "://" in where else Path(where).parent)


def noted(path: Path, folder: Path) -> str:
    """Return how a path is noted in the store: within the department's folder, from there.

    So it is found again when the folder has moved, or has another name on another machine.
    """
    path, folder = path.resolve(), folder.resolve()
    return path.relative_to(folder).as_posix() if path.is_relative_to(folder) else str(path)


def meant(note: str, folder: Path) -> Path:
    """Return the path that a note means; the inverse of :func:`noted`.

    >>> meant("tables/scores.csv", Path("school")).as_posix()
    'school/tables/scores.csv'
    """
    return folder / note
