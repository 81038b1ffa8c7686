"""A teacher's hour with the week: changed minds, slips of the pen, full disks, half-gone weeks."""

import hashlib
import json
import os
import shutil
import signal
import tomllib
from functools import partial
from pathlib import Path

import pytest

from itembank.cli.main import run
from itembank.files import together
from itembank.files.together import Together
from itembank.work.week.week_build import Builder
from tests.depth import left, only_whole

from .forked import ended, fork

pytestmark = pytest.mark.usefixtures("pages_outlined")

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
WEEK = "2026-11-23"
PLAN = Path(f"plans/week-8K-{WEEK}.toml")
END = "2026-11-26"
"""From here on two lessons of the week are left: enough for two processes."""
DAYS = {day: f"8K-2026-11-{23 + n}" for n, day in enumerate(("mon", "tue", "wed", "thu", "fri"))}


@pytest.fixture(scope="module")
def planned(tmp_path_factory, one_core):
    """Plan one week once; each test works on a copy."""
    home = tmp_path_factory.mktemp("planned")
    for name in ("department.toml", "calendar.toml", "schemes", "questions"):
        copy = shutil.copytree if (LARKHYTHE / name).is_dir() else shutil.copy
        copy(LARKHYTHE / name, home / name)
    (home / "output").mkdir()
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(home)
        patch.setenv("ITEMBANK_TODAY", "2026-11-20")
        patch.delenv("ITEMBANK_STORE", raising=False)
        with pytest.raises(SystemExit) as end:
            run(["week", "8K", "--from", WEEK])
        assert not end.value.code
    return home


@pytest.fixture
def home(planned, tmp_path, monkeypatch, on_day):
    on_day("2026-11-20")  # the week is to come
    folder = tmp_path / "larkhythe"
    shutil.copytree(planned, folder)
    monkeypatch.chdir(folder)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return folder


def hashes(home):
    return {
        str(path.relative_to(home / "output")): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted((home / "output").glob("8K-*/*"))
    }


def changed(before, after):
    """Return the packs in which any byte differs."""
    names = {name for name in {**before, **after} if before.get(name) != after.get(name)}
    return sorted({name.partition("/")[0] for name in names})


def lessons(path=PLAN):
    return tomllib.loads(path.read_text())["lessons"]


def asked(home, day):
    pack = json.loads((home / "output" / DAYS[day] / "pack.json").read_text())
    return [item["address"] for item in pack["versions"][0]["items"]]


@pytest.mark.parametrize(
    ("option", "text", "days"),
    [
        left("--pin", "tue ratio.combine", ["tue"]),
        ("--instead", "wed {wed0} ratio.combine", ["wed"]),
        left("--order", "fri 8 7 6 5 4 3 2 1", ["fri"]),
        left("--questions", "thu 6", ["thu"]),
        left("--ban", "mon {mon0}", ["mon"]),
    ],
)
def test_a_change_leaves_every_byte_of_the_other_packs(said, home, option, text, days):
    first = {f"{day}0": row["topics"][0]["topic"] for day, row in zip(DAYS, lessons(), strict=True)}
    before, old = hashes(home), lessons()
    status, out, err = said("week", "8K", "--from", WEEK, option, text.format(**first), "--replace")
    assert (status, err) == (0, "")
    assert changed(before, hashes(home)) == [DAYS[day] for day in days]
    assert out.count("Written to") == len(days)
    for day, new, was in zip(DAYS, lessons(), old, strict=True):
        assert (new == was) == (day not in days)
        assert asked(home, day) == new["asked"]


def test_a_plan_that_says_nothing_new_is_left_as_the_teacher_wrote_it(said, home):
    mine = "# Fire drill on Tuesday!\n" + PLAN.read_text()
    PLAN.write_text(mine)
    before = hashes(home)
    assert said("week", "--plan", PLAN, "--replace").status == 0
    assert PLAN.read_text() == mine
    assert changed(before, hashes(home)) == []


