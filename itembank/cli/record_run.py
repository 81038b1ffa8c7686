"""Does what ``itembank record`` was told: finds the lesson, checks, records, says what next.

Every fault of what was typed is told at once, and then nothing is recorded; otherwise all of it
is, in one go.
"""

from __future__ import annotations

import datetime
from contextlib import ExitStack
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from itembank.cli.lesson_day import ask_about_day, parallel
from itembank.cli.lesson_text import (
    bands_line,
    overall_line,
    read_day,
    store_of,
    the_department,
    thresholds_of,
)
from itembank.cli.words.wrapped import say
from itembank.errors import ItembankError
from itembank.planning.bands.caution import NOT_A_GRADE
from itembank.processes.beside import Beside
from itembank.text.folding import same_name
from itembank.text.in_words import counted
from itembank.today import today

if TYPE_CHECKING:
    from itembank.planning.department.department import Department, SchoolClass
    from itembank.records.entries.entries import LessonFacts, What
    from itembank.records.store.store import Store

MOST_MARKS = 200
Read: TypeAlias = "tuple[list[What], list[str]]"
"""What is to be recorded, and remarks on it."""


@dataclass(frozen=True, slots=True)
class Typed:
    """What was typed after ``itembank record``; None where an option was left out."""

    class_name: str | None = None
    bands: str | None = None
    right: str | None = None
    pupils: int | None = None
    sheet: Path | None = None
    own_view: str | None = None
    unclear: int | None = None
    note: str | None = None
    correct: tuple[str, ...] = ()
    date: str | None = None
    period: str | None = None
    pack: Path | None = None
    asked: str | None = None
    same_as: str | None = None
    out_of: int | None = None
    output: Path | None = None
    department: Path | None = None
    replace: bool = False
    add: bool = False
    yes: bool = False

    @property
    def depths(self) -> list[str]:
        """Return the options that say how the starter went; only one of them may be given."""
        given = {"--bands": self.bands, "--right": self.right, "--sheet": self.sheet}
        return [name for name, value in given.items() if value is not None]

    @property
    def empty(self) -> bool:
        """Tell whether nothing is to be recorded yet."""
        beside = (self.own_view, self.unclear, self.note)
        return not self.depths and all(one is None for one in beside)


def run(typed: Typed) -> None:
    """Record what was typed, or ask for it.

    Raises:
        ItembankError: says all that is wrong; nothing was recorded.
    """
    date = read_day(typed.date)
    day = today()
    if date is not None and date > day:
        raise ItembankError(f"{date} has not come yet. Check --date.")
    if typed.add and typed.replace:
        raise ItembankError("--add joins what is recorded, --replace puts it away. Give one.")
    found = the_department(typed.department)
    one = found.find_class(typed.class_name)
    if typed.correct:
        from itembank.records.entries.teacher_text import read_correction
        from itembank.records.results.correct import correct
        from itembank.records.store.store import open_store

        if not typed.empty:
            raise ItembankError("Correct what is recorded, or record anew; not both at once.")
        with open_store(store_of(found.folder), make=False) as store:
            changes = [read_correction(text) for text in typed.correct]
            facts, _ = correct(store, one.name, date, changes, typed.period)
            _say_results(store, found, one, facts, "Corrected")
        return
    had = _as_asked(_from_pack(typed, found, one, date, day), typed, one)
    with ExitStack() as stack:
        reading: Beside[Read] | None = None
        if had is not None and typed.sheet is not None:
            # Marking loads the mathematics, the store a database's library: each takes as long.
            reading = stack.enter_context(Beside(partial(_read, typed, had, one, found)))
        from itembank.records.store.store import open_store

        store = stack.enter_context(open_store(store_of(found.folder)))
        had = _as_covered(typed, one, had, store) if had else had
        if had is None:
            had = _as_asked(_from_store(typed, one, date or day, store), typed, one)
            assert had is not None
        if not typed.yes:
            ask_about_day(store, found, one, had.facts)
        if typed.empty:
            typed = _asked(typed, had.bands, had.facts)
        what, said = reading.result() if reading and had.pack else _read(typed, had, one, found)
        from itembank.records.entries.recording import record_all

        seats = len(one.plan.seats)
        record_all(store, had.facts, what, replace=typed.replace, add=typed.add, seats=seats)
        for line in filter(None, said):
            say(line)
        _say_results(store, found, one, had.facts, "Added" if typed.add else "Recorded")


Intervals = tuple[tuple[str, str, int, int], ...]


@dataclass(frozen=True, slots=True)
class Had:
    """The lesson that is meant, its bands, and the pack the class had with its versions.

    `asked` are the questions asked, as the teacher says; empty where that is not said.
    """

    facts: LessonFacts
    bands: Intervals
    pack: Path | None = None
    versions: tuple[str, ...] = ()
    asked: tuple[int, ...] = ()


