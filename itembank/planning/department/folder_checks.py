"""What a department's files say that cannot be together: clashes, letters, days, schemes."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from itertools import combinations

from itembank.files.faults import join_words, nearest
from itembank.files.toml_table import TomlFile
from itembank.planning.calendar.calendar import Calendar
from itembank.planning.calendar.scheme import FOLDER, Scheme
from itembank.planning.calendar.timetable import lessons_between
from itembank.planning.department.class_lessons import Place, place_text, place_words
from itembank.planning.department.class_plan import ClassPlan, taught_path
from itembank.planning.department.department import Department
from itembank.text.in_words import long_day


def note_clashes(file: TomlFile, department: Department) -> None:
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


def note_letters(file: TomlFile, department: Department, calendar: Calendar) -> None:
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


def note_days_taught(file: TomlFile, department: Department, calendar: Calendar) -> None:
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


def note_moved(file: TomlFile, department: Department, calendar: Calendar) -> None:
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


def note_schemes(
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
        # What has led to no circle leads to none whoever rests on it, so each is gone through
        # once.
        done.add(name)
        return ()

    for name in sorted(prerequisites):
        if found := visit(name, ()):
            return found
    return ()
