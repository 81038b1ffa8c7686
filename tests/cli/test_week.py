"""A class's week from the command line: planned, changed by hand, recorded, planned again."""

import datetime
import json
import os
import re
import shutil
import tomllib
from pathlib import Path

import pytest

from itembank.packs.data.kinds_stored import kinds_counted, kinds_line
from tests.depth import left, only_whole

pytestmark = pytest.mark.usefixtures("pages_outlined")

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
PLAN = Path("plans/week-8K-2026-11-30.toml")


@pytest.fixture
def home(tmp_path, monkeypatch):
    """Stand in a copy of Larkhythe's folder, with nothing planned or recorded."""
    for name in ("department.toml", "calendar.toml", "schemes", "questions"):
        source = LARKHYTHE / name
        copy = shutil.copytree if source.is_dir() else shutil.copy
        copy(source, tmp_path / name)
    shutil.copytree(
        LARKHYTHE.parent / "key-stage-3", tmp_path.parent / "key-stage-3", dirs_exist_ok=True
    )
    (tmp_path / "output").mkdir()
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return tmp_path


def packs(home):
    return {path.parent.name: path.read_bytes() for path in sorted(home.glob("output/*/pack.json"))}


def lessons():
    return tomllib.loads(PLAN.read_text())["lessons"]


def asked(pack):
    return [item["address"] for item in json.loads(pack)["versions"][0]["items"]]


@pytest.mark.parametrize("cores", [{0}, left({0, 1})])
def test_a_week_is_planned_and_all_its_packs_are_made(said, home, monkeypatch, cores):
    monkeypatch.setattr(os, "sched_getaffinity", lambda _: cores, raising=False)
    status, out, err = said("week", "8K", "--from", "2026-11-30")
    assert (status, err) == (0, "")
    made = packs(home)
    assert list(made) == [f"8K-2026-{day}" for day in ("11-30", "12-01", "12-02", "12-03")]
    assert "No lesson on Friday 4 December: training day" in out
    assert (home / "output" / "week-8K-2026-11-30.pdf").read_bytes().startswith(b"%PDF")
    planned = lessons()
    assert [asked(pack) for pack in made.values()] == [one["asked"] for one in planned]
    # No question comes twice in the week, and every topic was taught before its lesson.
    addresses = [address for one in planned for address in one["asked"]]
    assert len(set(addresses)) == len(addresses)
    assert all(topic["why"].startswith("taught") for one in planned for topic in one["topics"])
    # Nothing that is there is overwritten unasked.
    status, _, err = said("week", "8K", "--from", "2026-11-30")
    assert status == 2
    assert "There is a plan of this week" in err
    assert packs(home) == made
    # The plan as it stands gives the same packs.
    assert said("week", "--plan", PLAN, "--replace").status == 0
    assert packs(home) == made


@only_whole
def test_the_teachers_hand_wins_and_the_other_lessons_stay(said, home):
    said("week", "8K", "--from", "2026-11-30")
    before = packs(home)
    status, _, err = said(
        "week",
        "--plan",
        PLAN,
        "--pin",
        "tue ratio.combine",
        "--ban",
        "wed fractions.order",
        "--questions",
        "thu 6",
        "--replace",
    )
    assert (status, err) == (0, "")
    after = packs(home)
    assert after["8K-2026-11-30"] == before["8K-2026-11-30"]
    monday, tuesday, wednesday, thursday = lessons()
    assert "ratio.combine" in [topic["topic"] for topic in tuesday["topics"] if topic.get("pinned")]
    assert any(one.startswith("ratio.combine/") for one in asked(after["8K-2026-12-01"]))
    assert "fractions.order" not in [topic["topic"] for topic in wednesday["topics"]]
    assert len(asked(after["8K-2026-12-03"])) == thursday["questions"] == 6
    # One question by its address, and the order of a starter.
    pinned = "ratio.simplest-form/core/12"
    said("week", "--plan", PLAN, "--pin", f"mon {pinned}", "--replace")
    assert pinned in asked(packs(home)["8K-2026-11-30"])
    old = lessons()[1]["asked"]
    said("week", "--plan", PLAN, "--order", "tue 2 1 3 4 5 6 7 8", "--replace")
    assert asked(packs(home)["8K-2026-12-01"]) == [old[1], old[0], *old[2:]]
    # What was pinned and banned survives planning the week anew.
    said("week", "8K", "--from", "2026-11-30", "--replace")
    again = lessons()
    assert "ratio.combine" in [topic["topic"] for topic in again[1]["topics"]]
    assert "fractions.order" not in [topic["topic"] for topic in again[2]["topics"]]
    assert pinned in again[0]["asked"]
    assert monday["date"] == again[0]["date"]


