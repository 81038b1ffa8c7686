"""A department's whole folder for planning: classes, calendar and schemes, checked together."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from itertools import combinations
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import Fault, FileFaults, join_words, nearest
from itembank.files.toml_table import TomlFile
from itembank.planning.calendar import calendar as calendars
from itembank.planning.calendar.calendar import Calendar, read_calendar
from itembank.planning.calendar.scheme import FOLDER, Scheme, read_scheme, with_earlier
from itembank.planning.calendar.timetable import lessons_between
from itembank.planning.department import department as departments
from itembank.planning.department.class_lessons import Place, place_text, place_words
from itembank.planning.department.class_plan import ClassPlan, taught_path
from itembank.planning.department.class_scheme import LessonKey, class_scheme
from itembank.planning.department.department import Department, SchoolClass, read_department
from itembank.planning.department.known_topics import KnownTopics
from itembank.text.in_words import long_day


@dataclass(frozen=True, slots=True)
class Folder:
    """Everything a week is planned from, and remarks that are no faults."""

    department: Department
    calendar: Calendar
    schemes: Mapping[str, Scheme]
    prerequisites: Mapping[str, tuple[str, ...]]
    remarks: tuple[str, ...] = ()

    def scheme_of(
        self, school_class: SchoolClass, cancelled: Collection[LessonKey] = frozenset()
    ) -> Scheme:
        """Return the scheme of work a class follows, with the days on which *it* is taught.

        `cancelled` are lessons that did not take place, or will not.

        Raises:
            ItembankError: the class states none, or has no lessons in its timetable.
        """
        plan, name = school_class.plan, school_class.name
        file = self.department.folder / departments.FILE_NAME
        if not plan.scheme:
            there = ", ".join(sorted(self.schemes)) or "none yet"
            raise ItembankError(
                f'{file}: {name} has no scheme of work. Add scheme = "…" to its table; '
                f"the schemes are {there}."
            )
        if not plan.lessons:
            raise ItembankError(
                f'{file}: {name} has no lessons. Add lessons = ["Mon 1", …] to its table.'
            )
        return class_scheme(self.schemes[plan.scheme], plan, self.calendar, cancelled)


def read_folder(
    folder: Path,
    generated: Collection[str],
    prerequisites: Mapping[str, tuple[str, ...]],
    texts: Mapping[str, str] | None = None,
) -> Folder:
    """Read department, calendar and schemes of a folder; all their faults are told at once.

    `generated` are the ids of the topics that generators make, `prerequisites` what each topic
    that is known by now rests on. `texts` stand for all the files, by their names with /, where
    they are not written yet.

    Raises:
        FileFaults: every fault of every file, each with file and line.
    """

    def text_of(name: str) -> str | None:
        return None if texts is None else texts.get(name, "")

    faults: list[Fault] = []
    department = calendar = None
    try:
        department = read_department(folder, generated, text_of(departments.FILE_NAME))
    except FileFaults as error:
        faults += error.faults
    try:
        calendar = read_calendar(folder, text_of(calendars.FILE_NAME))
    except FileFaults as error:
        faults += error.faults
    schemes: dict[str, Scheme] = {}
    faulty: set[str] = set()
    if calendar is not None:
        classes = department.classes if department else ()
        banks = dict.fromkeys(
            path for school_class in classes for path in school_class.stated_sources.banks or ()
        )
        known = KnownTopics(generated, tuple(banks))
        for path in _scheme_paths(folder, texts):
            try:
                text = text_of(f"{FOLDER}/{path.name}")
                schemes[path.stem] = read_scheme(path, calendar, known, text)
            except FileFaults as error:
                faulty.add(path.stem)
                faults += error.faults
        faults += _join_years(folder, schemes, faulty, texts)
    if department is not None:
        # All that can be looked at is looked at, so that nobody mends one fault to meet the next.
        file = TomlFile(folder / departments.FILE_NAME, text_of(departments.FILE_NAME))
        _note_clashes(file, department)
        if calendar is not None:
            _note_letters(file, department, calendar)
            _note_days_taught(file, department, calendar)
            _note_moved(file, department, calendar)
            _note_schemes(file, department, schemes, faulty)
        faults += file.faults
    if cycle := find_cycle(prerequisites):
        names = " → ".join(cycle)
        faults.append(Fault(str(folder), 0, f"Topics rest on one another in a circle: {names}."))
    if faults:
        raise FileFaults(faults, most=None)
    assert department is not None
    assert calendar is not None
    remarks = tuple(_remarks(schemes, prerequisites))
    return Folder(department, calendar, schemes, prerequisites, remarks)


def _join_years(
    folder: Path,
    schemes: dict[str, Scheme],
    faulty: Collection[str],
    texts: Mapping[str, str] | None,
) -> list[Fault]:
    """Put the topics of earlier years into the schemes that follow them; return their faults."""
    faults: list[Fault] = []
    # From the youngest on: a scheme follows one of an earlier year, so there is no circle.
    for name, scheme in sorted(schemes.items(), key=lambda pair: pair[1].year):
        if not scheme.after or scheme.after in faulty:
            continue
        before = schemes.get(scheme.after)
        if before is not None and before.year < scheme.year:
            schemes[name] = with_earlier(scheme, before)
            continue
        path = folder / FOLDER / f"{name}.toml"
        file = TomlFile(path, None if texts is None else texts.get(f"{FOLDER}/{path.name}", ""))
        if before is not None:
            file.fault(
                ("after",),
                f"{name} is for year {scheme.year}, so it cannot follow {before.name}, which is "
                f"for year {before.year}.",
            )
        else:
            near = nearest(scheme.after, [k for k, v in schemes.items() if v.year < scheme.year])
            there = f"Did you mean {join_words(near, 'or')}?" if near else "Mend the name."
            file.fault(("after",), f"There is no scheme of work ‘{scheme.after}’. {there}")
        faults += file.faults
    return faults


def _scheme_paths(folder: Path, texts: Mapping[str, str] | None) -> list[Path]:
    if texts is None:
        return sorted((folder / FOLDER).glob("*.toml"))
    return [folder / name for name in sorted(texts) if name.startswith(f"{FOLDER}/")]


def _note_clashes(file: TomlFile, department: Department) -> None:
    """Note the clashes between classes that one teacher takes."""
    rows = {school_class.name: place for place, school_class in enumerate(department.classes)}
    for school_class, other in combinations(department.classes, 2):
        # Without a code nobody knows who teaches, and classes of two teachers never clash.
        if not school_class.plan.teacher or school_class.plan.teacher != other.plan.teacher:
            continue
        for lesson in other.plan.lessons:
            if any(lesson.clashes(mine) for mine in school_class.plan.lessons):
                file.fault(
                    ("classes", rows[other.name], "lessons"),
                    f"{school_class.plan.teacher} has {school_class.name} and {other.name} at the "
                    f"same time, on {lesson}. Move one of the lessons.",
                    str(lesson),
                )


def _note_letters(file: TomlFile, department: Department, calendar: Calendar) -> None:
    """Note the lessons of a week A or B that no week is: they would be held every week."""
    for place, school_class in enumerate(department.classes):
        for lesson in school_class.plan.lessons:
            if lesson.letter and calendar.week_a is None:
                file.fault(
                    ("classes", place, "lessons"),
                    f"{lesson} is a lesson of week {lesson.letter}, but calendar.toml has no "
                    "two-week timetable. Add two_week = true and week_a there, or take the "
                    f"{lesson.letter} away.",
                    str(lesson),
                )


def _note_days_taught(file: TomlFile, department: Department, calendar: Calendar) -> None:
    """Note the days outside the school year on which a class is said to be taught a topic."""
    first, last = calendar.terms[0].first, calendar.terms[-1].last
    for place, school_class in enumerate(department.classes):
        for name, date in school_class.plan.taught.items():
            if date is not None and not first <= date <= last:
                written = taught_path(file.data["classes"][place]["taught"], name)
                file.fault(
                    ("classes", place, "taught", *written),
                    f"{name}: {date} is outside the school year, {first} to {last}.",
                )


def _note_moved(file: TomlFile, department: Department, calendar: Calendar) -> None:
    """Note the lessons that were moved and are none, or stand where no lesson can be."""
    for place, school_class in enumerate(department.classes):
        plan = school_class.plan
        for source, target in plan.moved.items():
            where = ("classes", place, "moved", place_text(source))
            if not _is_lesson(plan, calendar, source):
                file.fault(
                    where, f"{school_class.name} has no lesson on {place_words(source)} to move."
                )
            if why := calendar.closed_reason(target[0]):
                file.fault(where, f"There are no lessons on {long_day(target[0])} ({why}).")
            elif target not in plan.moved and _is_lesson(plan, calendar, target):
                file.fault(
                    where, f"{school_class.name} has a lesson on {place_words(target)} already."
                )


def _is_lesson(plan: ClassPlan, calendar: Calendar, place: Place) -> bool:
    held, _ = lessons_between(plan.lessons, calendar, place[0], place[0])
    return place[1] in [lesson.period for lesson in held]


def _note_schemes(
    file: TomlFile,
    department: Department,
    schemes: Mapping[str, Scheme],
    faulty: Collection[str],
) -> None:
    """Note the schemes of work that classes name and that are not there, or not of their year."""
    for place, school_class in enumerate(department.classes):
        name = school_class.plan.scheme
        # A scheme with faults is there: those faults are told, and not that it is missing.
        if not name or name in faulty:
            continue
        where = ("classes", place, "scheme")
        if name not in schemes:
            near = nearest(name, schemes)
            there = (
                f"Did you mean {join_words(near, 'or')}?"
                if near
                else f"Make {department.folder / FOLDER / name}.toml, or mend the name."
            )
            file.fault(where, f"There is no scheme of work ‘{name}’. {there}")
        elif schemes[name].year != school_class.year:
            file.fault(
                where,
                f"{school_class.name} is in year {school_class.year}, but {name} is for year "
                f"{schemes[name].year}.",
            )


def find_cycle(prerequisites: Mapping[str, tuple[str, ...]]) -> tuple[str, ...]:
    """Return topics that rest on one another in a circle, or an empty tuple.

    >>> find_cycle({"a": ("b",), "b": ("c",), "c": ("a",)})
    ('a', 'b', 'c', 'a')
    >>> find_cycle({"a": ("b",), "b": ()})
    ()
    """
    done: set[str] = set()

    def visit(name: str, path: tuple[str, ...]) -> tuple[str, ...]:
        if name in path:
            return (*path[path.index(name) :], name)
        if name in done:
            return ()
        for below in prerequisites.get(name, ()):
            if found := visit(below, (*path, name)):
                return found
        done.add(name)
        return ()

    for name in sorted(prerequisites):
        if found := visit(name, ()):
            return found
    return ()


def _remarks(
    schemes: Mapping[str, Scheme], prerequisites: Mapping[str, tuple[str, ...]]
) -> list[str]:
    """Return what is odd about the schemes without being wrong."""
    found = []
    for name, scheme in sorted(schemes.items()):
        dates = {taught.topic: taught.date for taught in scheme.known}
        for topic, date in ((taught.topic, taught.date) for taught in scheme.topics):
            for below in prerequisites.get(topic, ()):
                if below in dates and dates[below] > date:
                    found.append(
                        f"{name}: {topic} is taught on {date}, before {below}, which it rests on."
                    )
    return found
