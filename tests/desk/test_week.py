"""The first page and a week's page: what is to do, done by one press, for one class or for all."""

import re

import pytest

from itembank.planning.week.week_plan import FOLDER
from tests.depth import only_whole
from tests.desk.conftest import fresh_home, visitor


@only_whole
def test_every_class_is_planned_by_one_press(tmp_path):
    home = fresh_home(tmp_path)
    desk = visitor(home)
    assert "Plan the week for every class" in desk.get("/").text
    page = desk.post("/plan-all")
    assert "7M, 8K and 9S" in page.text
    assert sorted(path.name for path in (home / FOLDER).glob("*.toml")) == [
        f"week-{name}-2026-11-30.toml" for name in ("7M", "8K", "9S")
    ]
    assert "Plan the week for every class" not in page.text
    assert page.text.count("See its questions") == 3


def test_a_class_at_fault_keeps_no_other_from_its_week(home):
    (home / FOLDER / "week-7M-2026-11-30.toml").write_text("class = ")
    desk = visitor(home)
    page = desk.get("/")
    assert page.status_code == 200
    assert "week-7M-2026-11-30.toml" in page.text
    assert "8K" in page.text


def test_packs_that_are_gone_or_differ_are_made_again(home):
    import shutil

    desk = visitor(home)
    address = "/class/8K/week/2026-11-30"
    assert "Make the packs of this plan" not in desk.get(address).text
    shutil.rmtree(home / "8K-2026-12-01")
    assert "Planned, no pack" in desk.get(address).text
    page = desk.post(f"{address}/build")
    assert (home / "8K-2026-12-01" / "pack.json").is_file()
    assert "Planned, no pack" not in page.text


def test_a_second_plan_of_a_week_is_made_only_when_asked(desk, home):
    address = "/class/8K/week/2026-11-30"
    assert desk.post(f"{address}/plan").status_code == 400
    assert desk.post(f"{address}/plan", data={"again": "yes"}).status_code == 200


@pytest.mark.parametrize("day", ["2026-12-28", "2030-01-07"])
def test_a_week_without_lessons_says_so(looking, day):
    page = looking.get(f"/class/8K/week/{day}")
    assert page.status_code == 200
    assert "no lessons in this week" in page.text


def test_a_week_shows_its_questions_as_they_print(looking):
    page = looking.get("/class/8K/week/2026-11-30").text
    assert page.count("Its questions as they print") == 4
    folded = page.split('<details class="printed">')[1].split("</details>")[0]
    assert folded.count("<li>") == 8
    lesson = looking.get("/class/8K/lesson/2026-11-30/1").text
    for formula in re.findall("<math.*?</math>", folded):
        assert formula in lesson
