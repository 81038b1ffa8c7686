"""What is done after a lesson, without a screen: plain values in and out, questions as data."""

import dataclasses
import datetime
import json
from pathlib import Path

import pytest

from itembank.errors import ItembankError, SeveralErrors
from itembank.planning.department.department import read_department
from itembank.records.entries.entries import OwnViews
from itembank.work.lesson.cancel import cancel
from itembank.work.lesson.cover import CoverRequest, cover
from itembank.work.lesson.decide import decide, write_groups
from itembank.work.lesson.export import export
from itembank.work.lesson.forget import finish_forgetting, forget, to_forget, whom_of
from itembank.work.lesson.move import move
from itembank.work.lesson.record import Done, find_starter, record
from itembank.work.lesson.record_request import RecordRequest
from itembank.work.lesson.results_store import copies_of_results
from itembank.work.lesson.undo import undo
from itembank.work.lesson.unite import unite
from itembank.work.report.reports import ReportRequest, report, write_pages, write_tables

TUESDAY = datetime.date(2026, 11, 24)
SUNDAY = datetime.date(2026, 11, 22)
DEPARTMENT = """
school = "Larkhythe School"
[[classes]]
name = "8K"
year = 8
seats = ["A1-A6", "B1-B4"]
lessons = ["Mon 1", "Tue 3"]
topics = ["ratio.share"]
[[classes]]
name = "8L"
year = 8
seats = ["A1-A6"]
topics = ["ratio.share"]
"""
CALENDAR = '[[terms]]\nname = "autumn"\nfirst = 2026-09-01\nlast = 2026-12-18\n'


@pytest.fixture
def department(tmp_path, monkeypatch):
    """Return a department with a pack of four questions for a Tuesday."""
    monkeypatch.setenv("ITEMBANK_TODAY", "2026-11-26")
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    (tmp_path / "department.toml").write_text(DEPARTMENT)
    (tmp_path / "calendar.toml").write_text(CALENDAR)
    folder = tmp_path / "output" / f"8K-{TUESDAY}"
    folder.mkdir(parents=True)
    items = [
        {
            "address": f"ratio.share/core/{n}",
            "topic": "ratio.share",
            "tier": "core",
            "prompt": [{"kind": "text", "text": f"Share £{n}."}],
            "marks": 1,
        }
        for n in range(1, 5)
    ]
    ends = [("R", "Rebuild", 0, 2), ("S", "Secure", 3, 3), ("E", "Extend", 4, 4)]
    pack = {
        "lesson": {"class_name": "8K", "date": str(TUESDAY), "title": "Sharing"},
        "versions": [{"letter": "A", "items": items}],
        "bands": [
            {"letter": letter, "name": name, "lowest": low, "highest": high}
            for letter, name, low, high in ends
        ],
    }
    (folder / "pack.json").write_text(json.dumps(pack))
    return read_department(tmp_path, None)


def said(department, **fields):
    return RecordRequest(class_name="8k", packs=department.folder / "output", **fields)


def test_hands_as_numbers_or_as_text_are_recorded_and_decided(department):
    for hands in ((5, 3, 2), "5 3 2"):
        recorded = record(department, said(department, bands=hands, replace=True))
        assert recorded.done is Done.RECORDED
        assert recorded.decision.facts.date == TUESDAY
        assert [group.pupils for group in recorded.decision.groups] == [5, 3, 2]
        assert recorded.remarks == ()
    assert decide(department, "8K").decision == recorded.decision


def test_each_fault_names_its_field_and_no_option(department):
    request = said(
        department, bands=(5, 3), pupils=4, own_view="A1 perhaps", unclear=99, note="Jane Smith"
    )
    with pytest.raises(SeveralErrors) as caught:
        record(department, request)
    assert [error.field for error in caught.value.errors] == [
        "bands",
        "pupils",
        "own_view",
        "unclear",
    ]
    assert "--" not in str(caught.value)
    with pytest.raises(ItembankError, match="Nothing is recorded"):
        decide(department, "8K")


