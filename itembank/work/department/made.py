"""Makes a department's folder from answers, and changes one that is there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from itembank.errors import ItembankError, SeveralErrors
from itembank.files.faults import FileFaults
from itembank.files.snapshot import Snapshot, take
from itembank.files.together import Together
from itembank.planning.calendar import calendar as calendars
from itembank.planning.calendar.scheme import FOLDER as SCHEMES
from itembank.planning.department import department as departments
from itembank.planning.department.folder import read_folder
from itembank.planning.department.known_topics import KnownTopics
from itembank.work.department.answered import Answers
from itembank.work.department.answers_read import Files, answers_in
from itembank.work.department.as_files import files_of
from itembank.work.department.banks_lost import refuse_lost_banks
from itembank.work.department.class_renamed import Renamed, carrying, renamed_in
from itembank.work.department.earlier_set_ups import clear_oldest_set_ups, note_change
from itembank.work.department.looked_at import Look, known_topics, look_at
from itembank.work.department.so_far import forget_so_far
from itembank.work.places import banks_of


@dataclass(frozen=True)
class Kept:
    """A department that is there: what its files answer, and the files as they were read."""

    folder: Path
    answers: Answers
    was: Mapping[str, Snapshot]

    @property
    def files(self) -> dict[str, str]:
        """Return the text of each file, by its name with /."""
        return {name: file.text for name, file in self.was.items()}

    @cached_property
    def titles(self) -> Mapping[str, str]:
        """Return the title of each topic that may be named, by id: those of its banks too."""
        text = self.files[departments.FILE_NAME]
        banks = banks_of(departments.read_department(self.folder, None, text))
        return {**KnownTopics((), banks).in_banks, **known_topics()[0]}


def read_kept(folder: Path) -> Kept:
    """Return what the files of a department answer.

    Raises:
        FileFaults: what its commands could not read either; mend that first.
    """
    paths = [folder / departments.FILE_NAME, *sorted((folder / SCHEMES).glob("*.toml"))]
    if (folder / calendars.FILE_NAME).exists():  # only weeks need one
        paths.append(folder / calendars.FILE_NAME)
    was = {path.relative_to(folder).as_posix(): take(path) for path in paths}
    files = {name: file.text for name, file in was.items()}
    titles, prerequisites = known_topics()
    try:
        read_folder(folder, tuple(titles), prerequisites, files)
    except FileFaults as error:
        # Without a calendar nothing is said of its absence: it is what can be answered now.
        kept = [fault for fault in error.faults if fault.line or fault.path]
        if kept:
            raise FileFaults(kept, most=None) from None
    return Kept(folder, answers_in(files), was)


def refuse_department(folder: Path) -> None:
    """Refuse a folder in which a department is, or files that would be in the way of one.

    Raises:
        ItembankError: its matter is ``department there`` where it can be changed instead.
    """
    if (folder / departments.FILE_NAME).exists():
        raise ItembankError(
            f"There is a department in {folder} already.",
            matter="department there",
            field="folder",
            folder=folder,
        )
    if folder.exists() and not folder.is_dir():
        raise ItembankError(f"{folder} is a file. Name a folder.", field="folder")
    for name in (calendars.FILE_NAME, SCHEMES):
        if (folder / name).exists():
            raise ItembankError(
                f"{folder / name} is there already and is not to be written over. Name another "
                "folder, or move it away.",
                field="folder",
            )


def make_department(folder: Path, answers: Answers) -> tuple[Path, ...]:
    """Make a department's folder, whole or not at all, and return its files.

    Raises:
        SeveralErrors: something is missing or wrong in the answers.
        ItembankError: a department or a file is there, or it cannot be written.
    """
    refuse_department(folder)
    refuse_unready(look_at(answers, folder))
    files = files_of(answers)
    try:
        with Together() as change:
            if not folder.exists():
                change.folder(
                    folder, {name: text.encode() for name, text in files.items()}, free=True
                )
            else:
                for name, text in files.items():  # department.toml last: then it is one
                    change.file(folder / name, text.encode(), was=take(folder / name))
    except OSError as error:
        raise _not_written(folder, error) from None
    forget_so_far(folder)
    return tuple(folder / name for name in files)


def change_department(
    kept: Kept, answers: Answers, before: Files | None = None
) -> tuple[Path, ...]:
    """Change the files of a department to say what is answered now; return those that changed.

    Only what is answered differently changes in them: comments and all else stay. `before` are
    the files to change, where they are not to be those that are there.

    Raises:
        SeveralErrors: something is missing or wrong in the answers.
        ItembankError: somebody changed a file meanwhile, or it cannot be written.
    """
    there = kept.files if before is None else before
    refuse_unready(look_at(answers, kept.folder, there))
    changed = write_changed(kept, files_of(answers, there), renamed_in(answers))
    forget_so_far(kept.folder)
    return changed


def write_changed(
    kept: Kept, files: Mapping[str, str], renamed: tuple[Renamed, ...] = ()
) -> tuple[Path, ...]:
    """Have a department consist of these files; return those that changed.

    What they were is kept, so that the change can be taken back. Plans and results go along with
    classes that are `renamed`.

    Raises:
        ItembankError: somebody changed a file meanwhile, a plan asks a question of a bank that
            would go, or it cannot be written.
    """
    file = departments.FILE_NAME
    refuse_lost_banks(kept.folder, kept.files[file], files[file])
    changed: list[Path] = []
    earlier: dict[str, str | None] = {}
    later: dict[str, str | None] = {}
    try:
        with carrying(kept.folder, renamed) as carry, Together() as change:
            carry.into(change)
            for name, was in kept.was.items():
                # Those that stay as they are too: what is written was made up beside them.
                was.refuse_newer()
                if name not in files:
                    change.take_away(was)
                    changed.append(was.path)
                    earlier[name], later[name] = was.text, None
            for name, text in files.items():
                old = kept.was.get(name) or take(kept.folder / name)
                if name not in kept.was and old.raw is not None:
                    old = Snapshot(old.path, None, "")  # somebody made it since
                if name in kept.was and text == old.text:
                    continue
                change.file(old.path, old.encode(text), was=old)
                changed.append(old.path)
                earlier[name], later[name] = (old.text if name in kept.was else None), text
            if changed:
                note_change(change, kept.folder, earlier, later, renamed)
    except OSError as error:
        raise _not_written(kept.folder, error) from None
    carry.clear()
    clear_oldest_set_ups(kept.folder)
    return tuple(changed)


def refuse_unready(look: Look) -> None:
    """Refuse answers from which no department can be made.

    Raises:
        SeveralErrors: every thing that is missing or wrong, each with its `part` of the
            conversation and the `answer` that it is about.
    """
    found = [
        ItembankError(str(fault), part=fault.part, answer=fault.field)
        for fault in (*look.missing, *look.wrong)
    ]
    if found:
        raise SeveralErrors(found)


def _not_written(folder: Path, error: OSError) -> ItembankError:
    reason = error.strerror or str(error)
    return ItembankError(f"{folder} cannot be written: {reason}. Nothing was written.")
