"""What the plans of other weeks ask, and what the class knows of each topic because of them."""

import datetime

import pytest

from itembank.files.faults import FileFaults
from itembank.planning.calendar.scheme import Scheme, Taught
from itembank.planning.choosing.memory import Seen
from itembank.planning.department.sheet_items import LessonSheets, SheetItems
from itembank.planning.week.earlier_weeks import AskedBefore, planned_lessons, topic_states
from itembank.planning.week.week_plan import FOLDER, PlannedLesson, WeekPlan, WeekTopic, plan_text

DAY = datetime.date


def write(folder, week, name="8K", **more):
    lesson = PlannedLesson(
        week,
        "1",
        "Starter",
        2,
        5,
        (WeekTopic("ratio.share", 2),),
        items=("ratio.share/core/1",),
        asked=("ratio.share/core/1", f"ratio.share/core/{week.day}"),
        sheets=LessonSheets(
            ("ratio.share",),
            tuple(
                SheetItems(
                    tier, (f"ratio.share/{tier}/7",), (f"ratio.share/{tier}/{week.day + 40}",)
                )
                for tier in ("support", "core", "challenge")
            ),
        ),
        **more,
    )
    plan = WeekPlan(name, week, (lesson,))
    path = folder / FOLDER / plan.file_name
    path.parent.mkdir(exist_ok=True)
    path.write_text(plan_text(plan))
    return path


def test_starters_and_sheets_of_all_weeks_by_date(tmp_path):
    write(tmp_path, DAY(2026, 11, 23))
    write(tmp_path, DAY(2026, 11, 16))
    found = planned_lessons(tmp_path, "8k")
    assert [before.date for before in found] == [DAY(2026, 11, 16), DAY(2026, 11, 23)]
    assert found[0].topics == ("ratio.share",)
    assert found[0].addresses == (
        "ratio.share/core/1",
        "ratio.share/core/16",
        *(f"ratio.share/{tier}/{n}" for tier in ("support", "core", "challenge") for n in (7, 56)),
    )


def test_another_classs_plans_are_not_even_opened(tmp_path):
    write(tmp_path, DAY(2026, 11, 16))
    write(tmp_path, DAY(2026, 11, 16), "9S").write_text("this is no plan")
    assert len(planned_lessons(tmp_path, "8K")) == 1
    assert planned_lessons(tmp_path, "7M") == []
    assert planned_lessons(tmp_path / "nowhere", "8K") == []


def test_a_plan_under_a_name_of_the_teachers_own_counts(tmp_path):
    path = write(tmp_path, DAY(2026, 11, 16))
    path.rename(path.with_name("week-of-the-fair.toml"))
    assert len(planned_lessons(tmp_path, "8K")) == 1
    assert planned_lessons(tmp_path, "9S") == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("asked = [", "asked = 3 #"),
        ("[[lessons]]", "[lessons]"),
        ("date = 2026-11-16  #", "date = 3  #"),
        ('topics = [\n    { topic = "ratio.share"', 'topics = [\n    3, { topic = "ratio.share"'),
        ("asked = [", "asked = ["),
    ],
)
def test_an_older_plan_that_was_mangled_is_told_and_not_passed_over(tmp_path, old, new):
    path = write(tmp_path, DAY(2026, 11, 16))
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new, 1))
    if old == new:
        assert planned_lessons(tmp_path, "8K")
        return
    with pytest.raises(FileFaults) as caught:
        planned_lessons(tmp_path, "8K")
    assert all(fault.file == str(path) for fault in caught.value.faults)


def test_a_lesson_is_read_as_its_plan_is_read(tmp_path):
    path = write(tmp_path, DAY(2026, 11, 16))
    text = path.read_text().replace('period = "1"\n', "")
    row = next(line for line in text.splitlines() if '{ topic = "ratio.share"' in line)
    path.write_text(text.replace(row, '    "ratio.share", "fractions.order",'))
    (found,) = planned_lessons(tmp_path, "8K")
    assert found.period == "1"
    assert found.topics == ("ratio.share", "fractions.order")
    assert "ratio.share/core/56" in found.addresses  # of its sheet


TAUGHT = DAY(2026, 10, 5)
SCHEME = Scheme("year-8", 8, (Taught("ratio.share", TAUGHT),))


NOW = DAY(2026, 11, 30)


def states(recorded=(), planned=(), before=NOW):
    known = {"ratio.share": recorded} if recorded else {}
    asked = [AskedBefore(day, "1", ("ratio.share",), ()) for day in planned]
    return topic_states(SCHEME, {"ratio.share": "Sharing"}, known, asked, before)[0]


def test_a_planned_lesson_counts_as_asked_without_a_result():
    found = states(planned=[DAY(2026, 11, 23)])
    assert found.seen == (Seen(DAY(2026, 11, 23), 0, 0),)
    assert found.title == "Sharing"
    # Not one that is still to come, nor one that was recorded: that is known better.
    assert states(planned=[DAY(2026, 11, 30)]).seen == ()
    told = Seen(DAY(2026, 11, 23), 12, 20)
    assert states([told], [DAY(2026, 11, 23)]).seen == (told,)


def test_what_was_asked_before_it_was_taught_says_nothing():
    early = Seen(DAY(2026, 9, 21), 1, 20)
    assert states([early]).seen == ()
    assert states([early]).memory == states().memory


def test_a_topic_asked_on_the_day_it_was_taught_was_asked():
    day = DAY(2026, 10, 5)
    scheme = Scheme("year-8", 8, (Taught("ratio.share", day),))
    seen = {"ratio.share": (Seen(day, 20, 28), Seen(day - DAY.resolution, 5, 28))}
    (state,) = topic_states(scheme, {}, seen, (), DAY(2026, 10, 12))
    assert state.seen == (Seen(day, 20, 28),)
