"""What a forgetting says and asks is true of the seat it is about, and of no other."""

import datetime

import pytest

from itembank.records.entries.entries import LessonFacts, Scores
from itembank.records.entries.recording import record
from itembank.records.entries.undoing import undo
from itembank.records.exporting import export_all, remember_export
from itembank.records.forget.forgetting import forget
from itembank.records.forget.unfinished import begun
from itembank.records.pupils.homes import Move
from itembank.records.pupils.moves import move_seats
from itembank.records.pupils.whom import Whom
from itembank.work.lesson.forget import to_forget
from itembank.work.lesson.results_store import open_results
from tests.work.test_lesson import department as department

from .stores import DAY, dump, facts

LATER = DAY + datetime.timedelta(days=7)
A_DAY = DAY.resolution


def test_what_was_begun_of_a_seat_was_not_begun_of_that_seat_in_another_class(store, tmp_path):
    for name in ("8K", "9S"):
        record(store, facts(class_name=name), Scores({"A1": 3, "B1": 1}))
    export_all(store, tmp_path / "out")
    (tmp_path / "out" / "scores.csv").write_text("a spreadsheet,was here\n")
    assert not forget(store, Whom("8K", "A1")).done
    assert begun(store, Whom("8k", "A1"))
    assert not begun(store, Whom("9S", "A1"))
    assert not begun(store, Whom("8K", "B1"))


def test_a_copy_beside_the_results_is_told_once_for_a_pupil_with_two_seats(store, tmp_path):
    record(store, facts(), Scores({"A1": 3}))
    record(store, facts(LATER, "8L"), Scores({"B2": 3}))
    move_seats(store, [Move("8K", "A1", "8L", "B2", LATER)])
    export_all(store, tmp_path / "out")
    (tmp_path / "out" / "scores.csv").write_text("a spreadsheet,was here\n")
    copy = tmp_path / "results (1).sqlite3"
    copy.write_bytes((tmp_path / "results.sqlite3").read_bytes())
    done = forget(store, Whom("8L", "B2"))
    assert done.copies == [copy]
    assert [path.name for path, _ in done.left] == ["scores.csv"]


def renamed(store, was, name):
    from itembank.work.department.class_renamed import Renamed, _carry_results

    with store.writing() as connection:
        _carry_results(connection, Renamed(was, name))


@pytest.mark.parametrize("whom", [Whom("9K", "A1"), Whom("9K")], ids=["seat", "class"])
def test_a_table_with_the_earlier_name_of_a_class_is_not_said_to_be_clean(store, tmp_path, whom):
    record(store, facts(), Scores({"A1": 3, "B1": 1}))
    record(store, facts(class_name="7M"), Scores({"A1": 2}))
    export_all(store, tmp_path / "out")
    renamed(store, "8K", "9K")
    done = forget(store, whom)
    table = tmp_path / "out" / "scores.csv"
    assert "8K" in table.read_text()
    assert not done.done
    ((path, why),) = [(path, why) for path, why in done.left if path == table]
    assert "8K" in why
    table.unlink()
    for path, _ in done.left:
        path.unlink(missing_ok=True)
    assert forget(store, whom).done


def test_a_table_without_the_seat_under_an_earlier_name_is_clean(store, tmp_path):
    record(store, facts(), Scores({"B1": 1}))
    export_all(store, tmp_path / "out")
    renamed(store, "8K", "9K")
    record(store, facts(LATER, "9K"), Scores({"A1": 2}))
    assert forget(store, Whom("9K", "A1")).done


def test_moves_after_the_day_stay_in_the_table_as_they_stay_in_the_store(store, tmp_path):
    record(store, facts(), Scores({"A1": 3, "B1": 1}))
    move_seats(store, [Move("8K", "A1", "8K", "C1", LATER)])
    export_all(store, tmp_path / "out")
    table = tmp_path / "out" / "moves.csv"
    was = table.read_text()
    assert "C1" in was
    forget(store, Whom("8K", before=LATER))
    assert len(dump(store)["move"]) == 1
    assert table.read_text() == was


def test_a_move_that_was_taken_back_goes_from_the_table_as_it_goes_from_the_store(store, tmp_path):
    record(store, facts(), Scores({"A1": 3, "B1": 1}))
    move_seats(store, [Move("8K", "A1", "8L", "C5", LATER + A_DAY)])
    undo(store, "8K")
    move_seats(store, [Move("8K", "A1", "8L", "B2", LATER)])
    export_all(store, tmp_path / "out")
    forget(store, Whom("8L", "B2"))
    assert dump(store)["move"] == []
    assert len((tmp_path / "out" / "moves.csv").read_text().splitlines()) == 1


def test_moves_of_who_sat_there_before_stay_in_the_table_and_in_the_store(store, tmp_path):
    record(store, facts(), Scores({"A1": 3, "B1": 1}))
    move_seats(store, [Move("8K", "A1", "8L", "C5", LATER)])
    move_seats(store, [Move("8K", "B1", "8K", "A1", LATER + A_DAY)])
    export_all(store, tmp_path / "out")
    forget(store, Whom("8K", "A1"))
    assert [row[4:7] for row in dump(store)["move"]] == [("8L", "8l", "C5")]
    assert "8L" in (tmp_path / "out" / "moves.csv").read_text()
    forget(store, Whom("8L", "C5"))
    assert len((tmp_path / "out" / "moves.csv").read_text().splitlines()) == 1


def test_a_class_called_in_other_capitals_takes_its_exports_along(store, tmp_path):
    record(store, LessonFacts("8k", DAY, 4, "", "", facts().questions), Scores({"A1": 3}))
    page = tmp_path / "report-8K.html"
    page.write_text("<p>A1")
    with store.writing() as connection:
        remember_export(connection, store.folder, page, "8K")
    renamed(store, "8k", "9K")
    assert [path for path, _ in forget(store, Whom("9K")).left] == [page]


def test_what_was_recorded_since_it_was_begun_is_asked_about(department):
    with open_results(department) as store:
        record(store, facts(), Scores({"A1": 3, "B1": 1}))
        export_all(store, department.folder / "out")
        (department.folder / "out" / "scores.csv").write_text("a spreadsheet,was here\n")
        assert not forget(store, Whom("8K", "A1")).done
    assert to_forget(department, Whom("8K", "A1")).begun
    with open_results(department) as store:
        record(store, facts(LATER), Scores({"A1": 2}))
    found = to_forget(department, Whom("8K", "A1"))
    assert (found.begun, found.count) == (False, 1)
