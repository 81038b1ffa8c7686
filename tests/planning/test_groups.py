"""Scores from a list or a CSV, in groups; no pupil's name gets in."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.files.faults import FileFaults
from itembank.planning.bands.bands import default_scheme
from itembank.planning.bands.groups import Entry, group, parse_scores, read_scores

BANDS = default_scheme().bands(8)


@given(st.lists(st.integers(0, 8)))
def test_groups_hold_every_score_once(scores):
    found = group([Entry("", score) for score in scores], BANDS)
    assert sorted(e.score for one in found for e in one.entries) == sorted(scores)
    for one in found:
        assert all(one.band.lowest <= e.score <= one.band.highest for e in one.entries)
        assert one.count == len(one.entries)


def test_seats_are_in_seat_order():
    found = parse_scores("seat,score\nB1,3\nA10,4\nA2,0\n", 8)
    assert group(found.entries, BANDS)[0].codes == ("A2", "A10", "B1")


@pytest.mark.parametrize(
    "text", ["A1,5\nA2,8\n", "code;score\r\nA1;5\r\nA2;8\r\n", "A1, 5\n\nA2 ,8"]
)
def test_ways_of_writing_a_file(text):
    assert parse_scores(text, 8).entries == (Entry("A1", 5), Entry("A2", 8))


def test_absent_pupils_are_not_scores():
    found = parse_scores("seat,score\nA1,5\nA2,\nA3,absent\nA4,-\n", 8)
    assert found.entries == (Entry("A1", 5),)
    assert found.absent == ("A2", "A3", "A4")


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("A1,5\nA2,9\n", 2, "score 9 is not between 0 and 8"),
        ("A1,5\nA2,-1\n", 2, "not a score"),
        ("A1,5\nA2,5.5\n", 2, "not a score"),
        ("A1,5\nA2,²\n", 2, "not a score"),
        ("A1,5\nA2\n", 2, "not 1 cell."),
        ("A1,5\n,4\n", 2, "seat code is missing"),
        ("A1,5\na1,4\n", 2, "line 1 already"),
        ("A1,5\nRowan,4\n", 2, "no pupils' names"),
        ("A1,5\nRowan Hill 2,4\n", 2, "no pupils' names"),
        ("Rowan,absent\n", 1, "no pupils' names"),
        ("surname,score\nA1,4\n", 1, "no pupils' names"),
        ("Pupil_name,score\nA1,4\n", 1, "no pupils' names"),
    ],
)
def test_bad_rows(text, line, words):
    with pytest.raises(FileFaults) as caught:
        parse_scores(text, 8, "scores.csv")
    (fault,) = caught.value.faults
    assert fault.line == line
    assert words in fault.message
    assert str(caught.value).startswith(f"scores.csv, line {line}: ")


def test_all_bad_rows_at_once():
    with pytest.raises(FileFaults) as caught:
        parse_scores("A1,99\nA2,5\nA3,x\n", 8)
    assert [fault.line for fault in caught.value.faults] == [1, 3]


def test_file_from_a_spreadsheet_has_a_byte_order_mark(tmp_path):
    path = tmp_path / "scores.csv"
    path.write_bytes("\ufeffseat,score\r\nA1,5\r\n".encode())
    assert read_scores(path, 8).entries == (Entry("A1", 5),)
    path.write_bytes("A1,5\n".encode("utf-16"))
    with pytest.raises(FileFaults, match="UTF-16"):
        read_scores(path, 8)
