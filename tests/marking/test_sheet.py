"""Answer sheets: what is read, what is refused, and what is counted."""

from __future__ import annotations

import pytest

from itembank.files.faults import FileFaults
from itembank.items.topics.registry import find_item
from itembank.marking.answer_sheet import AnswerRow, parse_answers, read_answers
from itembank.marking.class_sheet import mark_sheet, marks_csv
from itembank.notation import line

ITEMS = [find_item(f"fractions.add-unlike/core/{n}") for n in (3, 40)]


def test_columns_are_found_by_their_numbers():
    rows = parse_answers("Seat,Q2,question 1\nA1,5,3/4\nA2,-,\n", 2)
    assert rows == (AnswerRow("A1", ("3/4", "5")), AnswerRow("A2", ("", "")))


@pytest.mark.parametrize("text", ["seat;1;2\nA1;1,5;2\n", "seat\t1\t2\nA1\t1,5\t2\n"])
def test_other_separators_are_read(text):
    assert parse_answers(text, 2)[0].answers == ("1,5", "2")


def test_every_fault_is_told_with_its_line():
    text = "seat,1,9,1,Name\nA1,2\nSam,3\na1,4\nB1,1,2,3,4,5\n"
    with pytest.raises(FileFaults) as caught:
        parse_answers(text, 2)
    said = str(caught.value)
    for part in (
        "line 1: There is no question 9",
        "line 1: Question 1 has two columns",
        "line 1: A heading speaks of names",
        "line 3: ‘Sam’ is not a seat code",
        "line 4: Seat a1 is on line 2 already",
        "line 5: This row has 6 cells",
    ):
        assert part in said


@pytest.mark.parametrize("number", ["0", "9", "99"])
def test_answers_under_a_number_that_is_no_question(number):
    # Answers stand below it: they go nowhere, least of all to the last question.
    with pytest.raises(FileFaults, match=r"There is no question|not the number of a question"):
        parse_answers(f"seat,1,{number}\nA1,3,4\n", 8)


@pytest.mark.parametrize("heading", ["Date of birth,1", "seat,1,DOB", "pupil name,1"])
def test_who_a_pupil_is_is_refused(heading):
    with pytest.raises(FileFaults, match="no pupils' names"):
        parse_answers(f"{heading}\nA1,2,3\n", 2)


@pytest.mark.parametrize("text", ["", "seat,1\n", "seat\nA1\n", 'seat,1\nA1,"2\n' + "x" * 200_000])
def test_what_is_no_sheet_is_refused(text):
    with pytest.raises(FileFaults):
        parse_answers(text, 2)


def test_encodings(tmp_path):
    path = tmp_path / "answers.csv"
    path.write_bytes("seat,1\nA1,½\n".encode("utf-8-sig"))
    assert read_answers(path, 1)[0].answers == ("½",)
    for encoding in ("cp1252", "utf-16"):
        path.write_bytes("seat,1\nA1,½\n".encode(encoding))
        with pytest.raises(FileFaults, match="UTF-8"):
            read_answers(path, 1)


def test_marks_facility_and_shares():
    keys = [line(item.key) for item in ITEMS]
    slip = ITEMS[0].slips[0]
    rows = [
        AnswerRow("A10", (keys[0], "")),
        AnswerRow("A2", (line(slip.wrong), keys[1])),
        AnswerRow("A1", (keys[0], keys[1])),
        AnswerRow("B1", ("", "")),
    ]
    done = mark_sheet(ITEMS, rows)
    assert [(seat.seat, seat.marks) for seat in done.seats] == [("A1", 2), ("A2", 1), ("A10", 1)]
    assert done.absent == ("B1",)
    first, second = done.questions
    assert first.facility == pytest.approx(2 / 3)
    assert [(shown.misconception, shown.count) for shown in first.misconceptions] == [
        (slip.misconception, 1)
    ]
    assert second.blank == 1
    written = marks_csv([done], lambda marks: f"band {marks}").splitlines()
    assert written[0] == "seat,1,2,marks,out of,band"
    assert written[2] == "A2,known wrong method,right,1,2,band 1"
