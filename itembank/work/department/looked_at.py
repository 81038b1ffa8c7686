"""What is missing in answers, and what is wrong: as the commands would read their files.

What may stand in a department's folder is said by its readers alone. So answers are written as
files, in memory, and read; the readers' faults are told at the answer they come from.
"""

from __future__ import annotations

import functools
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path, PurePath

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import Fault, FileFaults, join_words
from itembank.people.colleague import check_initials
from itembank.planning.bands.bands import BandError, check_count, check_cuts
from itembank.planning.calendar import calendar as calendars
from itembank.planning.department import department as departments
from itembank.planning.department.folder import read_folder
from itembank.work.department.answered import Answers, ClassAnswer, settled
from itembank.work.department.answers_read import Files
from itembank.work.department.as_files import files_of
from itembank.work.department.wrong import Field, Part, Wrong


@dataclass(frozen=True, slots=True)
class Look:
    """What is missing in answers, what is wrong, and what is odd without being wrong."""

    missing: tuple[Wrong, ...] = ()
    wrong: tuple[Wrong, ...] = ()
    remarks: tuple[str, ...] = ()

    @property
    def ready(self) -> bool:
        """Tell whether a department can be made from the answers."""
        return not self.missing and not self.wrong

    def of_part(self, part: Part) -> tuple[Wrong, ...]:
        """Return what is missing and wrong in one part of the conversation."""
        return tuple(fault for fault in (*self.missing, *self.wrong) if fault.part == part)


def look_at(answers: Answers, folder: Path = Path(), before: Files | None = None) -> Look:
    """Return what is missing in answers and what is wrong.

    `folder` is where the department is, or is to be, `before` its files, where it is there.

    >>> [fault.message for fault in look_at(Answers()).missing][:2]
    ['What is the school called?', 'When are the terms of the school year?']
    """
    missing = tuple(_missing(answers))
    own = tuple(_wrong(answers))
    told = {fault.field for fault in (*missing, *own)}
    found, remarks = _read(answers, folder, before)
    # What our own words said of an answer, the readers need not say of it in theirs.
    others = tuple(
        fault for fault in found if not any(_within(fault.field, field) for field in told)
    )
    return Look(missing, own + others, remarks)


def _within(field: Field, told: Field) -> bool:
    return bool(told) and field[: len(told)] == told


def _missing(answers: Answers) -> Iterator[Wrong]:
    if not answers.school.strip():
        yield Wrong("school", "What is the school called?", ("school",))
    if not answers.terms:
        yield Wrong("year", "When are the terms of the school year?", ("terms",))
    if answers.two_week and answers.week_a is None:
        yield Wrong("year", "Which week is a week A? Name a day of it.", ("week_a",))
    if not answers.classes:
        yield Wrong("classes", "Which classes are there?", ("classes",))
    for place, group in enumerate(answers.classes):
        name = group.name or f"Class {place + 1}"
        here: Field = ("classes", place)
        if not group.name.strip():
            yield Wrong("classes", f"Class {place + 1} has no name.", (*here, "name"))
        if group.year is None:
            yield Wrong("classes", f"Which year is {name} in?", (*here, "year"))
        if not group.lessons:
            yield Wrong("classes", f"When does {name} have mathematics?", (*here, "lessons"))
    for year in answers.years:
        group = next(group for group in answers.classes if group.year == year)
        scheme = answers.scheme_for(group)
        if scheme is None and not group.scheme:
            yield Wrong("topics", f"What is taught in year {year}, and when?", ("schemes",))
    for place, scheme in enumerate(answers.schemes):
        if not scheme.topics:
            message = f"What is taught in year {scheme.year}, and when?"
            yield Wrong("topics", message, ("schemes", place, "topics"))


def _wrong(answers: Answers) -> Iterator[Wrong]:
    for place, group in enumerate(answers.classes):
        here: Field = ("classes", place)
        if group.teacher:
            try:
                check_initials(group.teacher)
            except ItembankError as error:
                yield Wrong("classes", f"{group.name}: {error}", (*here, "teacher"))
        letters = sorted({lesson.letter for lesson in group.lessons if lesson.letter})
        if letters and not answers.two_week:
            message = (
                f"{group.name} has lessons in week {join_words(letters)} alone, but the timetable "
                "is said to be the same every week. Say that weeks A and B differ, or take the "
                "letters away."
            )
            yield Wrong("classes", message, (*here, "lessons"))
        for number, lesson in enumerate(group.lessons):
            if any(lesson.clashes(earlier) for earlier in group.lessons[:number]):
                yield Wrong(
                    "classes", f"{group.name} has two lessons on {lesson}.", (*here, "lessons")
                )
    yield from _bands_wrong(answers)


