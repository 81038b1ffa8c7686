"""The small steps of writing: hidden names, files that the disk has, and what a kill left behind.

What is new is first written beside its place, under a hidden name that nobody else can have, and
brought to the disk (:mod:`itembank.files.together` then has it take its place). A hidden name that
a killed program left behind is cleared by the next command that writes in that folder, once it is
a day old.
"""

from __future__ import annotations

import contextlib
import os
import re
import secrets
import shutil
import time
from collections.abc import Iterator
from pathlib import Path
from typing import IO

LEFT_BEHIND = 24 * 3600
"""Age in seconds from which a hidden name of ours is nobody's any more."""

PUT_BACK = 60
"""Age in seconds from which what was moved aside, and has nothing in its place, is put back."""

JOURNAL_FILE = ".saving"
"""Where a folder says which hidden files in it are still to take their places."""

_OURS = re.compile(r"\.(.+)\.[0-9a-f]{16}\.itembank-(new|old)", re.DOTALL)
_MOST_BYTES = 150  # of a name that is part of a hidden one; a file system takes 255 in all


def beside(path: Path, kind: str = "new") -> Path:
    """Return a hidden name in the folder of `path` that nobody else has, for a file or a folder.

    >>> _OURS.fullmatch(beside(Path("plans/week.toml")).name)[1]
    'week.toml'
    """
    name = path.name[:_MOST_BYTES]  # a letter takes one byte at least
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
        if mode is None:
            with contextlib.suppress(FileNotFoundError):  # nothing there, or no longer: a lock goes
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
        found = [
            (entry, name) for entry in os.scandir(folder) if (name := _OURS.fullmatch(entry.name))
        ]
    except OSError:
        return
    for file, name in found:
        with contextlib.suppress(OSError):
            facts = file.stat(follow_symlinks=False)
            if name[2] == "old" and not os.path.lexists(meant := folder / name[1]):
                cut = len(os.fsencode(name[1])) > _MOST_BYTES - 4  # and so perhaps not its name
                # A rename leaves the time of writing as it was: that of the last change tells
                # when.
                if now - facts.st_ctime > PUT_BACK and not cut:
                    os.rename(file.path, meant)
            elif now - facts.st_mtime > LEFT_BEHIND:
                remove(Path(file.path))


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
    for done, folder in enumerate(missing):
        try:
            folder.mkdir(exist_ok=True)
        except OSError:
            for made in reversed(missing[:done]):
                remove_if_empty(made)
            raise
    return missing


def remove_if_empty(folder: Path) -> None:
    """Remove a folder that holds nothing; leave any other."""
    with contextlib.suppress(OSError):
        folder.rmdir()
