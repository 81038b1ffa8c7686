"""Files and folders that are there whole or not at all: the one way in which this tool writes.

What is new is first written beside its place, under a hidden name that nobody else can have, and
brought to the disk; then it takes its place in one step. Whatever stops the program, what stood
there is there whole, or what is new is. A hidden name that a killed program left behind is
cleared by the next command that writes in that folder, once it is a day old.
"""

from __future__ import annotations

import contextlib
import errno
import os
import re
import secrets
import shutil
import sys
import time
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import IO

from itembank.errors import ItembankError

LEFT_BEHIND = 24 * 3600
"""Age in seconds from which a hidden name of ours is nobody's any more."""

PUT_BACK = 60
"""Age in seconds from which what was moved aside, and has nothing in its place, is put back."""

JOURNAL_FILE = ".saving"
"""Where a folder says which hidden files in it are still to take their places."""

_OURS = re.compile(r"\.(.+)\.[0-9a-f]{16}\.itembank-(new|old)", re.DOTALL)
_MOST_BYTES = 150  # of a name that is part of a hidden one; a file system takes 255 in all
_EXCHANGE, _NO_REPLACE = 2, 1  # flags of Linux's renameat2
_NOT_HERE = {errno.EINVAL, errno.ENOSYS, errno.ENOTSUP, errno.EPERM}


def beside(path: Path, kind: str = "new") -> Path:
    """Return a hidden name in the folder of `path` that nobody else has, for a file or a folder.

    >>> _OURS.fullmatch(beside(Path("plans/week.toml")).name)[1]
    'week.toml'
    """
    name = path.name
    while len(os.fsencode(name)) > _MOST_BYTES:
        name = name[:-1]
    return path.with_name(f".{name}.{secrets.token_hex(8)}.itembank-{kind}")


def write_file(path: Path, data: bytes, mode: int = 0o666) -> None:
    """Write a file that is not there yet, and wait until the disk has it.

    `mode` holds its permissions, less those that the system takes away (the umask).

    Raises:
        OSError: something has that name, a link among it, or it cannot be written. Then no part
            of the file stays.
    """
    with _new_file(path, mode) as out:
        out.write(data)


@contextlib.contextmanager
def _new_file(path: Path, mode: int) -> Iterator[IO[bytes]]:
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), mode)
    try:
        with os.fdopen(handle, "wb") as out:
            yield out
            out.flush()
            os.fsync(out.fileno())
    except BaseException:
        with contextlib.suppress(OSError):
            os.unlink(path)
        raise


@contextlib.contextmanager
def staged(path: Path, mode: int | None = None) -> Iterator[tuple[IO[bytes], Path]]:
    """Write a file beside `path`; yield it and its hidden name, under which it stays.

    It has the permissions of `mode`; where that is None, those of what stands at `path` now.

    Raises:
        OSError: it cannot be written. Then nothing of it stays.
    """
    clear_leftovers(path.parent)
    new = beside(path)
    with _new_file(new, 0o666 if mode is None else mode) as out:
        if mode is not None:  # the umask knows nothing of a folder that is shared
            os.chmod(new, mode)
        yield out, new
        if mode is None and path.exists():
            os.chmod(new, path.stat().st_mode & 0o777)


def stage(path: Path, data: bytes, mode: int | None = None) -> Path:
    """Write a file beside `path` and return its hidden name, as :func:`staged`."""
    with staged(path, mode) as (out, new):
        out.write(data)
    return new


def stage_folder(path: Path) -> Path:
    """Make an empty folder beside `path` and return its hidden name.

    Raises:
        OSError: it cannot be made.
    """
    clear_leftovers(path.parent)
    new = beside(path)
    new.mkdir()
    return new


@contextlib.contextmanager
def whole_file(path: Path, mode: int | None = None) -> Iterator[IO[bytes]]:
    """Yield a file to write in; it takes the place of `path` when the body has ended well.

    A link is followed to what it means. What is no file, such as a printer or a pipe, is written
    to as it is.

    Raises:
        OSError: it cannot be written; what stood there stays.
    """
    path = Path(os.path.realpath(path))
    if path.exists() and not path.is_dir() and not path.is_file():
        with path.open("wb") as out:
            yield out
        return
    made = make_parents(path.parent)
    new: Path | None = None
    try:
        with staged(path, mode) as (out, new):
            yield out
        os.replace(new, path)
        made = []
    finally:
        if new is not None:
            with contextlib.suppress(OSError):
                new.unlink(missing_ok=True)
        for one in reversed(made):
            remove_if_empty(one)
    with contextlib.suppress(OSError):  # the name is right by now, if not yet on the disk
        sync_folder(path.parent)


