"""A question that was not asked is not wrong: a fire drill after question 5, at every depth."""

import datetime
import json
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.planning.bands.bands import default_scheme
from itembank.records.entries.entries import LessonFacts, QuestionFacts, Questions
from itembank.records.entries.questions_asked import (
    asked_in,
    marks_of,
    numbers_said,
    pack_asked,
    read_asked,
    unpack_asked,
)

pytestmark = pytest.mark.usefixtures("pages_outlined")

DAY = "2026-11-23"
DEPARTMENT = """
school = "Larkhythe School"
default_class = "8K"
[[classes]]
name = "8K"
year = 8
seats = ["A1-A6", "B1-B6"]
topics = ["ratio.share", "ratio.simplest-form"]
questions = 8
"""
SEATS = [f"{row}{n}" for row in "AB" for n in range(1, 7)]


@pytest.fixture(scope="module")
def made(tmp_path_factory, run_once):
    folder = tmp_path_factory.mktemp("department")
    (folder / "department.toml").write_text(DEPARTMENT)
    (folder / "output").mkdir()
    run_once("pack", "--date", DAY, "--department", folder, "--output", folder / "output")
    return folder


@pytest.fixture(scope="module")
def run_once():
    from itembank.cli.main import run

    def call(*words):
        with pytest.raises(SystemExit) as end:
            run([str(word) for word in words])
        assert not end.value.code

    return call


@pytest.fixture
def home(made, tmp_path, monkeypatch):
    for path in ("department.toml", f"output/8K-{DAY}/pack.json"):
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_bytes((made / path).read_bytes())
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return tmp_path


def sheet(home, answers, columns=8):
    """Write a sheet with `answers`, a text a seat such as ``11011---``, of some columns."""
    rows = ["seat," + ",".join(str(n) for n in range(1, columns + 1))]
    for seat, marks in zip(SEATS, answers, strict=False):
        rows.append(",".join([seat, *(mark.strip("-") for mark in marks[:columns])]))
    (home / "sheet.csv").write_text("\n".join(rows))
    return "sheet.csv"


# Everyone right on 1 to 4, half of them on 5.
DRILL = ["11111---", "11110---"] * 5


@pytest.mark.parametrize("columns", [5, 8])
def test_a_sheet_that_stops_is_out_of_what_was_asked(said, home, columns):
    done = said("record", "--sheet", sheet(home, DRILL, columns))
    assert done.status == 0
    assert "Questions 6 to 8 were not asked." in done.out
    three = default_scheme().bands(5)
    assert three[-1].lowest == 5
    assert "Secure 5, Extend 5" in done.out
    assert "90 % right" in done.out
    out = said("decide").out
    assert "Questions 6 to 8 were not asked. The starter counts out of 5." in out
    numbers = [line.split()[0] for line in out.splitlines() if " of 10 " in line]
    assert numbers == ["1", "2", "3", "4", "5"]
    out = said("report", "8K", "--csv", "tables").out
    assert "90 %" in out
    assert "Not asked: 23 Nov (questions 6 to 8)." in out
    rows = (home / "tables" / "report-lessons.csv").read_text("utf-8-sig").splitlines()
    cells = dict(zip(rows[0].split(","), rows[1].split(","), strict=True))
    assert (cells["out_of"], cells["not_asked"], cells["share"]) == ("5", "6 7 8", "0.9")
    questions = said("report", "--lesson", DAY, "8K").out
    listed = re.findall(r"^(\d)  (?:support|core|challenge)\b", questions, re.MULTILINE)
    assert listed == ["1", "2", "3", "4", "5"]


def test_counts_by_question_may_stop_and_skip(said, home):
    out = said("record", "--right", "10 9 8 7 6", "--pupils", "10").out
    assert "Questions 6 to 8 were not asked." in out
    assert "80 % right" in out
    said("record", "--right", "10 9 8", "--asked", "1 3 8", "--pupils", "10", "--replace")
    out = said("decide").out
    assert "Questions 2 and 4 to 7 were not asked." in " ".join(out.split())
    assert [line.split()[0] for line in out.splitlines() if " of 10 " in line] == ["1", "3", "8"]


def test_hands_and_scores_out_of_what_was_asked(said, home):
    out = said("record", "--bands", "2 3 5", "--asked", "5").out
    assert "Questions 6 to 8 were not asked." in out
    lines = said("decide").out.splitlines()
    assert [line.split()[2] for line in lines if "(" in line and line[:1] in "RSE"] == [
        "0–2",
        "3–4",
        "5",
    ]
    (home / "scores.csv").write_text("seat,score\nA1,5\nA2,3/5\n")
    done = said("record", "--sheet", "scores.csv", "--asked", "5", "--replace")
    assert "Rebuild 0, Secure 1, Extend 1" in done.out
    assert said("record", "--correct", "A2 6").status == 2
    assert said("record", "--correct", "A2 5").status == 0
    assert "Extend 2" in said("record", "--correct", "A1 5").out
    assert "Questions 6 to 8 were not asked" in said("decide").out


def test_what_one_pupil_left_blank_is_no_answer_and_is_told(said, home):
    done = said("record", "--sheet", sheet(home, ["11111---", "111-----", "11111---"]))
    assert "2 cells are blank where others have an answer: no answer, so wrong." in done.out
    assert "4  2 of 3" in said("decide").out
    done = said("record", "--sheet", "sheet.csv", "--asked", "8", "--replace")
    assert "not asked" not in done.out
    assert "8  0 of 3" in said("decide").out


