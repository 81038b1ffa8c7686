"""Who may read files with results: their owner, and the folder's group as far as it may; no more.

A shared folder says by its own permissions whether a group of colleagues may read or write in
it. Files with results follow it, and never let everybody in, whatever the folder says.
"""

from __future__ import annotations

import os
import stat
from pathlib import Path

from itembank.errors import ItembankError
from itembank.files.disk import write_file
from itembank.files.together import write_whole


def file_mode(folder: Path) -> int:
    """Return the permissions of a new file with results in `folder`.

    Raises:
        OSError: the folder is not there.
    """
    group = stat.S_IMODE(folder.stat().st_mode) & (stat.S_IRGRP | stat.S_IWGRP)
    return stat.S_IRUSR | stat.S_IWUSR | group


def make_folder(folder: Path) -> None:
    """Make a folder for files with results, and those above it that are not there.

    Raises:
        OSError: it cannot be made.
    """
    if folder.is_dir():
        return
    make_folder(folder.parent)
    folder.mkdir(exist_ok=True)
    if os.name == "posix":
        above = stat.S_IMODE(folder.parent.stat().st_mode)
        folder.chmod(above & ~stat.S_IRWXO | stat.S_IRWXU)


def make_file(path: Path) -> None:
    """Make an empty file for results, with such permissions; leave one that is there.

    Raises:
        OSError: it cannot be made.
    """
    mode = file_mode(path.parent)
    try:
        write_file(path, b"", mode)
    except FileExistsError:
        return
    if os.name == "posix":  # the system took the umask away, which knows no colleagues
        path.chmod(mode)


def shut_out(path: Path) -> None:
    """Take a file from those who are neither its owner nor of its group.

    Raises:
        OSError: it is not there, or is somebody else's.
    """
    mode = stat.S_IMODE(path.stat().st_mode)
    if mode & stat.S_IRWXO:
        path.chmod(mode & ~stat.S_IRWXO)


def write_private(path: Path, data: bytes) -> None:
    """Write a file with results, so that it is there whole or as it was before.

    Raises:
        ItembankError: it cannot be written.
    """
    try:
        make_folder(path.parent)
        write_whole(path, data, file_mode(path.parent))
    except OSError as error:
        raise ItembankError(f"{path} cannot be written: {error.strerror}.") from None
