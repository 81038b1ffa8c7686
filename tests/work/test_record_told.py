"""What is recorded goes to the lesson that is meant, and a refusal says what is so."""

import datetime
import json
from dataclasses import replace

import pytest

from itembank.errors import ItembankError
from itembank.planning.department.department import read_department
from itembank.records.entries.recording import RecordedAlready
from itembank.records.results.lessons import lessons
from itembank.work.lesson.cover import CoverRequest, cover
from itembank.work.lesson.decide import decide
from itembank.work.lesson.depths import read_clarity
from itembank.work.lesson.move import move
from itembank.work.lesson.record import record
from itembank.work.lesson.results_store import open_results
from itembank.work.report.pupil_page import pupil_page
from itembank.work.report.seat_list import seat_list
from tests.work.test_lesson import TUESDAY, said
from tests.work.test_lesson import department as department


@pytest.fixture
def twice(department):
    """Return the department with two lessons of its class on Tuesdays, and a pack for each."""
    path = department.folder / "department.toml"
    path.write_text(path.read_text().replace('"Tue 3"', '"Tue 3", "Tue 5"'))
    packs = department.folder / "output"
    for period in "35":
        folder = packs / f"8K-{TUESDAY}-{period}"
        folder.mkdir()
        (folder / "pack.json").write_bytes((packs / f"8K-{TUESDAY}" / "pack.json").read_bytes())
    return read_department(department.folder, None)


def periods(department):
    with open_results(department) as store, store.reading() as connection:
        return [lesson.period for lesson in lessons(connection, "8K", TUESDAY, TUESDAY)]


def test_a_pack_that_is_named_is_of_the_lesson_it_was_made_for(twice):
    pack = twice.folder / "output" / f"8K-{TUESDAY}-5"
    record(twice, said(twice, pack=pack, bands=(1, 2, 3)))
    record(twice, said(twice, pack=pack / "pack.json", bands=(1, 2, 4), replace=True))
    assert periods(twice) == ["5"]
    record(twice, said(twice, pack=pack, period="3", bands=(1, 2, 3)))
    assert periods(twice) == ["3", "5"]


def test_of_two_lessons_without_a_pack_one_has_to_be_named(twice):
    with pytest.raises(ItembankError) as caught:
        record(twice, said(twice, out_of=8, bands=(1, 2, 3), date=TUESDAY))
    assert caught.value.about["periods"] == ("3", "5")
    record(twice, said(twice, out_of=8, bands=(1, 2, 3), date=TUESDAY, period="5"))
    assert periods(twice) == ["5"]


def test_a_pack_for_a_day_to_come_has_no_results_yet(department):
    pack = department.folder / "output" / f"8K-{TUESDAY}" / "pack.json"
    data = json.loads(pack.read_text())
    later = TUESDAY + datetime.timedelta(days=7)
    data["lesson"]["date"] = str(later)
    folder = department.folder / "output" / f"8K-{later}"
    folder.mkdir()
    (folder / "pack.json").write_text(json.dumps(data))
    with pytest.raises(ItembankError, match="has not come yet"):
        record(department, said(department, pack=folder, bands=(1, 2, 3)))


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ({"right": "0 0 0 0"}, "how many pupils"),
        ({"right": "0 0 0 0", "pupils": 0}, "no pupils"),
        ({"right": "1 1 1 1", "pupils": 11}, "11 pupils, but only 10 sit"),
    ],
)
def test_a_number_of_pupils_that_cannot_be_is_told_as_it_is(department, asked, told):
    if "pupils" not in asked:
        path = department.folder / "department.toml"
        path.write_text(path.read_text().replace('seats = ["A1-A6", "B1-B4"]\n', ""))
        department = read_department(department.folder, None)
    with pytest.raises(ItembankError, match=told):
        record(department, said(department, **asked))


def test_fewer_than_none_cannot_have_asked():
    with pytest.raises(ItembankError, match="Fewer than no pupils"):
        read_clarity(-1, None, 0)


