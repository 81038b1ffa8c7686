"""The ``[[reasons]]`` tables at the end of a plan file: why each topic comes, as facts.

The sentence beside a topic, ``why``, is for people and may be changed like any other word. What
the tool wants to know again when it reads the plan stands here.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Mapping

from itembank.files.toml_table import Table
from itembank.planning.calendar.calendar import read_date
from itembank.planning.choosing.topic_reason import Again, Cause, Occasion, Reason
from itembank.planning.week.sheet_rows import quoted

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
        rows = [
            f"    {{ topic = {quoted(topic)}, {', '.join(_keys(reason))} }},"
            for topic, reason in reasons.items()
        ]
        if rows:
            lines += ["", "[[reasons]]", f"date = {date.isoformat()}"]
            lines += [f"period = {quoted(period)}", "topics = [", *rows, "]"]
    return [*HEAD.split("\n"), *lines] if lines else []


def _keys(reason: Reason) -> list[str]:
    keys = [f"cause = {quoted(reason.cause.value)}"]
    if reason.taught is not None:
        keys.append(f"taught = {reason.taught.isoformat()}")
    for name, occasion in (("last", reason.last), ("told", reason.told)):
        if occasion is not None:
            keys.append(f"{name} = {_occasion(occasion)}")
    if reason.needed_for:
        keys.append(f"needed_for = [{', '.join(map(quoted, reason.needed_for))}]")
    if reason.again is not None:
        date, questions = reason.again.date.isoformat(), reason.again.questions
        keys.append(f"again = {{ date = {date}, questions = {questions} }}")
    return keys


def _occasion(occasion: Occasion) -> str:
    keys = [f"date = {occasion.date.isoformat()}"]
    if occasion.right is not None:
        keys += [f"right = {occasion.right}", f"answers = {occasion.answers}"]
    if occasion.scored:
        keys.append("scored = true")
    return f"{{ {', '.join(keys)} }}"


def read_reason_row(row: Table) -> tuple[Lesson | None, dict[str, Reason]]:
    """Read one table: the day and the period of its lesson, and the reason for each topic."""
    date = read_date(row, "date")
    period = row.text("period", "1", most=8)
    found = {}
    for topic in row.tables("topics"):
        name = topic.text("topic", None)
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
            row.fault("needed_for", f"‘needed_for’ holds titles in quotation marks, not {title!r}.")
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
