"""The ``[[reasons]]`` tables at the end of a plan file: why each topic comes, as facts.

The sentence beside a topic, ``why``, is for people and may be changed like any other word. What
the tool wants to know again when it reads the plan stands here.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping
from typing import Any

from itembank.files.toml_table import Table
from itembank.files.toml_write import toml_lines, toml_pairs
from itembank.planning.calendar.calendar import read_date
from itembank.planning.calendar.timetable import USUAL_PERIOD
from itembank.planning.choosing.topic_reason import Again, Cause, Occasion, Reason
from itembank.text.characters import shown_value

HEAD = """\

# Below is why each topic comes, as it was known when the week was planned: nothing to change.
# Write words of your own at ‘why’ above, and they are printed in the place of ours.\
"""
MOST_ANSWERS = 10_000
Lesson = tuple[datetime.date, str]


def reason_lines(lessons: Iterable[tuple[Lesson, Mapping[str, Reason]]]) -> list[str]:
    """Return the lines of the tables of all lessons with reasons for topics."""
    lines = []
    for (date, period), reasons in lessons:
        rows = [{"topic": topic, **_facts(reason)} for topic, reason in reasons.items()]
        if rows:
            lines += ["", "[[reasons]]", *toml_pairs({"date": date, "period": period})]
            lines.append(f"topics = {toml_lines(rows)}")
    return [*HEAD.split("\n"), *lines] if lines else []


def _facts(reason: Reason) -> dict[str, Any]:
    """Return what is known of a reason, by the names it has in a plan."""
    again = reason.again
    facts = {
        "cause": reason.cause.value,
        "taught": reason.taught,
        "last": _occasion(reason.last),
        "told": _occasion(reason.told),
        "needed_for": reason.needed_for or None,
        "again": again and {"date": again.date, "questions": again.questions},
    }
    return {name: value for name, value in facts.items() if value is not None}


def _occasion(occasion: Occasion | None) -> dict[str, Any] | None:
    if occasion is None:
        return None
    right, scored = occasion.right, occasion.scored
    counted = {} if right is None else {"right": right, "answers": occasion.answers}
    return {"date": occasion.date, **counted, **({"scored": True} if scored else {})}


def read_reason_row(row: Table) -> tuple[Lesson | None, dict[str, Reason]]:
    """Read one table: the day and the period of its lesson, and the reason for each topic."""
    date = read_date(row, "date")
    period = row.text("period", USUAL_PERIOD, most=8)
    found = {}
    for topic in row.tables("topics"):
        name = topic.text("topic", None)
        # Any day will do where there is none: that fault keeps the plan from being used.
        reason = _reason(topic, date or datetime.date.min)
        topic.close()
        found[name] = reason
    row.close()
    return (date, period) if date else None, found


def _reason(row: Table, lesson: datetime.date) -> Reason:
    again = row.table("again")
    date = read_date(again, "date") if again is not None else None
    needed_for = []
    for title in row.items("needed_for"):
        if isinstance(title, str):
            needed_for.append(title)
        else:
            row.fault(
                "needed_for",
                f"‘needed_for’ holds titles in quotation marks, not {shown_value(title)}.",
            )
    row.known("taught")
    questions = again.whole("questions", 0, 0, MOST_ANSWERS) if again is not None else 0
    if again is not None:
        again.close()
    return Reason(
        lesson,
        Cause(row.choice("cause", Cause.PAST.value, [cause.value for cause in Cause])),
        read_date(row, "taught") if "taught" in row else None,
        _read_occasion(row, "last"),
        _read_occasion(row, "told"),
        tuple(needed_for),
        Again(date, questions) if date else None,
    )


def _read_occasion(row: Table, key: str) -> Occasion | None:
    table = row.table(key)
    if table is None:
        return None
    date = read_date(table, "date")
    right = table.whole("right", 0, 0, 100) if "right" in table else None
    table.known("right")
    answers = table.whole("answers", 0, 0, MOST_ANSWERS)
    scored = table.flag("scored", False)
    table.close()
    return Occasion(date, right, answers, scored) if date else None