def test_what_may_be_replaced_or_joined_is_a_question_that_the_caller_answers(department):
    request = said(department, right=(3, 2, 1, 0), pupils=5)
    record(department, request)
    with pytest.raises(ItembankError) as caught:
        record(department, request)
    assert caught.value.matter == "recorded already"
    added = record(department, dataclasses.replace(request, add=True))
    assert added.done is Done.ADDED
    assert added.decision.questions[0].right == 6
    replaced = record(department, dataclasses.replace(request, replace=True))
    assert replaced.decision.questions[0].right == 3


def test_a_day_without_a_lesson_is_a_question(department):
    request = said(department, date=SUNDAY, out_of=8, bands=(5, 3, 2))
    with pytest.raises(ItembankError) as caught:
        record(department, request)
    assert caught.value.matter == "no lesson that day"
    assert "no lesson on Sunday 22 November 2026" in caught.value.about["why"]
    sure = dataclasses.replace(request, any_day=True)
    assert record(department, sure).decision.facts.date == SUNDAY


def test_a_request_that_says_nothing_yet_can_be_asked_about(department):
    with pytest.raises(ItembankError) as caught:
        record(department, said(department))
    assert caught.value.matter == "nothing to record"
    starter = find_starter(department, said(department))
    assert [name for _, name, _, _ in starter.bands] == ["Rebuild", "Secure", "Extend"]
    assert starter.facts.out_of == 4


def test_what_was_guessed_is_a_remark(department):
    recorded = record(department, said(department, right="9 8 7"))
    assert [remark.matter for remark in recorded.remarks] == ["asked as counted", "pupils as seats"]
    assert not any("--" in str(remark) for remark in recorded.remarks)


@pytest.mark.parametrize("asked", [2, [1, 2], "2", "1-2", "1 2"])
def test_the_questions_asked_as_a_number_a_list_or_text(department, asked):
    recorded = record(department, said(department, right=(3, 2), pupils=5, asked=asked))
    assert recorded.decision.not_asked == (3, 4)


def test_scores_out_of_other_marks_say_what_was_asked(department, tmp_path):
    sheet = tmp_path / "sheet.csv"
    sheet.write_text("seat,score\nA1,1/2\nA2,2/2\n")
    with pytest.raises(ItembankError) as caught:
        record(department, said(department, sheet=sheet))
    (faults,) = caught.value.errors
    assert {fault.matter for fault in faults.faults} == {"out of other marks"}
    recorded = record(department, said(department, sheet=sheet, asked=2))
    assert recorded.decision.out_of == 2


def test_single_seats_are_put_right_as_data_or_text(department, tmp_path):
    sheet = tmp_path / "sheet.csv"
    sheet.write_text("seat,score\nA1,1\nA2,4\n")
    views = OwnViews({"A1": "sure"}, {})
    record(department, said(department, sheet=sheet, own_view=views))
    for change in (("A1", None, 3), "A2 2"):
        corrected = record(department, said(department, correct=(change,)))
    assert corrected.done is Done.CORRECTED
    assert dict(corrected.decision.scores) == {"A1": 3, "A2": 2}


def test_cover_and_cancelled_lessons(department):
    request = CoverRequest(TUESDAY, "8K", topics=(("ratio.share", 2), "fractions.order 3"))
    covered = cover(department, request)
    assert covered.counts == {"ratio.share": 2, "fractions.order": 3}
    with pytest.raises(ItembankError) as caught:
        cover(department, request)
    assert caught.value.matter == "noted already"
    with pytest.raises(ItembankError) as caught:
        cancel(department, TUESDAY, "8K", why="x" * 99)
    assert caught.value.field == "why"
    monday = datetime.date(2026, 11, 23)
    assert cancel(department, monday, "8K", why="school trip").period == ""
    with pytest.raises(ItembankError) as caught:
        record(department, said(department, date=monday, out_of=4, bands=(1, 1, 1)))
    assert caught.value.matter == "had no lesson"