def _from_pack(
    typed: Typed,
    found: Department,
    one: SchoolClass,
    date: datetime.date | None,
    day: datetime.date,
) -> Had | None:
    """Return the lesson that is meant from its pack, or None where there is no pack."""
    from itembank.packs.data.pack_place import PackPlace, packs_of
    from itembank.records.entries.lesson_pack import choose_pack, read_pack_facts

    place: PackPlace | None
    whose = one.name if typed.same_as is None else parallel(found, one, typed.same_as)
    if typed.pack is not None:
        facts = read_pack_facts(typed.pack, typed.period or "")
        theirs = facts.lesson.class_name
        if not same_name(theirs, whose):
            advice = "" if typed.same_as else f" If {one.name} had it too, add --same-as {theirs}."
            raise ItembankError(f"{typed.pack} is a pack of {theirs}.{advice}")
        lesson = replace(facts.lesson, class_name=one.name, date=date or facts.lesson.date)
        return Had(lesson, facts.bands, facts.path, facts.versions)
    places = packs_of(_home(typed), whose)
    if typed.same_as is not None:
        place = choose_pack(places, date, day)
        if place is None:
            when = f" for {date}" if date else ""
            raise ItembankError(
                f"There is no pack of {whose}{when} in {_home(typed)}. Name the one that "
                f"{one.name} had with --pack."
            )
        facts = read_pack_facts(place.path)
        lesson = replace(
            facts.lesson, class_name=one.name, date=place.date, period=typed.period or ""
        )
        return Had(lesson, facts.bands, facts.path, facts.versions)
    if typed.period is not None:
        places = [p for p in places if p.period == typed.period] or places
    place = choose_pack(places, date, day) if typed.out_of is None else None
    if place is not None:
        facts = read_pack_facts(place.path, typed.period or place.period)
        lesson = replace(facts.lesson, class_name=one.name, date=place.date)
        return Had(lesson, facts.bands, facts.path, facts.versions)
    return None


def _as_asked(had: Had | None, typed: Typed, one: SchoolClass) -> Had | None:
    """Return the lesson with the questions that were asked, and the bands of their marks.

    Raises:
        ItembankError: --asked says nothing that can be, or the questions are not known.
    """
    if had is None or typed.asked is None:
        return had
    from itembank.records.entries.questions_asked import marks_of, read_asked

    if not had.facts.questions:
        raise ItembankError(
            "--asked needs to know the questions. Name the pack with --pack, or say with --out-of "
            "how many marks there were."
        )
    asked = read_asked(typed.asked, len(had.facts.questions))
    marks = marks_of(had.facts, asked)
    bands = had.bands if marks == had.facts.out_of else _intervals(one, marks)
    return replace(had, asked=asked, bands=bands)


def _as_covered(typed: Typed, one: SchoolClass, had: Had, store: Store) -> Had | None:
    """Return the lesson as its pack has it; None where the class was asked something else.

    Raises:
        ItembankError: that is noted, and a pack is named all the same.
    """
    from itembank.records.results.happened import cover_of

    with store.reading() as connection:
        noted = cover_of(connection, one.name, (had.facts.date, had.facts.period))
        if noted is None:
            return had
        from itembank.records.results.correct import lesson_facts
        from itembank.records.results.results import lessons

        day = had.facts.date
        (known,) = [
            lesson
            for lesson in lessons(connection, one.name, day, day)
            if lesson.period == had.facts.period
        ]
        asked = [question.address for question in lesson_facts(connection, known).questions]
    if asked == [question.address for question in had.facts.questions]:
        return had
    if typed.pack is not None or typed.same_as is not None:
        raise ItembankError(
            f"It is noted that {had.facts} was asked something else ({noted}). Nothing was "
            f"recorded. Leave out the pack, or take the note back: ‘itembank undo {one.name} "
            f"--date {day}’."
        )
    return None


def _home(typed: Typed) -> Path:
    from itembank.work.places import output_home

    return typed.output if typed.output is not None else output_home(Path.cwd())


def _from_store(typed: Typed, one: SchoolClass, day: datetime.date, store: Store) -> Had:
    """Return the lesson of a day that has no pack, as recorded before or as it was typed."""
    with store.reading() as connection:
        from itembank.records.results.correct import lesson_facts
        from itembank.records.results.results import lessons

        known = [
            lesson
            for lesson in lessons(connection, one.name, day, day)
            if typed.period is None or lesson.period == typed.period
        ]
        if len(known) == 1 and typed.out_of in (None, known[0].out_of):
            recorded = lesson_facts(connection, known[0])
            return Had(recorded, _intervals(one, recorded.out_of))
    out_of = typed.out_of
    if out_of is None:
        raise ItembankError(
            f"There is no pack of {one.name} for {day} in {_home(typed)}. Name it with --pack, or "
            "say with --out-of how many marks the starter had."
        )
    if not 1 <= out_of <= MOST_MARKS:
        raise ItembankError(f"A starter has 1 to {MOST_MARKS} marks, not {out_of}. See --out-of.")
    from itembank.records.entries.entries import LessonFacts

    lesson = LessonFacts(one.name, day, out_of, one.title, typed.period or "")
    return Had(lesson, _intervals(one, out_of))