def test_one_lesson_edited_by_hand(said, home):
    before, text = hashes(home), PLAN.read_text()
    gone = lessons()[1]["asked"][2]
    PLAN.write_text(text.replace(f'    "{gone}",\n', "", 1))
    status, out, _ = said("week", "--plan", PLAN, "--only", "tue", "--replace")
    assert status == 0
    assert "Tuesday 24 November" in out
    assert "Monday" not in out
    assert changed(before, hashes(home)) == [DAYS["tue"]]
    assert len(asked(home, "tue")) == 8


def test_a_pack_that_is_not_as_the_plan_says_is_pointed_out(said, home):
    gone = lessons()[2]["asked"][0]
    PLAN.write_text(PLAN.read_text().replace("never = []", f'never = ["{gone}"]', 3))
    status, out, _ = said("week", "--plan", PLAN, "--only", "tue", "--replace")
    assert status == 0
    assert "Note: The pack of Wednesday 25 November, period 2 is not as the plan has it now" in out
    assert "--only 2026-11-25 --replace" in out
    assert "pack of Thursday" not in out


def test_planning_from_the_middle_of_a_week_keeps_its_beginning(said, home):
    before, old = hashes(home), lessons()
    status, out, _ = said("week", "8K", "--from", "2026-11-25", "--replace")
    assert status == 0
    assert "Monday 23" not in out
    new = lessons()
    assert new[:2] == old[:2]
    assert [row["date"] for row in new] == [row["date"] for row in old]
    assert not {DAYS["mon"], DAYS["tue"]} & set(changed(before, hashes(home)))
    # What Monday asked is known by now.
    first = old[0]["topics"][0]["topic"]
    why = [t["why"] for row in new[2:] for t in row["topics"] if t["topic"] == first]
    assert all("last seen" in one for one in why)


def test_a_lesson_that_was_recorded_stays_when_the_week_is_planned_anew(said, home, on_day):
    on_day("2026-11-24")
    assert said("record", "8K", "--date", "2026-11-24", "--bands", "8 12 9").status == 0
    before, old = hashes(home), lessons()
    status, out, err = said("week", "8K", "--from", WEEK, "--replace")
    assert (status, err) == (0, "")
    assert "Note: Tuesday 24 November, period 3 was recorded already and stays as it was" in out
    assert "Note: Monday 23 November, period 1 is past and stays as it was" in out
    assert lessons()[:2] == old[:2]
    assert not {DAYS["mon"], DAYS["tue"]} & set(changed(before, hashes(home)))


@pytest.mark.parametrize(
    ("arguments", "keep_plan"),
    [
        left(("8K", "--from", WEEK, "--replace"), True),
        (("8K", "--from", WEEK, "--replace"), False),
        left(("8K", "--from", WEEK, "--questions", "7", "--replace"), True),
        left(("8K", "--from", WEEK, "--questions", "7", "--replace"), False),
        (("--plan", PLAN, "--ban", "fractions.order", "--replace"), True),
    ],
)
def test_no_pack_that_a_class_has_had_is_touched(said, home, on_day, arguments, keep_plan):
    before, old = hashes(home), lessons()
    if not keep_plan:
        PLAN.unlink()
    on_day("2026-11-26")
    status, _, err = said("week", *arguments)
    assert (status, err) == (0, "")
    gone = [DAYS[one] for one in ("mon", "tue", "wed")]
    assert not set(gone) & set(changed(before, hashes(home)))
    # The plan goes on saying what these packs ask.
    assert [lesson["asked"] for lesson in lessons()[:3]] == [one["asked"] for one in old[:3]]
    on_day("2026-12-05")
    found = said("week", "--plan", PLAN, "--replace")
    assert (found.status, found.err) == (0, "")
    assert "No pack had to be made" in found.out


