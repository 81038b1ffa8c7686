"""A week is made by one call: plain values go in and come out, and nothing is printed."""

import datetime
import shutil
from pathlib import Path

import pytest

from itembank.errors import ItembankError
from itembank.planning.week.week_changes import Length, LessonName, Order, Pin
from itembank.work.week.request import Step, WeekRequest
from itembank.work.week.week_run import make_week

pytestmark = pytest.mark.usefixtures("one_core", "pages_outlined", "proved_once")

LARKHYTHE = Path(__file__).parents[3] / "banks" / "larkhythe"
MONDAY = datetime.date(2026, 11, 30)


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
    """Return what to ask for: a week of 8K, in a copy of Larkhythe's folder."""
    home = tmp_path / "larkhythe"
    home.mkdir()
    for name in ("department.toml", "calendar.toml", "schemes"):
        copy = shutil.copytree if (LARKHYTHE / name).is_dir() else shutil.copy
        copy(LARKHYTHE / name, home / name)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    monkeypatch.setattr("itembank.work.week.week_run.Builder", NoPacks)
    return WeekRequest("8K", MONDAY, department=home, output=tmp_path / "out")


def again(request, **changed):
    """Return a request with some of its fields otherwise."""
    fields = {name: getattr(request, name) for name in request.__dataclass_fields__}
    return WeekRequest(**fields | changed)


def test_a_week_comes_back_as_values_and_nothing_is_said(wanted, capfd):
    steps = []
    made = make_week(wanted, progress=steps.append)
    assert capfd.readouterr() == ("", "")
    assert steps == list(Step)
    assert [built.lesson for built in made.built] == list(made.plan.lessons)
    assert all((built.folder / "pack.json").exists() for built in made.built)
    assert made.path.exists()
    assert made.overview.exists()
    assert set(made.titles) == {name for lesson in made.plan.lessons for name in lesson.counts}
    assert made.skipped == ("Friday 4 December: training day",)


def test_what_needs_an_answer_is_named_and_the_answer_goes_on(wanted):
    made = make_week(wanted)
    with pytest.raises(ItembankError) as caught:
        make_week(wanted)
    assert (caught.value.matter, caught.value.about) == ("plan there", {"path": made.path})
    assert make_week(again(wanted, replace=True)).plan == made.plan
    from_plan = WeekRequest(plan=made.path, output=wanted.output)
    with pytest.raises(ItembankError) as caught:
        make_week(from_plan)
    assert caught.value.matter == "packs there"
    assert caught.value.about["folders"] == [built.folder for built in made.built]


def test_changes_are_values_too(wanted):
    make_week(wanted)
    tuesday = LessonName("tue", weekday=1)
    changes = (Pin(tuesday, "ratio.combine", 2), Length(6, tuesday))
    made = make_week(again(wanted, changes=changes, replace=True))
    (built,) = made.built  # the others are as they were
    assert built.lesson.counts["ratio.combine"] == 2
    assert built.lesson.questions == 6


def test_the_head_of_a_plan_says_how_to_build_in_the_callers_words_alone(wanted):
    made = make_week(wanted)
    assert "build the week from this file again" in made.path.read_text("utf-8")
    assert "itembank" not in made.path.read_text("utf-8").partition("[[lessons]]")[0]
    how = again(wanted, replace=True, how_to_build="press Build on {path}")
    text = make_week(how).path.read_text("utf-8")
    assert f"run: press Build on plans/{made.path.name}" in text


def test_a_plan_of_an_older_version_gives_the_same_page_and_its_facts_again(wanted):
    made = make_week(wanted)
    page, text = made.overview.read_bytes(), made.path.read_text("utf-8")
    older = text.partition("\n# Below is why")
    sheets = text[text.index("\n# Below is what the follow-up sheets hold") :]
    made.path.write_text(older[0] + sheets, encoding="utf-8")
    from_plan = WeekRequest(plan=made.path, output=wanted.output, replace=True)
    again_made = make_week(from_plan)
    assert again_made.plan == made.plan
    assert again_made.overview.read_bytes() == page
    # What a teacher wrote is no sentence of ours, and stays.
    made.path.write_text(made.path.read_text("utf-8").replace("taught 7 Sep", "since 7 Sep"))
    whys = [topic.why for lesson in make_week(from_plan).plan.lessons for topic in lesson.topics]
    assert any(why.startswith("since 7 Sep") for why in whys)


def test_one_lesson_planned_anew_leaves_the_others_as_they_are_in_the_plan(wanted):
    make_week(wanted)
    tuesday = LessonName("tue", weekday=1)
    turned = (Order(tuesday, numbers=(8, 7, 6, 5, 4, 3, 2, 1)),)
    before = make_week(again(wanted, changes=turned, replace=True)).plan
    monday = LessonName("mon", weekday=0)
    made = make_week(again(wanted, only=monday, replace=True))
    assert [built.lesson.date for built in made.built] == [MONDAY]
    assert made.plan.lessons[1:] == before.lessons[1:]
    # Without it the whole week is planned anew, as before.
    assert make_week(again(wanted, replace=True)).plan.lessons[1] != before.lessons[1]


def test_where_no_day_is_said_a_week_that_is_over_gives_way_to_the_next(wanted, monkeypatch):
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-28")  # a Saturday
    made = make_week(again(wanted, first=None))
    assert made.plan.week == MONDAY
    assert [lesson.date.weekday() for lesson in made.plan.lessons][:2] == [0, 1]
    # In the middle of a week it is planned from that day on.
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-12-09")
    made = make_week(again(wanted, first=None))
    assert made.plan.lessons[0].date == datetime.date(2026, 12, 9)


def test_a_lesson_is_called_by_whole_words(wanted, monkeypatch):
    """One topic's title is longer than a lesson's may be: ‘100 or who’ stood on the board."""
    from itembank.work.week.planner import Planner

    long = "Rounding to decimal places and to the nearest 10, 100 or whole number"
    monkeypatch.setattr(Planner, "title", lambda *_: long)
    titles = {lesson.title for lesson in make_week(wanted).plan.lessons}
    assert titles == {"Rounding to decimal places and to the nearest 10, 100…"}
