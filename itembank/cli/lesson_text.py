"""The words in which recording and deciding speak of a lesson's results."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.errors import ItembankError
from itembank.today import today

if TYPE_CHECKING:
    from itembank.planning.department.deciding import Deciding
    from itembank.planning.department.department import Department
    from itembank.records.reports.advice import Thresholds
    from itembank.records.reports.decision import Decision
    from itembank.records.store.place import Place


def read_day(text: str | None, option: str = "--date") -> datetime.date | None:
    """Return the day an option names, or None where it was left out.

    Raises:
        ItembankError: it is no day.
    """
    if text is None:
        return None
    from itembank.planning.calendar.days import parse_day

    try:
        return parse_day(text, today(), past=True)
    except ItembankError as error:
        raise error.within(f"{option}: ") from None


def check_pdf(path: Path) -> None:
    """Make sure that writing a PDF to `path` would write over nothing but an earlier one.

    Raises:
        ItembankError: something else is there.
    """
    try:
        with path.open("rb") as file:
            there = file.read(5)
    except FileNotFoundError:
        return
    except OSError as error:
        raise ItembankError(f"{path} cannot be written: {error.strerror}.") from None
    if there != b"%PDF-":
        raise ItembankError(f"{path} is there already and is no PDF. Name another file.")


def the_department(folder: Path | None) -> Department:
    """Return the department that is named or stands around the current folder.

    Raises:
        ItembankError: there is none, or its file has faults.
    """
    from itembank.work.places import nearby_department

    found = nearby_department(folder, None)
    if found is None:
        raise ItembankError(
            "There is no department.toml here or above.", matter="no department here"
        )
    return found


def store_of(folder: Path, tell_copies: bool = True) -> Place:
    """Return where a department's results are, and tell of copies beside them, once."""
    from itembank.records.store.place import store_place

    place = store_place(folder)
    if tell_copies and place.is_file and place.where not in _TOLD:
        _TOLD.add(place.where)
        _tell_copies(place.path)
    return place


_TOLD: set[str] = set()
"""The results files of which this command has told copies already."""


def _tell_copies(path: Path) -> None:
    from itembank.cli.words.wrapped import say
    from itembank.records.store.copies import copies_beside

    for one in copies_beside(path):
        if one.name.endswith(("-journal", "-wal", "-shm")):
            say(
                f"{one} is left of a copy of the results that was being written. Keep it beside "
                "that copy until ‘itembank unite’ has read both; then delete them.",
                err=True,
            )
        else:
            say(
                f"{one} is a copy of the results, as a program that keeps folders in step makes "
                "them when two people record at once. It may hold what is not here: ‘itembank "
                f'unite "{one}"’ brings the two together; then delete it.',
                err=True,
            )


def thresholds_of(deciding: Deciding) -> Thresholds:
    """Return a department's lines as deciding wants them."""
    from itembank.records.reports.advice import Thresholds

    return Thresholds(deciding.again_below, deciding.on_from, deciding.confidence)


def bands_line(found: Decision) -> str:
    """Return the number of pupils in each band, in one line; empty where that is not known."""
    return ", ".join(f"{one.name} {one.pupils}" for one in found.groups)


def asked_line(found: Decision) -> str:
    """Return which questions were not asked, and what the scores are then out of; or nothing."""
    from itembank.records.entries.questions_asked import not_asked_said

    said = []
    if found.not_asked:
        said.append(f"{not_asked_said(found.not_asked)} The starter counts out of {found.out_of}.")
    if found.unlike:
        said.append(
            "Some pupils were asked fewer questions than others: each is in the band of the marks "
            "that they could have, and bands are shown out of the most."
        )
    return " ".join(said)


def overall_line(found: Decision) -> str:
    """Return the advice on the whole starter in one line; empty without results."""
    if found.overall is None:
        return ""
    return f"Overall: {found.overall.words}. {found.overall.why}"
