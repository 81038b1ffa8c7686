"""The ``[[sheets]]`` tables at the end of a plan file: what the follow-up sheets hold.

They stand there so that a pack built again is the same to the byte whatever was planned since,
and so that later weeks know what the class was given.
"""

from __future__ import annotations

import datetime
import json
from collections.abc import Callable, Iterable, Sequence

from itembank.errors import ItembankError
from itembank.files.toml_table import Table
from itembank.items.item import Tier
from itembank.planning.calendar.calendar import read_date
from itembank.planning.department.department import MOST_FOLLOW_UP
from itembank.planning.department.sheet_items import LessonSheets, SheetItems

HEAD = """\

# Below is what the follow-up sheets hold: nothing to change. It keeps a pack that is built again
# the same, and its questions from coming again too soon. Take a [[sheets]] table out for other
# sheets; a lesson whose topics you change gets others by itself.\
"""
WIDTH = 96


def quoted(text: str) -> str:
    r"""Return a text as TOML writes it.

    >>> print(quoted('a "b"'))
    "a \"b\""
    """
    # A JSON string is a TOML basic string, once DEL is escaped as TOML wants it.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


def sheet_lines(lessons: Iterable[tuple[datetime.date, str, LessonSheets]]) -> list[str]:
    """Return the lines of the tables of all lessons that have sheets."""
    lines = []
    for date, period, sheets in lessons:
        if not sheets:
            continue
        lines += ["", "[[sheets]]", f"date = {date.isoformat()}", f"period = {quoted(period)}"]
        lines += [*_list("topics", sheets.topics), f"questions = {sheets.wanted}"]
        for one in sheets.sheets:
            if one.opens:
                lines += _list(f"{one.tier}_opens", one.opens)
            lines += _list(one.tier, one.questions)
    return [*HEAD.split("\n"), *lines] if lines else []


def _list(key: str, values: Sequence[str]) -> list[str]:
    """Return a list of texts, as many on a line as there is room for."""
    rows = [""]
    for value in values:
        word = f"{quoted(value)},"
        if rows[-1] and len(rows[-1]) + len(word) + 1 > WIDTH:
            rows.append("")
        rows[-1] += f" {word}" if rows[-1] else word
    return [f"{key} = [", *(f"    {row}" for row in rows if row), "]"]


def sheet_addresses(row: Table) -> tuple[str, ...]:
    """Return every address in a table, whatever else is wrong with it."""
    keys = [key for tier in Tier for key in (f"{tier.value}_opens", tier.value)]
    return tuple(one for key in keys for one in row.items(key) if isinstance(one, str))


def read_sheet_row(
    row: Table, topic_of: Callable[[str], str]
) -> tuple[tuple[datetime.date, str] | None, LessonSheets]:
    """Read one table: the day and the period of its lesson, and the sheets.

    Sheets that do not hold together, say with a question twice, are empty: they are chosen anew.
    """
    date = read_date(row, "date")
    period = row.text("period", "1", most=8)
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
    whole = len(sheets) == len(Tier) and len(set(found.addresses)) == len(found.addresses)
    return (date, period) if date else None, found if whole else LessonSheets()


def _texts(row: Table, key: str, topic_of: Callable[[str], str] | None) -> tuple[str, ...]:
    found = []
    for value in row.items(key):
        if not isinstance(value, str) or not value.strip():
            row.fault(key, f"‘{key}’ holds names in quotation marks, not {value!r}.")
            continue
        if topic_of is not None:
            try:
                topic_of(value)
            except ItembankError as error:
                row.fault(key, f"{error} Take this [[sheets]] table out for other sheets.", value)
        found.append(value.strip())
    return tuple(found)
