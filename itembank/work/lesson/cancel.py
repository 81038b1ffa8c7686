"""Notes that a class had, or will have, no lesson."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.work.lesson.lesson_day import no_lesson, periods_of
from itembank.work.lesson.results_store import open_results

if TYPE_CHECKING:
    from itembank.planning.department.department import Department

LONGEST_WHY = 60
"""Characters of a reason at most."""


@dataclass(frozen=True, slots=True)
class NoLesson:
    """The lesson that fell out, or will; `period` is empty where it is all of that day's."""

    class_name: str
    date: datetime.date
    period: str = ""


def cancel(
    department: Department,
    date: datetime.date,
    class_name: str | None = None,
    why: str | None = None,
    period: str | None = None,
) -> NoLesson:
    """Note that a class has no lesson on a day, gone by or to come; all of that day's, or one.

    Raises:
        ItembankError: there is none to cancel, it is noted already, or it has results.
    """
    from itembank.records.entries.entries import Cancelled, LessonFacts
    from itembank.records.entries.recording import record_each
    from itembank.work.lesson.depths import short_text

    words = short_text(why, LONGEST_WHY, "why")
    group = department.find_class(class_name)
    if said := no_lesson(department, group, date, period or ""):
        raise ItembankError(f"{said} There is nothing to cancel.")
    there = periods_of(department, group, date)
    periods = [period] if period is not None and len(there) > 1 else list(there)
    if len(periods) == 1 and len(there) == 1:
        periods = [""]  # the only lesson of a day goes without its period
    periods = periods or [period or ""]
    with open_results(department) as store:
        record_each(
            store,
            [
                (LessonFacts(group.name, date, 1, group.title, one_period), Cancelled(words))
                for one_period in periods
            ],
        )
    return NoLesson(group.name, date, periods[0] if len(periods) == 1 else "")