def _intervals(one: SchoolClass, out_of: int) -> Intervals:
    return tuple(
        (band.letter, band.name, band.lowest, band.highest) for band in one.bands.bands(out_of)
    )


def _asked(typed: Typed, bands: Intervals, facts: LessonFacts) -> Typed:
    """Ask three short questions at a terminal.

    Raises:
        ItembankError: nobody can be asked, or nothing was answered.
    """
    from itembank.cli.words.ask import ask, can_ask
    from itembank.records.entries.teacher_text import read_views, whole_numbers

    if not can_ask():
        raise ItembankError(
            'Say what to record, as in --bands "8 12 9"; --right counts by question, --sheet reads '
            "a CSV."
        )
    say(f"{facts}: {facts.title}. Enter alone passes over a question; Ctrl-C stops.")
    names = ", ".join(f"{name} {low}–{high}" for _, name, low, high in bands)

    def counts(text: str) -> str:
        if len(whole_numbers(text, "Hands")) != len(bands):
            raise ItembankError(f"Write {len(bands)} numbers: {names}.")
        return text

    def views(text: str) -> str:
        read_views(text, ())
        return text

    def number(text: str) -> str:
        if len(whole_numbers(text, "Pupils")) != 1:
            raise ItembankError("Write one number.")
        return text

    hands = ask(f"Hands for {names}", check=counts)
    sure = ask("Sure, partly and not sure, before marking", check=views)
    asked = ask("How many asked what to do before they could start", check=number)
    found = replace(
        typed,
        bands=hands or None,
        own_view=sure or None,
        unclear=int(asked) if asked else None,
    )
    if found.empty:
        raise ItembankError("Nothing was answered, so nothing is recorded.")
    return found


def _read(typed: Typed, had: Had, one: SchoolClass, found: Department) -> Read:
    """Return what is to be recorded and remarks on it; raises all faults together."""
    from itembank.cli.record_read import read_bands, read_clarity, read_own_views, read_right
    from itembank.cli.record_read import read_sheet_file as read_sheet

    what: list[What] = []
    said: list[str] = []
    faults: list[str] = []
    facts, bands, seats = had.facts, had.bands, one.plan.seats
    if len(typed.depths) > 1:
        faults.append(f"Give one of {', '.join(typed.depths)}: the last says most.")
    elif typed.bands is not None:
        _add(what, faults, lambda: read_bands(typed.bands or "", bands, len(seats), had.asked))
    elif typed.right is not None:
        right = typed.right
        _add(
            what,
            faults,
            lambda: read_right(right, facts, typed.pupils, seats, said, had.asked),
        )
    elif typed.sheet is not None:
        path = typed.sheet
        _add(what, faults, lambda: read_sheet(path, had, seats, found, said))
    if had.asked:
        from itembank.records.entries.questions_asked import not_asked_said

        missing = [q.number for q in facts.questions if q.number not in had.asked]
        said.append(not_asked_said(missing))
    if typed.asked is not None and not typed.depths:
        faults.append("--asked goes with --bands, --right or --sheet.")
    if typed.pupils is not None and typed.right is None:
        faults.append("--pupils goes with --right.")
    if typed.own_view is not None:
        _add(what, faults, lambda: read_own_views(typed.own_view or "", seats))
    if typed.unclear is not None or typed.note is not None:
        _add(what, faults, lambda: read_clarity(typed.unclear, typed.note, len(seats)))
    if faults:
        raise ItembankError("\n".join(dict.fromkeys(faults)))
    return what, said


def _add(what: list[What], faults: list[str], read: object) -> None:
    try:
        what.append(read())  # type: ignore[operator]
    except ItembankError as error:
        faults.append(str(error))


def _say_results(
    store: Store, found: Department, one: SchoolClass, facts: LessonFacts, done: str
) -> None:
    """Say in three lines what was recorded, what it means and what comes next."""
    from itembank.records.reports.decision import decide
    from itembank.records.results.results import lessons

    with store.reading() as connection:
        same = [
            lesson
            for lesson in lessons(connection, facts.class_name, facts.date, facts.date)
            if lesson.period == facts.period
        ]
        thresholds = thresholds_of(found.deciding)
        result = decide(connection, same[0], one.bands, thresholds)
    there = f": {counted(result.pupils, 'pupil')}" if result.pupils else ""
    bands = f". {bands_line(result)}" if result.groups else ""
    say(f"{done}. {facts}{there}{bands}.{f' {NOT_A_GRADE}' if bands else ''}")
    if line := overall_line(result):
        say(line)
    name = facts.class_name
    say(f"Next: ‘itembank decide {name}’ says more; ‘itembank undo {name}’ takes this back.")
