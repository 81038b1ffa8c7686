"""A class's sheet says the same however a spreadsheet and a teacher write it."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from itembank.files.csv_text import csv_rows
from itembank.files.faults import FileFaults
from itembank.records.entries.entries import Answers, Scores
from itembank.records.entries.sheet_file import Asked, read_sheet
from itembank.records.entries.view_file import read_view_file
from tests.depth import cases

SEATS = tuple(f"{row}{n}" for row in "ABC" for n in range(1, 5))
EIGHT = Asked(8, 8)
RIGHT = ["1", "✓", "✔", "y", "Yes", "R", "right", "TRUE"]
WRONG = ["0", "✗", "x", "X", "n", "No", "wrong", "×", "", "-"]


@pytest.fixture(scope="module")
def path(tmp_path_factory):
    return tmp_path_factory.mktemp("sheets") / "sheet.csv"


def read(path, text, asked=EIGHT):
    path.write_text(text, encoding="utf-8")
    return read_sheet(path, asked, SEATS)


marks = st.dictionaries(
    st.sampled_from(SEATS), st.lists(st.booleans(), min_size=8, max_size=8), min_size=1
).filter(lambda found: all(any(row) for row in found.values()))
QUIET = settings(
    max_examples=cases(25, 60),
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)


@given(marks=marks, separator=st.sampled_from(",;\t"), total=st.booleans(), data=st.data())
@QUIET
def test_right_and_wrong_in_any_writing(path, marks, separator, total, data):
    heading = ["Seat", *map(str, range(1, 9)), *(["Total"] if total else [])]
    rows = [heading]
    for seat, row in marks.items():
        cells = [data.draw(st.sampled_from(RIGHT if good else WRONG)) for good in row]
        rows.append([seat.lower(), *cells, *([str(sum(row))] if total else [])])
    text = "\ufeff" + "\r\n".join(separator.join(row) for row in rows)
    # What nobody has anything for was not asked, so it is neither right nor wrong.
    cells = {row[0]: row[1:9] for row in rows[1:]}
    asked = {n for n in range(1, 9) if any(cell[n - 1] not in ("", "-") for cell in cells.values())}
    wanted = {seat: {n: row[n - 1] for n in asked} for seat, row in marks.items()}
    assert read(path, text).what == Answers(wanted, {})
    told = read(path, text, Asked(8, 8, numbers=tuple(range(1, 9)))).what
    assert told == Answers({seat: dict(enumerate(row, 1)) for seat, row in marks.items()}, {})


@given(
    scores=st.dictionaries(st.sampled_from(SEATS), st.integers(0, 8), min_size=1),
    separator=st.sampled_from(",;\t"),
    data=st.data(),
)
@QUIET
def test_scores_in_any_writing(path, scores, separator, data):
    away = data.draw(st.sets(st.sampled_from(SEATS))) - set(scores)
    form = data.draw(st.sampled_from(["{}", "{}/8", "{} / 8"]))
    gone = data.draw(st.sampled_from(["", "-", "absent", "Away"]))
    rows = [("seat", "score"), *((seat, form.format(n)) for seat, n in scores.items())]
    rows += [(seat, gone) for seat in away]
    done = read(path, "\n".join(separator.join(row) for row in rows))
    assert (done.what, set(done.absent)) == (Scores(scores), away)


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        # Among marks a slip of the pen would make answers of them all, and every one wrong.
        ("seat,1,2,3,4\nA1,1,1,0,1\n\nA2,1,7,1,1\n", ["line 4: ‘7’ says neither right nor wrong"]),
        ("seat,1,2,3,4\nA1,1,?,0,1\nA2,1,1,1,..\n", ["line 2: ‘?’", "line 3: ‘..’"]),
        ("seat,score\nA1,4/9\n", ["line 2: ‘4/9’ is out of 9, and the starter out of 4"]),
        ("seat,1,2,3,4\nA1,2,3,4,5\n", ["marked by the pack the class had"]),
        ("seat,1,2,3,4,total,name\nA1,1,1,1,1,4,x\n", ["line 1: A heading speaks of names"]),
        ("seat,total,%\nA1,1,1\n", ["No question has a column"]),
    ],
)
def test_faults_are_told_with_their_lines(path, text, faults):
    with pytest.raises(FileFaults) as error:
        read(path, text, Asked(4, 4))
    for fault in faults:
        assert fault in str(error.value)
    assert len(str(error.value).splitlines()) == len(faults)


@given(
    rows=st.lists(
        st.lists(st.text("ab1½ .", min_size=0, max_size=4), min_size=2, max_size=4), min_size=1
    ),
    separator=st.sampled_from(",;\t"),
)
def test_rows_are_read_with_their_lines_whatever_parts_the_columns(rows, separator):
    text = "\n".join(separator.join(row) for row in [["seat", "1"], *rows])
    wanted = [
        (line, [cell.strip() for cell in row])
        for line, row in enumerate([["seat", "1"], *rows], 1)
        if any(cell.strip() for cell in row)
    ]
    assert csv_rows(text, "rows.csv") == wanted


def test_own_views_with_semicolons(path):
    path.write_text("Seat;View\nA1;sure\n\nb2;Not sure\n")
    assert read_view_file(path, SEATS) == {"A1": "sure", "B2": "not sure"}
