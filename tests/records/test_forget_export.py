"""Forgetting leaves no trace, in the store or in what it exported, and touches nobody else."""

import csv

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.records.entries.entries import Answers, OwnViews, Questions, Scores
from itembank.records.entries.recording import record
from itembank.records.entries.undoing import undo
from itembank.records.exporting import export_all, queries, remember_export
from itembank.records.forget.forgetting import count_rows, forget
from itembank.records.pupils.whom import Whom
from itembank.records.store.store import open_store
from tests.depth import cases

from .stores import DAY, dump, facts

# Codes that occur nowhere else in a file, so that its bytes can be searched for them.
GONE, STAYS = "ZQ7", "XJ4"
A_DAY = DAY.resolution


def fill(store, extra=()):
    """Record for two classes, with entries replaced and taken back as well as those that count."""
    right = {
        seat: {n: (n + place) % 3 > 0 for n in range(1, 5)}
        for place, seat in enumerate([GONE, STAYS, *extra])
    }
    record(store, facts(), Scores({GONE: 3, STAYS: 1}))
    record(store, facts(), Answers(right, {(GONE, 1): "ratio.adds"}), replace=True)
    record(store, facts(), OwnViews({GONE: "sure", STAYS: "partly"}, {}))
    record(store, facts(DAY - 7 * A_DAY), Answers(right, {}))
    undo(store, "8K", DAY - 7 * A_DAY)
    record(store, facts(DAY - 14 * A_DAY), Questions({1: (5, 9)}))
    record(store, facts(class_name="9S"), Scores({GONE: 2, STAYS: 4}))


def rows_of(path):
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


