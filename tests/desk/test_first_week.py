"""The first week of a year: its first lesson has no starter, since nothing was taught before it."""

import pytest

from tests.desk.conftest import fresh_home, visitor

WEEK = "/class/7M/week/2026-09-07"
NO_STARTER = "No starter: nothing was taught before it"


@pytest.fixture
def desk(tmp_path, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-09-05")
    home = fresh_home(tmp_path)
    (home / "schemes" / "year-7.toml").write_text(
        'year = 7\n[[topics]]\ntopic = "fractions.equivalent"\ntaught = 2026-09-07\n', "utf-8"
    )
    return visitor(home)


def test_a_lesson_without_a_starter_says_so_and_offers_no_plan(desk):
    assert NO_STARTER not in desk.get("/").text  # its week is not planned yet
    assert desk.post(f"{WEEK}/plan").status_code == 200
    week = desk.get(WEEK).text
    assert week.count(NO_STARTER) == 1
    assert "Not planned" not in week
    today = desk.get("/").text
    card = today[today.index(">7M</a></h2>") :].partition("</section>")[0]
    assert NO_STARTER in card
    assert "<form" not in card
    assert f'href="{WEEK}">See its week' in card
    lesson = desk.get("/class/7M/lesson/2026-09-07/3").text
    assert NO_STARTER in lesson
    assert "Plan this week" not in lesson


def test_a_lesson_that_a_planned_week_lacks_is_planned_with_the_rest_of_it(desk, tmp_path):
    desk.post(f"{WEEK}/plan")
    (plan,) = (tmp_path / "larkhythe" / "plans").glob("week-7M-*.toml")
    *kept, last = plan.read_text("utf-8").split("\n[[lessons]]")
    assert "date = 2026-09-11" in last
    plan.write_text("\n[[lessons]]".join(kept), "utf-8")
    where = "/class/7M/lesson/2026-09-11/2"
    assert "Not planned" in desk.get(where).text
    assert "Plan the rest of the week anew" in desk.get(where).text
    assert desk.post(f"{WEEK}/plan", data={"again": "yes"}).status_code == 200
    assert "Not planned" not in desk.get(where).text
