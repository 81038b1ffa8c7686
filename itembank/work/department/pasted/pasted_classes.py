"""Classes pasted from a spreadsheet: a row for a class, or for each of its lessons.

Headings may stand in any order, and a table without any is read by what stands in its columns.
A cell that is empty because it was merged with the one above it has what that one has.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from itertools import count, islice

from itembank.errors import ItembankError
from itembank.people.colleague import check_initials
from itembank.people.seats import heading_fault
from itembank.planning.calendar.timetable import WeeklyLesson
from itembank.text.folding import folded
from itembank.work.department.answered import ClassAnswer
from itembank.work.department.pasted.pasted_cells import Pasted, Row, Sheet, sheet_of
from itembank.work.department.pasted.pasted_lessons import read_pasted_lessons
from itembank.work.department.pasted.pasted_seats import read_seat_cell
from itembank.work.department.wrong import Wrong

_DAY = r"(?:mon|tue|tues|wed|weds|thu|thur|thurs|fri)(?:day|sday|nesday|rsday)?"
HEADS = {
    "class": "class|classes|class name|group|teaching group|set|maths class|maths set|form",
    "year": "year|yr|year group|y|nc year|cohort",
    "teacher": "teacher|teachers|teacher initials|initials|staff|teacher code|staff code|taught by",
    "lessons": r"lessons?( \d+)?|timetable|times?|when|lessons in the week|periods|slots?",
    "day": "day|weekday|day of the week",
    "period": r"period|per|pd|lesson (no|number)|p",
    "week": "week|wk|a/b|week a/b|a or b|cycle",
    "seats": r"seats?|seat codes?|size|number on roll|nor|seat rows?|class size"
    r"|(?:(?:number|no\.?|total|count) of )?(?:pupils|students)"
    r"|(?:pupil|student) (?:count|numbers?)",
    "of day": rf"(?:week )?(?:[ab] )?{_DAY}(?: (?:week )?[ab])?",
}
_YEAR_IN_NAME = re.compile(r"(?:y(?:ea)?r?\s*)?(1[0-3]|[1-9])(?!\d)", re.I)


@dataclass
class _Begun:
    """A class of which some rows were read."""

    name: str
    row: int
    year: int | None = None
    stated: int | None = None
    """The year that stands beside its name or in it, and not only above."""
    teacher: str = ""
    seats: tuple[str, ...] = ()
    lessons: list[WeeklyLesson] = field(default_factory=list)


def read_pasted_classes(text: str) -> Pasted[tuple[ClassAnswer, ...]]:
    r"""Return the classes of a pasted table, in its order.

    Raises:
        ItembankError: there is more than a school has, or it is no table.

    >>> pasted = read_pasted_classes("Set\tLessons\tTeacher\n8K\tMon 3, Tue 1\tht\n\tA Fri 2\t")
    >>> group = pasted.found[0]
    >>> group.name, group.year, group.teacher, [str(lesson) for lesson in group.lessons]
    ('8K', 8, 'HT', ['Mon 3', 'Tue 1', 'A Fri 2'])
    """
    sheet = sheet_of(text, HEADS)
    refused = [*sheet.unknown, *_with_names(sheet)]
    wrong = [
        Wrong("classes", fault, row=0, column=column + 1)
        for column, head in refused
        if (fault := heading_fault(head))
    ]
    if wrong:
        return Pasted((), tuple(wrong))
    remarks = [f"The column ‘{head}’ is not used." for _, head in sheet.unknown]
    if not sheet.columns:
        sheet = Sheet(sheet.rows, _guessed(sheet.rows))
    begun: dict[str, _Begun] = {}
    current: _Begun | None = None
    year_above: int | None = None
    for row in sheet.rows:
        name = row.cell(sheet.column("class")).replace("\n", " ")
        if name:
            current = begun.setdefault(folded(name), _Begun(name, row.number))
        if current is None:
            wrong.append(Wrong("classes", "This row names no class.", row=row.number))
            continue
        year = _read_year(sheet, row, name, year_above, wrong)
        if year is not None:
            year_above = year
            column = sheet.column("year")
            # A year left out may be that of the class above, and says nothing against another.
            if row.cell(column) and current.stated not in (None, year):
                message = f"{current.name} is in two years, {current.stated} and {year}."
                place = (column or 0) + 1
                wrong.append(Wrong("classes", message, row=row.number, column=place))
            if row.cell(column) or _YEAR_IN_NAME.match(name):
                current.stated = current.stated or year
            current.year = current.stated or current.year or year
        _read_rest(sheet, row, current, wrong)
    if not begun and not wrong:
        wrong.append(Wrong("classes", "There is no class here. Give each a row with its name."))
    for group in begun.values():
        if group.year is None and not any(fault.row == group.row for fault in wrong):
            message = f"Which year is {group.name} in? Add a column headed Year."
            wrong.append(Wrong("classes", message, row=group.row))
    classes = tuple(
        ClassAnswer(
            group.name,
            group.year,
            group.teacher,
            group.seats,
            tuple(dict.fromkeys(group.lessons)),
        )
        for group in begun.values()
    )
    return Pasted(classes, tuple(wrong), tuple(remarks))


def _with_names(sheet: Sheet) -> list[tuple[int, str]]:
    """Return the columns of seats, with their headings, that hold neither numbers nor codes.

    Below *Pupils* mostly stands how many there are, and sometimes who they are.
    """
    return [
        (column, sheet.heads[column])
        for column in sheet.columns.get("seats", ())
        if any(
            typed and not typed[0].isdigit() and seats_told(typed)[1]
            for typed in (row.cell(column) for row in sheet.rows)
        )
    ]


def _guessed(rows: tuple[Row, ...]) -> dict[str, tuple[int, ...]]:
    """Return what each column is, by what stands in it; the first is the classes' names."""
    found: dict[str, tuple[int, ...]] = {"class": (0,)}
    for column in range(1, max((len(row.cells) for row in rows), default=0)):
        cells = [row.cell(column) for row in rows if row.cell(column)]
        numbers = [int(cell) for cell in cells if re.fullmatch(r"\d{1,2}", cell)]
        if not cells:
            continue
        if len(numbers) == len(cells):
            # No year group is above 13: other numbers tell how many pupils there are.
            name = "year" if max(numbers) <= 13 and "year" not in found else "seats"
        elif any(map(_has_day, cells)):
            name = "lessons"
        elif all(re.fullmatch(r"[^\W\d_]{1,6}", cell) for cell in cells):
            name = "teacher"
        else:
            name = "seats"
        found[name] = (*found.get(name, ()), column)
    return found