def _bands_wrong(answers: Answers) -> Iterator[Wrong]:
    bands = answers.bands
    if bands is None:
        return
    try:
        if bands.names:
            check_count(len(bands.names))
        if bands.cuts:
            check_cuts(bands.cuts, bands.out_of)
            check_count(len(bands.cuts) + 1)
    except BandError as error:
        yield Wrong("bands", str(error), ("bands",))
        return
    if not bands.names and not bands.cuts:
        yield Wrong("bands", "Name the bands, or give their cut scores.", ("bands",))
    if bands.names and bands.cuts and len(bands.cuts) != len(bands.names) - 1:
        yield Wrong(
            "bands",
            f"{len(bands.names)} bands need {len(bands.names) - 1} cut scores, not "
            f"{len(bands.cuts)}: the lowest score of each band above the first.",
            ("bands",),
        )


def _read(
    answers: Answers, folder: Path, before: Files | None
) -> tuple[tuple[Wrong, ...], tuple[str, ...]]:
    """Return what the readers of a department's files find wrong, and what they remark."""
    # What is missing is told already: the readers get only what makes whole files, so that they
    # find what is wrong in the rest.
    whole = [place for place, group in enumerate(answers.classes) if _can_be_written(group)]
    kept = replace(answers, classes=tuple(answers.classes[place] for place in whole))
    if kept.bands is not None and list(_bands_wrong(kept)):
        kept = replace(kept, bands=None)
    if kept.two_week and kept.week_a is None:
        kept = replace(kept, two_week=False)
    titles, prerequisites = known_topics()
    try:
        read = read_folder(folder, tuple(titles), prerequisites, files_of(kept, before))
    except FileFaults as error:
        told = (_placed(fault, answers, settled(kept), whole) for fault in error.faults)
        return tuple(dict.fromkeys(wrong for wrong in told if wrong is not None)), ()
    return (), read.remarks


def _can_be_written(group: ClassAnswer) -> bool:
    return bool(group.name.strip()) and group.year is not None


def _placed(fault: Fault, answers: Answers, kept: Answers, whole: list[int]) -> Wrong | None:
    """Return a fault of a file at the answer it comes from; None where that is only missing."""
    if not fault.line and not fault.path:
        return None
    name, path = PurePath(fault.file).name, fault.path
    if name == departments.FILE_NAME:
        match path:
            case ("classes", int(place), *rest):
                if rest[:1] == ["topics"]:
                    return None  # those of its scheme, which says so itself
                return Wrong("classes", fault.message, ("classes", whole[place], *rest))
            case ("bands", *_):
                return Wrong("bands", fault.message, ("bands",))
            case _:
                return Wrong("school", fault.message, path[:1] or ("school",))
    if name == calendars.FILE_NAME:
        match path:
            case ("terms", int(place), *rest):
                # Files have the terms in order, and the answers as they were typed.
                there = answers.terms.index(kept.terms[place])
                return Wrong("year", fault.message, ("terms", there, *rest))
            case ("closed", int(place), *rest):
                there = answers.closed.index(kept.closed[place])
                return Wrong("year", fault.message, ("closed", there, *rest))
            case _:
                return Wrong("year", fault.message, path[:1] or ("terms",))
    stem = PurePath(fault.file).stem
    places = [place for place, scheme in enumerate(answers.schemes) if scheme.name == stem]
    scheme: Field = ("schemes", places[0]) if places else ("schemes",)
    return Wrong("topics", fault.message, (*scheme, *path))


@functools.cache
def known_topics() -> tuple[Mapping[str, str], Mapping[str, tuple[str, ...]]]:
    """Return the title of each topic that is generated, by id, and what each rests on."""
    from itembank.items.topics.registry import listed_topics

    listed = listed_topics().values()
    titles = {topic.id: topic.title for topic in listed}
    return titles, {topic.id: topic.prerequisites for topic in listed}
