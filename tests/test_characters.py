"""What nobody sees, and what only looks like something, is told with its place."""

import re
import unicodedata
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.files.csv_text import csv_rows
from itembank.files.faults import FileFaults
from itembank.files.toml_read import read_toml
from itembank.files.toml_table import TomlFile
from itembank.marking.mark import mark
from itembank.pages.engine.pdf.tagging import text_string
from itembank.pages.engine.pdf.xmp import packet
from itembank.people.seats import seat_fault
from itembank.text.characters import hidden, look_alikes, name_fault, short_message, shown, visible

ANY = st.text(st.characters(), max_size=30)
BAD = ["\x1b", "\x07", "\x00", "\x7f", "\x9b", "\u202e", "\u2066", "\u200b", "\u200d", "\ufeff"]
NOBODY = [*BAD, "\u2028", "\u061c", "\u2060", "\U000e0041"]


@given(ANY)
def test_what_is_made_visible_holds_nothing_that_steers_a_terminal(text):
    out = visible(text)
    assert not list(hidden(out))
    for char in out.replace("\r\n", "\n"):
        assert char in "\t\n" or unicodedata.category(char) not in ("Cc", "Zl", "Zp", "Cs")
        assert unicodedata.bidirectional(char) not in {
            *("LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI")
        }


@given(
    st.text(
        st.characters(exclude_categories=["Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp", "Lo", "Mn"])
    )
)
def test_what_can_be_seen_stays_as_it_is(text):
    assert visible(text) == text


@pytest.mark.parametrize("char", NOBODY)
def test_a_toml_file_tells_the_line_and_column_of_what_nobody_sees(tmp_path, char):
    path = tmp_path / "a.toml"
    path.write_bytes(f'# first\ntitle = "ab{char}c"\n'.encode())
    with pytest.raises(FileFaults) as caught:
        TomlFile(path)
    (fault,) = caught.value.faults
    assert (fault.line, fault.column) == (2, 12)
    assert f"U+{ord(char):04X}" in fault.message
    assert "Take it out" in fault.message
    read = read_toml(path.read_text("utf-8"), path)
    assert [(fault.line, fault.column) for fault in read.faults] == [(2, 12)]


@pytest.mark.parametrize("char", [*NOBODY[:4], "\r", "\x08"])
@pytest.mark.parametrize("where", ["value", "key", "list"])
def test_one_that_is_written_as_its_number_is_told_too(tmp_path, char, where):
    number = f"\\u{ord(char):04X}"
    lines = {"value": f'a = "x{number}"', "key": f'"a{number}" = 1', "list": f'a = ["{number}"]'}
    path = tmp_path / "a.toml"
    path.write_text(f"b = '\\u0041\\d'\n{lines[where]}\n", "utf-8")
    with pytest.raises(FileFaults) as caught:
        TomlFile(path)
    (fault,) = caught.value.faults
    assert (fault.line, fault.column) == (2, lines[where].index(number) + 1)
    assert [fault.line for fault in read_toml(path.read_text("utf-8"), path).faults] == [2]


def test_a_backslash_in_a_raw_string_is_no_number(tmp_path):
    path = tmp_path / "a.toml"
    path.write_text("a = '\\u001b and \\r'\r\nb = \"½ \\u00e9 \\t\"\r\n", "utf-8")
    assert TomlFile(path).data == {"a": "\\u001b and \\r", "b": "½ é \t"}


@pytest.mark.parametrize("text", ["8К", "ratiо", "２A1", "A１", "ﬁg1", "ΑΒ"])
def test_a_name_that_looks_like_another_is_told(text):
    assert "only looks like" in name_fault(text)


@pytest.mark.parametrize("text", ["8K", "8É", "Ёлка", "Straße", "8-Ä", "数学"])
def test_a_name_in_its_own_letters_is_let_be(text):
    assert name_fault(text) == ""


@pytest.mark.parametrize("text", ["2π", "angle α", "Мир", "отчёт2026", "−3 × ½", "30°", "café"])
def test_letters_of_their_own_are_no_look_alikes(text):
    assert list(look_alikes(text)) == []


def test_a_class_that_looks_like_another_is_told_where_it_is_written(tmp_path):
    path = tmp_path / "a.toml"
    path.write_text('a = "8К"\n', "utf-8")
    with pytest.raises(FileFaults, match=r"line 1, column 7: К is CYRILLIC .* Type K instead"):
        TomlFile(path)


def test_seats_that_look_like_others_are_told():
    assert "Type A instead" in seat_fault("А1")
    assert "ZERO WIDTH SPACE" in seat_fault("A1\u200b")
    assert "SOFT HYPHEN" in seat_fault("A\xad1")


def test_an_answer_in_other_letters_is_told():
    from itembank.items.topics.registry import find_item

    item = find_item("equations.two-step/core/887")
    assert "CYRILLIC SMALL LETTER HA" in mark(item, "х = 2").says


@pytest.mark.parametrize("char", BAD[3:])
def test_a_sheet_with_something_unseen_is_told_with_its_line(char):
    with pytest.raises(FileFaults, match=r"a\.csv, line 2: .*nobody can see"):
        csv_rows(f"seat,q1\nA1,2{char}4\n", "a.csv")


def test_formulas_copied_from_a_page_keep_what_stands_unseen_between_their_parts():
    assert csv_rows("seat,q1\nA1,2\u20641/2\n", "a.csv")[1] == (2, ["A1", "2\u20641/2"])


@given(ANY)
def test_metadata_and_strings_of_a_pdf_are_well_formed_whatever_a_title_holds(title):
    data = packet(title, "en-GB", "itembank")
    assert ET.fromstring(re.sub(rb"<\?xpacket.*?\?>", b"", data)) is not None
    whole = re.sub("[\ud800-\udfff]", " ", title)
    assert bytes.fromhex(text_string(title)[1:-1]).decode("utf-16") == whole


@given(
    st.text(min_size=500, max_size=600).map(lambda text: "‘" + re.sub("[‘’]", "", text) + "x" * 400)
)
def test_a_message_never_holds_the_bulk_of_something_huge(text):
    assert len(short_message(f"{text}’ is too long.")) < 400
    assert len(shown(text)) < 1200  # of which each character may be shown as its number


def test_a_list_of_many_topics_is_shown_whole():
    message = "There is no such topic. " + ", ".join(f"strand.topic-number-{n}" for n in range(100))
    assert short_message(message) == message
