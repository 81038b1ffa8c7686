"""Halves of a class, somebody who was away, odd days, and a second undo."""

import sqlite3

import pytest

from itembank.cli.main import run
from itembank.cli.words import ask

pytestmark = pytest.mark.usefixtures("pages_outlined")

DEPARTMENT = """
school = "Larkhythe School"
[[classes]]
name = "8K"
year = 8
seats = ["A1-A6", "B1-B4"]
lessons = ["Mon 1", "Tue 2", "Tue 4"]
topics = ["ratio.simplest-form"]
questions = 4
"""
CALENDAR = """
[[terms]]
name = "Autumn"
first = 2026-09-03
last = 2026-12-18
[[closed]]
first = 2026-10-26
last = 2026-10-30
why = "half term"
"""
FIRST = "seat,1,2,3,4\nA1,1,1,1,1\nA2,0,1,0,0\nA3,1,1,0,0\n"
SECOND = "seat,1,2,3,4\nB1,1,0,1,1\nB2,0,0,0,0\n"
ON = ["--date", "2026-11-23"]


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    folder = tmp_path_factory.mktemp("department")
    (folder / "department.toml").write_text(DEPARTMENT)
    where = ["--department", str(folder), "--output", str(folder / "output")]
    with pytest.raises(SystemExit) as end:
        run(["pack", "--date", "2026-11-23", *where])
    assert not end.value.code
    return (folder / "output" / "8K-2026-11-23" / "pack.json").read_bytes()


@pytest.fixture
def home(made, tmp_path, monkeypatch):
    (tmp_path / "department.toml").write_text(DEPARTMENT)
    (tmp_path / "calendar.toml").write_text(CALENDAR)
    pack = tmp_path / "output" / "8K-2026-11-23"
    pack.mkdir(parents=True)
    (pack / "pack.json").write_bytes(made)
    for name, text in (("first", FIRST), ("second", SECOND)):
        (tmp_path / f"{name}.csv").write_text(text)
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return tmp_path


def rows(home, query):
    with sqlite3.connect(home / "results.sqlite3") as connection:
        return connection.execute(query).fetchall()


@pytest.mark.parametrize("order", [("first", "second"), ("second", "first")])
def test_two_halves_are_one_class(said, home, order):
    whole = FIRST + SECOND.split("\n", 1)[1]
    (home / "whole.csv").write_text(whole)
    said("record", *ON, "--sheet", "whole.csv")
    wanted = said("decide").out
    said("undo")
    assert said("record", *ON, "--sheet", f"{order[0]}.csv").status == 0
    status, out, err = said("record", *ON, "--sheet", f"{order[1]}.csv", "--add")
    assert (status, err) == (0, "")
    assert "Added. 8K on 23 November 2026: 5 pupils." in out
    assert said("decide").out == wanted
    # What the first teacher recorded is kept, and counts again once the other half is taken back.
    assert "counts again" in said("undo").out
    half = 3 if order[0] == "first" else 2
    assert f"{half} pupils" in said("decide").out


def test_the_first_half_may_say_add_as_well(said, home):
    assert said("record", *ON, "--sheet", "first.csv", "--add").status == 0
    assert "3 pupils" in said("decide").out


@pytest.mark.parametrize("depth", ["answers", "scores"])
def test_a_seat_in_both_halves_is_named_and_nothing_recorded(said, home, depth):
    if depth == "scores":
        (home / "first.csv").write_text("A1,4\nA2,1\nA3,2\n")
        (home / "second.csv").write_text("a3,3\nB1,3\nA1,4\n")
    else:
        (home / "second.csv").write_text(SECOND + "A3,1,1,1,1\nA1,1,1,1,1\n")
    said("record", *ON, "--sheet", "first.csv")
    before = said("decide").out
    status, out, err = said("record", *ON, "--sheet", "second.csv", "--add")
    assert (status, out) == (2, "")
    assert "seats A1 and A3 are recorded already" in err
    assert "Nothing was recorded" in err
    assert said("decide").out == before


def test_somebody_who_was_away_is_added_later(said, home):
    said("record", *ON, "--sheet", "first.csv")
    (home / "late.csv").write_text("seat,1,2,3,4\nB4,1,1,0,1\n")
    assert said("record", *ON, "--sheet", "late.csv", "--add").status == 0
    assert "4 pupils" in said("decide").out
    found = rows(home, "select seat from score join entry on entry.id = entry_id "
                       "where replaced_by is null order by seat")  # fmt: skip
    assert [seat for (seat,) in found] == ["A1", "A2", "A3", "B4"]


def test_halves_counted_by_hands(said, home):
    said("record", *ON, "--bands", "2 1 2")
    assert (
        "9 pupils. Rebuild 3, Secure 3, Extend 3."
        in said("record", *ON, "--bands", "1 2 1", "--add").out
    )
    status, _, err = said("record", *ON, "--bands", "1 1 1", "--add")
    assert (status, "come to 12 pupils, but only 10 sit" in err) == (2, True)
    assert "9 pupils" in said("decide").out


