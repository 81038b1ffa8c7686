"""Lessons that fell out, what a cover teacher asked, one starter for two classes: and planning."""

import datetime
import json
import shutil
from pathlib import Path

import pytest

from itembank.items.topics.registry import topics
from itembank.planning.department.folder import read_folder
from itembank.planning.week.week_plan import FOLDER, plan_text
from itembank.work.week.new_plan import new_plan
from itembank.work.week.planner import Planner
from itembank.work.week.week_questions import with_questions

pytestmark = pytest.mark.usefixtures("pages_outlined")

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
DAY = datetime.date
MONDAY, TUESDAY = DAY(2026, 11, 23), DAY(2026, 11, 24)


@pytest.fixture
def home(tmp_path, monkeypatch):
    for name in ("department.toml", "calendar.toml", "schemes"):
        copy = shutil.copytree if (LARKHYTHE / name).is_dir() else shutil.copy
        copy(LARKHYTHE / name, tmp_path / name)
    text = (tmp_path / "department.toml").read_text()
    eight_k = text[text.index('[[classes]]\nname = "8K"') : text.index('[[classes]]\nname = "9S"')]
    eight_l = eight_k.replace('"8K"', '"8L"').replace('teacher = "HT"\n', "")
    eight_l = eight_l.replace('"Mon 1", "Tue 3"', '"Mon 1", "Tue 2", "Tue 4"')
    (tmp_path / "department.toml").write_text(text + "\n" + eight_l)
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return tmp_path


def planner(home, name="8K"):
    made = list(topics())
    titles = {topic.id: topic.title for topic in made}
    folder = read_folder(home, tuple(titles), {topic.id: topic.prerequisites for topic in made})
    return Planner(folder, folder.department.find_class(name), titles)


def plan(home, week=MONDAY):
    one = planner(home)
    made = with_questions(one, new_plan(one, week, None).plan)
    path = home / FOLDER / made.file_name
    path.parent.mkdir(exist_ok=True)
    path.write_text(plan_text(made))
    return made


def seen(home):
    """Return the days on which each topic was asked, as planning the next week has it."""
    known = planner(home).known(DAY(2026, 11, 30), 1)
    return {topic.topic: {s.date for s in topic.seen} for topic in known.topics}


def scheme_of(home):
    return {topic.topic: topic.date for topic in planner(home).scheme.topics}


def days_of(home, week=MONDAY):
    return [f"{lesson.date:%a}" for lesson in new_plan(planner(home), week, None).plan.lessons]


def test_what_a_cancelled_lesson_was_to_ask_was_not_asked(said, home):
    made = plan(home)
    monday = set(made.lessons[0].counts)
    before = seen(home)
    assert all(MONDAY in before[topic] for topic in monday)
    found = said("cancel", "8K", "--date", "2026-11-23", "--why", "fire drill")
    assert (found.status, found.err) == (0, "")
    assert "8K has no lesson on Monday 23 November 2026" in found.out
    assert seen(home) == {topic: days - {MONDAY} for topic, days in before.items()}
    # The week has no such lesson.
    assert days_of(home) == ["Tue", "Wed", "Thu", "Fri"]
    assert planner(home).closed_days(MONDAY) == ["Monday 23 November: fire drill"]
    assert "the note that there was no lesson of 8K" in said("undo", "8K").out
    assert days_of(home)[0] == "Mon"
    assert seen(home) == before


def test_what_a_cancelled_lesson_was_to_teach_is_taught_in_the_next(said, home):
    taught = scheme_of(home)
    monday = next(topic for topic, date in taught.items() if date == MONDAY)
    said("cancel", "8K", "--date", "2026-11-23")
    taught = scheme_of(home)
    assert taught[monday] == TUESDAY
    tuesday = new_plan(planner(home), MONDAY, None).plan.lessons[0]
    assert tuesday.date == TUESDAY
    assert monday not in tuesday.counts


def test_what_a_cover_teacher_asked_counts_and_what_was_planned_does_not(said, home):
    made = plan(home)
    before = seen(home)
    planned = set(made.lessons[0].counts)
    other = next(n for n in before if n not in planned and scheme_of(home)[n] < MONDAY)
    words = ["-t", f"{other} 3", "-t", "fractions.equivalent"]
    status, out, err = said("cover", "8K", "--date", "2026-11-23", *words)
    assert (status, err) == (0, "")
    assert f"was asked questions of their own: 3 on {other} and 1 on fractions.equivalent" in out
    asked = seen(home)
    assert MONDAY in asked[other]
    assert not any(MONDAY in asked[topic] for topic in planned - {"fractions.equivalent"})
    late = planner(home).recorded.addresses(DAY(2026, 10, 1))
    assert not late & set(made.lessons[0].asked)
    # Results recorded afterwards are about what was asked.
    assert said("record", "8K", "--date", "2026-11-23", "--right", "20 18 16 9").status == 0
    assert "20 of 29" in said("decide", "8K").out
    assert "62 %" in said("report", "8K", "--topic", other).out  # 54 of 87
    state = {topic.topic: topic for topic in planner(home).known(DAY(2026, 11, 30), 1).topics}[
        other
    ]
    assert [(one.right, one.out_of) for one in state.seen if one.date == MONDAY] == [(54, 87)]
    # A question of somebody's own is no item to judge.
    report = said("report", "--items", "--since", "2026-11-01")
    assert report.status in (0, 2)
    assert "None" not in report.out