@only_whole
def test_one_lesson_is_built_without_touching_the_others(said, home):
    said("week", "8K", "--from", "2026-11-30")
    before = packs(home)
    text = PLAN.read_text()
    PLAN.write_text(
        text.replace("questions = 8", "questions = 7").replace("count = 1", "count = 7", 0)
    )
    status, _, err = said("week", "--plan", PLAN, "--replace")
    assert status == 2
    assert err.count("The topics ask for 8 questions, but ‘questions’ is 7") == 4
    PLAN.write_text(text)
    for path in home.glob("output/8K-*"):
        shutil.rmtree(path)
    assert said("week", "--plan", PLAN, "--only", "tue").status == 0
    assert packs(home) == {"8K-2026-12-01": before["8K-2026-12-01"]}


def test_what_was_recorded_changes_the_third_week(said, home, monkeypatch):
    said("week", "8K", "--from", "2026-11-16")
    first = packs(home)["8K-2026-11-16"]
    monkeypatch.setattr("itembank.work.week.week_run.Builder", NoPacks)  # the plan is the matter
    topics = [item["topic"] for item in json.loads(first)["versions"][0]["items"]]
    weak, strong = topics[0], topics[1]

    def third_week(good, bad):
        counts = [28 if topic in good else 2 if topic in bad else 18 for topic in topics]
        found = said(
            "record",
            "8K",
            "--date",
            "2026-11-16",
            "--pupils",
            "29",
            "--replace",
            "--right",
            " ".join(map(str, counts)),
        )
        assert found.status == 0, found.err
        assert said("week", "8K", "--from", "2026-11-30", "--replace").status == 0
        return [[topic["topic"] for topic in lesson["topics"]] for lesson in lessons()]

    def times(weeks, topic):
        return sum(topic in lesson for lesson in weeks)

    one = third_week({strong}, {weak})
    why = {t["topic"]: t["why"] for lesson in lessons() for t in lesson["topics"]}
    assert "7 % right" in why[weak]  # 2 of 29
    other = third_week({weak}, {strong})
    assert one != other
    # A topic that failed comes back sooner, or as soon, and not less often than if it went well.
    assert times(one, weak) >= times(other, weak)
    assert times(other, strong) >= times(one, strong)


@pytest.mark.parametrize(
    ("arguments", "part"),
    [
        (("8K", "--from", "2026-12-25"), "8K has no lessons from Friday 25 December"),
        (("8Z", "--from", "2026-11-30"), "There is no class 8Z"),
        ((), "Name a class"),
        (("8K", "--from", "31/11/2026"), "not a day of the calendar"),
        (("--plan", "plans/none.toml"), "There is no such file"),
        (("8K", "--from", "2026-11-30", "--pin", "sat ratio.share"), "no such lesson on Saturday"),
        (("8K", "--from", "2026-11-30", "--pin", "mon ratio.shar"), "Did you mean ratio.share"),
        (("8K", "--from", "2026-11-30", "--only", "soon"), "write a day such as tue"),
    ],
)
def test_bad_input_is_told_plainly_and_writes_nothing(said, home, arguments, part):
    status, _, err = said("week", *arguments)
    assert status == 2
    assert part in err
    assert "Traceback" not in err
    assert not packs(home)
    assert not (home / "plans").exists()


def test_a_plan_that_cannot_be_is_told_with_every_line(said, home):
    said("week", "8K", "--from", "2026-11-30")
    text = PLAN.read_text()
    PLAN.write_text(
        text.replace("ratio.share", "ratio.shar").replace("date = 2026-12-02", "date = 2026-12-04")
    )
    status, _, err = said("week", "--plan", PLAN, "--replace")
    assert status == 2
    assert "There is no topic ‘ratio.shar’" in err
    assert "There are no lessons on 2026-12-04: training day" in err


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
def planned(said, home, monkeypatch):
    """Stand where the week is planned, with packs that are none."""
    monkeypatch.setattr("itembank.work.week.week_run.Builder", NoPacks)
    assert said("week", "8K", "--from", "2026-11-30").status == 0
    return home


