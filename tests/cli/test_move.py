"""A pupil moves, a year group changes sets: history follows the seat that moved."""

import datetime
import re
import sqlite3

import pytest

from itembank.planning.bands.bands import default_scheme
from itembank.records.entries.entries import Answers, LessonFacts, QuestionFacts, Scores
from itembank.records.entries.recording import record
from itembank.records.reports.class_report import class_report
from itembank.records.reports.item_report import item_report
from itembank.records.results.results import class_history, class_results
from itembank.records.results.scope import Scope
from itembank.records.store.store import open_store

pytestmark = pytest.mark.usefixtures("pages_outlined")

DAY = datetime.date
FIRST, SECOND, THIRD = DAY(2026, 11, 2), DAY(2026, 11, 9), DAY(2026, 11, 16)
DEPARTMENT = """
school = "Larkhythe School"
[[classes]]
name = "8K"
year = 8
seats = ["A1-A6"]
topics = ["ratio.share"]
[[classes]]
name = "8L"
year = 8
seats = ["A1-A6", "B1-B2"]
topics = ["ratio.share"]
"""


@pytest.fixture
def home(tmp_path, monkeypatch):
    (tmp_path / "department.toml").write_text(DEPARTMENT)
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return tmp_path


def facts(name, date, topic):
    questions = tuple(
        QuestionFacts(n, f"{topic}/core/{n}", topic, "core", f"question {n}") for n in (1, 2)
    )
    return LessonFacts(name, date, 2, "Starter", "", questions)


def tell(home, name, date, topic, marks, scores=False):
    """Record marks out of 2 by seat, as answers or as scores."""
    with open_store(str(home / "results.sqlite3")) as store:
        what = Answers({seat: {1: n > 0, 2: n > 1} for seat, n in marks.items()}, {})
        record(store, facts(name, date, topic), Scores(marks) if scores else what)


def counts(home, name, before=None):
    with open_store(str(home / "results.sqlite3")) as store, store.reading() as connection:
        found = {}
        for topic in class_results(connection, name, before).topics:
            right, out_of = found.get(topic.topic, (0, 0))
            found[topic.topic] = (round(right + topic.right, 6), out_of + topic.out_of)
        return found


def dump(home):
    with sqlite3.connect(home / "results.sqlite3") as connection:
        return list(connection.iterdump())


@pytest.fixture
def told(home):
    tell(home, "8K", FIRST, "ratio.share", {"A1": 2, "A2": 1, "A3": 0})
    tell(home, "8L", FIRST, "ratio.scale", {"A1": 2, "A2": 2, "A3": 1})
    return home


def test_what_is_known_of_a_pupil_goes_with_them(said, told):
    assert counts(told, "8K") == {"ratio.share": (3, 6)}
    status, out, err = said("move", "8k/a3", "8L/B1", "--date", "2026-11-09")
    assert (status, err) == (0, "")
    assert "Moved: 8K/A3 to 8L/B1, from 9 November 2026 on." in out
    assert counts(told, "8K") == {"ratio.share": (3, 4)}
    assert counts(told, "8L") == {"ratio.scale": (5, 6), "ratio.share": (0, 2)}
    # Before the move nothing had changed, and a report up to then says so.
    assert counts(told, "8K", before=DAY(2026, 11, 9)) == {"ratio.share": (3, 6)}
    assert counts(told, "8K", before=DAY(2026, 11, 10)) == {"ratio.share": (3, 4)}
    # What one of four was asked brings nothing back to the class.
    with open_store(str(told / "results.sqlite3")) as store, store.reading() as connection:
        assert list(class_history(connection, "8L").seen) == ["ratio.scale"]
    # Who is asked to the repair group sits in the class.
    out = said("decide", "8K").out
    assert "Moved since then: A3 is now 8L/B1." in out
    assert not re.search(r"Repair group:.*A3", out)


def test_all_classes_agree_with_each_class(said, told):
    said("move", "8K/A3", "8L/B1", "--date", "2026-11-09")
    out = said("report").out
    assert re.search(r"^8K .*75 %", out, re.M)
    with open_store(str(told / "results.sqlite3")) as store, store.reading() as connection:
        for name, topics in (
            ("8K", {"ratio.share": 4}),
            ("8L", {"ratio.share": 2, "ratio.scale": 6}),
        ):
            report = class_report(connection, name, default_scheme(), FIRST, DAY(2026, 11, 28))
            assert {line.topic: line.out_of for line in report.topics} == topics
            items = item_report(connection, Scope(name, FIRST, DAY(2026, 11, 28)))
            assert {line.topic: line.out_of for line in items.generators} == topics
            assert {starter.class_name for starter in items.starters} == {name}


