"""``itembank report`` from the command line, on results recorded for an invented class."""

import csv
import datetime

import pytest

from itembank.records.entries import Answers, Clarity, LessonFacts, QuestionFacts
from itembank.records.recording import record
from itembank.records.store import open_store

DEPARTMENT = """
school = "Fernhill School"
default_class = "8K"

[[classes]]
name = "8K"
year = 8
title = "Sharing in a ratio"
topics = ["ratio.share"]
"""
SEATS = [f"{row}{n}" for row in "ABCDE" for n in range(1, 6)]


@pytest.fixture
def department(away, monkeypatch):
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    (away / "department.toml").write_text(DEPARTMENT)
    with open_store(str(away / "results.sqlite3")) as store:
        for week in range(3):
            day = datetime.date(2026, 11, 2) + datetime.timedelta(days=7 * week)
            asked = tuple(
                QuestionFacts(n, f"ratio.share/{tier}/{n}", "ratio.share", tier)
                for n, tier in enumerate(("support", "core", "challenge", "core"), 1)
            )
            facts = LessonFacts("8K", day, 4, "Sharing in a ratio", "", asked)
            right = {s: {n: (i + n) % 5 > n - 2 for n in range(1, 5)} for i, s in enumerate(SEATS)}
            record(store, facts, Answers(right, {("A1", 4): "adds the parts"}))
            record(store, facts, Clarity(6 if week == 1 else 0, 25, "what a part is"))
    return away


UNTIL = ("--until", "2026-11-25")


def test_a_class_says_topics_mastery_and_what_was_unclear(said, department):
    found = said("report", "8k", *UNTIL)
    assert found.status == 0
    assert "3 lessons" in found.out
    assert "Sharing an amount in a given" in found.out
    assert "expected 25 Nov" in found.out
    assert "6 of 25 asked (what a part is)" in " ".join(found.out.split())
    assert "not a grade" in found.out
    assert not any(seat in found.out.split() for seat in SEATS)


@pytest.mark.parametrize(
    "words",
    [
        ("8K",),
        ("8K", "--items"),
        ("8K", "--lesson", "2026-11-09"),
        ("8K", "--topic", "ratio.share"),
        (),
        ("--items",),
    ],
)
def test_every_report_fits_80_columns(said, department, words):
    found = said("report", *words, *UNTIL)
    assert found.status == 0, found.err
    assert max(map(len, found.out.splitlines())) <= 80


def test_one_starter_by_question(said, department):
    found = said("report", "8K", "--lesson", "2026-11-09")
    assert "KR-20" in found.out
    assert "Sharing an amount in a given ratio (ratio.share)" in found.out
    rows = [line.split()[:2] for line in found.out.splitlines() if line.startswith("  ")]
    assert [row for row in rows if "/" in row[0]] == [
        ["support/1", "25"],
        ["core/2", "25"],
        ["core/4", "25"],
        ["challenge/3", "25"],
    ]
    assert "No Rasch difficulties yet" in found.out


def test_a_topic_fades(said, department):
    found = said("report", "8K", "--topic", "ratio.share", *UNTIL)
    assert "16 November 2026" in found.out
    assert "in 28 days" in found.out
    assert said("report", "8K", "--topic", "in a given RATIO", *UNTIL).out == found.out


def test_csv_and_pdf_are_written(said, department):
    done = said("report", "8K", "--csv", "out", "--pdf", "report.pdf", *UNTIL)
    assert done.status == 0, done.err
    with open("out/report-topics.csv", encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [row["topic"] for row in rows] == ["ratio.share"]
    assert [row["title"] for row in rows] == ["Sharing an amount in a given ratio"]
    assert int(rows[0]["answers"]) == 300
    assert float(rows[0]["low"]) < float(rows[0]["right"]) < float(rows[0]["high"])
    assert (department / "report.pdf").read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("8Q",), "no class 8Q"),
        (("8K", "--since", "2027-01-01", "--until", "2027-02-01"), "no such results of 8K"),
        (("8K", "--since", "2027-01-01", "--until", "2026-02-01"), "comes after"),
        (("--pdf", "x.pdf"), "one class"),
        (("--lesson", "2026-11-09"), "needs a class"),
        (("8K", "--topic", "ratio.none", *UNTIL), "was not asked ratio.none"),
        (("--topic", "ratio.none", *UNTIL), "no such results"),
        (("8K", "--topic", "equations with", *UNTIL), "may be several topics"),
        (("8K", "--lesson", "9 Nov"), "not a day"),
        (("8K", "--pdf", "department.toml/x.pdf", *UNTIL), "cannot be written"),
        (("8K", "--pdf", "department.toml", *UNTIL), "is no PDF"),
    ],
)
def test_bad_input_is_told_plainly(said, department, words, says):
    found = said("report", *words)
    assert found.status == 2
    assert says in found.err
    assert "Traceback" not in found.err