@pytest.mark.parametrize(
    ("words", "part"),
    [
        left(("--pin", "tue ratio.combine"), "--pin ‘tue ratio.combine’: Tuesday 24 November"),
        left(("--swap", "fri {fri} mon {mon}"), "Monday 23 November, period 1 is past"),
        (("--only", "mon"), "Monday 23 November, period 1 is past, so its pack stays"),
    ],
)
def test_a_change_to_a_lesson_gone_by_is_refused(said, home, on_day, words, part):
    first = {name: row["topics"][0]["topic"] for name, row in zip(DAYS, lessons(), strict=True)}
    before, text = hashes(home), PLAN.read_text()
    on_day("2026-11-25")
    status, _, err = said(
        "week", "--plan", PLAN, *(word.format(**first) for word in words), "--replace"
    )
    assert (status, part in err) == (2, True)
    assert (hashes(home), PLAN.read_text()) == (before, text)


@pytest.mark.parametrize(
    ("day", "said_"),
    [
        ("2026-11-29", "no lessons from Sunday 29 November to the end of that week. The next is on "
         "Monday 30 November. Write --from 2026-11-30"),
        ("2026-10-28", "(half term). The next is on Monday 2 November. Write --from 2026-11-02"),
        ("24/12/2026", "(holiday between Autumn and Spring). The next is on Monday 4 January"),
        ("2027-08-02", "(after the end of Summer). The school year in calendar.toml ends on"),
        ("28 Oct", "(half term). The next is on Monday 2 November. Write --from 2026-11-02"),
        ("next week", "is not a date. Write it as 2026-11-30, 30/11/2026 or 30 Nov"),
        ("2026-02-30", "is not a day of the calendar"),
    ],
)  # fmt: skip
def test_days_without_lessons_and_days_mistyped(said, home, day, said_):
    before = sorted(home.rglob("*"))
    status, _, err = said("week", "8K", "--from", day, "--replace")
    assert status == 2
    assert said_ in err
    assert "Traceback" not in err
    assert sorted(home.rglob("*")) == before


def test_a_plan_is_not_replaced_unasked_and_its_packs_neither(said, home):
    before, text = hashes(home), PLAN.read_text()
    for arguments, part in (
        (("8K", "--from", WEEK), "There is a plan of this week"),
        (
            ("8K", "--from", WEEK, "--pin", "tue ratio.combine"),
            "holds packs already: 8K-2026-11-24",
        ),
        (("--plan", PLAN), "holds packs already"),
    ):
        status, _, err = said("week", *arguments)
        assert (status, part in err, "--replace" in err) == (2, True, True)
    assert (hashes(home), PLAN.read_text()) == (before, text)


@only_whole
def test_from_another_folder_and_into_another(said, home, tmp_path, monkeypatch):
    before = hashes(home)
    monkeypatch.chdir(tmp_path)
    plan = home / PLAN
    out = tmp_path / "elsewhere"
    assert said("week", "--plan", plan, "--output", out).status == 0
    assert {path.parent.name for path in out.glob("*/pack.json")} == set(DAYS.values())
    assert hashes(home) == before
    # From inside the folder of plans, by the name alone.
    monkeypatch.chdir(home / "plans")
    assert (
        said("week", "--plan", plan.name, "--only", "tue", "--output", tmp_path / "b").status == 0
    )


def test_a_reason_is_told_once_and_then_pointed_to(said, home):
    out = said("week", "--plan", PLAN, "--replace").out
    title = "Equivalent fractions"
    lines = [line for line in out.splitlines() if f"1 on {title}: " in line]
    assert "taught 7 Sep" in lines[0]
    assert all(": as on " in line for line in lines[1:])
    assert len(lines) > 1


def test_a_plan_beyond_repair_can_be_taken_away(said, home):
    PLAN.write_text("this is no plan")
    status, _, err = said("week", "8K", "--from", WEEK, "--replace")
    assert (status, "take it away to begin without it" in err) == (2, True)
    PLAN.unlink()
    assert said("week", "8K", "--from", WEEK, "--replace").status == 0


