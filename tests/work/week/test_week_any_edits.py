"""Whatever a teacher changes, in whatever order, the week still holds together."""

import contextlib
import datetime
from collections import Counter

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.cli.week_changes import read_changes
from itembank.errors import ItembankError
from itembank.planning.week.week_edit import Editor
from itembank.work.week.new_plan import new_plan
from itembank.work.week.week_questions import with_questions
from tests.depth import only_whole
from tests.work.week.test_week_questions import LARKHYTHE, planner
from tests.work.week.test_week_questions import given as all_given

WEEK = datetime.date(2026, 11, 23)


@pytest.fixture(scope="module")
def begun(tmp_path_factory):
    """Return a planner of 9S, what the class knows, and a week to change."""
    import shutil

    home = tmp_path_factory.mktemp("edits") / "larkhythe"
    shutil.copytree(LARKHYTHE, home)
    one = planner(home, "9S")
    plan = with_questions(one, new_plan(one, WEEK, None).plan)
    return one, one.known(WEEK, plan.lessons[0].seed), plan


@st.composite
def edits(draw, plan, taught, every):
    """Draw one change to a lesson of a plan, and the days it names."""
    lesson, other = (draw(st.sampled_from(plan.lessons)) for _ in range(2))
    day, other_day = (f"{one.date}/{one.period}" for one in (lesson, other))
    topic, new = draw(st.sampled_from(taught)), draw(st.sampled_from(every))
    here, there = (draw(st.sampled_from(sorted(one.counts))) for one in (lesson, other))
    places = draw(st.permutations(range(1, len(lesson.asked) + 1)))
    return draw(
        st.sampled_from(
            [
                {"pin": [f"{day} {new}"]},
                {"pin": [f"{day} {topic} {draw(st.integers(1, 3))}"]},
                {"pin": [f"{day} {topic}/core/{draw(st.integers(0, 100))}"]},
                {"ban": [f"{day} {topic}"]},
                {"ban": [f"{day} {draw(st.sampled_from(lesson.asked))}"]},
                {"swap": [f"{day} {here} {other_day} {there}"]},
                {"instead": [f"{day} {here} {new}"]},
                {"order": [f"{day} {' '.join(map(str, places))}"]},
                {"questions": [f"{day} {draw(st.integers(3, 12))}"]},
            ]
        )
    ), {lesson.key, other.key}


@only_whole
@settings(
    max_examples=12,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.data_too_large],
)
@given(data=st.data())
def test_any_changes_leave_a_week_that_holds_together(begun, data):
    one, known, plan = begun
    taught = [state.topic for state in known.topics if state.taught < WEEK]
    for _ in range(6):
        change, named = data.draw(edits(plan, taught, sorted(one.titles)))
        new = None
        with contextlib.suppress(ItembankError):  # it makes no sense here, and says so
            edited = Editor(plan, known, one.known_topics, one.topic_of).apply(
                read_changes(change, WEEK)
            )
            new = with_questions(one, edited)
        if new is None:
            continue
        for lesson, old in zip(new.lessons, plan.lessons, strict=True):
            assert lesson == old or lesson.key in named
            assert sum(lesson.counts.values()) == lesson.questions == len(lesson.asked)
            assert Counter(map(one.topic_of, lesson.asked)) == Counter(lesson.counts)
            assert set(lesson.items) <= set(lesson.asked)
            barred = set(lesson.never)
            assert not barred & {*lesson.asked, *lesson.counts, *lesson.sheets.addresses}
            assert lesson.sheets.topics == tuple(lesson.counts)
        # One that the teacher pins may stand elsewhere too; else nothing comes twice.
        wanted = {address for lesson in new.lessons for address in lesson.items}
        twice = {address for address, times in Counter(all_given(new)).items() if times > 1}
        assert twice <= wanted
        plan = new