def test_an_older_undo_is_a_question_about_what_it_would_take_back(department):
    record(department, said(department, bands=(5, 3, 2)))
    record(department, said(department, unclear=3))
    assert undo(department, "8K").last.kinds == ("clarity",)
    with pytest.raises(ItembankError) as caught:
        undo(department, "8K")
    last = caught.value.about["last"]
    assert last.kinds == ("bands",)
    record(department, said(department, unclear=4))
    with pytest.raises(ItembankError, match="Something else was recorded"):
        undo(department, "8K", expected=last)
    assert undo(department, "8K", sure=True).last.kinds == ("clarity",)
    assert undo(department, "8K", expected=last).last.kinds == ("bands",)


def test_a_list_of_moves_is_made_whole_or_not_at_all(department):
    with pytest.raises(SeveralErrors) as caught:
        move(department, [("8K/A1", "8L/A1"), ("8K/A2", "8L/Q9")], date=TUESDAY)
    assert str(caught.value).endswith("Nobody was moved.")
    moved = move(department, [("8K/A1", "8L/A1"), ("8K/A2", "away")], date=TUESDAY)
    assert (len(moved.moves), moved.recorded, moved.classes) == (2, 0, ("8L",))


def test_forgetting_is_shown_before_it_is_done(department, tmp_path):
    sheet = tmp_path / "sheet.csv"
    sheet.write_text("seat,score\nA1,1\nA2,4\n")
    record(department, said(department, sheet=sheet))
    export(department, tmp_path / "all")
    whom = whom_of("8K/a1")
    what = to_forget(department, whom)
    assert (what.counted, what.begun) == ("1 record", False)
    now = forget(department, whom)
    assert now.forgotten.done
    assert now.listed == "A1"
    assert "A1" not in (tmp_path / "all" / "scores.csv").read_text()
    assert finish_forgetting(department) == ()
    assert to_forget(department, whom).count == 0


def test_a_seat_that_the_class_does_not_list_is_never_said_to_stand_in_it(department):
    record(department, said(department, bands="1 1 1"))
    now = forget(department, whom_of("8K/A33"))
    assert now.listed == ""
    assert now.unheard == "8K lists no seat A33, and nothing was kept of one."
    assert forget(department, whom_of("8K/A2")).unheard == ""  # listed, and nothing of it is kept
    unknown = forget(department, whom_of("7Q/A2"))
    assert (unknown.listed, unknown.unheard) == (
        "",
        "There is no class 7Q, and nothing was kept of one.",
    )
    assert forget(department, whom_of(class_name="8K")).listed == "8K"


def test_a_copy_is_remarked_on_and_brought_in(department):
    record(department, said(department, bands=(5, 3, 2)))
    results = department.folder / "results.sqlite3"
    copy = results.with_name("results (copy).sqlite3")
    copy.write_bytes(results.read_bytes())
    (remark,) = copies_of_results(department.folder)
    assert remark.matter == "copy of results"
    assert "itembank" not in str(remark)
    assert unite(department, copy).united.entries == 0


def test_reports_are_data_and_are_written_on_request(department, tmp_path):
    sheet = tmp_path / "sheet.csv"
    sheet.write_text("seat,1,2,3,4\nA1,1,0,1,1\nA2,1,1,0,1\n")
    record(department, said(department, sheet=sheet))
    found = report(department, ReportRequest("8K"))
    assert found.found.class_name == "8K"
    files = write_tables(department, found, tmp_path / "tables")
    assert set(files) == {path.name for path in (tmp_path / "tables").iterdir()}
    write_pages(department, found, tmp_path / "report.pdf")
    assert (tmp_path / "report.pdf").read_bytes().startswith(b"%PDF-")
    write_groups(department, decide(department, "8K"), tmp_path / "groups.pdf")
    one_lesson = report(department, ReportRequest("8K", lesson=TUESDAY))
    assert [question.number for question in one_lesson.found.asked] == [1, 2, 3, 4]
    with pytest.raises(ItembankError) as caught:
        report(department, ReportRequest("8K", since=datetime.date(2026, 12, 24)))
    assert caught.value.field == "since"


def test_nothing_here_prints_or_asks(department, capsys, monkeypatch):
    monkeypatch.setattr("builtins.input", lambda _: pytest.fail("asked"))
    record(department, said(department, bands=(5, 3, 2)))
    undo(department, "8K")
    assert capsys.readouterr() == ("", "")
    assert not list(Path.cwd().glob("results*"))
