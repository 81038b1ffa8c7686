"""The starter that a class had in the lesson that is meant: from its pack or from the store."""

from __future__ import annotations

import datetime
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.planning.bands.bands import MOST_MARKS
from itembank.text.folding import same_name
from itembank.text.in_words import day_month_year
from itembank.today import today
from itembank.work.lesson.lesson_day import parallel, the_period

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.records.entries.entries import LessonFacts
    from itembank.records.entries.lesson_pack import PackFacts
    from itembank.records.store.store import Store
    from itembank.work.lesson.record_request import Numbers, RecordRequest

Intervals = tuple[tuple[str, str, int, int], ...]
"""Letter, name, lowest and highest score of each band, from the lowest."""


@dataclass(frozen=True, slots=True)
class Starter:
    """The starter of a lesson: its questions, its bands, and the pack the class had.

    `asked` are the questions asked, as the teacher says; empty where that is not said.
    """

    facts: LessonFacts
    bands: Intervals
    pack: Path | None = None
    versions: tuple[str, ...] = ()
    asked: tuple[int, ...] = ()


def starter_by_pack(
    department: Department, group: SchoolClass, request: RecordRequest
) -> Starter | None:
    """Return the starter that is meant from its pack, or None where there is no pack.

    Raises:
        ItembankError: the pack that is named is none of the class's, or there are two.
    """
    found = _pack_meant(department, group, request)
    if found is None:
        return None
    pack, lesson = found
    return _as_asked(Starter(lesson, pack.bands, pack.path, pack.versions), group, request.asked)


def _pack_meant(
    department: Department, group: SchoolClass, request: RecordRequest
) -> tuple[PackFacts, LessonFacts] | None:
    from itembank.packs.data.pack_place import packs_of
    from itembank.records.entries.lesson_pack import choose_pack, read_pack_facts

    date, other = request.date, request.same_as
    whose = group.name if other is None else parallel(department, group, other)
    if request.pack is not None:
        pack = read_pack_facts(request.pack, request.period or "")
        theirs = pack.lesson.class_name
        # The lesson of another class tells nothing of when this one had the starter.
        period = request.period or (_period_of(pack, date) if other is None else "")
        if not same_name(theirs, whose):
            said = f"{request.pack} is a pack of {theirs}."
            if other is not None:
                raise ItembankError(said)
            raise ItembankError(
                said, matter="pack of another class", class_name=group.name, other=theirs
            )
        day = date or pack.lesson.date
        lesson = replace(pack.lesson, class_name=group.name, date=day, period=period)
        return pack, lesson
    places = packs_of(request.packs, whose)
    if other is None:
        if request.out_of is not None:
            return None
        if request.period is not None:
            places = [place for place in places if place.period == request.period] or places
    place = choose_pack(places, date, today())
    if place is None:
        if other is not None:
            raise no_pack_of_other(whose, date, request.packs, group.name)
        return None
    period = request.period or ("" if other is not None else place.period)
    pack = read_pack_facts(place.path, period)
    return pack, replace(pack.lesson, class_name=group.name, date=place.date)


def _period_of(pack: PackFacts, date: datetime.date | None) -> str:
    """Return the lesson of a day that a pack was made for, which its folder alone tells."""
    from itembank.packs.data.pack_place import read_folder_name

    lesson = pack.lesson
    named = read_folder_name(pack.path.resolve().parent.name)
    if named is None or not same_name(named[0], lesson.class_name) or named[1] != lesson.date:
        return ""
    return named[2] if date in (None, lesson.date) else ""


def no_pack_of_other(
    other: str, date: datetime.date | None, packs: Path, class_name: str
) -> ItembankError:
    """Return the error that a parallel class has no pack for a day."""
    when = f" for {day_month_year(date)}" if date else ""
    return ItembankError(
        f"There is no pack of {other}{when} in {packs}.",
        matter="no pack of the other class",
        class_name=class_name,
    )