def test_an_answer_to_what_was_not_asked_is_refused(said, home):
    done = said("record", "--sheet", sheet(home, ["11111---", "1111111-"]), "--asked", "5")
    assert done.status == 2
    assert "line 3: There is an answer to question 6, which was not asked" in done.err
    assert "line 3: There is an answer to question 7" in done.err


def test_typed_answers_that_stop(said, home):
    pack = json.loads((home / "output" / f"8K-{DAY}" / "pack.json").read_text())
    keys = [item["key"]["line"] for item in pack["versions"][0]["items"]][:5]
    rows = ["seat,1,2,3,4,5,6,7,8"]
    rows += [f"{seat}," + ",".join(f'"{key}"' for key in keys) + ",,," for seat in SEATS[:4]]
    (home / "sheet.csv").write_text("\n".join(rows))
    done = said("record", "--sheet", "sheet.csv")
    assert "Questions 6 to 8 were not asked." in done.out
    assert "Extend 4" in done.out
    marked = said("mark", "--pack", f"output/8K-{DAY}", "--sheet", "sheet.csv").out
    assert "Questions 6 to 8 were not asked." in marked
    assert "out of 5" in marked
    assert ". 0% right" not in marked
    assert "A1        5  Extend" in marked


def test_a_later_record_and_an_undo_leave_each_its_own_marks(said, home):
    full = ["11111111", "11111110"] * 5
    said("record", "--sheet", sheet(home, full))
    said("record", "--sheet", sheet(home, DRILL), "--replace")
    assert "out of 5" in said("decide").out
    assert said("undo").status == 0
    out = said("decide").out
    assert "not asked" not in out
    assert "94 % right" in out


def test_a_correction_does_not_ask_what_was_not_asked(said, home):
    said("record", "--sheet", sheet(home, DRILL))
    done = said("record", "--correct", "A1 q7 right")
    assert done.status == 2
    assert "Question 7 was not asked." in done.err
    assert said("record", "--correct", "A2 q5 right").status == 0
    assert "5   6 of 10" in said("decide").out


def test_two_halves_of_a_class_may_have_been_asked_more_and_less(said, home):
    said("record", "--sheet", sheet(home, ["11111000", "11111111"]))
    rows = ["seat,1,2,3,4,5,6,7,8", "B1,1,1,1,1,1,,,", "B2,1,1,1,0,0,,,"]
    (home / "half.csv").write_text("\n".join(rows))
    done = said("record", "--sheet", "half.csv", "--add")
    assert "Questions 6 to 8 were not asked." in done.out
    out = said("decide").out
    bands = {line.split()[0]: line.split()[4:] for line in out.splitlines() if "–" in line}
    # Five of eight is Secure, five of five Extend, and three of five Secure again.
    assert bands["Secure"] == ["A1", "B2"]
    assert bands["Extend"] == ["A2", "B1"]
    assert "asked fewer questions than others" in " ".join(out.split())
    assert [line.split()[1:4] for line in out.splitlines() if line[:2] in ("5 ", "6 ")] == [
        ["3", "of", "4"],
        ["1", "of", "2"],
    ]
    assert "81 % right" in out


def test_statistics_and_exports_hold_only_what_was_asked(said, home):
    from itembank.records.reports.item_report import item_report
    from itembank.records.results.scope import Scope
    from itembank.records.store.store import open_store

    # Pupils who differ, so that the starter has a reliability of its own five questions.
    said("record", "--sheet", sheet(home, ["11111---", "11100---", "11000---", "10000---"] * 3))
    with open_store(str(home / "results.sqlite3")) as store, store.reading() as connection:
        found = item_report(connection, Scope("8K"))
    assert len(found.items) == 5
    assert sum(item.out_of for item in found.items) == 60
    assert found.starters[0].kr20 == pytest.approx(5 / 4 * (1 - 0.8125 / 2.1875))
    assert said("export", "--to", "csv").status == 0
    answers = (home / "csv" / "answers.csv").read_text().splitlines()
    assert len(answers) == 1 + 60
    entry = (home / "csv" / "entries.csv").read_text("utf-8-sig").splitlines()
    assert entry[0].split(",")[-2:] == ["asked", "marks"]
    assert entry[1].split(",")[-2:] == ["1 to 5", "5"]


FACTS = LessonFacts(
    "8K",
    datetime.date(2026, 11, 23),
    12,
    questions=tuple(
        QuestionFacts(n, "", "ratio.share", "core", marks=1 + n % 2) for n in range(1, 9)
    ),
)


@given(asked=st.sets(st.integers(1, 8), min_size=1).map(sorted))
def test_questions_asked_are_kept_and_said(asked):
    text = pack_asked(FACTS, asked)
    assert unpack_asked(text, range(1, 9)) == tuple(asked)
    assert (text == "") == (len(asked) == 8)
    assert marks_of(FACTS, asked) == sum(1 + n % 2 for n in asked)
    assert asked_in(Questions(dict.fromkeys(asked, (1, 2))), FACTS) == tuple(asked)
    said = numbers_said(asked).partition(" ")[2]
    # A number alone is how many: two of them, or a range, are which.
    wanted = tuple(asked) if len(asked) > 1 else tuple(range(1, asked[0] + 1))
    assert read_asked(said, 8) == wanted
