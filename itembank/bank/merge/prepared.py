"""Changes to the files of a bank that are worked out, to be looked at, and not yet saved."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

from itembank.bank.merge.union import (
    MergeReport,
)
from itembank.bank.saving.save import Snapshot, save
from itembank.errors import ItembankError
from itembank.files.together import Together


@dataclass(frozen=True)
class Prepared:
    """Changes to a bank's files that are worked out and not yet saved."""

    folder: Path
    changes: tuple[tuple[Snapshot, str | bytes], ...]
    report: MergeReport = field(default_factory=MergeReport)
    read: tuple[Snapshot, ...] = ()
    words: str = ""
    """What is done, for whoever takes it back."""

    def save(self) -> list[Path]:
        """Save every file that changes, or none; return which did.

        Raises:
            ItembankError: as :func:`~itembank.bank.saving.save.save`.
        """
        if self.changes:
            save(self.folder, self.changes, self.words)
        return [before.path for before, _ in self.changes]

    def save_copy(self, folder: Path) -> None:
        """Save the whole bank, as it is after the changes, in a new folder; leave the old one.

        The folder is there whole or not at all.

        Raises:
            ChangedSince: a file of the bank is not as it was when it was read.
            ItembankError: there is something in `folder`, or it cannot be written.
        """
        files: dict[str, bytes | None] = {}
        try:
            for path in sorted(self.folder.rglob("*")):
                name = path.relative_to(self.folder).as_posix()
                if not any(part.startswith(".") for part in Path(name).parts):
                    files[name] = None if path.is_dir() else path.read_bytes()
        except OSError as error:
            raise ItembankError(
                f"{error.filename}: this cannot be read: {error.strerror}."
            ) from None
        for before in self.read:
            before.refuse_newer()
        for before, text in self.changes:
            data = before.encode(text) if isinstance(text, str) else text
            files[before.path.relative_to(self.folder).as_posix()] = data
        try:
            with Together() as change:
                change.folder(folder, files, free=True)
        except FileExistsError:
            raise ItembankError(
                f"There is something in {folder} already. Name a new folder."
            ) from None
        except OSError as error:
            raise ItembankError(
                f"{folder}: the bank cannot be written there: {error.strerror}."
            ) from None
