"""The same week of several classes: each its own, or with the starters of a parallel class."""

import datetime
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from itembank.errors import ItembankError, SeveralErrors
from itembank.planning.week.week_changes import LessonName, Pin
from itembank.work.week.request import WeekRequest
from itembank.work.week.several_weeks import classes_meant, make_weeks

pytestmark = pytest.mark.usefixtures("one_core", "pages_outlined", "proved_once")

LARKHYTHE = Path(__file__).parents[3] / "banks" / "larkhythe"
MONDAY = datetime.date(2026, 11, 30)
PARALLEL = """
[[classes]]
name = "8L"
year = 8
scheme = "year-8"
lessons = ["Mon 2", "Wed 4", "Fri 1"]
topics = ["ratio.share"]

[classes.taught]
"ratio.share" = 2026-11-19

[[classes]]
name = "8P"
year = 8
scheme = "year-8"
lessons = ["Tue 2", "Thu 4"]
topics = ["ratio.share"]

[classes.taught]
"""


class NoPacks:
    """Stands for the process that builds packs, where only what is around them is the matter."""

    def __enter__(self):
        return self

    def __exit__(self, *_):
        return None

    def build(self, requests):
        self.requests = requests

    def packs(self):
        return [{"pack.json": b"{}"} for _ in self.requests]


@pytest.fixture
def wanted(tmp_path, monkeypatch):
    """Return what to ask for: a week of Larkhythe with three classes in year 8."""
    home = tmp_path / "larkhythe"
    shutil.copytree(LARKHYTHE, home, ignore=shutil.ignore_patterns("plans", "*.sqlite3"))
    path = home / "department.toml"
    path.write_text(path.read_text("utf-8") + PARALLEL, "utf-8")
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-28")
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    monkeypatch.setattr("itembank.work.week.week_run.Builder", NoPacks)
    return WeekRequest(first=MONDAY, department=home, output=tmp_path / "out")


def test_a_year_group_is_its_classes_each_once(wanted):
    home = wanted.department
    assert classes_meant(home, year=8) == ("8K", "8L", "8P")
    assert classes_meant(home, ["8p", "7M"], 8) == ("8P", "7M", "8K", "8L")
    with pytest.raises(ItembankError, match="No class is in year 12") as error:
        classes_meant(home, year=12)
    assert error.value.field == "year"


def test_each_class_has_a_week_and_is_told_of(wanted):
    told = []
    weeks = make_weeks(wanted, ("8K", "8L"), told=told.append)
    assert [week.plan.class_name for week in weeks.made] == ["8K", "8L"]
    assert told == list(weeks.made)


def test_parallel_classes_have_the_first_ones_starters(wanted):
    first, second, _ = make_weeks(wanted, ("8K", "8L", "8P"), same_starters=True).made
    pairs = list(zip(first.plan.lessons, second.plan.lessons, strict=False))
    assert [lesson.key for _, lesson in pairs] == [
        (datetime.date(2026, 11, 30), "2"),
        (datetime.date(2026, 12, 2), "4"),
        # Friday the 4th is a training day.
    ]
    for theirs, lesson in pairs:
        assert lesson.asked == theirs.asked
        assert lesson.sheets == theirs.sheets
        assert {topic.why for topic in lesson.topics} == {"the same starter as 8K"}


def test_a_class_that_was_not_taught_a_topic_has_a_starter_of_its_own(wanted):
    path = wanted.department / "department.toml"
    text = path.read_text("utf-8")
    behind = make_weeks(wanted, ("8K",)).made[0].plan.lessons[0].topics[0].topic
    path.write_text(f'{text}"{behind}" = "not yet"\n', "utf-8")
    made = make_weeks(replace(wanted, replace=True), ("8K", "8P"), same_starters=True).made
    theirs, own = (week.plan.lessons[0] for week in made)
    assert behind in theirs.counts
    assert behind not in own.counts
    assert any("has not been taught" in str(remark) for remark in made[1].remarks)


def test_what_a_teacher_pinned_stays_that_lesson_s_own(wanted):
    make_weeks(wanted, ("8L",))
    pin = Pin(LessonName("mon", weekday=0), "ratio.scale", None, "pin")
    make_weeks(replace(wanted, changes=(pin,), replace=True), ("8L",))
    made = make_weeks(replace(wanted, replace=True), ("8K", "8L"), same_starters=True).made
    assert "ratio.scale" in made[1].plan.lessons[0].counts
    assert made[1].plan.lessons[1].asked == made[0].plan.lessons[1].asked


def test_one_class_that_cannot_be_planned_stops_no_other(wanted):
    make_weeks(wanted, ("8K",))
    told = []
    with pytest.raises(SeveralErrors) as error:
        make_weeks(wanted, ("8K", "8L"), same_starters=True, told=told.append)
    assert [part.matter for part in error.value.errors] == ["plan there"]
    assert str(error.value).startswith("8K: ")
    assert [week.plan.class_name for week in told] == ["8L"]
    assert told[0].plan.lessons[0].topics[0].why == "the same starter as 8K"