def write_whole(path: Path, data: bytes, mode: int | None = None) -> None:
    """Write a file so that it is there whole or as it was before, as :func:`whole_file`.

    Raises:
        ItembankError: it cannot be written.
    """
    try:
        with whole_file(path, mode) as out:
            out.write(data)
    except OSError as error:
        reason = error.strerror or str(error)
        raise ItembankError(f"{path} cannot be written: {reason}.") from None


def write_first(path: Path, data: bytes) -> bool:
    """Write a file, whole, under a name that nobody has; return false where somebody has it.

    Raises:
        OSError: it cannot be written. Then no part of it is there.
    """
    if os.path.lexists(path):
        return False
    new = stage(path, data)
    try:
        os.link(new, path)
    except FileExistsError:
        return False
    except OSError:  # a file system without links: here it may be seen before it is filled
        try:
            write_file(path, data)
        except FileExistsError:
            return False
    finally:
        remove(new)
    return True


def write_tree(folder: Path, files: Mapping[str, bytes | None]) -> None:
    """Write a new folder with files in it, by their names with /; None stands for a folder.

    It is there whole or not at all.

    Raises:
        FileExistsError: something has its name.
        OSError: it cannot be written.
    """
    if os.path.lexists(folder):
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(folder))
    made = make_parents(folder.parent)
    new: Path | None = None
    try:
        new = stage_folder(folder)
        folders = {new}
        for name, data in files.items():
            place = new / name
            below = place if data is None else place.parent
            below.mkdir(parents=True, exist_ok=True)
            folders.add(below)
            if data is not None:
                write_file(place, data)
        for one in folders:
            sync_folder(one)
        if not _take_free_name(new, folder):
            raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(folder))
        made = []
    finally:
        if new is not None:
            remove(new)
        for one in reversed(made):
            remove_if_empty(one)
    with contextlib.suppress(OSError):
        sync_folder(folder.parent)


def put_in_place(new: Path, at: Path) -> Path | None:
    """Give what was staged its place; return where what stood there is now, if anything did.

    On Linux the two change places in one step, so that something stands there at every moment,
    and what is returned is what stood there until then, however late it came. Elsewhere a file
    is copied aside first, and a folder moved aside.

    Raises:
        OSError: it cannot be done; what stood there stands there.
    """
    if not os.path.lexists(at) and _take_free_name(new, at):
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


def _take_free_name(new: Path, at: Path) -> bool:
    """Rename to a name that nobody has; return false where somebody has come first."""
    try:
        if not _renamed(new, at, _NO_REPLACE):
            os.rename(new, at)
    except FileExistsError:
        return False
    return True


def _renamed(one: Path, other: Path, flag: int) -> bool:
    """Rename in a way that only Linux has; return false where this system has not."""
    if sys.platform != "linux":
        return False
    import ctypes

    try:
        rename = ctypes.CDLL(None, use_errno=True).renameat2
    except AttributeError:  # a C library without it
        return False
    here = -100  # AT_FDCWD: paths are relative to the folder one is in
    if rename(here, os.fsencode(one), here, os.fsencode(other), ctypes.c_uint(flag)) == 0:
        return True
    number = ctypes.get_errno()
    if number in _NOT_HERE:
        return False
    raise OSError(number, os.strerror(number), str(other))


def remove(path: Path) -> None:
    """Remove a file, a link or a folder with all it holds, as far as that can be done."""
    with contextlib.suppress(OSError):
        if path.is_dir() and not path.is_symlink():
            shutil.rmtree(path, ignore_errors=True)
        else:
            path.unlink(missing_ok=True)


def clear_leftovers(folder: Path) -> None:
    """Remove hidden names of ours in a folder that a killed program left there a day ago.

    What was moved aside when the power failed is put back, where nothing stands in its place.
    Nothing else is touched, whatever its name.
    """
    now = time.time()
    if (folder / JOURNAL_FILE).exists():  # what a journal names is still needed
        return
    try:
        found = [(one, each) for one in os.scandir(folder) if (each := _OURS.fullmatch(one.name))]
    except OSError:
        return
    for one, each in found:
        with contextlib.suppress(OSError):
            facts = one.stat(follow_symlinks=False)
            if each[2] == "old" and not os.path.lexists(meant := folder / each[1]):
                cut = len(os.fsencode(each[1])) > _MOST_BYTES - 4  # and so perhaps not its name
                if now - facts.st_ctime > PUT_BACK and not cut:
                    os.rename(one.path, meant)
            elif now - facts.st_mtime > LEFT_BEHIND:
                remove(Path(one.path))


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
