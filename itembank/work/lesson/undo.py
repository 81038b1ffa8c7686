"""Takes back what was recorded last of a class; nothing is deleted."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.text.in_words import day_month_year, moment
from itembank.work.lesson.results_store import open_results

if TYPE_CHECKING:
    from itembank.planning.department.department import Department
    from itembank.records.entries.undoing import Last


@dataclass(frozen=True, slots=True)
class TakenBack:
    """What was taken back of which class, and whether what it had replaced counts again."""

    last: Last
    class_name: str
    counts_again: bool


def undo(
    department: Department,
    class_name: str | None = None,
    date: datetime.date | None = None,
    sure: bool = False,
    expected: Last | None = None,
    period: str | None = None,
) -> TakenBack:
    """Take back what was recorded last of a class, of a class on one day, or of one lesson.

    What something newer that was taken back stood before is a question, of the matter "older
    than what was taken back", with it as `last` in what the error is about. To a person who has
    seen it, it is taken back with that as `expected`, and nothing else is; `sure` is for whoever
    need not see it.

    Raises:
        ItembankError: there is nothing to take back, or the question is open.
    """
    from itembank.records.entries.undoing import last_recorded
    from itembank.records.entries.undoing import undo as take_back

    name = department.find_class(class_name).name
    with open_results(department, make=False) as store:
        last = expected if expected is not None else last_recorded(store, name, date, period)
        if last.asked_about and not sure and expected is None:
            raise ItembankError(
                f"{_asked_about(last, name)} Nothing was taken back.",
                matter="older than what was taken back",
                last=last,
                why=_asked_about(last, name),
            )
        _, _, again = take_back(store, name, date, last, period)
    return TakenBack(last, name, again)


def _asked_about(last: Last, name: str) -> str:
    """Return in words what would be taken back."""
    period = f", period {last.period}" if last.period else ""
    day = day_month_year(last.date)
    where = f", from {day}" if last.moves else f" of {name} on {day}{period}"
    return (
        f"The last was taken back already. The next would be {last.words}{where}, recorded on "
        f"{moment(last.made_at)}."
    )


def noted_last(
    department: Department, class_name: str, date: datetime.date, period: str, kind: str
) -> Last | None:
    """Return a note such as a "cover" or "cancelled" on a lesson, None where there is none.

    There is none either where something was recorded of that day since, which would have to be
    taken back before.
    """
    from itembank.records.entries.undoing import last_recorded

    try:
        with open_results(department, make=False) as store:
            name = department.find_class(class_name).name
            last = last_recorded(store, name, date, period or None)
    except ItembankError:  # nothing to take back
        return None
    return last if _is_note(last, period, kind) else None


def last_of_lesson(
    department: Department, class_name: str, date: datetime.date, period: str
) -> Last | None:
    """Return what was recorded last of one lesson, None where nothing of it counts."""
    from itembank.records.entries.undoing import last_recorded

    try:
        with open_results(department, make=False) as store:
            return last_recorded(store, department.find_class(class_name).name, date, period)
    except ItembankError:  # nothing to take back
        return None


def take_back_of_lesson(
    department: Department, class_name: str, date: datetime.date, period: str, numbers: str
) -> TakenBack:
    """Take back what was recorded last of one lesson, as it was seen under its `numbers`.

    Raises:
        ItembankError: nothing is recorded of it, or something else was recorded last since.
    """
    last = last_of_lesson(department, class_name, date, period)
    if last is None:
        raise ItembankError(
            f"Nothing is recorded of {class_name} on {day_month_year(date)}, period {period}, so "
            "there is nothing to take back."
        )
    if seen_as(last) != numbers:
        raise ItembankError(
            f"What was recorded last of this lesson is now {last.words}, of "
            f"{moment(last.made_at)}. Nothing was taken back: look at the lesson again."
        )
    return undo(department, class_name, date, expected=last, period=period)


def seen_as(last: Last) -> str:
    """Return the numbers by which a page and its form name what was recorded last."""
    return "-".join(str(number) for number in last.numbers)


def _is_note(last: Last, period: str, kind: str) -> bool:
    """Tell whether that is a note on a lesson; the only lesson of its day has no period there."""
    return set(last.kinds) == {kind} and last.period in ("", period)


def take_back_noted(
    department: Department, class_name: str, date: datetime.date, period: str, kind: str
) -> TakenBack:
    """Take back a note such as a "cover" or "cancelled", where nothing was recorded since.

    Raises:
        ItembankError: what was recorded last of that lesson is something else; it stays.
    """
    from itembank.records.entries.undoing import last_recorded

    name = department.find_class(class_name).name
    with open_results(department, make=False) as store:
        last = last_recorded(store, name, date, period or None)
    if not _is_note(last, period, kind):
        raise ItembankError(
            f"What was recorded last of {name} on {day_month_year(date)} is {last.words}, so "
            "nothing was taken back."
        )
    return undo(department, name, date, expected=last, period=period or None)


def last_move(department: Department, class_name: str) -> Last | None:
    """Return the last move of pupils from or to a class, where it was what was recorded last."""
    from itembank.records.entries.undoing import last_recorded

    try:
        with open_results(department, make=False) as store:
            last = last_recorded(store, department.find_class(class_name).name)
    except ItembankError:  # nothing to take back
        return None
    return last if last.moves and not last.asked_about else None
