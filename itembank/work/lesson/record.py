"""Records how a starter went, or puts right what is recorded, and says what it comes to.

Every fault of what is said is told at once, and then nothing is recorded; otherwise all of it
is, in one go.
"""

from __future__ import annotations

import datetime
from contextlib import ExitStack
from dataclasses import replace
from enum import Enum
from functools import partial
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.today import today
from itembank.work.lesson.lesson_day import (
    periods_by_day,
    periods_of,
    refuse_day_without_lesson,
    refuse_to_come,
)
from itembank.work.lesson.lesson_starter import (
    Starter,
    starter_by_pack,
    starter_by_store,
    unless_covered,
)
from itembank.work.lesson.results_store import open_results

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.processes.beside import Beside
    from itembank.records.entries.entries import LessonFacts
    from itembank.records.reports.decision import Decision
    from itembank.records.store.store import Store
    from itembank.remark import Remark
    from itembank.work.lesson.depths import Read
    from itembank.work.lesson.record_request import RecordRequest


class Done(Enum):
    """What became of what was said of a lesson."""

    RECORDED = "recorded"
    ADDED = "added"
    CORRECTED = "corrected"


@dataclass(frozen=True, slots=True)
class Recorded:
    """What was recorded, what it comes to now, and what the teacher ought to know of it."""

    done: Done
    decision: Decision
    remarks: tuple[Remark, ...] = ()


def record(department: Department, request: RecordRequest) -> Recorded:
    """Record what is said of a lesson.

    Raises:
        ItembankError: what is wrong; nothing was recorded. Some matters are questions, and the
            answer is a request with one field more: "no lesson that day" (`any_day`), "recorded
            already" (`replace` or `add`). "nothing to record": how the starter went is missing.
    """
    if request.date is not None:
        refuse_to_come(request.date)
    if request.add and request.replace:
        raise ItembankError(
            "To join what is recorded and to put it away are two things.",
            matter="add and replace",
        )
    group = department.find_class(request.class_name)
    if request.correct:
        return _correct(department, group, request)
    starter = starter_by_pack(department, group, request)
    with ExitStack() as stack:
        reading: Beside[Read] | None = None
        if starter is not None and request.sheet is not None:
            # Marking loads the mathematics, the store a database's library: each takes as long.
            work = partial(_read, request, starter, group, department)
            from itembank.processes.beside import Beside  # numbers alone need no process

            reading = stack.enter_context(Beside(work))
        store = stack.enter_context(open_results(department))
        starter = _settle(department, group, request, store, starter)
        if request.empty:
            raise ItembankError(
                "Nothing is said of how the starter went.", matter="nothing to record"
            )
        what, remarks = (
            reading.result()
            if reading is not None and starter.pack
            else _read(request, starter, group, department)
        )
        from itembank.records.entries.recording import record_all

        seats = len(group.plan.seats)
        anew, add = request.replace, request.add
        record_all(store, starter.facts, what, replace=anew, add=add, seats=seats)
        done = Done.ADDED if add else Done.RECORDED
        return Recorded(done, _decision(store, department, group, starter.facts), tuple(remarks))


def find_starter(department: Department, request: RecordRequest) -> Starter:
    """Return the starter that a request means: its questions, its marks, its bands.

    Raises:
        ItembankError: there is no telling which it is, or the class has no lesson that day.
    """
    group = department.find_class(request.class_name)
    starter = starter_by_pack(department, group, request)
    with open_results(department) as store:
        return _settle(department, group, request, store, starter)


def _settle(
    department: Department,
    group: SchoolClass,
    request: RecordRequest,
    store: Store,
    starter: Starter | None,
) -> Starter:
    """Return the starter that is meant, where its pack alone would say `starter`."""
    if starter is not None:
        day, period = starter.facts.date, starter.facts.period
    else:
        day, period = request.date or today(), request.period or ""
    known_as = _recorded_as(store, department, group, day, period)
    if known_as != period:
        request = replace(request, period=known_as)
        if starter is not None:
            starter = replace(starter, facts=replace(starter.facts, period=known_as))
    if starter is not None:
        starter = unless_covered(starter, group, request, store)
    if starter is None:
        starter = starter_by_store(department, group, request, store)
    # The day may be that of a pack that is named, and nobody said it.
    refuse_to_come(starter.facts.date)
    if not request.any_day:
        refuse_day_without_lesson(store, department, group, starter.facts)
    return starter


def _recorded_as(
    store: Store,
    department: Department,
    group: SchoolClass,
    day: datetime.date,
    period: str,
) -> str:
    """Return the period under which a lesson is, or will be, recorded.

    A day's only lesson goes without one, whoever records it: else it would be there twice. Where
    it was recorded with one, as before the timetable changed, it keeps it.
    """
    from itembank.records.results.lessons import lessons

    held = periods_of(department, group, day)
    if len(held) != 1 or period not in ("", *held):
        return period
    with store.reading() as connection:
        known = [lesson.period for lesson in lessons(connection, group.name, day, day)]
    if period in known:
        return period
    return held[0] if held[0] in known else ""


def _read(
    request: RecordRequest, starter: Starter, group: SchoolClass, department: Department
) -> Read:
    from itembank.work.lesson.depths import read_depths

    return read_depths(request, starter, group, department)


def _correct(department: Department, group: SchoolClass, request: RecordRequest) -> Recorded:
    """Put single seats of what is recorded right."""
    from itembank.records.entries.teacher_text import read_correction
    from itembank.records.results.correct import correct

    if not request.empty:
        raise ItembankError("Correct what is recorded, or record anew; not both at once.")
    with open_results(department, make=False) as store:
        changes = [
            read_correction(change) if isinstance(change, str) else change
            for change in request.correct
        ]
        period = request.period
        held = periods_by_day(department, group) if period is not None else None
        facts, _ = correct(store, group.name, request.date, changes, period, held)
        return Recorded(Done.CORRECTED, _decision(store, department, group, facts))


def _decision(
    store: Store, department: Department, group: SchoolClass, facts: LessonFacts
) -> Decision:
    """Return what all that is recorded of a lesson comes to now."""
    from itembank.records.reports.decision import decide
    from itembank.records.results.lessons import lessons
    from itembank.work.lesson.decide import thresholds_of

    with store.reading() as connection:
        same = [
            lesson
            for lesson in lessons(connection, facts.class_name, facts.date, facts.date)
            if lesson.period == facts.period
        ]
        return decide(connection, same[0], group.bands, thresholds_of(department))
