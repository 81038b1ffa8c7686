"""A week's plan file: what is written is read back, and every fault is told with its line."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.planning.calendar.days import usual_seed
from itembank.planning.choosing.topic_reason import Occasion, Reason
from itembank.planning.department.department import MOST_QUESTIONS
from itembank.planning.week.week_file import read_week_plan
from itembank.planning.week.week_plan import (
    WeekPlan,
    WeekTopic,
    plan_text,
)
from tests.planning.test_any_text import PIECES
from tests.planning.week_plans import (
    CALENDAR,
    DAY,
    DEPARTMENT,
    TOPICS,
    faults,
    lesson,
    made_sheets,
    plan,
    plans,
    read,
    slow,
    written,
)


@slow
@given(made=plans())
def test_what_is_written_is_read_back(tmp_path, made):
    assert read(written(tmp_path, made)) == made


def test_a_choice_of_the_teacher_is_read_back_whatever_is_known_of_another(tmp_path):
    date = DAY(2026, 11, 16)
    known = Reason(date, told=Occasion(DAY(2026, 1, 1)))
    topics = (WeekTopic("ratio.share", 2, Reason(date)), WeekTopic("fractions.order", 1, known))
    made = plan(replace(lesson(date), topics=topics))
    assert read(written(tmp_path, made)) == made


@slow
@given(made=plans(), data=st.data())
def test_a_damaged_plan_is_read_or_refused_with_lines(tmp_path, made, data):
    path = written(tmp_path, made)
    text = path.read_text(encoding="utf-8")
    start = data.draw(st.integers(0, len(text)))
    length = data.draw(st.integers(0, 12))
    text = text[:start] + data.draw(PIECES) + text[start + length :]
    path.write_bytes(text.encode())
    try:
        assert isinstance(read(path), WeekPlan)
    except FileFaults as error:
        for fault in error.faults:
            assert fault.message
            assert 0 <= fault.line <= len(text.splitlines()) + 1


def test_what_the_teacher_leaves_out_has_a_usual_value(tmp_path):
    path = tmp_path / "plan.toml"
    path.write_text(
        'class = "8k"\nweek = 2026-11-16\n[[lessons]]\ndate = 2026-11-18\nquestions = 2\n'
        'topics = ["ratio.share", "fractions.order"]\n'
    )
    found = read(path)
    assert found.class_name == "8K"
    (one,) = found.lessons
    assert (one.period, one.title) == ("1", "Starter")
    assert one.seed == usual_seed("8K", DAY(2026, 11, 18), "Starter")
    # What has no reason was written by the teacher, so it stays when the week is planned anew.
    chosen = Reason(DAY(2026, 11, 18))
    assert one.topics == tuple(
        WeekTopic(name, 1, chosen, True) for name in ("ratio.share", "fractions.order")
    )


def test_what_no_longer_fits_of_what_was_asked_makes_room(tmp_path):
    asked = ("ratio.share/core/1", "ratio.share/core/2", "fractions.order/core/3")
    made = plan(lesson(asked=asked))
    text = plan_text(made)
    path = tmp_path / "plan.toml"
    path.write_text(text.replace("never = []", 'never = ["ratio.share/core/2"]'))
    assert read(path).lessons[0].asked == (asked[0], asked[2])
    text = text.replace("count = 2", "count = 1").replace("questions = 3", "questions = 2")
    path.write_text(text)
    assert read(path).lessons[0].asked == (asked[0], asked[2])
    # A question the teacher wants stands whatever the others were.
    path.write_text(text.replace("items = []", 'items = ["ratio.share/core/2"]'))
    assert read(path).lessons[0].asked == (asked[1], asked[2])


def test_sheets_of_a_lesson_that_was_taken_out_do_no_harm(tmp_path):
    both = plan(
        lesson(sheets=made_sheets("ratio.share/TIER/1")),
        lesson(DAY(2026, 11, 17), "3", sheets=made_sheets("ratio.share/TIER/2")),
    )
    path = tmp_path / "plan.toml"
    text = plan_text(both)
    start, end = text.index("[[lessons]]"), text.index("[[lessons]]\ndate = 2026-11-17")
    path.write_text(text[:start] + text[end:])
    assert read(path).lessons == both.lessons[1:]


def test_sheets_that_do_not_hold_together_are_left_to_be_chosen_anew(tmp_path):
    path = written(tmp_path, plan(lesson(sheets=made_sheets("ratio.share/TIER/1"))))
    text = path.read_text()
    path.write_text(text.replace("ratio.share/core/1", "ratio.share/support/1"))  # one twice
    assert not read(path).lessons[0].sheets
    path.write_text(text + text[text.rindex("[[sheets]]") :])
    assert "There are two [[sheets]] tables for 2026-11-16" in faults(path)[0][1]


def test_the_most_questions_are_allowed(tmp_path):
    full = plan(lesson(topics=(("ratio.share", MOST_QUESTIONS),)))
    assert read(written(tmp_path, full)) == full


def test_topic_of_is_asked_only_for_addresses(tmp_path):
    def none(address):
        raise ItembankError(f"{address} is gone.")

    path = written(tmp_path, plan(lesson(asked=("ratio.share/core/1",))))
    with pytest.raises(FileFaults, match=r"ratio.share/core/1 is gone"):
        read_week_plan(path, DEPARTMENT, CALENDAR, TOPICS, none)
