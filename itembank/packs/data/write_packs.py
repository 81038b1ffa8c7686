"""Several packs, and files that go with them, on disk at once: all of them, or none."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from itembank.errors import ItembankError, SeveralErrors
from itembank.files.snapshot import Snapshot
from itembank.files.together import Together
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
    change = Together()
    try:
        with change:
            # Files first: a plan that somebody has saved meanwhile is noticed before any pack is
            # touched, and where the power fails in between, the plan tells which packs are due.
            for path, data in files.items():
                change.file(path, data, was=(was or {}).get(path))
            for folder, held in folders.items():
                change.folder(folder, held)
    except OSError as error:
        reason = error.strerror or str(error)
        raise ItembankError(
            f"{change.at} cannot be written: {reason}. Nothing was changed. Make room or mend its "
            "folder.",
            matter="place of packs",
        ) from None
