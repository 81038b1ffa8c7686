"""What the results of a lesson suggest, and its groups on paper."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.work.lesson.lesson_day import periods_by_day
from itembank.work.lesson.results_store import open_results, place_of_results

if TYPE_CHECKING:
    from itembank.planning.bands.bands import Band
    from itembank.planning.department.department import Department
    from itembank.records.reports.advice import Thresholds
    from itembank.records.reports.decision import Decision


@dataclass(frozen=True, slots=True)
class Decided:
    """What a lesson's results suggest, by which lines, and the bands of its starter."""

    decision: Decision
    thresholds: Thresholds
    bands: tuple[Band, ...]


def thresholds_of(department: Department) -> Thresholds:
    """Return a department's lines between the suggestions."""
    from itembank.records.reports.advice import Thresholds

    lines = department.deciding
    return Thresholds(lines.again_below, lines.on_from, lines.confidence)


def decide(
    department: Department,
    class_name: str | None = None,
    date: datetime.date | None = None,
    period: str | None = None,
) -> Decided:
    """Return what the results of a class's lesson suggest; of its last one without a `date`.

    Raises:
        ItembankError: nothing is recorded then, or there are two lessons that day.
    """
    from itembank.records.reports.decision import decide as decide_lesson
    from itembank.records.results.correct import find_lesson

    group = department.find_class(class_name)
    thresholds = thresholds_of(department)
    with open_results(department, make=False) as store, store.reading() as connection:
        held = periods_by_day(department, group) if period is not None else None
        lesson = find_lesson(connection, group.name, date, period, date is None, held)
        decision = decide_lesson(connection, lesson, group.bands, thresholds)
    return Decided(decision, thresholds, tuple(group.bands.bands(lesson.out_of)))


def write_groups(department: Department, decided: Decided, path: Path) -> None:
    """Write the groups with their next tasks as a PDF, a page each.

    It shows seat codes, so it is noted in the store, where forgetting a pupil finds it.

    Raises:
        ItembankError: there are no results by seat, or the file cannot be written.
    """
    from itembank.files.private import write_private
    from itembank.packs.data.convert import pack_band
    from itembank.pages.documents.group_sheet import GroupPart, group_sheets
    from itembank.records.exporting import remember_files

    decision = decided.decision
    if not any(group.seats for group in decision.groups):
        raise ItembankError(
            f"{decision.facts} has no results by seat, so there are no groups to print. Record "
            "scores or answers by seat.",
            matter="no results by seat",
        )
    tasks = {band.letter: f"{band.task.title}. {band.task.where}" for band in decided.bands}
    known = {band.letter: pack_band(band) for band in decided.bands}
    groups = [
        GroupPart(known[group.letter], group.seats, tasks[group.letter])
        for group in decision.groups
        if group.seats and group.letter in known
    ]
    remember_files(place_of_results(department), [path], decision.facts.class_name)
    write_private(path, group_sheets(str(decision.facts), groups))


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
