"""Parallel classes at the desk: a week planned with the starters of another class."""

import json
import re

import pytest

from tests.desk.conftest import fresh_home, visitor

PARALLEL = """
[[classes]]
name = "8L"
year = 8
scheme = "year-8"
lessons = ["Mon 2", "Wed 4"]
topics = ["ratio.share"]

[classes.taught]
"ratio.share" = 2026-11-19
"""
DAYS = {"8K": ("2026-11-30", "2026-12-01"), "8L": ("2026-11-30", "2026-12-02")}
WEEK = "/class/8L/week/2026-11-30"


def with_parallel(home):
    path = home / "department.toml"
    path.write_text(path.read_text("utf-8") + PARALLEL, "utf-8")
    return home


def short_of_lessons(home):
    """Leave each class its first two lessons of a week, which show as much as five."""
    path = home / "department.toml"
    two = re.compile(r'lessons = \[("[^"]+", "[^"]+")[^]]*\]')
    path.write_text(two.sub(r"lessons = [\1]", path.read_text("utf-8")), "utf-8")
    return home


def starters(home, name):
    packs = [json.loads((home / f"{name}-{day}" / "pack.json").read_text()) for day in DAYS[name]]
    return [[item["address"] for item in pack["versions"][0]["items"]] for pack in packs]


def test_a_class_has_the_starters_of_a_parallel_one(home):
    desk = visitor(with_parallel(home))
    # Only a class of the same year whose week is planned is offered.
    assert re.findall('<option value="([^"]+)">the same', desk.get(WEEK).text) == ["8K"]
    assert "the same as" not in desk.get("/class/7M/week/2026-11-30").text
    refused = desk.post(f"{WEEK}/plan", data={"starters_of": "9S"})
    assert refused.status_code == 400
    assert "9S" in refused.text
    assert desk.post(f"{WEEK}/plan", data={"starters_of": "8K"}).status_code == 200
    assert starters(home, "8L") == starters(home, "8K")
    # It may have its own again.
    assert desk.post(f"{WEEK}/plan", data={"starters_of": "", "again": "yes"}).status_code == 200
    assert starters(home, "8L") != starters(home, "8K")


@pytest.mark.parametrize("same", [True, False])
def test_all_classes_of_a_year_are_planned_with_one_starter_where_that_is_wanted(tmp_path, same):
    home = with_parallel(short_of_lessons(fresh_home(tmp_path)))
    desk = visitor(home)
    assert 'name="same"' in desk.get("/").text
    page = desk.post("/plan-all", data={"same": "yes"} if same else {})
    assert "7M, 8K, 9S and 8L" in page.text
    assert (starters(home, "8L") == starters(home, "8K")) is same
    assert 'name="same"' not in desk.get("/").text


def test_without_parallel_classes_nothing_is_asked(tmp_path):
    page = visitor(fresh_home(tmp_path)).get("/").text
    assert "Plan the week for every class" in page
    assert 'name="same"' not in page