def test_halves_counted_by_question(said, home):
    said("record", *ON, "--right", "4 3 2 1", "--pupils", "5")
    said("record", *ON, "--right", "1 2 3 4", "--pupils", "4", "--add")
    lines = [line.split() for line in said("decide").out.splitlines() if line[:1] in "1234"]
    assert [line[1:4] for line in lines if line[2:3] == ["of"]] == [["5", "of", "9"]] * 4


@pytest.mark.parametrize(
    ("words", "part"),
    [
        (["--bands", "1 1 1", "--add"], "hands counted by band cannot be joined to them"),
        (["--bands", "1 1 1"], "or --add to join the two"),
        (["--sheet", "second.csv", "--add", "--replace"], "Give one"),
    ],
)
def test_parts_that_do_not_fit_are_refused(said, home, words, part):
    said("record", *ON, "--sheet", "first.csv")
    status, _, err = said("record", *ON, *words)
    assert (status, part in err) == (2, True)
    assert "3 pupils" in said("decide").out


def test_own_views_and_clarity_of_both_halves(said, home):
    first = ["--own-view", "A1 sure, A2 not sure", "--unclear", "2", "--note", "the word share"]
    said("record", *ON, "--sheet", "first.csv", *first)
    second = ["--own-view", "B1 sure", "--unclear", "1", "--note", "which way round"]
    said("record", *ON, "--sheet", "second.csv", *second, "--add")
    out = " ".join(said("decide").out.split())
    assert "3 of 10 (the word share; which way round)" in out
    assert "sure 2, partly 0, not sure 1" in out
    again = ["--own-view", "A1 partly", "--add"]
    status, _, err = said("record", *ON, *again)
    assert (status, "seat A1 is recorded already" in err) == (2, True)


@pytest.mark.parametrize(
    ("date", "parts"),
    [
        ("2026-11-22", ["no lesson on Sunday 22 November 2026 (weekend)",
                        "nearest lessons are on Tuesday 17 November and Monday 23 November"]),
        ("2026-11-18", ["8K has no lesson on Wednesday 18 November 2026."]),
        ("2026-10-26", ["(half term)", "Tuesday 20 October and Monday 2 November"]),
        ("2026-08-31", ["(before Autumn)", "nearest lesson is on Monday 7 September"]),
    ],
)  # fmt: skip
def test_a_day_without_a_lesson_is_asked_about(said, home, date, parts, monkeypatch):
    words = ["record", "8K", "--date", date, "--out-of", "4", "--bands", "1 1 1"]
    status, out, err = said(*words)
    assert (status, out) == (2, "")
    for part in [*parts, "Nothing was recorded", "--yes"]:
        assert part in err
    asked = []
    monkeypatch.setattr(ask, "can_ask", lambda: True)
    monkeypatch.setattr("builtins.input", lambda label: asked.append(label) or "no")
    assert said(*words).status == 2
    assert parts[0] in asked[0]
    monkeypatch.setattr("builtins.input", lambda label: "yes")
    assert said(*words).status == 0
    # What took place is not asked about again.
    monkeypatch.setattr(ask, "can_ask", lambda: False)
    assert said(*words, "--replace").status == 0


def test_yes_is_not_asked(said, home):
    words = ["record", "--date", "2026-11-21", "--out-of", "4", "--bands", "1 1 1", "--yes"]
    assert said(*words).status == 0


def test_a_period_the_day_has_not(said, home):
    words = ["record", "--date", "2026-11-24", "--out-of", "4", "--bands", "1 1 1", "--period"]
    status, _, err = said(*words, "3")
    assert (status, "that day it has period 2 and 4" in err) == (2, True)
    assert said(*words, "4").status == 0


def test_a_second_undo_names_what_it_would_take_back(said, home, monkeypatch):
    said("record", *ON, "--bands", "1 1 1")
    said(
        "record",
        "--date",
        "2026-11-24",
        "--period",
        "4",
        "--out-of",
        "4",
        "--bands",
        "2 2 2",
        "--unclear",
        "1",
    )
    assert "24 November" in said("undo").out
    status, out, err = said("undo")
    assert (status, out) == (2, "")
    assert "hands counted by band of 8K on 23 November 2026" in err
    assert "Nothing was taken back" in err
    monkeypatch.setattr(ask, "can_ask", lambda: True)
    monkeypatch.setattr("builtins.input", lambda label: "n")
    assert said("undo").status == 2
    assert "3 pupils" in said("decide", "--date", "2026-11-23").out
    monkeypatch.setattr("builtins.input", lambda label: "y")
    assert said("undo").status == 0
    # What is recorded after an undo is again taken back at once.
    said("record", *ON, "--bands", "1 1 1")
    monkeypatch.setattr(ask, "can_ask", lambda: False)
    assert said("undo").status == 0
    assert said("undo", "--yes").status == 2
