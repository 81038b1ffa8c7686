"""A scheme of work as a form: a row for each topic, with its week or its date."""

from __future__ import annotations

import datetime
import re
from dataclasses import replace

from itembank.desk.answering.reading import Fields, Reading, row, rows_typed
from itembank.desk.answering.year_form import shown
from itembank.planning.calendar.calendar import Calendar
from itembank.work.department.answered import Answers, SchemeAnswer, TopicAnswer
from itembank.work.department.looked_at import known_topics
from itembank.work.department.pasted.pasted_topics import read_pasted_topics
from itembank.work.department.ready import ready_scheme


def titles_for(scheme: SchemeAnswer) -> dict[str, str]:
    """Return the title of each topic that may be named, by id: those of a bank that stand there."""
    own = {topic.topic: topic.topic for topic in scheme.topics}
    return own | dict(known_topics()[0])


def topics_fields(scheme: SchemeAnswer) -> dict[str, str]:
    """Return the fields that show the topics of a scheme as they are answered."""
    titles = titles_for(scheme)
    found = {}
    for place, topic in enumerate(scheme.topics):
        found[f"topic-{place}-name"] = titles[topic.topic]
        when = str(topic.week) if topic.week is not None else ""
        found[f"topic-{place}-when"] = shown(topic.taught) if topic.taught else when
    return found


def read_topics(fields: Fields, answers: Answers, scheme: SchemeAnswer) -> Reading:
    """Return answers with the topics of a scheme that a form says; a row that is cleared goes."""
    rows, lines = [], []
    for number in range(rows_typed(fields, "topic")):
        here = row(fields, "topic", number, ("name", "when"))
        when = " ".join(here["when"].split())
        if here["name"] or when:
            week = re.fullmatch(r"(?i)(?:week|wk|w)?\s*\d{1,2}", when) is not None
            name = " ".join(here["name"].split())
            lines.append("\t".join((name, when if week else "", "" if week else when)))
            rows.append(number)
    reading = Reading(answers)
    for number, line in zip(rows, lines, strict=True):
        if line.startswith("\t"):
            reading.faults[f"topic-{number}-name"] = "Which topic is it?"
    if not lines:
        reading.answers = with_topics(answers, scheme, ())
        return reading
    read = read_pasted_topics(
        "\n".join(["Topic\tWeek\tDate", *lines]), answers.calendar, titles_for(scheme)
    )
    for fault in read.wrong:
        if fault.row < 2:
            reading.general.append(str(fault))
            continue
        field = "name" if fault.column <= 1 else "when"
        reading.faults.setdefault(f"topic-{rows[fault.row - 2]}-{field}", fault.message)
    topics = in_order(read.found.topics, scheme.topics, answers.calendar)
    number_of = {topic.topic: rows[n] for n, topic in enumerate(read.found.topics)}
    place = _place(answers, scheme)
    for n, topic in enumerate(topics):
        reading.at[("schemes", place, "topics", n)] = f"topic-{number_of[topic.topic]}-when"
    # What cannot be read would be missing: what was answered before is kept instead.
    if reading.sound:
        reading.answers = with_topics(answers, scheme, topics)
    reading.remarks = read.remarks
    return reading


def in_order(
    topics: tuple[TopicAnswer, ...], before: tuple[TopicAnswer, ...], calendar: Calendar | None
) -> tuple[TopicAnswer, ...]:
    """Return topics in the order of their teaching, if they stood in that order before."""

    def start(topic: TopicAnswer) -> datetime.date:
        week = calendar.week_start(topic.week) if calendar and topic.week else None
        return topic.taught or week or datetime.date.max

    known = [start(topic) for topic in before]
    open_ones = any(topic.week is None and topic.taught is None for topic in topics)
    return topics if open_ones or known != sorted(known) else tuple(sorted(topics, key=start))


def with_topics(answers: Answers, scheme: SchemeAnswer, topics: tuple[TopicAnswer, ...]) -> Answers:
    """Return answers in which a scheme, new or there, has just these topics."""
    place = _place(answers, scheme)
    schemes = list(answers.schemes)
    schemes[place : place + 1] = [replace(scheme, topics=topics)]
    return replace(answers, schemes=tuple(schemes))


def _place(answers: Answers, scheme: SchemeAnswer) -> int:
    names = [known.name for known in answers.schemes]
    return names.index(scheme.name) if scheme.name in names else len(names)


def paste_topics(text: str, answers: Answers, scheme: SchemeAnswer, leave_out: bool) -> Reading:
    """Return answers with topics as pasted: of this scheme, or of the years that a column says."""
    read = read_pasted_topics(text, answers.calendar, titles_for(scheme), leave_out)
    if read.wrong:
        return Reading(answers, general=[str(fault) for fault in read.wrong])
    years = [year for year in read.found.by_year if year is not None]
    remarks = list(read.remarks)
    for year, topics in read.found.by_year.items():
        if year in (None, scheme.year):
            answers = with_topics(answers, scheme, topics)
        elif year in answers.years:
            group = next(group for group in answers.classes if group.year == year)
            target = answers.scheme_for(group) or SchemeAnswer(f"year-{year}", year)
            answers = with_topics(answers, target, topics)
        else:
            remarks.append(f"The topics of year {year} were left out: no class is in it.")
    if years and scheme.year not in years and None not in read.found.by_year:
        remarks.append(f"None of these topics is of year {scheme.year}.")
    return Reading(answers, remarks=tuple(remarks))


def ready_topics(answers: Answers, scheme: SchemeAnswer) -> Reading:
    """Return answers in which a scheme has an order to begin from."""
    topics = ready_scheme(scheme.year, answers.calendar).topics
    return Reading(with_topics(answers, scheme, topics))
