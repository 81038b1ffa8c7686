"""Names that change hands in one step, and back."""

from __future__ import annotations

import errno
import os
import shutil
import sys
from pathlib import Path

from itembank.files.disk import beside, remove

_EXCHANGE, _NO_REPLACE = 2, 1  # flags of Linux's renameat2
_NOT_HERE = {errno.EINVAL, errno.ENOSYS, errno.ENOTSUP, errno.EPERM}


def put_in_place(new: Path, at: Path) -> Path | None:
    """Give what was staged its place; return where what stood there is now, if anything did.

    On Linux the two change places in one step, so that something stands there at every moment,
    and what is returned is what stood there until then, however late it came. Elsewhere a file
    is copied aside first, and a folder moved aside.

    Raises:
        OSError: it cannot be done; what stood there stands there.
    """
    if not os.path.lexists(at) and take_free_name(new, at):
        return None
    if _renamed(new, at, _EXCHANGE):
        return new
    old = beside(at, "old")
    if at.is_dir() and not at.is_symlink():
        os.rename(at, old)
        try:
            os.rename(new, at)
        except BaseException:
            os.rename(old, at)
            raise
    else:
        try:
            shutil.copy2(at, old)
            os.replace(new, at)
        except BaseException:
            remove(old)
            raise
    return old


def take_back(at: Path, old: Path | None) -> None:
    """Undo what :func:`put_in_place` did; `old` is what it returned.

    Raises:
        OSError: it cannot be undone.
    """
    if old is None:
        remove(at)
    elif not os.path.lexists(at):
        os.rename(old, at)
    elif _renamed(old, at, _EXCHANGE):
        remove(old)
    else:
        if at.is_dir():
            shutil.rmtree(at)
        os.replace(old, at)


def take_free_name(new: Path, at: Path) -> bool:
    """Rename to a name that nobody has; return false where somebody has come first."""
    try:
        if not _renamed(new, at, _NO_REPLACE):
            os.rename(new, at)
    except FileExistsError:
        return False
    return True


def _renamed(first: Path, other: Path, flag: int) -> bool:
    """Rename in a way that only Linux has; return false where this system has not."""
    if sys.platform != "linux":
        return False
    import ctypes

    try:
        rename = ctypes.CDLL(None, use_errno=True).renameat2
    except AttributeError:  # a C library without it
        return False
    here = -100  # AT_FDCWD: paths are relative to the folder one is in
    if rename(here, os.fsencode(first), here, os.fsencode(other), ctypes.c_uint(flag)) == 0:
        return True
    number = ctypes.get_errno()
    if number in _NOT_HERE:
        return False
    raise OSError(number, os.strerror(number), str(other))
