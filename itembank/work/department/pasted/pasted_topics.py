"""Topics pasted from a scheme of work: each with its week or its date, or in order alone."""

from __future__ import annotations

import re
from collections.abc import Mapping

from itembank.data_class import dataclass
from itembank.errors import ItembankError
from itembank.files.faults import join_words, nearest
from itembank.planning.calendar.calendar import Calendar
from itembank.work.department.answered import TopicAnswer
from itembank.work.department.looked_at import known_topics
from itembank.work.department.pasted.other_names import OTHER_NAMES
from itembank.work.department.pasted.pasted_cells import Pasted, Row, Sheet, sheet_of
from itembank.work.department.pasted.pasted_days import read_pasted_day, school_year_of
from itembank.work.department.wrong import Wrong

HEADS = {
    "topic": "topics?|titles?|units?|what|content|topic id|id|(lesson|topic) title|objective",
    "week": r"weeks?|wk|week (no|number)|no|teaching week|weeks? taught",
    "day": "dates?|taught|day|week (beginning|commencing)|w/?[bc]|starts?|from|when|start date",
    "year": "year|yr|year group",
}
MOST_SHOWN = 4
"""Topics that are named where it is not clear which is meant."""
SMALL_WORDS = frozenset(
    ("a", "an", "the", "and", "of", "in", "with", "to", "on", "at", "for", "by", "or", "is")
)


@dataclass(frozen=True, slots=True)
class PastedTopics:
    """Topics in order, and those that no question is about, as they were written.

    `by_year` has the topics of each year where a column says so, under None where none does.
    """

    by_year: Mapping[int | None, tuple[TopicAnswer, ...]]
    unknown: tuple[str, ...] = ()

    @property
    def topics(self) -> tuple[TopicAnswer, ...]:
        """Return all of them in order."""
        return tuple(topic for topics in self.by_year.values() for topic in topics)


def read_pasted_topics(
    text: str,
    calendar: Calendar | None = None,
    titles: Mapping[str, str] | None = None,
    leave_out: bool = False,
) -> Pasted[PastedTopics]:
    r"""Return the topics of a pasted table; a topic is named by its id or by its title.

    `titles` are those that may be named, by id; without them, all there are. What names none is
    wrong, or, with `leave_out`, left out and told of. Dates without a year are of the school
    year of the `calendar`.

    Raises:
        ItembankError: there is more than a school has, or it is no table.

    >>> text = "Week\tTopic\n1\tTwo-step equations\n3\tratio.share\n\tScale drawings"
    >>> [(topic.topic, topic.week) for topic in read_pasted_topics(text).found.topics]
    [('equations.two-step', 1), ('ratio.share', 3), ('ratio.scale', 3)]
    """
    names = dict(known_topics()[0] if titles is None else titles)
    sheet = sheet_of(text, HEADS)
    if sheet.column("topic") is None:
        sheet = Sheet(sheet.rows, {**sheet.columns, **_guessed(sheet, names)})
    column = sheet.column("topic")
    if column is None:
        message = "No column holds topics. Name each by its title or its id, a row for each."
        return Pasted(PastedTopics({}), (Wrong("topics", message),))
    year_of_dates = school_year_of(calendar.terms[0].first) if calendar else None
    wrong: list[Wrong] = []
    remarks: list[str] = []
    unknown: list[str] = []
    found: dict[int | None, list[TopicAnswer]] = {}
    year: int | None = None
    above = TopicAnswer("")
    for row in sheet.rows:
        when = _when(sheet, row, year_of_dates, wrong)
        if when is None:
            continue
        if when.week is None and when.taught is None:
            when = above  # a merged cell
        above = when
        # A cell of a year stands for those below it, as merged cells of a spreadsheet do.
        if match := re.search(r"(?<!\d)\d{1,2}(?!\d)", row.cell(sheet.column("year"))):
            year = int(match[0])
        typed = row.cell(column)
        for part in filter(None, (line.strip(" •·*-–") for line in typed.split("\n"))):
            name, sure = topic_named(part, names)
            if name:
                if not sure:
                    remarks.append(f"‘{part}’ is read as {names[name]}.")
                if any(name == topic.topic for topic in found.get(year, [])):
                    remarks.append(f"{names[name]} stands there twice: the first counts.")
                else:
                    found.setdefault(year, []).append(TopicAnswer(name, when.week, when.taught))
            elif leave_out:
                unknown.append(part)
            else:
                message = _unknown(part, names)
                wrong.append(
                    Wrong("topics", message, row=row.number, column=column + 1, typed=part)
                )
                unknown.append(part)
    if leave_out and unknown:
        remarks.append(f"Left out, since they name no one topic: {join_words(unknown)}.")
    if not found and not wrong:
        wrong.append(Wrong("topics", "There is no topic here."))
    by_year = {key: tuple(topics) for key, topics in found.items()}
    return Pasted(PastedTopics(by_year, tuple(unknown)), tuple(wrong), tuple(remarks))