def unless_covered(
    starter: Starter, group: SchoolClass, request: RecordRequest, store: Store
) -> Starter | None:
    """Return the starter of a pack; None where it is noted that something else was asked.

    Raises:
        ItembankError: that is noted, and a pack is named all the same.
    """
    from itembank.records.results.happened import cover_of

    facts = starter.facts
    with store.reading() as connection:
        noted = cover_of(connection, group.name, (facts.date, facts.period))
        if noted is None:
            return starter
        from itembank.records.results.correct import lesson_facts
        from itembank.records.results.lessons import lessons

        known = next(
            lesson
            for lesson in lessons(connection, group.name, facts.date, facts.date)
            if lesson.period == facts.period
        )
        asked = [question.address for question in lesson_facts(connection, known).questions]
    if asked == [question.address for question in facts.questions]:
        return starter
    if request.pack is not None or request.same_as is not None:
        raise ItembankError(
            f"It is noted that {facts} was asked something else ({noted}). Nothing was "
            "recorded. Leave out the pack, or take the note back.",
            matter="asked something else",
            class_name=group.name,
            date=facts.date,
        )
    return None


def starter_by_store(
    department: Department, group: SchoolClass, request: RecordRequest, store: Store
) -> Starter:
    """Return the starter of a day that has no pack, as recorded before or as it is said to be.

    Raises:
        ItembankError: nothing is known of it, or it cannot have so many marks.
    """
    day = request.date or today()
    out_of = request.out_of
    with store.reading() as connection:
        from itembank.records.results.correct import lesson_facts
        from itembank.records.results.lessons import lessons

        known = [
            lesson
            for lesson in lessons(connection, group.name, day, day)
            if request.period is None or lesson.period == request.period
        ]
        if len(known) == 1 and out_of in (None, known[0].out_of):
            facts = lesson_facts(connection, known[0])
            return _as_asked(Starter(facts, _intervals(group, facts.out_of)), group, request.asked)
    if out_of is None:
        raise ItembankError(
            f"There is no pack of {group.name} for {day_month_year(day)} in {request.packs}.",
            matter="no pack that day",
        )
    if not 1 <= out_of <= MOST_MARKS:
        raise ItembankError(f"A starter has 1 to {MOST_MARKS} marks, not {out_of}.", field="out_of")
    from itembank.records.entries.entries import LessonFacts

    # Of two lessons that day it has to be said which: with none, later reports know neither.
    period = request.period or the_period(department, group, day, None)
    facts = LessonFacts(group.name, day, out_of, group.title, period)
    return _as_asked(Starter(facts, _intervals(group, out_of)), group, request.asked)


def starter_recorded(
    department: Department, class_name: str, date: datetime.date, period: str | None = None
) -> Starter | None:
    """Return the starter that results of a lesson are about; None where nothing is recorded of it.

    The period is only needed where the class has several lessons that day.
    """
    from itembank.work.lesson.record_request import RecordRequest
    from itembank.work.lesson.results_store import open_results

    group = department.find_class(class_name)
    try:
        with open_results(department, make=False) as store:
            request = RecordRequest(group.name, date=date, period=period)
            return starter_by_store(department, group, request, store)
    except ItembankError:  # there is no store, or nothing in it of this lesson
        return None


def _as_asked(starter: Starter, group: SchoolClass, asked: Numbers | int | None) -> Starter:
    """Return the starter with the questions that were asked, and the bands of their marks.

    Raises:
        ItembankError: that says nothing that can be, or the questions are not known.
    """
    if asked is None:
        return starter
    from itembank.records.entries.questions_asked import marks_of, read_asked

    if not starter.facts.questions:
        raise ItembankError(
            "Without its pack nobody knows the questions.",
            matter="questions unknown",
            field="asked",
        )
    numbers = read_asked(asked, len(starter.facts.questions))
    marks = marks_of(starter.facts, numbers)
    bands = starter.bands if marks == starter.facts.out_of else _intervals(group, marks)
    return replace(starter, asked=numbers, bands=bands)


def _intervals(group: SchoolClass, out_of: int) -> Intervals:
    return tuple(
        (band.letter, band.name, band.lowest, band.highest) for band in group.bands.bands(out_of)
    )
