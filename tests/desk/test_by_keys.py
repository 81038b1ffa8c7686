"""What happens to lessons, pupils and questions, done at the desk by keys alone."""

import pytest

from tests.depth import only_whole
from tests.desk.conftest import visitor
from tests.desk.keys import Keys
from tests.desk.served import served

LESSON = "/class/8K/lesson/2026-12-03/2"
PAST = "/class/8K/lesson/2026-12-01/3"
MOVING = "/class/8K/moving"


@pytest.fixture(autouse=True)
def mid_week(on_day, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-12-02")


@pytest.fixture
def keys(browser, home):
    """Be a keyboard at the desk of a department where two pupils of 8K have scores."""
    table = {"how": "table", "table": "seat,score\nA1,6\nA2,3"}
    assert visitor(home).post(f"{PAST}/record", data=table).status_code == 200
    with served(home) as base, browser.new_context() as context:
        page = context.new_page()
        page.set_default_timeout(30_000)
        yield Keys(page, base)


@only_whole
def test_a_lesson_falls_out_and_another_moves(keys):
    keys.open(LESSON)
    keys.enter("^Not as planned")
    keys.write("^Why, as in", "school trip")
    keys.enter("^There is no lesson$")
    keys.sees("No lesson: school trip")
    keys.enter("^There is a lesson on Thursday 3 December")
    keys.sees("Taken back")
    keys.open(f"{LESSON}/otherwise")
    keys.write("^In period$", "5")
    keys.enter("^Move the lesson$")
    keys.sees("Noted: the lesson of")
    keys.open("/class/8K/lesson/2026-12-03/5/otherwise")
    keys.enter("^Move it back to")
    keys.sees("is back on")


@only_whole
def test_a_lesson_is_covered_and_that_is_taken_back(keys):
    keys.open("/class/8K/lesson/2026-11-30/1/otherwise")
    keys.choose("^Topic 1$", "Sharing an amount")
    keys.write("^Questions on topic 1$", "3")
    keys.enter("^Note what was asked$")
    keys.sees("3 questions on Sharing an amount")
    keys.enter("^Not as planned")
    keys.enter("^Take back the note")
    keys.sees("Its plan stands")


@only_whole
def test_a_pupil_moves_and_another_is_forgotten(keys):
    keys.open("/class/8K/seat/A1")
    keys.enter("^This pupil moves or leaves$")
    keys.choose("^Goes to$", "7M")
    keys.write("^In seat$", "B2")
    keys.enter("^Move the pupil$")
    keys.sees("counts for 7M now")
    keys.enter("^Take back the move of 8K/A1")
    keys.sees("Taken back: the move")
    keys.open(f"{MOVING}?seat=A2")
    keys.enter("^See what would go")
    keys.write("^Type 8K/A2", "8K")
    keys.enter("^Forget it for good$")
    keys.sees("Nothing was forgotten")
    keys.write("^Type 8K/A2", "8K/A2")
    keys.enter("^Forget it for good$")
    keys.sees("Forgotten: seat A2 of 8K")


def test_a_question_of_one_s_own_is_put_into_a_starter(keys):
    keys.open(LESSON)
    keys.enter("^Write your own in place of question 3$")
    keys.choose("^Topic", "Adding and subtracting fractions with unlike denominators")
    keys.write("^The question, with", "Work out {3/4 + 1/6}.")
    keys.write("^Its answer, the key", "11/12")
    keys.page.wait_for_selector("#tried .state-proved")
    keys.enter("^Put it in this starter$")
    keys.sees("It is kept as")
    assert "Kept by you" in keys.page.inner_text("#q3")
