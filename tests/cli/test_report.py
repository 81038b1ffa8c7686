"""``itembank report`` from the command line, on results recorded for an invented class."""

import csv
import datetime
import re
import shutil
from pathlib import Path

import pytest

from itembank.records.entries.entries import (
    Answers,
    BandCount,
    Bands,
    Clarity,
    LessonFacts,
    OwnViews,
    QuestionFacts,
    Questions,
    Scores,
)
from itembank.records.entries.recording import record
from itembank.records.store.store import open_store

DEPARTMENT = """
school = "Larkhythe School"
default_class = "8K"

[[classes]]
name = "8K"
year = 8
title = "Sharing in a ratio"
topics = ["ratio.share"]
"""
SEATS = [f"{row}{n}" for row in "ABCDE" for n in range(1, 6)]


@pytest.fixture(scope="module")
def recorded(tmp_path_factory):
    """Return the file of what is recorded; each test works on a copy."""
    path = tmp_path_factory.mktemp("recorded") / "results.sqlite3"
    with open_store(str(path)) as store:
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
    return path


@pytest.fixture
def department(recorded, away, monkeypatch):
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    (away / "department.toml").write_text(DEPARTMENT)
    shutil.copy(recorded, away)
    return away


UNTIL = ("--until", "2026-11-25")


def test_nothing_is_expected_on_the_day_a_topic_was_asked(said, department):
    """The class has just seen the answers then: a figure would say it all stays."""
    found = said("report", "8k", "--until", "2026-11-16")
    why = "Nothing is expected of topics asked on 16 Nov itself"
    assert why in " ".join(found.out.split())
    (line,) = (line for line in found.out.splitlines() if line.startswith("Sharing an amount"))
    assert re.search(r"\d %.* – ", line)
    later = said("report", "8k", *UNTIL).out
    assert why not in " ".join(later.split())
    (line,) = (line for line in later.splitlines() if line.startswith("Sharing an amount"))
    assert " – " not in line
    text = " ".join(
        said("report", "8k", "--topic", "ratio.share", "--until", "2026-11-16").out.split()
    )
    assert "Expected: not said on the day it was asked" in text
    assert "on 16 Nov," not in text


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
    assert "8K on 9 November 2026: Sharing in a ratio." in found.out
    lines = found.out.splitlines()
    numbered = [k for k, line in enumerate(lines) if line[:1].isdigit() and "KR" not in line][1:]
    assert [lines[k].split()[:3] for k in numbered] == [
        ["1", "support", "25"],
        ["2", "core", "25"],
        ["3", "challenge", "25"],
        ["4", "core", "25"],
    ]
    assert "ratio.share/challenge/3" in lines[numbered[2] + 1]
    assert "no Rasch difficulties yet" in found.out


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
    weeks = rows_of("weeks")
    assert [row["week"] for row in weeks] == ["2026-11-02", "2026-11-09", "2026-11-16"]
    assert all(float(row["low"]) < float(row["share"]) < float(row["high"]) for row in weeks)
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
        (("8K", "--lesson", "soon"), "--lesson"),
        (("8K", "--pdf", "department.toml/x.pdf", *UNTIL), "cannot be written"),
        (("8K", "--pdf", "department.toml", *UNTIL), "is no PDF"),
    ],
)
def test_bad_input_is_told_plainly(said, department, words, says):
    found = said("report", *words)
    assert found.status == 2
    assert says in found.err
    assert "Traceback" not in found.err


def asked(topic="ratio.share", questions=4):
    return tuple(
        QuestionFacts(n, f"{topic}/core/{n}", topic, "core", f"Question {n} on {topic}?")
        for n in range(1, questions + 1)
    )


def facts(day, questions=None):
    title = "Fractions of the market garden"
    return LessonFacts(
        "8K",
        datetime.date(2026, 11, day),
        4,
        title,
        "",
        asked() if questions is None else questions,
    )


@pytest.fixture
def record_it(away, monkeypatch):
    """Record things of lessons of an empty department."""
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    (away / "department.toml").write_text(DEPARTMENT)

    def call(day, *things, questions=None):
        with open_store(str(away / "results.sqlite3")) as store:
            for what in things:
                record(store, facts(day, questions), what)

    return call


