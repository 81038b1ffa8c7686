"""A department's whole folder for planning: classes, calendar and schemes, checked together."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from pathlib import Path

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import Fault, FileFaults, join_words, nearest
from itembank.files.toml_table import TomlFile
from itembank.planning.calendar import calendar as calendars
from itembank.planning.calendar.calendar import Calendar, read_calendar
from itembank.planning.calendar.scheme import FOLDER, Scheme, read_scheme, with_earlier
from itembank.planning.department import department as departments
from itembank.planning.department.class_scheme import LessonKey, class_scheme
from itembank.planning.department.department import Department, SchoolClass, read_department
from itembank.planning.department.folder_checks import (
    find_cycle,
    note_clashes,
    note_days_taught,
    note_letters,
    note_moved,
    note_schemes,
)
from itembank.planning.department.known_topics import AnyTopic, KnownTopics


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
        known: Collection[str] = AnyTopic()
        # Without a department nobody knows its banks, so no topic can be said to be in none.
        if department is not None:
            banks = dict.fromkeys(
                path
                for school_class in department.classes
                for path in school_class.stated_sources.banks or ()
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
        note_clashes(file, department)
        if calendar is not None:
            note_letters(file, department, calendar)
            note_days_taught(file, department, calendar)
            note_moved(file, department, calendar)
            note_schemes(file, department, schemes, faulty)
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
        # Of a scheme with faults those are told, and not that nothing can follow it.
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