@pytest.mark.parametrize("how", ["written over", "replaced"])
@pytest.mark.parametrize(
    "command",
    [
        ("8K", "--from", "2026-11-30", "--replace"),
        ("--plan", str(PLAN), "--replace"),
        left((("8K", "--from", "2026-11-30", "--questions", "tue 6", "--replace"),)),
    ],
)
def test_a_plan_saved_while_the_week_is_made_stays_the_persons(
    said, planned, monkeypatch, command, how
):
    from itembank.work.week.week_files import Week

    mine = PLAN.read_bytes() + b"# mine\n"
    before = packs(planned)
    page = Week._page

    def meanwhile(self, told):
        if how == "replaced":
            (planned / "plans" / "editor").write_bytes(mine)
            (planned / "plans" / "editor").replace(planned / PLAN)
        else:
            (planned / PLAN).write_bytes(mine)
        return page(self, told)

    monkeypatch.setattr(Week, "_page", meanwhile)
    status, out, err = said("week", *command)
    assert (status, out) == (2, "")
    assert "this file has been changed since it was read, so nothing was saved" in err
    assert "+# mine" in err
    assert (planned / PLAN).read_bytes() == mine
    assert packs(planned) == before
    assert list(planned.rglob("*.itembank-*")) == []


def test_a_plan_made_by_somebody_while_the_week_is_made_stays_theirs(said, home, monkeypatch):
    from itembank.work.week.week_files import Week

    monkeypatch.setattr("itembank.work.week.week_run.Builder", NoPacks)
    page = Week._page

    def meanwhile(self, told):
        PLAN.parent.mkdir()
        PLAN.write_bytes(b"# theirs\n")
        return page(self, told)

    monkeypatch.setattr(Week, "_page", meanwhile)
    status, _, err = said("week", "8K", "--from", "2026-11-30")
    assert status == 2
    assert "this file has been made since" in err
    assert PLAN.read_bytes() == b"# theirs\n"
    assert packs(home) == {}


def test_one_who_waits_is_told_once_for_whom(capsys, monkeypatch):
    from itembank.cli import week_told
    from itembank.people.lock import Holder

    other = Holder("HT", 7, datetime.datetime.now(datetime.UTC))
    waiting = week_told.Waiting()
    waiting(other)
    assert capsys.readouterr().err == ""  # most weeks are made before anybody wonders
    monkeypatch.setattr(week_told, "SILENT_SECONDS", 0.0)
    for _ in range(3):
        waiting(other)
    assert capsys.readouterr().err.count("Waiting: HT is planning a week") == 1


@only_whole
def test_the_kinds_of_questions_are_told_and_one_is_chosen_by_its_kind(said, home, two_cores):
    _, out, _ = said("week", "8K", "--from", "2026-11-30")
    first = json.loads((home / "output" / "8K-2026-11-30" / "pack.json").read_text())
    items = first["versions"][0]["items"]
    if line := kinds_line(kinds_counted(items)):
        assert f"Other kinds: {line}" in out
    place, old = next(
        (n, item["address"])
        for n, item in enumerate(items)
        if item["topic"] == "equations.one-step"
    )
    wrong = said("week", "--plan", PLAN, "--replace", "--another", f"mon {old} round")
    assert wrong.status == 2
    assert "One-step equations has work it out, " in " ".join(wrong.err.split())
    near = said("week", "--plan", PLAN, "--replace", "--another", f"mon {old} odd on out")
    assert "Did you mean odd one out?" in " ".join(near.err.split())
    before = [item["address"] for item in items]
    done = said("week", "--plan", PLAN, "--replace", "--another", f"mon {place + 1} odd one out")
    assert done.status == 0, done.err
    after = json.loads((home / "output" / "8K-2026-11-30" / "pack.json").read_text())
    (new,) = (item for item in after["versions"][0]["items"] if item["address"] not in before)
    assert new["ask"]["kind"] == "odd one out"
    assert new["topic"] == "equations.one-step"
    assert after["versions"][0]["items"][place]["address"] == new["address"]
    assert "odd one out" in re.search(r"Other kinds: (.*)", done.out)[1]
    # What a person chose stays when the rest is planned anew.
    said("week", "8K", "--from", "2026-11-30", "--replace")
    assert new["address"] in lessons()[0]["asked"]