def test_scores_go_along_as_well(said, home):
    tell(home, "8K", FIRST, "ratio.share", {"A1": 2, "A2": 1, "A3": 0}, scores=True)
    said("move", "8K/A3", "8L/B1", "--date", "2026-11-09")
    # A score tells of no topic alone: it goes along as the score it is.
    with open_store(str(home / "results.sqlite3")) as store, store.reading() as connection:
        for name, share in (("8K", 0.75), ("8L", 0.0)):
            found = class_results(connection, name)
            assert [(topic.out_of, topic.scored) for topic in found.topics] == [(0, True)]
            assert [(scored.share, scored.marks) for scored in found.scored] == [
                (share, {"ratio.share": 2})
            ]


def test_a_change_of_sets_is_one_list(said, told):
    rows = ["from,to"] + [f"8K/A{n},8L/A{n}\n8L/A{n},8K/A{n}" for n in (1, 2, 3)]
    (told / "sets.csv").write_text("\n".join(rows) + "\n")
    found = said("move", "--list", "sets.csv", "--date", "2026-11-09")
    assert (found.status, found.err) == (0, "")
    assert "Moved: 6 pupils, from 9 November 2026 on." in found.out
    assert counts(told, "8K") == {"ratio.scale": (5, 6)}
    assert counts(told, "8L") == {"ratio.share": (3, 6)}
    # What the new class then records is its own, under the same seats.
    tell(told, "8K", THIRD, "ratio.share", {"A1": 2, "A2": 2, "A3": 2})
    assert counts(told, "8K") == {"ratio.scale": (5, 6), "ratio.share": (6, 6)}
    # Planning takes the class to have had what most of it had.
    with open_store(str(told / "results.sqlite3")) as store, store.reading() as connection:
        assert set(class_history(connection, "8K").seen) == {"ratio.scale", "ratio.share"}
    said("undo", "8K")
    assert said("undo", "8K", "--yes").out.startswith("Taken back: the moves of 6 pupils")
    assert counts(told, "8K") == {"ratio.share": (3, 6)}


@pytest.mark.parametrize("parted", [";", "\t", " , "])
def test_a_list_of_moves_is_read_as_a_spreadsheet_saves_it(said, told, parted):
    rows = (("From", "To"), ("8K/A1", "8L/B1"), ("8K/A2", "8L/B2"))
    (told / "sets.csv").write_text("\ufeff" + "".join(f"{parted.join(row)}\r\n" for row in rows))
    found = said("move", "--list", "sets.csv", "--date", "2026-11-09")
    assert (found.status, found.err) == (0, "")
    assert "Moved: 2 pupils, from 9 November 2026 on." in found.out


def test_a_pupil_who_moves_twice_and_one_who_left(said, told):
    said("move", "8K/A3", "8L/B1", "--date", "2026-11-09")
    tell(told, "8L", SECOND, "ratio.scale", {"A1": 1, "B1": 2})
    assert said("move", "8L/B1", "8K/A6", "--date", "2026-11-16").status == 0
    assert counts(told, "8K") == {"ratio.share": (3, 6), "ratio.scale": (2, 2)}
    assert counts(told, "8L") == {"ratio.scale": (6, 8)}
    assert "A3 is now A6" in said("decide", "8K", "--date", "2026-11-02").out
    assert said("move", "8K/A6", "away", "--date", "2026-11-23").status == 0
    assert counts(told, "8K") == {"ratio.share": (3, 4)}
    # Somebody new in the seat is somebody else.
    tell(told, "8K", DAY(2026, 11, 24), "ratio.share", {"A6": 2})
    assert counts(told, "8K") == {"ratio.share": (5, 6)}
    assert said("undo", "8K").status == 0
    assert "the move of 8K/A6 away" in said("undo", "8K").err


