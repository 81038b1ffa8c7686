"""Files that are there whole or not at all, whatever stops the program, and safe on the disk."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path

from itembank.errors import ItembankError


def write_file(path: Path, data: bytes) -> None:
    """Write a file and wait until the disk has it.

    Raises:
        OSError: it cannot be written.
    """
    with path.open("wb") as out:
        out.write(data)
        out.flush()
        os.fsync(out.fileno())


def write_whole(path: Path, data: bytes) -> None:
    """Write a file so that it is there whole or as it was before.

    Raises:
        ItembankError: it cannot be written.
    """
    beside = path.with_name(f".{path.name}.new")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        write_file(beside, data)
        beside.replace(path)
    except OSError as error:
        with contextlib.suppress(OSError):
            beside.unlink(missing_ok=True)
        raise ItembankError(f"{path} cannot be written: {error.strerror}.") from None


def sync_folder(folder: Path) -> None:
    """Bring a folder's list of names to the disk, where the system can (Windows cannot).

    Raises:
        OSError: the disk refuses.
    """
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def make_parents(parent: Path) -> list[Path]:
    """Make a folder and those above it; return those that were not there, outermost first.

    Raises:
        OSError: one cannot be made; then none is.
    """
    missing: list[Path] = []
    while not parent.exists():
        missing.insert(0, parent)
        parent = parent.parent
    for done, one in enumerate(missing):
        try:
            one.mkdir(exist_ok=True)
        except OSError:
            for made in reversed(missing[:done]):
                remove_if_empty(made)
            raise
    return missing


def remove_if_empty(folder: Path) -> None:
    """Remove a folder that holds nothing; leave any other."""
    with contextlib.suppress(OSError):
        folder.rmdir()


def umask() -> int:
    """Return the permissions new files are to lack; files of tempfile are private otherwise."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
