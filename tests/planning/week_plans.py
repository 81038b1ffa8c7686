"""Plans of a week to write and to read, by hand and by hypothesis."""

import datetime
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st

from itembank.files.faults import FileFaults
from itembank.items.item import Tier
from itembank.items.topics.registry import find_item, find_topic
from itembank.planning.calendar.calendar import read_calendar
from itembank.planning.choosing.topic_reason import Again, Cause, Occasion, Reason
from itembank.planning.department.department import read_department
from itembank.planning.department.plan_file import MOST_SEED
from itembank.planning.department.sheet_items import LessonSheets, SheetItems
from itembank.planning.week.week_file import read_week_plan
from itembank.planning.week.week_plan import (
    PlannedLesson,
    WeekPlan,
    WeekTopic,
    plan_text,
)
from itembank.text.characters import hidden, look_alikes
from tests.depth import cases

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"

DEPARTMENT = read_department(LARKHYTHE)

CALENDAR = read_calendar(LARKHYTHE)

DAY = datetime.date

WEEK = DAY(2026, 11, 16)

TOPICS = ("ratio.share", "fractions.order", "equations.one-step", "ratio.simplest-form")

slow = settings(
    max_examples=cases(30, 120),
    suppress_health_check=[HealthCheck.function_scoped_fixture],
    deadline=None,
)


def topic_of(address):
    return find_item(address).topic


def read(path, class_name=None):
    return read_week_plan(path, DEPARTMENT, CALENDAR, TOPICS, topic_of, class_name)


def lesson(date=WEEK, period="1", topics=(("ratio.share", 2), ("fractions.order", 1)), **more):
    why = Reason(date, Cause.PAST, DAY(2026, 9, 7))
    rows = tuple(WeekTopic(name, count, why) for name, count in topics)
    made = PlannedLesson(date, period, "Sharing", sum(n for _, n in topics), 7, rows)
    return replace(made, **more)


def plan(*lessons, name="8K"):
    return WeekPlan(name, WEEK, lessons or (lesson(), lesson(DAY(2026, 11, 17), "3")))


def written(tmp_path, made=None, name="plan.toml"):
    path = tmp_path / name
    path.write_text(plan_text(made or plan()), encoding="utf-8")
    return path


words = st.text(
    st.characters(codec="utf-8", exclude_characters="\r\n", exclude_categories=("Cs",)),
    min_size=1,
    max_size=60,
).filter(lambda text: text == text.strip() and not [*hidden(text), *look_alikes(text)])


# Making a strategy takes longer than drawing from it, so each is made once.
@cache
def addresses(topic, *tiers):
    """Return a strategy of addresses of a topic, of these tiers or of any."""
    return st.one_of(
        st.integers(0, len(find_topic(topic).spaces[tier]) - 1).map(
            lambda index, tier=tier: f"{topic}/{tier.value}/{index}"
        )
        for tier in tiers or Tier
    )


@cache
def several_of(tier, topics):
    some = st.one_of(addresses(topic, tier) for topic in topics)
    return st.lists(some, min_size=3, max_size=6, unique=True)


@st.composite
def sheets(draw, topics):
    if draw(st.booleans()):
        return LessonSheets()
    made, seen = [], set()
    for tier in Tier:
        found = draw(several_of(tier, tuple(topics)))
        assert not seen & set(found)
        seen |= set(found)
        opens = draw(st.integers(0, 2))
        made.append(SheetItems(tier.value, tuple(found[:opens]), tuple(found[opens:])))
    return LessonSheets(tuple(topics), tuple(made), draw(st.integers(0, 20)))


days = st.dates(DAY(2026, 1, 1), DAY(2027, 12, 31))

occasions = st.builds(Occasion, days, scored=st.booleans()) | st.builds(
    Occasion, days, st.integers(0, 100), st.integers(1, 40), st.booleans()
)


@cache
def reasons(date):
    """Return every kind of reason for a topic in a lesson, with a teacher's words or without."""
    return st.builds(
        Reason,
        st.just(date),
        st.sampled_from(Cause),
        st.none() | days,
        st.none() | occasions,
        st.none() | occasions,
        st.lists(words, max_size=2).map(tuple),
        st.none() | st.builds(Again, days, st.integers(0, 20)),
        st.just("") | words,
    )


some_topics = st.lists(st.sampled_from(TOPICS), min_size=1, unique=True)
counts = st.integers(1, 4)


@cache
def some_addresses(topic, most):
    return st.lists(addresses(topic), max_size=most, unique=True)


@st.composite
def lessons(draw, date, period):
    names = draw(some_topics)
    rows = tuple(
        WeekTopic(name, draw(counts), draw(reasons(date)), draw(st.booleans())) for name in names
    )
    asked, items = [], []
    for row in rows:
        some = draw(some_addresses(row.topic, row.count))
        asked += some
        items += [one for one in some if draw(st.booleans())]
    others = [name for name in TOPICS if name not in names]
    never = draw(st.lists(st.sampled_from(others), unique=True)) if others else []
    extra = draw(some_addresses("ratio.share", 2))
    never += [one for one in extra if one not in asked]
    return PlannedLesson(
        date,
        period,
        draw(words),
        sum(row.count for row in rows),
        draw(st.integers(0, MOST_SEED)),
        rows,
        tuple(items),
        tuple(never),
        tuple(draw(st.permutations(asked))),
        draw(sheets(names)),
    )


some_places = st.lists(
    st.tuples(st.integers(0, 4), st.sampled_from("12345")), min_size=1, max_size=4, unique=True
)


@st.composite
def plans(draw):
    places = sorted(draw(some_places))
    made = [draw(lessons(WEEK + datetime.timedelta(days=day), period)) for day, period in places]
    return WeekPlan("8K", WEEK, tuple(made))


def faults(path, class_name=None):
    with pytest.raises(FileFaults) as caught:
        read(path, class_name)
    assert {fault.file for fault in caught.value.faults} == {str(path)}
    lines = path.read_text().splitlines()
    return [
        (lines[fault.line - 1] if fault.line else "", fault.message)
        for fault in caught.value.faults
    ]


ORDER = 'topic = "fractions.order"'


def made_sheets(*questions):
    rows = [
        SheetItems(tier.value, (), tuple(q.replace("TIER", tier.value) for q in questions))
        for tier in Tier
    ]
    return LessonSheets(("ratio.share", "fractions.order"), tuple(rows))