def test_one_starter_for_two_parallel_classes(said, home):
    (home / "output").mkdir()
    assert said("pack", "--class", "8K", "--date", "2026-11-23").status == 0
    pack = json.loads((home / "output" / "8K-2026-11-23" / "pack.json").read_text())
    asked = {item["address"] for item in pack["versions"][0]["items"]}
    words = ["--date", "2026-11-23", "--bands", "8 12 9"]
    for name, more in (("8K", []), ("8L", ["--same-as", "8K"])):
        found = said("record", name, *words, *more)
        assert (found.status, found.err) == (0, "")
        assert f"{name} on 23 November 2026: 29 pupils" in found.out
    for name in ("8K", "8L"):
        assert planner(home, name).recorded.addresses(DAY(2026, 11, 1)) == asked
    # Or noted without results, for the second lesson of another day.
    tuesday = ["--date", "2026-11-24", "--pack", "output/8K-2026-11-23"]
    assert said("cover", "8L", *tuesday).status == 2  # which of two lessons?
    found = said("cover", "8L", *tuesday, "--period", "4")
    assert (found.status, "asked the starter of 8K for 23 November 2026" in found.out) == (0, True)
    assert planner(home, "8L").recorded.has(TUESDAY, "4")
    assert not planner(home, "8L").recorded.has(TUESDAY, "2")


@pytest.mark.parametrize(
    ("words", "part"),
    [
        (("cancel", "8K"), "Say which day"),
        (("cancel", "8K", "--date", "2026-11-28"), "(weekend)"),
        (("cancel", "8L", "--date", "2026-11-24", "--period", "3"), "period 2 and 4"),
        (("cancel", "8K", "--date", "2026-11-24", "--why", "x" * 61), "60 characters"),
        (("cover", "8K", "--date", "2026-11-23"), "Say what was asked"),
        (("cover", "8K", "-t", "ratio.share"), "Say which day"),
        (("cover", "8K", "--date", "2026-11-23", "-t", "ratio.shar"), "Did you mean ratio.share"),
        (("cover", "8K", "--date", "2026-11-23", "-t", "ratio.share x"), "a number of questions"),
        (("cover", "8K", "--date", "2026-11-23", "-t", "ratio.share 21"), "1 to 20 questions"),
        (("cover", "8K", "--date", "2026-11-30", "-t", "ratio.share"), "has not come yet"),
        (("cover", "8K", "--date", "2026-11-23", "--same-as", "8K"), "Name the other class"),
        (("cover", "8K", "--date", "2026-11-23", "--same-as", "8L"), "no pack of 8L"),
        (("cover", "8K", "--date", "2026-11-22", "-t", "ratio.share"), "add --yes"),
        (
            ("cover", "8K", "--date", "2026-11-23", "-t", "ratio.share", "--same-as", "8L"),
            "Give one of --topic and --same-as",
        ),
        (("record", "8K", "--same-as", "8Z", "--bands", "1 1 1"), "no class 8Z"),
        (("record", "8K", "--same-as", "8L", "--bands", "1 1 1"), "no pack of 8L"),
    ],
)
def test_each_told_wrongly_is_a_plain_error(said, home, words, part):
    status, out, err = said(*words)
    assert (status, out) == (2, "")
    assert part in err
    assert "Traceback" not in err
    assert not planner(home).recorded.cancelled


def test_what_contradicts_what_is_noted_is_refused(said, home):
    on = ["8K", "--date", "2026-11-23"]
    said("record", *on, "--out-of", "8", "--bands", "8 12 9")
    for words in (["cancel", *on], ["cover", *on, "-t", "ratio.share"]):
        status, _, err = said(*words)
        assert (status, "hands counted by band already" in err, "undo 8K" in err) == (2, True, True)
    said("undo", "8K")
    said("cancel", *on, "--why", "school trip")
    status, _, err = said("record", *on, "--out-of", "8", "--bands", "8 12 9")
    assert (status, "had no lesson" in err, "undo 8K --date 2026-11-23" in err) == (2, True, True)
    status, _, err = said("cancel", *on)
    assert (status, "noted already" in err, "--" in err) == (2, True, False)
    said("undo", "8K")
    said("cover", *on, "-t", "ratio.share")
    status, _, err = said("cover", *on, "-t", "ratio.scale")
    assert (status, "--replace" in err, "--add" in err) == (2, True, False)
    assert said("cover", *on, "-t", "ratio.scale", "--replace").status == 0


def test_both_lessons_of_a_day_are_cancelled_and_had_back_together(said, home):
    on = ["8L", "--date", "2026-11-24"]
    said("cancel", *on, "--why", "school trip")
    assert set(planner(home, "8L").recorded.cancelled) == {(TUESDAY, "2"), (TUESDAY, "4")}
    out = said("undo", "8L").out
    assert out == "Taken back: the note that there was no lesson of 8L on 24 November 2026.\n"
    assert not planner(home, "8L").recorded.cancelled
    said("cancel", *on, "--period", "4")
    assert set(planner(home, "8L").recorded.cancelled) == {(TUESDAY, "4")}
