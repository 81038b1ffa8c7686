"""Several packs and files on disk at once: all of them, or none.

Everything is first written beside its place, which is where a full disk is met. Then all take
their names, one rename each; what stood there is kept aside until the last has its name, and
put back if one cannot have it. Ctrl-C waits for those few renames.
"""

from __future__ import annotations

import contextlib
import os
import shutil
import signal
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from itembank.disk import make_parents, sync_folder, umask, write_file
from itembank.errors import ItembankError
from itembank.packs.files import refuse_folder

Files = Mapping[str, bytes]


def write_together(
    folders: Mapping[Path, Files], files: Mapping[Path, bytes], replace: bool = False
) -> None:
    """Write folders that hold exactly these files, and single files, which may be there already.

    Raises:
        ItembankError: a folder exists and may not be replaced, or something cannot be written;
            then all is as it was.
    """
    faults = []
    for folder, held in folders.items():
        try:
            refuse_folder(folder, held, replace)
        except ItembankError as error:
            faults.append(str(error))
    if faults:
        raise ItembankError("\n".join(faults))
    beside: dict[Path, Path] = {}
    made: list[Path] = []
    at = next(iter((*folders, *files)))
    try:
        try:
            for at in (*folders, *files):
                made += make_parents(at.parent)
                new = Path(tempfile.mkdtemp(prefix=f".{at.name}.", suffix=".new", dir=at.parent))
                beside[at] = new
                if at in folders:
                    new.chmod(0o777 & ~umask())
                for name, data in (folders.get(at) or {at.name: files[at]}).items():
                    write_file(new / name, data)
            with _uninterrupted():
                _rename_all({at: beside[at] for at in folders}, beside, files)
                made = []
        except OSError as error:
            reason = error.strerror or str(error)
            raise ItembankError(
                f"{at} cannot be written: {reason}. Nothing was changed. Make room or mend its "
                "folder, or name another place for packs with --output."
            ) from None
    finally:
        for new in beside.values():
            shutil.rmtree(new, ignore_errors=True)
        for one in reversed(made):
            with contextlib.suppress(OSError):
                one.rmdir()


def _rename_all(
    folders: Mapping[Path, Path], beside: Mapping[Path, Path], files: Mapping[Path, bytes]
) -> None:
    """Give everything its name; on a fault put back what stood there."""
    moved: list[tuple[Path, Path | None]] = []
    try:
        for at, new in beside.items():
            aside = new.with_suffix(".old") if os.path.lexists(at) else None
            if at in folders:
                if aside is not None:
                    at.rename(aside)
                moved.append((at, aside))
                new.rename(at)
                continue
            # A file is never gone, not even for the moment in which a folder is: a person wrote
            # in it, and the power may fail.
            if aside is not None:
                shutil.copy2(at, aside)
            moved.append((at, aside))
            (new / at.name).replace(at)
    except BaseException:
        for at, aside in reversed(moved):
            if at in files and aside is None:
                at.unlink(missing_ok=True)
            elif at not in files and at.exists():
                shutil.rmtree(at, ignore_errors=True)
            if aside is not None:
                aside.replace(at)
        raise
    for _, aside in moved:
        if aside is not None and aside.is_dir():
            shutil.rmtree(aside, ignore_errors=True)
        elif aside is not None:
            aside.unlink(missing_ok=True)
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
