"""CSV that no spreadsheet works anything out from, and that gives back what was written."""

import csv
import io
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import itembank
from itembank.files.csv_text import CsvWriter, as_meant, harmless

SIGNS = "=+-@＝＋－＠"
CELLS = st.one_of(
    st.text(st.characters(exclude_categories=["Cs"])),
    st.text(st.sampled_from([*SIGNS, *"'\" \t\r\n;,1a.", "\xa0", "\u200b", "\ufeff", "−"])),
)


def written(rows):
    out = io.StringIO(newline="")
    writer = CsvWriter(out)
    for row in rows:
        writer.writerow(row)
    return out.getvalue()


@given(st.lists(st.lists(CELLS, min_size=2, max_size=4), min_size=1, max_size=3))
def test_what_is_written_comes_back(rows):
    found = list(csv.reader(io.StringIO(written(rows), newline="")))
    assert [[as_meant(cell) for cell in row] for row in found] == rows


@given(CELLS)
def test_no_cell_begins_a_formula(text):
    shown = harmless(text)
    first = shown.lstrip(' \xa0\u200b\ufeff"')[:1]
    assert not first or first not in SIGNS or re.fullmatch(r"-[0-9]+(\.[0-9]+)?", shown)
    assert shown[:1] not in ("\t", "\r", "\n")
    assert as_meant(shown) == text


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("before", ["", " ", " '", *"'\"\t\r\xa0\u200b\ufeff"])
def test_every_sign_with_anything_unseen_before_it(sign, before):
    assert harmless(f"{before}{sign}HYPERLINK(1)").startswith("'")


def test_numbers_stay_numbers():
    assert written([[-3, -0.5, "-3", "-0.5", "−3", "3 - 5"]]) == "-3,-0.5,-3,-0.5,−3,3 - 5\n"


def test_a_cell_stays_one_where_columns_are_parted_by_another_sign():
    (row,) = csv.reader(io.StringIO(written([["a;=1+1", "b"]])), delimiter=";")
    assert row[0].startswith("a;=1+1")


def test_every_table_is_written_here():
    home = Path(itembank.__file__).parent
    own = re.compile(r"csv\.(writer|DictWriter)")
    found = {
        path.name
        for path in home.rglob("*.py")
        if path.name != "csv_text.py" and own.search(path.read_text("utf-8"))
    }
    assert not found