def test_a_lesson_outside_the_timetable_is_kept_and_pointed_out(said, home):
    PLAN.write_text(PLAN.read_text().replace('period = "5"', 'period = "6"'))
    status, out, _ = said("week", "--plan", PLAN, "--only", "fri", "--replace")
    assert status == 0
    assert "Note: plans/week-8K-2026-11-23.toml: 8K's timetable has no lesson on Friday" in out


def test_a_department_without_calendar_scheme_or_timetable(said, home):
    text = Path("department.toml").read_text()
    Path("department.toml").write_text(text.replace('scheme = "year-8"\n', ""))
    found = said("week", "8K", "--from", "2026-11-30")
    assert (found.status, "8K has no scheme of work. Add scheme" in found.err) == (2, True)
    lines = text.replace('lessons = ["Mon 1", "Tue 3", "Wed 2", "Thu 2", "Fri 5"]\n', "")
    Path("department.toml").write_text(lines)
    found = said("week", "8K", "--from", "2026-11-30")
    assert (found.status, "8K has no lessons. Add lessons" in found.err) == (2, True)
    Path("department.toml").write_text(text)
    Path("calendar.toml").unlink()
    found = said("week", "8K", "--from", "2026-11-30")
    assert (found.status, "a week is planned by it" in found.err) == (2, True)


def limit():
    import resource

    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (40_000, 40_000))


def test_a_disk_that_takes_no_more(home, tmp_path):
    before, text = hashes(home), PLAN.read_text()

    def command():
        limit()
        run(["week", "8K", "--from", WEEK, "--questions", "7", "--replace"])

    with (tmp_path / "told").open("w+b") as told:
        assert ended(fork(command, err=told.fileno())) == 2
    err = (tmp_path / "told").read_text("utf-8")
    assert "cannot be written: File too large. Nothing was changed" in err
    assert (hashes(home), PLAN.read_text()) == (before, text)
    assert not list(home.rglob(".*.new"))


@pytest.mark.parametrize(
    ("owner", "step", "kept"),
    [
        left(Builder, "build", True),  # the packs are about to be handed out
        (Builder, "packs", True),  # other processes are at them
        left(Together, "folder", True),  # the plan is written, beside what it takes the place of
        (together, "put_in_place", False),  # it takes the places, which is not broken off
        left(together, "remove", False),  # what stood there goes
    ],
)
def test_ctrl_c_leaves_plan_and_packs_of_one_mind(home, two_cores, owner, step, kept):
    """It comes as a person presses it: for the command and all its processes at once."""
    (before,) = {row["questions"] for row in lessons()[3:]}
    really = getattr(owner, step)

    def pressed(*arguments, **named):
        setattr(owner, step, really)
        os.killpg(0, signal.SIGINT)
        return really(*arguments, **named)

    def command():
        os.setsid()
        setattr(owner, step, pressed)
        run(["week", "8K", "--from", END, "--questions", "7", "--replace"])

    assert ended(fork(command)) == 130
    assert {row["questions"] for row in lessons()[3:]} == ({before} if kept else {7})
    for day, row in zip(DAYS, lessons(), strict=True):
        assert asked(home, day) == row["asked"]
    assert not list(home.rglob(".*.new"))
    assert not list(home.rglob(".*.old"))


@only_whole
def test_two_at_once_take_turns(home, two_cores):
    both = [
        fork(partial(run, ["week", "8K", "--from", END, "--questions", number, "--replace"]))
        for number in ("6", "7")
    ]
    assert [ended(child) for child in both] == [0, 0]
    rows = lessons()
    assert {row["questions"] for row in rows[3:]} in ({6}, {7})
    for day, row in zip(DAYS, rows, strict=True):
        assert asked(home, day) == row["asked"]
