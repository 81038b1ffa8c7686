"""Copies of the results file that lie beside it, as programs make them that keep folders in step.

When two people record at once in a folder that such a program keeps, one of the two files gets
another name: words, a number or the name of a machine before or after its own, in brackets or
not. What is told is the pattern: a file whose name holds that of the results file, and which is
a database; or what is left of one that was being written.
"""

from __future__ import annotations

from pathlib import Path

_DATABASE = b"SQLite format 3\x00"
"""How such a file begins (SQLite documentation, "Database File Format")."""
_BESIDE = ("-journal", "-wal", "-shm")
"""How names of files end that belong to a database which is, or was, being written."""


def copies_beside(path: Path) -> list[Path]:
    """Return the copies of a results file in its folder, and what is left of their writing.

    What belongs to the file itself while it is written is none.
    """
    stem, ending = path.stem.casefold(), path.suffix.casefold()
    try:
        there = sorted(path.parent.iterdir())
    except OSError:
        return []
    return [file for file in there if file != path and _is_copy(file, path, stem, ending)]


def is_loose_end(path: Path) -> bool:
    """Tell whether a copy is what is left of the writing of another, and no database itself."""
    return path.name.casefold().endswith(_BESIDE)


def _is_copy(other: Path, path: Path, stem: str, ending: str) -> bool:
    name = other.name.casefold()
    if stem not in name or ending not in name or name.startswith("."):
        return False
    if name == f"{path.name.casefold()}-journal":
        return False
    if is_loose_end(other):
        return other.is_file()
    try:
        with other.open("rb") as file:
            return file.read(len(_DATABASE)) == _DATABASE
    except OSError:
        return False
