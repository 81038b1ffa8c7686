"""Answers drawn at random, as whole and sound as a department's are."""

import datetime

from hypothesis import strategies as st

from itembank.planning.calendar.calendar import Closed, Term
from itembank.planning.calendar.timetable import WeeklyLesson
from itembank.work.department.answered import (
    Answers,
    BandsAnswer,
    ClassAnswer,
    SchemeAnswer,
    TopicAnswer,
)
from itembank.work.department.looked_at import known_topics

DAY = datetime.date
TERMS = (
    Term("Autumn", DAY(2026, 9, 3), DAY(2026, 12, 18)),
    Term("Spring", DAY(2027, 1, 4), DAY(2027, 3, 25)),
    Term("Summer", DAY(2027, 4, 12), DAY(2027, 7, 21)),
)
WORDS = st.text(st.characters(categories=["Lu", "Ll", "Nd"], max_codepoint=0x24F), min_size=1)


def distinct(rows, key, most):
    return st.lists(rows, max_size=most, unique_by=key).map(tuple)


CLOSED = st.builds(
    lambda start, length, why: Closed(start, start + datetime.timedelta(length), why),
    st.dates(DAY(2026, 9, 7), DAY(2026, 12, 1)),
    st.integers(0, 5),
    st.sampled_from(["half term", "training day", 'the "big" day # 1']),
)
LESSONS = distinct(
    st.builds(WeeklyLesson, st.integers(0, 4), st.sampled_from(["1", "2", "P3", "10"])),
    lambda lesson: (lesson.weekday, lesson.period),
    5,
).filter(bool)
SEATS = distinct(st.builds("{}{}".format, st.sampled_from("ABc"), st.integers(1, 12)), str.upper, 9)


@st.composite
def schemes(draw, year):
    names = draw(distinct(st.sampled_from(sorted(known_topics()[0])), str, 6).filter(bool))
    when = draw(st.sampled_from(["week", "day", "neither"]))
    topics = []
    for name in names:
        week = draw(st.integers(1, 37)) if when == "week" else None
        taught = draw(st.dates(TERMS[0].first, TERMS[-1].last)) if when == "day" else None
        topics.append(TopicAnswer(name, week, taught))
    return SchemeAnswer(f"year-{year}", year, tuple(topics))


BANDS = st.one_of(
    st.none(),
    st.sampled_from(
        [
            BandsAnswer((), (5, 7), 8),
            BandsAnswer((), (3, 5, 9), 10),
            BandsAnswer(("Red", "Amber", "Green")),
            BandsAnswer(("Start", "Steady", "Stretch", "Soar"), (2, 4, 7), 8),
        ]
    ),
)


@st.composite
def answers(draw):
    years = draw(st.lists(st.integers(7, 11), min_size=1, max_size=3, unique=True))
    count = draw(st.integers(1, 4))
    classes = tuple(
        ClassAnswer(
            f"{(year := draw(st.sampled_from(years)))}{'KLMN'[place]}",
            year,
            draw(st.sampled_from(["", f"H{place}"])),
            draw(SEATS),
            draw(LESSONS),
        )
        for place in range(count)
    )
    two_week = draw(st.booleans())
    return Answers(
        school=draw(WORDS.map(lambda word: word[:40])),
        terms=TERMS[: draw(st.integers(1, 3))] if draw(st.booleans()) else TERMS,
        closed=draw(distinct(CLOSED, lambda closed: closed.first, 3)),
        two_week=two_week,
        week_a=DAY(2026, 12, 8) if two_week else None,
        classes=classes,
        schemes=tuple(draw(schemes(year)) for year in sorted(years)),
        bands=draw(BANDS),
    )