def _has_day(cell: str) -> bool:
    return re.search(rf"(?<![a-z]){_DAY}|\b[ab]?(?:m|tu|w|th|f)\d", cell, re.I) is not None


def _read_year(
    sheet: Sheet, row: Row, name: str, above: int | None, wrong: list[Wrong]
) -> int | None:
    column = sheet.column("year")
    typed = row.cell(column)
    if typed:
        match = re.fullmatch(r"(?:y(?:ea)?r?\.?\s*)?(\d{1,2})", typed, re.I)
        if match and 1 <= int(match[1]) <= 13:
            return int(match[1])
        message = f"‘{typed}’ is not a year group. Write a number from 1 to 13."
        wrong.append(
            Wrong("classes", message, row=row.number, column=(column or 0) + 1, typed=typed)
        )
        return None
    if not name:
        return None
    match = _YEAR_IN_NAME.match(name)
    if match is not None:
        return int(match[1])
    return above if column is not None else None


def _read_rest(sheet: Sheet, row: Row, group: _Begun, wrong: list[Wrong]) -> None:
    def fault(column: int, message: str, typed: str = "") -> None:
        wrong.append(Wrong("classes", message, row=row.number, column=column + 1, typed=typed))

    for column in sheet.columns.get("teacher", ()):
        if typed := row.cell(column):
            try:
                initials = check_initials(typed.replace(".", "").replace(" ", ""))
            except ItembankError:
                fault(column, "Teachers stand here by initials, one to six letters, as in HT.")
            else:
                if group.teacher not in ("", initials):
                    fault(column, f"{group.name} has two teachers, {group.teacher} and {initials}.")
                group.teacher = group.teacher or initials
    for column in sheet.columns.get("seats", ()):
        if typed := row.cell(column):
            seats, message = seats_told(typed)
            if message:
                fault(column, message)
            group.seats = tuple(dict.fromkeys((*group.seats, *seats)))
    for column, typed in _lesson_cells(sheet, row):
        try:
            group.lessons += read_pasted_lessons(typed)
        except ItembankError as error:
            fault(column, str(error), row.cell(column))


def _lesson_cells(sheet: Sheet, row: Row) -> list[tuple[int, str]]:
    """Return the cells that tell of lessons, each as text that says the day too."""
    found = [(column, row.cell(column)) for column in sheet.columns.get("lessons", ())]
    day, period = sheet.column("day"), sheet.column("period")
    if day is not None and row.cell(day):
        week = row.cell(sheet.column("week"))
        # Weeks are called A and B, or 1 and 2; what is held in both has no letter.
        letter = re.sub(r"(?i)week|wk|both|all|every|[^ab12]", "", week).upper()[:1]
        mark = {"1": "A", "2": "B"}.get(letter, letter)
        told = f"{mark} {row.cell(day)} {row.cell(period)}"
        found.append((day, told.strip()))
    elif day is None and period is not None:
        found.append((period, row.cell(period)))
    for column in sheet.columns.get("of day", ()):
        if cell := row.cell(column):
            found.append((column, f"{sheet.heads[column]} {cell}"))
    return [(column, told) for column, told in found if told and told not in ("-", "–", "—")]


def seats_told(typed: str) -> tuple[tuple[str, ...], str]:
    """Return seat codes in a cell, or those of a class of so many; else what is wrong.

    >>> seats_told("A1-A3; B1")[0], len(seats_told("29 pupils")[0])
    (('A1', 'A2', 'A3', 'B1'), 29)
    """
    match = re.fullmatch(r"(\d{1,3})(?:\s*(?:pupils?|students?|seats?))?", typed.strip(), re.I)
    if match is None:
        return read_seat_cell(typed)
    number = int(match[1])
    if not 1 <= number <= 60:
        return (), f"A class has 1 to 60 seats, not {number}."
    return rows_of_six(number), ""


def rows_of_six(number: int) -> tuple[str, ...]:
    """Return codes for so many seats, six to a row: A1 to A6, B1 to B6 and on.

    >>> rows_of_six(8)
    ('A1', 'A2', 'A3', 'A4', 'A5', 'A6', 'B1', 'B2')
    """
    codes = (f"{chr(ord('A') + place // 6)}{place % 6 + 1}" for place in count())
    return tuple(islice(codes, number))
