"""From the command line: a class meets nothing beyond its year unless its department asks."""

import json
import shutil
from pathlib import Path

import pytest

from itembank.bank.question.year import entry_year
from itembank.bank.read.load import read_bank
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from tests.depth import cases, left, only_whole, whole

pytestmark = pytest.mark.usefixtures("pages_outlined")

BANKS = Path(__file__).parents[2] / "banks"
MIXED = "fractions.decimals-percentages"
DEPARTMENT = """
school = "Larkhythe School"
[[classes]]
name = "7M"
year = 7
topics = ["fractions.decimals-percentages"]
questions = 16
"""


@pytest.fixture
def home(away):
    (away / "department.toml").write_text(DEPARTMENT)
    return away


def pack(home, name="7M"):
    return json.loads(next(home.glob(f"{name}-*/pack.json")).read_text())


def items(data):
    found = [item for version in data["versions"] for item in version["items"]]
    for sheet in data["sheets"]:
        found += [*sheet["items"], *filter(None, (sheet["worked"], sheet["part_finished"]))]
    return found


def recurs(item):
    shown = [run["line"] for run in item["prompt"] if run["kind"] == "math"]
    return any("\u0307" in line for line in (*shown, item["key"]["line"]))


SEEDS = cases(2, 8, 8)


@whole
def test_a_year_7_class_gets_no_recurring_decimal_whatever_the_seed(said, home):
    challenge = 0
    for seed in range(SEEDS):
        status, _, err = said("pack", "--seed", seed, "--replace")
        assert (status, err) == (0, "")
        asked = items(pack(home))
        challenge += sum(item["tier"] == "challenge" for item in asked)
        assert [item["address"] for item in asked if recurs(item)] == []
    assert challenge >= 10 * SEEDS


@pytest.mark.parametrize(
    "setting",
    ["option", left("beyond_year = true\n"), f'beyond_year = ["{MIXED}"]\n', left("plan")],
)
def test_with_the_setting_it_does(said, home, setting):
    options = ["pack", "--seed", 1]
    if setting == "option":
        options += ["--beyond-year"]
    elif setting == "plan":
        (home / "plan.toml").write_text(f'topics = ["{MIXED}"]\nbeyond_year = true\n')
        options += ["--plan", "plan.toml"]
    else:
        (home / "department.toml").write_text(DEPARTMENT + setting)
    assert said(*options).status == 0
    assert sum(map(recurs, items(pack(home)))) >= 5
    if setting != "option":
        # What is typed goes before what stands in a file.
        assert said(*options, "--within-year", "--replace").status == 0
        assert not any(map(recurs, items(pack(home))))


def test_a_class_of_its_own_may_ask_where_the_department_does_not(said, home):
    text = DEPARTMENT + DEPARTMENT.split("\n\n")[0].partition("[[")[2].join(["[[", ""]).replace(
        "7M", "7N"
    )
    (home / "department.toml").write_text(text + "beyond_year = true\n")
    assert said("pack", "--class", "7M", "--seed", 3).status == 0
    assert said("pack", "--class", "7N", "--seed", 3).status == 0
    assert not any(map(recurs, items(pack(home, "7M"))))
    assert any(map(recurs, items(pack(home, "7N"))))


def test_a_topic_of_a_later_year_is_refused_and_nothing_is_written(said, home):
    status, _, err = said("pack", "-t", "equations.inequalities")
    assert status == 2
    assert "equations.inequalities is beyond year 7: solving inequalities, from year 10" in err
    assert "--beyond-year" in err
    assert list(home.glob("7M-*")) == []
    assert said("pack", "-t", "equations.inequalities", "--beyond-year").status == 0


def test_too_few_within_the_year_is_told_plainly(said, home):
    bank = ("-t", "number.surds", "--bank", BANKS / "key-stage-4", "--questions-from", "bank")
    status, _, err = said("pack", *bank)
    assert status == 2
    assert "number.surds has no support question that can be used" in err
    assert "4 beyond the year" in err
    assert "beyond_year" in err
    assert "--beyond-year" in err
    few = ("--questions", 4, "--follow-up", 2)
    assert said("pack", *bank, *few, "--beyond-year").status == 0


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("beyond_year = 10", "must be true, false or a list of topics"),
        ('beyond_year = "yes"', "must be true, false or a list of topics"),
        ('beyond_year = ["ratio"]', "A topic is a name such as ratio.share, not 'ratio'"),
        ("beyond_year = [7]", "not 7"),
        ("beyond_years = true", "Did you mean ‘beyond_year’?"),
    ],
)
def test_a_wrong_setting_is_told_with_its_line(said, home, line, words):
    (home / "department.toml").write_text(DEPARTMENT + line + "\n")
    status, _, err = said("pack")
    assert status == 2
    assert "department.toml, line 8: " in err or "department.toml:8" in err
    assert words in err


def test_topics_show_the_year(said, home):
    out = said("topics", "--bank", BANKS / "key-stage-4").out
    row = {line.split()[0]: line for line in out.splitlines() if line and "." in line.split()[0]}
    assert " 7, some 10 " in row[MIXED]
    assert " 7 " in row["ratio.share"]
    assert " 10 " in row["number.surds"]
    whole = find_topic(MIXED)
    space = whole.spaces[Tier.CHALLENGE]
    later = sum(whole.from_year(Tier.CHALLENGE, *values) > 7 for values in space)
    assert f"Of {MIXED}, {later} of {len(space)} challenge questions are from year 10" in " ".join(
        out.split()
    )


@only_whole
def test_a_week_leaves_out_a_topic_of_a_later_year_and_says_so(said, away):
    for name in ("department.toml", "calendar.toml", "schemes", "questions"):
        source = BANKS / "larkhythe" / name
        (shutil.copytree if source.is_dir() else shutil.copy)(source, away / name)
    scheme = away / "schemes" / "year-8.toml"
    scheme.write_text(
        scheme.read_text() + '\n[[topics]]\ntopic = "equations.inequalities"\nweek = 8\n'
        if "inequalities" not in scheme.read_text()
        else scheme.read_text().replace("week = 26", "week = 8")
    )
    status, out, err = said("week", "8K", "--from", "2026-11-30")
    assert (status, err) == (0, "")
    plan = away / "plans" / "week-8K-2026-11-30.toml"
    with_it = plan.read_text()
    text = (away / "department.toml").read_text()
    (away / "department.toml").write_text(
        text.replace('beyond_year = ["equations.inequalities"]\n', "")
    )
    plan.unlink()
    status, out, err = said("week", "8K", "--from", "2026-11-30", "--replace")
    assert (status, err) == (0, "")
    assert "equations.inequalities" in with_it
    assert "equations.inequalities" not in plan.read_text()
    assert "equations.inequalities is beyond year 8" in out
    assert 'beyond_year = ["equations.inequalities"]' in out


def test_the_bank_for_key_stage_3_holds_only_key_stage_3():
    three, four = (list(read_bank(BANKS / f"key-stage-{n}").entries()) for n in (3, 4))
    assert [entry.item.id for entry in three if entry_year(entry) > 7] == []
    assert [entry.item.id for entry in four if entry_year(entry) < 10] == []
    assert len({entry.item.id for entry in (*three, *four)}) == len(three) + len(four)
