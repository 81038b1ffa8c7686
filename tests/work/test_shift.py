"""One lesson on another day: it is planned, taught and recorded there, and can go back."""

import datetime
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from itembank.errors import ItembankError
from itembank.files.faults import FileFaults
from itembank.planning.department.department import read_department
from itembank.planning.week.week_plan import WeekPlan
from itembank.work.lesson.cancel import cancel
from itembank.work.lesson.lesson_day import no_lesson, periods_of
from itembank.work.lesson.shift import shift
from itembank.work.week.begin import folder_of
from itembank.work.week.request import WeekRequest
from itembank.work.week.week_run import make_week

pytestmark = pytest.mark.usefixtures("one_core", "pages_outlined", "proved_once")

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
DAY = datetime.date
MON, TUE, WED, THU = (DAY(2026, 11, 30) + datetime.timedelta(n) for n in range(4))


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
def home(tmp_path, monkeypatch):
    folder = tmp_path / "larkhythe"
    shutil.copytree(LARKHYTHE, folder, ignore=shutil.ignore_patterns("plans", "*.sqlite3"))
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-28")
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    monkeypatch.setattr("itembank.work.week.week_run.Builder", NoPacks)
    return folder


def text(home):
    return (home / "department.toml").read_text("utf-8")


def moved(home, *words, **more):
    return shift(read_department(home), *words, **more)


def week(home, **more) -> WeekPlan:
    wanted = WeekRequest("8K", MON, department=home, output=home / "out")
    return make_week(replace(wanted, **more)).plan


def test_a_lesson_that_is_moved_is_held_where_it_is_now(home):
    done = moved(home, TUE, THU, "8K", to_period="5")
    assert (done.source, done.target, done.back) == ((TUE, "3"), (THU, "5"), False)
    department = read_department(home)
    group = department.find_class("8K")
    assert periods_of(department, group, TUE) == ()
    assert periods_of(department, group, THU) == ("2", "5")
    assert "moved to Thursday 3 December, period 5" in no_lesson(department, group, TUE)
    assert folder_of(home).department.find_class("8K").plan.moved == {(TUE, "3"): (THU, "5")}


def test_moved_back_the_file_is_as_it_was(home):
    before = text(home)
    moved(home, TUE, THU, "8K", to_period="5")
    assert text(home).startswith(before[: before.index("[[classes]]")])
    again = moved(home, THU, WED, "8K", period="5")  # once more: still one line
    assert again.source == (THU, "5")
    assert '"2026-12-01 3" = "2026-12-02 5"' in text(home)
    assert moved(home, WED, TUE, "8K", period="5", to_period="3").back
    assert text(home) == before


def test_its_starter_goes_along(home):
    before = {lesson.key: lesson for lesson in week(home).lessons}
    moved(home, TUE, THU, "8K", to_period="5")
    after = {lesson.key: lesson for lesson in week(home, replace=True).lessons}
    assert (TUE, "3") not in after
    assert after[THU, "5"].asked == before[TUE, "3"].asked
    assert after[THU, "5"].counts == before[TUE, "3"].counts
    assert {topic.reason.lesson for topic in after[THU, "5"].topics} == {THU}


def test_what_it_teaches_is_taught_then(home):
    path = home / "department.toml"
    taught = '[classes.taught]\n"ratio.share" = 2026-11-19\n'
    path.write_text(text(home).replace(taught, ""), "utf-8")

    def day():
        folder = folder_of(home)
        scheme = folder.scheme_of(folder.department.find_class("8K"))
        return next(row.date for row in scheme.topics if row.topic == "ratio.share")

    assert day() == TUE
    moved(home, TUE, THU, "8K", to_period="5")
    assert day() == WED  # the first lesson there is from that day on


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((DAY(2026, 12, 6), THU), "weekend"),
        ((TUE, DAY(2026, 12, 6)), "weekend"),
        ((TUE, DAY(2026, 12, 4)), "training day"),
        ((TUE, TUE), "already"),
    ],
)
def test_what_cannot_be_moved_stays(home, words, told):
    before = text(home)
    with pytest.raises(ItembankError, match=told):
        moved(home, *words, "8K")
    assert text(home) == before


def test_no_teacher_is_in_two_places(home):
    with pytest.raises(ItembankError, match="HT has 7M on Thursday 3 December, period 4"):
        moved(home, TUE, THU, "8K", to_period="4")
    with pytest.raises(ItembankError, match="8K has a lesson on Thursday 3 December, period 2"):
        moved(home, TUE, THU, "8K", to_period="2")


def test_a_lesson_of_which_something_is_noted_is_not_moved(home):
    cancel(read_department(home), TUE, "8K", "trip")
    with pytest.raises(ItembankError, match="noted"):
        moved(home, TUE, THU, "8K", to_period="5")


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ('"2026-12-01 9" = "2026-12-03 5"', "no lesson on Tuesday 1 December, period 9"),
        ('"2026-12-01 3" = "2026-12-05 5"', "weekend"),
        ('"2026-12-01 3" = "2026-12-03 2"', "already"),
        ('"Tuesday" = "2026-12-03 2"', "twice"),
        ('"2026-12-01 3" = "2026-12-03 5"\n"2026-11-30 1" = "2026-12-03 5"', "Two lessons"),
    ],
)
def test_what_a_person_writes_wrongly_is_told_with_its_line(home, line, told):
    at = text(home).index("# 8K is ahead")
    (home / "department.toml").write_text(
        f"{text(home)[:at]}[classes.moved]\n{line}\n\n{text(home)[at:]}", "utf-8"
    )
    with pytest.raises(FileFaults, match=told) as error:
        folder_of(home)
    lines = text(home).split("\n")
    assert all(lines[fault.line - 1] in line.split("\n") for fault in error.value.faults)


@pytest.mark.parametrize("text", ["classes = [", 'school = "Larkhythe School"\n', "classes = 3\n"])
def test_a_file_that_is_another_by_now_is_told_and_left(home, text):
    department = read_department(home, None)
    path = home / "department.toml"
    path.write_text(text)
    with pytest.raises(ItembankError, match="was changed meanwhile"):
        shift(department, TUE, WED, "8K", to_period="5")
    assert path.read_text() == text
