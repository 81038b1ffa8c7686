"""Files and folders that take their places together: the one way in which this tool writes.

What is new is first written beside its place, which is where a full disk is met. Then all take
their places, one rename each, in the order in which they were named; what stood there is kept
aside until the last has its place, and put back if one cannot have it, or if somebody has saved
a file since it was read. Ctrl-C waits for those few renames. One file or a hundred, in one
folder or in several: nobody ever finds a part of a change.
"""

from __future__ import annotations

import contextlib
import errno
import os
import signal
from collections.abc import Iterator, Mapping
from pathlib import Path
from types import TracebackType
from typing import IO, Any

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files import journal
from itembank.files.disk import (
    beside,
    make_parents,
    remove,
    remove_if_empty,
    stage,
    stage_folder,
    staged,
    sync_folder,
    write_file,
)
from itembank.files.renaming import put_in_place, take_back, take_free_name
from itembank.files.snapshot import Snapshot


@dataclass(frozen=True, slots=True)
class _Change:
    """What is to stand in a place: what is staged at `new`, or nothing."""

    named: Path
    place: Path
    """Where it really is: a link to a file stays a link."""
    new: Path | None
    was: Snapshot | None = None
    free: bool = False
    """Whether nothing may stand there."""


class Together:
    """A change of several files and folders, which is there whole or not at all.

    Use it as a context manager: what is named in its body is written beside its place there and
    then, and takes its place when the body has ended well::

        with Together() as change:
            change.folder(output / "8K-2026-11-30", files)
            change.file(plan, text, was=snapshot)

    With a `log`, which is the folder that holds all of its files, a change that the power cuts
    off among its renames is finished by :func:`itembank.files.journal.finish`.

    Raises:
        OSError: something cannot be written; :attr:`at` says what. All is as it was.
        ChangedSince: a file is not as it was when it was read. All is as it was, that file too.
    """

    def __init__(self, log: Path | None = None) -> None:
        self.at = Path()
        self._log = log
        self._changes: list[_Change] = []
        self._made: list[Path] = []

    def file(
        self, path: Path, data: bytes, *, was: Snapshot | None = None, mode: int | None = None
    ) -> None:
        """Have a file hold `data`; `was` is the file as it was read, if it was."""
        place = self._ready(path)
        new = stage(place, data, mode)
        self._changes.append(_Change(path, place, new, was))

    @contextlib.contextmanager
    def stream(self, path: Path, mode: int | None = None) -> Iterator[IO[bytes]]:
        """Have a file hold what is written to the stream by the end of the body."""
        place = self._ready(path)
        with staged(place, mode) as (out, new):
            yield out
        self._changes.append(_Change(path, place, new))

    def folder(self, path: Path, files: Mapping[str, bytes | None], *, free: bool = False) -> None:
        """Have a folder hold just these files, by their names with /; None stands for a folder.

        Where it is to be `free`, nothing may stand there yet.
        """
        self.at = path
        if free and os.path.lexists(path):
            raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(path))
        self._made += make_parents(path.parent)
        new = stage_folder(path)
        self._changes.append(_Change(path, path, new, free=free))
        below = {new}
        for name, data in files.items():
            place = new / name
            folder = place if data is None else place.parent
            folder.mkdir(parents=True, exist_ok=True)
            below.add(folder)
            if data is not None:
                write_file(place, data)
        for folder in below:
            sync_folder(folder)

    def take_away(self, was: Snapshot) -> None:
        """Have a file be there no more; `was` is the file as it was read."""
        self._changes.append(_Change(was.path, was.path, None, was))

    def _ready(self, path: Path) -> Path:
        self.at = path
        place = Path(os.path.realpath(path))
        self._made += make_parents(place.parent)
        return place

    def __enter__(self) -> Together:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        logged = False
        try:
            if kind is None:
                if self._log is not None and len(self._changes) > 1:
                    logged = True
                    self._begin(self._log)
                with _uninterrupted():
                    self._take_places()
                    self._made = []
        finally:
            if logged and self._log is not None:
                journal.end(self._log)
            for change in self._changes:
                if change.new is not None:
                    remove(change.new)
            # The innermost first: a folder that holds another is not empty yet.
            for folder in reversed(self._made):
                remove_if_empty(folder)

    def _begin(self, log: Path) -> None:
        new = [(change.new, change.named) for change in self._changes if change.new is not None]
        journal.begin(log, new, [change.place for change in self._changes if change.new is None])

    def _take_places(self) -> None:
        """Give everything its place; on a fault put back what stood there."""
        moved: list[tuple[Path, Path | None]] = []
        try:
            for change in self._changes:
                self.at = change.named
                _take(change, moved, sole=len(self._changes) == 1)
        except BaseException:
            for place, old in reversed(moved):
                take_back(place, old)
            raise
        for _, old in moved:
            if old is not None:
                remove(old)
        for parent in {change.place.parent for change in self._changes}:
            with contextlib.suppress(OSError):  # names are right by now, if not yet on the disk
                sync_folder(parent)


def _take(change: _Change, moved: list[tuple[Path, Path | None]], sole: bool) -> None:
    """Carry one change out, and note what stood there until then."""
    if change.new is None:
        if not os.path.lexists(change.place):
            return
        aside = beside(change.place)
        os.rename(change.place, aside)
        moved.append((change.place, aside))
    elif change.free:
        if not take_free_name(change.new, change.place):
            raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(change.place))
        moved.append((change.place, None))
    elif sole and change.was is None and not change.new.is_dir():
        # Nothing to put back: what stood there is gone in the same step. Of a file from which
        # somebody is being forgotten nothing is left aside, whenever the power fails.
        os.replace(change.new, change.place)
    else:
        moved.append((change.place, put_in_place(change.new, change.place)))
    if change.was is not None:
        # Only now is it known what stood there in the end: what somebody saved while this was
        # made is theirs.
        change.was.refuse_other(moved[-1][1])


@contextlib.contextmanager
def whole_file(path: Path, mode: int | None = None) -> Iterator[IO[bytes]]:
    """Yield a file to write in; it takes the place of `path` when the body has ended well.

    A link is followed to what it means. What is no file, such as a printer or a pipe, is written
    to as it is.

    Raises:
        OSError: it cannot be written; what stood there stays.
    """
    if path.exists() and not path.is_dir() and not path.is_file():
        with path.open("wb") as out:
            yield out
        return
    with Together() as change, change.stream(path, mode) as out:
        yield out


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


@contextlib.contextmanager
def _uninterrupted() -> Iterator[None]:
    """Let Ctrl-C and a request to end wait until the body is done.

    To block the signals would not do: any other thread that does not (those of a library for
    linear algebra, say) would take them and have Python interrupt this one.
    """
    come: list[int] = []
    before: dict[signal.Signals, Any] = {}
    try:
        for number in (signal.SIGINT, signal.SIGTERM):
            before[number] = signal.signal(number, lambda got, _frame: come.append(got))
    except ValueError:  # not the main thread, which signals do not reach
        pass
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)
        for got in come:
            signal.raise_signal(got)