def topic_named(typed: str, titles: Mapping[str, str]) -> tuple[str, bool]:
    """Return the id of the topic that is meant, and whether it was named in full.

    It is named by its id, by its title, by what schemes of work call it, or by two words or more
    that only one title has; else the id is "".

    >>> titles = {"ratio.share": "Sharing an amount in a given ratio", "ratio.scale": "Scale plans"}
    >>> topic_named("sharing, in a ratio", titles), topic_named("ratio.scale", titles)
    (('ratio.share', False), ('ratio.scale', True))
    >>> topic_named("Ratio", titles), topic_named("Best buys", {"ratio.best-value": "Best value"})
    (('', False), ('ratio.best-value', False))
    """
    low = typed.casefold().strip()
    if low in titles:
        return low, True
    words = _words(typed)
    same = [name for name, title in titles.items() if _words(title) == words]
    if len(same) == 1:
        return same[0], True
    if called := _called(typed, titles):
        # A name of several topics names none of them, even where the others are not to be had.
        return (called[0], False) if len(_ids_called(typed)) == 1 else ("", False)
    if len(set(words)) < 2:
        return "", False
    have = [name for name, title in titles.items() if set(words) <= set(_words(title))]
    return (have[0], False) if len(have) == 1 else ("", False)


def _words(text: str) -> list[str]:
    words = re.findall(r"[a-z0-9]+", text.casefold())
    return [word for word in words if word not in SMALL_WORDS]


STEM = 5
"""So many letters say which word it is: simplify, simplifying and simplified are one."""


def _stems(text: str) -> frozenset[str]:
    return frozenset(word[:STEM] for word in _words(text))


def _called(typed: str, titles: Mapping[str, str]) -> tuple[str, ...]:
    """Return the topics that schemes of work call so, of those that may be named."""
    return tuple(id for id in _ids_called(typed) if id in titles)


def _ids_called(typed: str) -> tuple[str, ...]:
    stems = _stems(typed)
    return next((ids for name, ids in OTHER_NAMES.items() if _stems(name) == stems), ())


def _unknown(typed: str, titles: Mapping[str, str]) -> str:
    have = list(_called(typed, titles)) or _most_alike(typed, titles)
    if not have:
        return f"No topic is called ‘{typed}’. Leave it out, or name another topic."
    shown = [f"{titles[name]} ({name})" for name in have[:MOST_SHOWN]]
    return f"Which topic is ‘{typed}’? Perhaps {join_words(shown, 'or')}."


def _most_alike(typed: str, titles: Mapping[str, str]) -> list[str]:
    """Return the topics with the most of the words; where no title has any, the nearest to read."""
    stems = _stems(typed)
    shared = {name: _stems(title) & stems for name, title in titles.items()}
    most = max(map(len, shared.values()), default=0)
    if most:
        alike = [name for name, common in shared.items() if len(common) == most]
        # Of titles with as many of the words, the shortest says least beside them.
        return sorted(alike, key=lambda name: len(_stems(titles[name])))
    lower = {title.casefold(): name for name, title in titles.items()} | {id: id for id in titles}
    return list(dict.fromkeys(lower[like] for like in nearest(typed.casefold(), lower)))


def _guessed(sheet: Sheet, titles: Mapping[str, str]) -> dict[str, tuple[int, ...]]:
    """Return which column holds topics, and which weeks and dates, by what stands in them."""
    width = max((len(row.cells) for row in sheet.rows), default=0)
    taken = {column for columns in sheet.columns.values() for column in columns}
    scores = {
        column: sum(bool(topic_named(row.cell(column), titles)[0]) for row in sheet.rows)
        for column in range(width)
        if column not in taken
    }
    best = max(scores, key=lambda column: scores[column], default=None)
    if best is None or not scores[best]:
        return {}
    found: dict[str, tuple[int, ...]] = {"topic": (best,)}
    if "week" not in sheet.columns and "day" not in sheet.columns:
        for column in range(width):
            cells = [row.cell(column) for row in sheet.rows if row.cell(column)]
            if column == best or column in taken or not cells:
                continue
            if all(_week_number(cell) for cell in cells):
                found.setdefault("week", (column,))
            elif all(re.search(r"\d", cell) for cell in cells):
                found.setdefault("day", (column,))
    return found


def _week_number(cell: str) -> int | None:
    """Return the teaching week that a cell names; of several, the first.

    >>> _week_number("Week 3"), _week_number("3-4"), _week_number("7 Sep")
    (3, 3, None)
    """
    match = re.fullmatch(
        r"(?:weeks?|wks?|w)?\s*\.?\s*(\d{1,2})(?:\s*(?:[-–&,+/]|to|and)\s*\d{1,2})*",
        cell.strip(),
        re.I,
    )
    return int(match[1]) if match else None


def _when(sheet: Sheet, row: Row, year: int | None, wrong: list[Wrong]) -> TopicAnswer | None:
    """Return the week or the day of a row; neither where its cells are empty."""
    for name in ("week", "day"):
        column = sheet.column(name)
        typed = row.cell(column).replace("\n", " ")
        if not typed:
            continue
        if name == "week" and (number := _week_number(typed)) is not None:
            return TopicAnswer("", week=number)
        plain = re.sub(
            r"(?i)^\s*(?:w/?[bc]|week (?:beginning|commencing|of)|from)\b\.?:?", "", typed
        )
        try:
            if year is None:
                raise ItembankError("A date needs the terms of the school year first.")
            return TopicAnswer("", taught=read_pasted_day(plain.strip(), year))
        except ItembankError as error:
            said = str(error)
            if name == "week":
                said = f"‘{typed}’ is not a week. Write its number, as in 3, or a date."
            place = (column or 0) + 1
            wrong.append(Wrong("topics", said, row=row.number, column=place, typed=typed))
            return None
    return TopicAnswer("")