def rows_of(name):
    with open(f"out/report-{name}.csv", encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def pdf_text(path):
    import pypdfium2

    with pypdfium2.PdfDocument(path) as pdf:
        words = " ".join(page.get_textpage().get_text_range() for page in pdf)
    return " ".join(words.split())


def everywhere(said):
    """Return the report on screen and as a PDF, as plain words; the CSV files are written."""
    done = said("report", "8K", "--csv", "out", "--pdf", "report.pdf", *UNTIL)
    assert done.status == 0, done.err
    assert max(map(len, done.out.splitlines()[:-2])) <= 80
    texts = [" ".join(done.out.split()), pdf_text("report.pdf")]
    for text in (*texts, *(path.read_text() for path in Path("out").iterdir())):
        assert not set(re.split(r"\W+", text)) & set(SEATS)
    return texts


def test_what_fooled_the_confident_is_told_over_all_lessons(said, record_it):
    # Of 20 sure pupils at each of two lessons 12 are wrong in question 3 and 1 in question 1.
    right = {s: {1: i > 0, 2: True, 3: i > 11, 4: i > 15} for i, s in enumerate(SEATS)}
    views = {s: "sure" if i < 20 else "not sure" for i, s in enumerate(SEATS)}
    for day in (3, 10):
        record_it(day, Answers(right, {}), OwnViews(views, {}))
    for text in everywhere(said):
        assert "2 lessons with own views and scores by seat" in text
        # All five who were not sure had everything right, so the surer scored lower or the same.
        assert "Agreement γ −1.00" in text
        assert "of those not sure, 10 of 10 (100 %) scored high" in text
        assert "Question 3 on ratio.share?" in text
        assert "24 of 40 60 % (47–72)" in text
        assert "Question 1 on ratio.share?" not in text
    rows = rows_of("fooled")
    assert [(row["question"], row["wrong"], row["sure"]) for row in rows] == [
        ("", "58", "160"),
        ("ratio.share/core/4", "32", "40"),
        ("ratio.share/core/3", "24", "40"),
    ]
    assert {row["title"] for row in rows} == {"Sharing an amount in a given ratio"}
    assert rows_of("own-views")[0]["not_sure_but_high"] == "10"


def test_lessons_that_needed_clarifying_are_told_with_their_note(said, record_it):
    record_it(3, Questions({1: (9, 20)}), Clarity(4, 20, "what a part is"))
    record_it(10, Questions({1: (9, 20)}), Clarity(1, 20, "the units"))
    for text in everywhere(said):
        assert "3 Nov" in text
        assert "Fractions of the market garden" in text
        assert "4 of 20" in text
        assert "what a part is" in text
        assert "the units" not in text
    rows = rows_of("lessons")
    assert [(row["asked"], row["needed_clarifying"], row["note"]) for row in rows] == [
        ("4", "yes", "what a part is"),
        ("1", "no", "the units"),
    ]


def test_four_pupils_are_too_few_to_say_what_fooled_them(said, record_it):
    right = {seat: {1: False, 2: True, 3: True, 4: True} for seat in SEATS[:4]}
    record_it(3, Answers(right, {}), OwnViews(dict.fromkeys(SEATS[:4], "sure"), {}))
    for text in everywhere(said):
        assert "Too few pupils to say how well the two agree" in text
        assert "Which questions fooled the confident is not known" in text
    assert rows_of("fooled") == []


def test_a_class_that_never_recorded_by_seat(said, record_it):
    counts = tuple(
        BandCount(letter, name, low, high, n)
        for letter, name, low, high, n in (("R", "Rebuild", 0, 2, 5), ("E", "Extend", 3, 4, 20))
    )
    record_it(3, Bands(counts), OwnViews({}, {"sure": 9, "not sure": 16}))
    record_it(10, Questions({1: (9, 20), 2: (15, 20)}))
    for text in everywhere(said):
        assert "Own views were recorded in 1 lesson, but not both they and the scores" in text
        assert "1 of 2 lessons was recorded by band or score only" in text
        assert "fooled the confident" not in text.casefold()
        assert "γ" not in text


def test_a_lesson_without_its_pack_is_told_plainly(said, record_it):
    record_it(3, Bands((BandCount("R", "Rebuild", 0, 4, 5),)), questions=())
    screen, paper = everywhere(said)
    assert "recorded without their packs, so it is not known what they asked" in screen
    assert "the lessons were recorded without their packs" in paper
    assert "Own views: none were recorded." in paper
    assert "R 5" in screen


def test_a_whole_class_in_one_band_still_fits_80_columns(said, record_it):
    record_it(3, Answers({seat: dict.fromkeys(range(1, 5), True) for seat in SEATS}, {}))
    out = said("decide", "8K").out
    assert max(map(len, out.splitlines())) <= 80
    assert [word for word in out.split() if word in SEATS] == SEATS


def test_scores_and_answers_are_told_apart_everywhere(said, record_it):
    seats = {seat: n % 5 for n, seat in enumerate(SEATS)}
    for day in (3, 10):
        record_it(day, Scores(seats))
    found = said("report", "8K", "--until", "2026-11-25")
    out = " ".join(found.out.split())
    assert "All lessons were recorded by band or score only" in out
    assert "s: never seen by question, only as part of scores" in out
    rows = [line.split() for line in found.out.splitlines() if "Nov" not in line]
    topics = [row for row in rows if "s" in row and row[-1] == "now"]
    assert topics
    # No share right, no answers: two scores and an estimate in doubt.
    assert all(" 0  –  " in "  ".join(row) and "2" in row for row in topics)
    record_it(17, Questions({1: (9, 20), 2: (15, 20)}))
    everything = list(everywhere(said))
    assert all("2 of 3 lessons were recorded by band or score only" in text for text in everything)
    assert "scores: 2" in everything[1]
    assert "asked, but seen only as part of a score" in everything[1]
