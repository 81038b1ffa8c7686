"""The ``[[sheets]]`` tables at the end of a plan file: what the follow-up sheets hold.

They stand there so that a pack built again is the same to the byte whatever was planned since,
and so that later weeks know what the class was given.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable

from itembank.errors import ItembankError
from itembank.files.toml_table import Table
from itembank.files.toml_write import toml_lines, toml_pairs
from itembank.items.item import Tier
from itembank.planning.calendar.calendar import read_date
from itembank.planning.calendar.timetable import USUAL_PERIOD
from itembank.planning.department.department import MOST_FOLLOW_UP
from itembank.planning.department.sheet_items import LessonSheets, SheetItems
from itembank.text.characters import shown_value

HEAD = """\

# Below is what the follow-up sheets hold: nothing to change. It keeps a pack that is built again
# the same, and its questions from coming again too soon. Take a [[sheets]] table out for other
# sheets; a lesson whose topics you change gets others by itself.\
"""
WIDTH = 96


def sheet_lines(lessons: Iterable[tuple[datetime.date, str, LessonSheets]]) -> list[str]:
    """Return the lines of the tables of all lessons that have sheets."""
    lines = []
    for date, period, sheets in lessons:
        if not sheets:
            continue
        lines += ["", "[[sheets]]", *toml_pairs({"date": date, "period": period})]
        lines.append(f"topics = {toml_lines(sheets.topics, WIDTH)}")
        lines.append(f"questions = {sheets.wanted}")
        for sheet in sheets.sheets:
            if sheet.opens:
                lines.append(f"{sheet.tier}_opens = {toml_lines(sheet.opens, WIDTH)}")
            lines.append(f"{sheet.tier} = {toml_lines(sheet.questions, WIDTH)}")
    return [*HEAD.split("\n"), *lines] if lines else []


def sheet_addresses(row: Table) -> tuple[str, ...]:
    """Return every address in a table, whatever else is wrong with it."""
    keys = [key for tier in Tier for key in (f"{tier.value}_opens", tier.value)]
    return tuple(address for key in keys for address in row.items(key) if isinstance(address, str))


def read_sheet_row(
    row: Table, topic_of: Callable[[str], str]
) -> tuple[tuple[datetime.date, str] | None, LessonSheets]:
    """Read one table: the day and the period of its lesson, and the sheets.

    Sheets that do not hold together, say with a question twice, are empty: they are chosen anew.
    """
    date = read_date(row, "date")
    period = row.text("period", USUAL_PERIOD, most=8)
    topics = _texts(row, "topics", None)
    wanted = row.whole("questions", 0, 0, MOST_FOLLOW_UP)
    sheets = []
    for tier in Tier:
        opens = _texts(row, f"{tier.value}_opens", topic_of)
        questions = _texts(row, tier.value, topic_of)
        if questions:
            sheets.append(SheetItems(tier.value, opens, questions))
    row.close()
    found = LessonSheets(topics, tuple(sheets), wanted)
    # Half a set of sheets could not be told from what somebody took out.
    whole = len(sheets) == len(Tier) and len(set(found.addresses)) == len(found.addresses)
    return (date, period) if date else None, found if whole else LessonSheets()


def _texts(row: Table, key: str, topic_of: Callable[[str], str] | None) -> tuple[str, ...]:
    found = []
    for value in row.items(key):
        if not isinstance(value, str) or not value.strip():
            row.fault(key, f"‘{key}’ holds names in quotation marks, not {shown_value(value)}.")
            continue
        if topic_of is not None:
            try:
                topic_of(value)
            except ItembankError as error:
                row.fault(key, f"{error} Take this [[sheets]] table out for other sheets.", value)
        found.append(value.strip())
    return tuple(found)