@given(extra=st.lists(st.sampled_from(["B1", "C2", "D3", "E4"]), unique=True))
@settings(max_examples=cases(4, 8), deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_no_byte_of_a_forgotten_seat_is_left(tmp_path_factory, extra):
    folder = tmp_path_factory.mktemp("forget")
    path = folder / "results.sqlite3"
    with open_store(str(path)) as store:
        fill(store, extra)
        export_all(store, folder / "out")
        assert GONE.encode() in path.read_bytes()
        for name in ("8K", "9S"):
            forget(store, Whom(name, GONE))
    files = [path, *folder.rglob("*.csv")]
    assert len(files) == 1 + len(queries())
    for file in files:
        assert GONE.encode() not in file.read_bytes(), file
    assert STAYS.encode() in path.read_bytes()


def test_a_seat_of_one_class_is_not_that_of_another(store, tmp_path):
    fill(store)
    export_all(store, tmp_path / "out")
    forget(store, Whom("8k", GONE.lower()))
    assert [row[1] for row in dump(store)["score"] if row[1] == GONE] == [GONE]
    left = [row for row in rows_of(tmp_path / "out" / "scores.csv") if row["seat"] == GONE]
    assert [row["class"] for row in left] == ["9S"]


def test_counts_that_came_from_answers_are_counted_again(store, tmp_path):
    fill(store)
    export_all(store, tmp_path / "out")
    forget(store, Whom("8K", GONE))
    rows = rows_of(tmp_path / "out" / "right-answers.csv")
    of_answers = [row for row in rows if row["date"] == str(DAY)]
    assert {row["out_of"] for row in of_answers} == {"1"}
    # Seat XJ4 has (n + 1) % 3 > 0 right: questions 1, 3 and 4.
    assert [row["right"] for row in of_answers] == ["1", "0", "1", "1"]
    by_hand = [row for row in rows if row["date"] == str(DAY - 14 * A_DAY)]
    assert [(row["right"], row["out_of"]) for row in by_hand] == [("5", "9")]


def test_forgetting_the_only_seat_does_not_bring_back_what_was_replaced(store):
    record(store, facts(), Questions({1: (5, 9)}))
    record(store, facts(), Scores({GONE: 3}), replace=True)
    forget(store, Whom("8K", GONE))
    live = [row for row in dump(store)["entry"] if row[3] is None]
    assert [row[2] for row in live] == ["scores"]


@pytest.mark.parametrize(
    ("whom", "classes", "days"),
    [
        (Whom("8K"), {"9S"}, {DAY}),
        (Whom(before=DAY), {"8K", "9S"}, {DAY}),
        (Whom("8K", before=DAY - 7 * A_DAY), {"8K", "9S"}, {DAY, DAY - 7 * A_DAY}),
    ],
)
def test_classes_and_days_go_whole(store, tmp_path, whom, classes, days):
    fill(store)
    export_all(store, tmp_path / "out")
    forget(store, whom)
    lessons = dump(store)["lesson"]
    assert {row[1] for row in lessons} == classes
    assert {row[2] for row in lessons} == days
    entries = {row[0] for row in dump(store)["entry"]}
    for table in ("score", "misconception", "tally", "own_view"):
        assert {row[0] for row in dump(store)[table]} <= entries
    for path in (tmp_path / "out").iterdir():
        assert {row["class"] for row in rows_of(path)} <= classes, path
        assert {row["date"] for row in rows_of(path)} <= {str(day) for day in days}, path


def test_exports_that_moved_or_changed_are_told(store, tmp_path):
    fill(store)
    out = tmp_path / "out"
    export_all(store, out)
    (out / "scores.csv").rename(tmp_path / "mine.csv")
    (out / "answers.csv").write_text("a spreadsheet,was here\n1,2\n")
    report = tmp_path / "groups.pdf"
    report.write_bytes(b"%PDF")
    with store.writing() as connection:
        remember_export(connection, store.folder, report)
    done = forget(store, Whom("8K", GONE))
    assert done.gone == [out / "scores.csv"]
    assert {path for path, _ in done.left} == {out / "answers.csv", report}
    assert (out / "answers.csv").read_text().startswith("a spreadsheet")


def test_forgetting_again_finishes_what_was_broken_off(store, tmp_path, monkeypatch):
    fill(store)
    export_all(store, tmp_path / "out")

    def broken(*_):
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr("itembank.records.forget.exported_files.clean_table", broken)
        with pytest.raises(KeyboardInterrupt):
            forget(store, Whom("8K", GONE))
    assert count_rows(store, Whom("8K", GONE)) == 0
    done = forget(store, Whom("8K", GONE))
    assert tmp_path / "out" / "answers.csv" in done.rewritten


def test_an_export_holds_every_row_and_overwrites_nothing(store, tmp_path):
    fill(store)
    counts = export_all(store, tmp_path / "out")
    found = dump(store)
    tables = {
        "lessons.csv": "lesson",
        "questions.csv": "question",
        "entries.csv": "entry",
        "bands.csv": "band_count",
        "right-answers.csv": "tally",
        "scores.csv": "score",
        "own-views.csv": "own_view",
        "clarity.csv": "clarity",
        "remarks.csv": "remark",
    }
    expected = {name: len(found[table]) for name, table in tables.items()}
    expected["moves.csv"] = 0  # nobody moved
    expected["answers.csv"] = sum(len(row[-1].replace("-", "")) for row in found["score"])
    assert counts == expected
    assert {name: len(rows_of(tmp_path / "out" / name)) for name in counts} == counts
    states = [row["state"] for row in rows_of(tmp_path / "out" / "entries.csv")]
    assert sorted(set(states)) == ["counts", "replaced", "taken back"]
    with pytest.raises(ItembankError, match="already") as caught:
        export_all(store, tmp_path / "out")
    assert caught.value.matter == "export there"
    export_all(store, tmp_path / "out", replace=True)
    assert len(dump(store)["exported"]) == len(counts)


def test_exports_are_found_when_the_whole_folder_has_moved(tmp_path):
    old, new = tmp_path / "old", tmp_path / "new"
    old.mkdir()
    with open_store(str(old / "results.sqlite3")) as store:
        fill(store)
        export_all(store, old / "out")
        export_all(store, tmp_path / "elsewhere")
    old.rename(new)
    with open_store(str(new / "results.sqlite3")) as store:
        done = forget(store, Whom("8K", GONE))
    assert done.gone == []
    for folder in (new / "out", tmp_path / "elsewhere"):
        assert folder / "scores.csv" in done.rewritten
        assert {row["class"] for row in rows_of(folder / "scores.csv") if row["seat"] == GONE} == {
            "9S"
        }


def test_a_store_has_no_empty_pages_after_forgetting(store):
    """Pages that held what is forgotten would stay in the file, if only blank."""
    for week in range(40):
        right = {f"A{n}": dict.fromkeys(range(1, 9), True) for n in range(1, 31)}
        record(store, facts(DAY - 7 * week * A_DAY, questions=8), Answers(right, {}))

    def pages():
        with store.reading() as connection:
            names = ("page_count", "freelist_count")
            return [connection.exec_driver_sql(f"PRAGMA {name}").scalar() for name in names]

    before, _ = pages()
    forget(store, Whom(before=DAY))
    after, empty = pages()
    assert empty == 0
    assert after < before


@pytest.mark.parametrize("wrong", [{}, {"seat": "A3"}])
def test_what_is_not_said_is_not_forgotten(wrong):
    with pytest.raises(ItembankError):
        Whom(**wrong)