def test_seats_listed_in_small_letters_are_those_of_the_results(department):
    path = department.folder / "department.toml"
    path.write_text(path.read_text().replace('["A1-A6", "B1-B4"]', '["a1", "a2"]'))
    department = read_department(department.folder, None)
    sheet = department.folder / "scores.csv"
    sheet.write_text("seat,score\na1,3\n")
    record(department, said(department, sheet=sheet))
    assert seat_list(department, "8K").unknown == ("A2",)
    assert pupil_page(department, "8K", "a2").found.starters == ()


@pytest.mark.parametrize("text", ["from;to\n8K/A1;8L/A2\n", "\n8K/A1\t8L/A2\n"])
def test_a_list_of_moves_is_read_as_spreadsheets_save_it(department, text):
    sets = department.folder / "moves.csv"
    sets.write_text(text)
    (made,) = move(department, sets=sets, date=TUESDAY).moves
    assert (made.from_seat, made.to_class, made.to_seat) == ("A1", "8L", "A2")


def test_the_only_lesson_of_a_day_is_one_whether_its_period_is_said_or_not(department):
    cover(department, CoverRequest(TUESDAY, "8K", topics=(("ratio.share", 3),)))
    first = record(department, said(department, bands=(1, 2, 3), date=TUESDAY, period="3"))
    assert first.decision.facts.out_of == 3  # of what was asked instead
    with pytest.raises(RecordedAlready):
        record(department, said(department, bands=(1, 2, 3), date=TUESDAY))
    assert periods(department) == [""]
    assert decide(department, "8K", TUESDAY, "3").decision.pupils == 6
    right = said(department, correct=("A1 6",), date=TUESDAY, period="3")
    with pytest.raises(ItembankError) as caught:
        record(department, right)
    assert caught.value.matter != "nothing recorded"


def test_the_only_lesson_of_a_day_is_not_that_of_another_period(department):
    monday = TUESDAY - datetime.timedelta(days=1)
    record(department, said(department, bands=(3, 2, 1), out_of=8, date=monday))
    record(department, said(department, bands=(1, 2, 3), date=TUESDAY))
    assert decide(department, "8K", period="1").decision.facts.date == monday
    for wrong in (
        said(department, correct=("A1 6",), date=TUESDAY, period="5"),
        said(department, correct=("A1 6",), period="5"),
    ):
        with pytest.raises(ItembankError, match="Nothing is recorded for 8K") as caught:
            record(department, wrong)
        assert caught.value.matter == "nothing recorded"
        with pytest.raises(ItembankError, match="Nothing is recorded for 8K"):
            decide(department, "8K", wrong.date, "5")


def test_the_period_of_a_parallel_class_is_not_that_of_the_class(department):
    path = department.folder / "department.toml"
    path.write_text(path.read_text().replace('"8L"', '"8L"\nlessons = ["Tue 4"]'))
    packs = department.folder / "output"
    (packs / f"8K-{TUESDAY}").rename(packs / f"8K-{TUESDAY}-5")
    asked = said(department, pack=packs / f"8K-{TUESDAY}-5", same_as="8K", bands=(1, 2, 3))
    recorded = record(read_department(department.folder, None), replace(asked, class_name="8L"))
    assert (recorded.decision.facts.class_name, recorded.decision.facts.period) == ("8L", "")


def test_a_lesson_that_was_recorded_with_its_period_keeps_it(twice):
    for period in "35":
        record(twice, said(twice, out_of=8, bands=(1, 2, 3), date=TUESDAY, period=period))
    path = twice.folder / "department.toml"
    path.write_text(path.read_text().replace(', "Tue 5"', ""))
    once = read_department(twice.folder, None)
    more = said(once, out_of=8, bands=(2, 2, 3), date=TUESDAY, period="3", replace=True)
    assert record(once, more).decision.facts.period == "3"
    assert periods(once) == ["3", "5"]
    for out_of in (8, 6):
        same = said(once, out_of=out_of, bands=(2, 2, 4), date=TUESDAY, replace=True)
        assert record(once, same).decision.facts.period == "3"
    assert periods(once) == ["3", "5"]
