"""A question of one's own written in a lesson, in a browser: live beside the form, then asked."""

import pytest

from tests.depth import only_whole
from tests.desk.served import served

LESSON = "/class/8K/lesson/2026-11-30/1"


@pytest.fixture
def lesson(browser, home):
    with served(home) as base, browser.new_context() as context:
        page = context.new_page()
        page.goto(base + LESSON)
        yield page


@only_whole
def test_from_the_lesson_to_the_starter_and_back(lesson):
    lesson.click("#q3 >> text=Write your own")
    lesson.select_option("#topic", "fractions.add-unlike")
    lesson.fill("#prompt", "Work out {3/4 + 1/6}.")
    lesson.fill("#key", "4/10")
    lesson.wait_for_selector("#tried .state-wrong")
    lesson.fill("#key", "11/12")
    lesson.wait_for_selector("#tried .state-proved")
    lesson.click("text=Put it in this starter")
    lesson.wait_for_selector("text=It is kept as add-unlike-1")
    assert "Kept by you" in lesson.inner_text("#q3")
    lesson.click("text=Take back the last change of this week")
    lesson.wait_for_selector("text=Taken back")
    assert "Kept by you" not in lesson.inner_text("#q3")
