"""Several packs and files on disk at once: all of them, or none.

Everything is first written beside its place, which is where a full disk is met. Then all take
their names, one rename each; what stood there is kept aside until the last has its name, and
put back if one cannot have it, or if a file was saved by somebody since it was read. Ctrl-C
waits for those few renames.
"""

from __future__ import annotations

import contextlib
import os
import signal
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from itembank.errors import ItembankError, SeveralErrors
from itembank.files.disk import (
    make_parents,
    put_in_place,
    remove,
    remove_if_empty,
    stage,
    stage_folder,
    sync_folder,
    take_back,
    write_file,
)
from itembank.files.snapshot import Snapshot
from itembank.packs.data.pack_files import refuse_folder

Files = Mapping[str, bytes]


def write_together(
    folders: Mapping[Path, Files],
    files: Mapping[Path, bytes],
    replace: bool = False,
    was: Mapping[Path, Snapshot] | None = None,
) -> None:
    """Write folders that hold exactly these files, and single files, which may be there already.

    `was` holds some of those files as they were when they were read.

    Raises:
        ChangedSince: a file is not as it was when it was read; all is as it was, that file too.
        ItembankError: a folder exists and may not be replaced, or something cannot be written;
            then all is as it was.
    """
    faults = []
    for folder, held in folders.items():
        try:
            refuse_folder(folder, held, replace)
        except ItembankError as error:
            faults.append(error)
    if faults:
        raise SeveralErrors(faults)
    places = {at: Path(os.path.realpath(at)) for at in files}
    known = {places[at]: seen for at, seen in (was or {}).items() if at in places}
    waiting: dict[Path, Path] = {}
    made: list[Path] = []
    at = next(iter((*folders, *files)))
    try:
        try:
            for at, held in folders.items():
                made += make_parents(at.parent)
                waiting[at] = new = stage_folder(at)
                for name, data in held.items():
                    write_file(new / name, data)
                sync_folder(new)
            for at, data in files.items():
                made += make_parents(places[at].parent)
                waiting[places[at]] = stage(places[at], data)
            # Files first: a plan that somebody has saved meanwhile is noticed before any pack is
            # touched, and where the power fails in between, the plan tells which packs are due.
            order = sorted(waiting, key=lambda at: at in folders)
            with _uninterrupted():
                _take_places({at: waiting[at] for at in order}, known)
                made = []
        except OSError as error:
            reason = error.strerror or str(error)
            raise ItembankError(
                f"{at} cannot be written: {reason}. Nothing was changed. Make room or mend its "
                "folder.",
                matter="place of packs",
            ) from None
    finally:
        for new in waiting.values():
            remove(new)
        for one in reversed(made):
            remove_if_empty(one)


def _take_places(waiting: Mapping[Path, Path], was: Mapping[Path, Snapshot]) -> None:
    """Give everything its name; on a fault put back what stood there."""
    moved: list[tuple[Path, Path | None]] = []
    try:
        for at, new in waiting.items():
            moved.append((at, put_in_place(new, at)))
            if at in was:
                # Only now is it known what stood there in the end: what somebody saved while
                # this was made is theirs.
                was[at].refuse_other(moved[-1][1])
    except BaseException:
        for at, old in reversed(moved):
            take_back(at, old)
        raise
    for _, old in moved:
        if old is not None:
            remove(old)
    for parent in {at.parent for at, _ in moved}:
        sync_folder(parent)


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