@pytest.mark.parametrize(
    ("words", "part"),
    [
        ((), "Say who moves where"),
        (("8K/A3",), "Say who moves where"),
        (("A3", "8L/B1"), "‘A3’ is not a seat of a class"),
        (("8Q/A3", "8L/B1"), "There is no class 8Q"),
        (("8K/A3", "8L/B7"), "The class has no seat B7"),
        (("8K/C9", "8L/B1"), "nothing is recorded for a seat C9 of 8K"),
        (("8K/A3", "8K/A3"), "that is the same seat"),
        (("8K/A3", "8L/A1"), "somebody else sits in 8L/A1, with results of 2 November 2026"),
        (("8K/A3", "8L/B1", "--date", "2026-11-01"), "8K/A3 has results of 2 November 2026"),
        (("8K/Sam", "8L/B1"), "Sam"),
    ],
)
def test_told_wrongly_it_is_a_plain_error_and_nothing_changes(said, told, words, part):
    before = dump(told)
    status, out, err = said("move", *words)
    assert (status, out) == (2, "")
    assert part in err
    assert "Traceback" not in err
    assert dump(told) == before


def test_every_fault_of_a_list_is_told_with_its_line(said, told):
    before = dump(told)
    (told / "sets.csv").write_text("8K/A1,8L/B1\n8K/A2,8L/B9\n8K/A9\n")
    err = said("move", "--list", "sets.csv").err
    assert "line 3: write two cells" in err
    (told / "sets.csv").write_text("8K/A1,8L/B1\n8K/A2,8L/B9\n8K/A1,8L/B2\n8K/A2,8L/B1\n")
    assert (
        "sets.csv, line 2: 8L/B9: The class has no seat B9"
        in said("move", "--list", "sets.csv").err
    )
    (told / "sets.csv").write_text("8K/A1,8L/B1\n8K/A1,8L/B2\n8K/A2,8L/B1\n")
    err = said("move", "--list", "sets.csv").err
    assert "8K/A1 is moved twice" in err
    assert "Two pupils are moved to 8L/B1" in err
    (told / "sets.csv").write_text("")
    assert "nobody is in it" in said("move", "--list", "sets.csv").err
    assert dump(told) == before


def test_a_second_move_before_the_first_is_refused(said, told):
    said("move", "8K/A3", "8L/B1", "--date", "2026-11-09")
    err = said("move", "8K/A3", "8K/A5", "--date", "2026-11-05").err
    assert "a move of 9 November 2026 is noted for 8K/A3 already" in err


def seats_left(home):
    with sqlite3.connect(home / "results.sqlite3") as connection:
        rows = connection.execute(
            "select class_name, date, seat from score join entry on entry.id = entry_id "
            "join lesson on lesson.id = lesson_id order by 1, 2, 3"
        ).fetchall()
        return {f"{name}/{seat} {day[5:]}" for name, day, seat in rows}


@pytest.mark.parametrize("seat", ["8L/B1", "8k/a3"])
def test_forgetting_a_seat_finds_all_of_its_history(said, told, seat):
    said("move", "8K/A3", "8L/B1", "--date", "2026-11-09")
    tell(told, "8L", SECOND, "ratio.scale", {"A1": 1, "B1": 2})
    said("export", "--to", "out")
    before = seats_left(told)
    out = said("forget", "--seat", seat, "--yes").out
    assert "2 records removed" in out
    assert before - seats_left(told) == {"8K/A3 11-02", "8L/B1 11-09"}
    assert not [line for line in dump(told) if 'INTO "move"' in line]
    for path in (told / "out").glob("*.csv"):
        text = path.read_text(encoding="utf-8-sig")
        assert ",B1," not in text
        assert "8K,2026-11-02,,1,A3" not in text
    assert counts(told, "8K") == {"ratio.share": (3, 4)}


def test_forgetting_leaves_whoever_had_the_seat_before_and_after(said, told):
    (told / "sets.csv").write_text("8K/A1,8L/A1\n8L/A1,8K/A1\n")
    said("move", "--list", "sets.csv", "--date", "2026-11-09")
    tell(told, "8K", SECOND, "ratio.share", {"A1": 1})
    tell(told, "8L", SECOND, "ratio.scale", {"A1": 1})
    before = seats_left(told)
    assert "2 records removed" in said("forget", "--seat", "8K/A1", "--yes").out
    assert before - seats_left(told) == {"8L/A1 11-02", "8K/A1 11-09"}
    # The other's history is still with them.
    assert counts(told, "8L") == {"ratio.share": (2, 2), "ratio.scale": (4, 6)}


def test_forgetting_a_class_does_not_send_its_pupils_back(said, told):
    said("move", "8K/A3", "8L/B1", "--date", "2026-11-09")
    said("forget", "--class", "8L", "--yes")
    assert not [line for line in dump(told) if "8L" in line]
    assert counts(told, "8K") == {"ratio.share": (3, 4)}
