"""No class is asked a topic before it is taught: by its own lessons, not by its year group's."""

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.planning.calendar.calendar import Calendar, Closed, Term
from itembank.planning.calendar.scheme import Scheme, Taught
from itembank.planning.calendar.timetable import WeeklyLesson
from itembank.planning.department.class_plan import ClassPlan
from itembank.planning.department.class_scheme import class_scheme

DAY = datetime.date
MONDAY = DAY(2026, 11, 23)
YEAR = Calendar(
    (Term("Autumn", DAY(2026, 9, 7), DAY(2026, 12, 18)),),
    (Closed(DAY(2026, 10, 26), DAY(2026, 10, 30), "half term"),),
)
WEEK = YEAR.week_number(MONDAY)


def dates(rows, lessons, taught=None, cancelled=()):
    plan = ClassPlan(lessons=tuple(WeeklyLesson(day, "1") for day in lessons), taught=taught or {})
    found = class_scheme(Scheme("year-8", 8, tuple(rows)), plan, YEAR, frozenset(cancelled))
    return {topic.topic: topic.date for topic in found.topics}


def of_week(*names):
    return [Taught(name, MONDAY, WEEK) for name in names]


@pytest.mark.parametrize(
    ("lessons", "day"),
    [([0, 2], 23), ([2, 4], 25), ([4], 27)],
)
def test_a_week_means_the_classs_first_lesson_of_it(lessons, day):
    assert dates(of_week("a.b"), lessons) == {"a.b": DAY(2026, 11, day)}


def test_a_day_without_a_lesson_means_the_next_lesson():
    wednesday = Taught("a.b", DAY(2026, 11, 25))
    assert dates([wednesday], [0, 3]) == {"a.b": DAY(2026, 11, 26)}
    assert dates([wednesday], [0]) == {"a.b": DAY(2026, 11, 30)}


def test_topics_of_one_week_share_out_its_lessons():
    found = dates(of_week("a.b", "c.d", "e.f"), [0, 1, 2, 3, 4])
    assert [date.day for date in found.values()] == [23, 24, 26]


def test_a_class_ahead_or_behind():
    rows = [Taught("a.b", DAY(2026, 11, 25)), Taught("c.d", DAY(2026, 11, 25))]
    own = {"a.b": DAY(2026, 11, 17), "c.d": None, "x.y": DAY(2026, 10, 6)}
    assert dates(rows, [0], own) == {"x.y": DAY(2026, 10, 6), "a.b": DAY(2026, 11, 17)}


def test_what_the_class_itself_was_taught_this_year_is_of_no_earlier_one():
    rows = (Taught("c.d", DAY(2026, 9, 21)),)
    earlier = (Taught("a.b", DAY(2025, 9, 8)), Taught("e.f", DAY(2025, 9, 8)))
    scheme = Scheme("year-8", 8, rows, "year-7", earlier)
    plan = ClassPlan(lessons=(WeeklyLesson(0, "1"),), taught={"a.b": DAY(2026, 10, 12)})
    found = class_scheme(scheme, plan, YEAR)
    assert [taught.topic for taught in found.earlier] == ["e.f"]
    assert found.current(DAY(2026, 10, 12)) == "a.b"


def test_a_cancelled_lesson_teaches_nothing():
    gone = [(MONDAY, "1")]
    assert dates(of_week("a.b"), [0, 3], cancelled=gone) == {"a.b": DAY(2026, 11, 26)}
    assert dates(of_week("a.b"), [0], cancelled=[(MONDAY, "")]) == {"a.b": DAY(2026, 11, 30)}


@given(
    lessons=st.lists(st.integers(0, 4), min_size=1, max_size=5, unique=True),
    days=st.lists(st.dates(DAY(2026, 9, 7), DAY(2026, 12, 18)), min_size=1, max_size=6),
    weeks=st.lists(st.integers(1, 14), max_size=6),
)
def test_a_topic_is_taught_in_a_lesson_and_never_before_its_time(lessons, days, weeks):
    rows = [Taught(f"day.{n}", day) for n, day in enumerate(days)]
    rows += [Taught(f"week.{n}", YEAR.week_start(week), week) for n, week in enumerate(weeks)]
    found = dates(sorted(rows, key=lambda one: one.date), lessons)
    for row in rows:
        date = found.get(row.topic)
        assert date is None or (date >= row.date and date.weekday() in lessons)
        assert date is None or not YEAR.closed_reason(date)
