"""The same records in a file and on a PostgreSQL server give the same reports, to the letter."""

import datetime
from functools import cache

import numpy as np
import pytest

from itembank.cli.main import run
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
from itembank.records.store import store as store_module
from itembank.records.store.store import open_store
from tests.depth import left, only_whole

FIRST = datetime.date(2026, 9, 7)
NOW = datetime.datetime(2026, 11, 20, 9, 30)
CLASSES = ("7M", "8K")
SEATS = [f"{row}{n}" for row in "ABCDE" for n in range(1, 7)]
TOPICS = ("ratio.share", "fractions.order", "own.topic")
TIERS = ("support", "core", "challenge")
DEPARTMENT = 'school = "Larkhythe School"\n' + "".join(
    f"""
[[classes]]
name = "{name}"
year = 8
title = "A starter"
topics = ["ratio.share"]
seats = ["A1-A6", "B1-B6", "C1-C6", "D1-D6", "E1-E6"]
"""
    for name in CLASSES
)
UNTIL = ("--until", "2026-11-25")
ASKED = {
    "a class": ("report", "8K", *UNTIL),
    "a class on paper": ("report", "8K", "--pdf", "report.pdf", "--csv", "tables", *UNTIL),
    "a part of the time": ("report", "7M", "--since", "2026-10-01", *UNTIL),
    "a topic": ("report", "8K", "--topic", "ratio.share", *UNTIL),
    "a topic of all": ("report", "--topic", "fractions.order", *UNTIL),
    "the department": ("report", "--csv", "tables", *UNTIL),
    "questions": ("report", "--items", "--csv", "tables", *UNTIL),
    "questions of a class": ("report", "7M", "--items", *UNTIL),
    "one starter": ("report", "8K", "--lesson", "2026-09-08"),
    "a decision": ("decide", "8K", "--pairs"),
    "an earlier decision": ("decide", "7M", "--date", "2026-09-07"),
    "everything": ("export", "--to", "all", "--replace"),
}
MOVED = ("move", "--list", "sets.csv", "--date", "2026-11-23")
SETS = "8K/A1,7M/A1\n7M/A1,8K/A1\n8K/B2,away\n7M/C3,8K/B2\n"
FORGOTTEN = (
    ("forget", "--seat", "8K/A3", "--yes"),
    ("forget", "--before", "2026-09-20", "--yes"),
    ("forget", "--class", "7M", "--yes"),
)


def things(rng, asked, depth=None):
    """Return what might be recorded of a lesson: any depth, own views and clarity or not.

    Some starters stop a question early.
    """
    numbers = ()
    if depth is None and rng.random() < 0.3:
        asked -= 1
        numbers = tuple(range(1, asked + 1))
    there = [seat for seat in SEATS if rng.random() < 0.9]
    right = {s: {n: bool(rng.random() < 0.6) for n in range(1, asked + 1)} for s in there}
    marks = {s: sum(row.values()) for s, row in right.items()}
    ends = ((0, asked // 2), (asked // 2 + 1, asked))
    counts = [sum(low <= n <= high for n in marks.values()) for low, high in ends]
    bands = (("R", "Rebuild", *ends[0], counts[0]), ("E", "Extend", *ends[1], counts[1]))
    slips = {(s, n): "adds" for s, row in right.items() for n in row if rng.random() < 0.1}
    slips = {key: name for key, name in slips.items() if not right[key[0]][key[1]]}
    tallies = {n: (sum(row[n] for row in right.values()), len(there)) for n in range(1, asked + 1)}
    found = [
        (
            Answers(right, slips),
            Answers(right, {}),
            Scores(marks, numbers),
            Questions(tallies),
            Bands(tuple(BandCount(*band) for band in bands), numbers),
        )[rng.integers(5) if depth is None else depth]
    ]
    if rng.random() < 0.7:
        levels = ("not sure", "partly", "sure")
        views = {s: levels[min(n // 2, 2)] for s, n in marks.items()}
        found.append(OwnViews(views, {}) if rng.random() < 0.8 else OwnViews({}, {"sure": 9}))
    if rng.random() < 0.5:
        found.append(Clarity(int(rng.integers(9)), None, "½ of “it”"))
    return found


def fill(store, seed):
    """Record a term of two classes; the same seed always gives the same records."""
    rng = np.random.default_rng(seed)
    for step in range(14):
        for name in CLASSES:
            day = FIRST + datetime.timedelta(days=5 * step + CLASSES.index(name))
            asked = []
            for n in range(1, 5):
                topic, tier = TOPICS[rng.integers(3)], TIERS[rng.integers(3)]
                where = f"{topic}/{tier}/{rng.integers(4)}"
                asked.append(QuestionFacts(n, where, topic, tier, f"Share £{n}?"))
            facts = LessonFacts(name, day, 4, "Über den Garten", "", tuple(asked))
            for what in things(rng, 4, None if step else 0):
                record(store, facts, what, now=NOW)
            if step and rng.random() < 0.3:
                record(store, facts, things(rng, 4)[0], replace=True, now=NOW)


@pytest.fixture
def answer(capsysbinary, monkeypatch):
    """Run a command on the store at a place; return its status, its words and its files."""
    # Statements are compiled once for each place, not for each command: a store that closes
    # leaves its engine without a connection, so that the next begins as with a new one.
    monkeypatch.setattr(store_module, "_engine", cache(store_module._engine))

    def call(folder, place, words):
        monkeypatch.chdir(folder)
        monkeypatch.setenv("ITEMBANK_STORE", place)
        with pytest.raises(SystemExit) as end:
            run(list(words))
        said = capsysbinary.readouterr()
        files = {
            str(path.relative_to(folder)): path.read_bytes()
            for path in sorted(folder.rglob("*"))
            if path.is_file() and path.suffix in (".csv", ".pdf")
        }
        return end.value.code or 0, said.out, said.err, files

    return call


@only_whole
@pytest.mark.parametrize("seed", [0, left(1)])
def test_every_report_is_the_same_on_both(shared, server, tmp_path, answer, seed):
    places = {}
    for name in ("file", "server"):
        folder = tmp_path / name
        folder.mkdir()
        (folder / "department.toml").write_text(DEPARTMENT)
        (folder / "sets.csv").write_text(SETS)
        places[folder] = server.url if name == "server" else str(folder / "results.sqlite3")
        with open_store(places[folder]) as store:
            fill(store, seed)
    for forgotten in ((), MOVED, *FORGOTTEN):
        if forgotten:
            one, other = (answer(folder, place, forgotten) for folder, place in places.items())
            # 1: reports made before hold sums that nothing can be taken out of, and are named.
            assert (one[0], one[3]) == (other[0], other[3]), forgotten
            assert one[0] in (0, 1)
        for what, words in ASKED.items():
            one, other = (answer(folder, place, words) for folder, place in places.items())
            assert one == other, (what, forgotten)
            if not forgotten:
                assert one[0] == 0, (what, one[2])
