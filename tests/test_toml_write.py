"""Whatever is written as TOML reads back as the same value, by two readers."""

import datetime
import itertools
import tomllib

import pytest
import tomlkit
from hypothesis import given
from hypothesis import strategies as st

from itembank.files.toml_write import toml_lines, toml_pairs, toml_string, toml_value

TEXTS = st.text(max_size=40)
PLAIN = st.one_of(
    TEXTS,
    st.booleans(),
    st.integers(-(2**63), 2**63 - 1),
    st.floats(allow_nan=False),
    st.dates(),
    st.datetimes(),
    st.times(),
)
VALUES = st.recursive(
    PLAIN,
    lambda inner: st.lists(inner, max_size=5) | st.dictionaries(TEXTS, inner, max_size=4),
    max_leaves=12,
)


def read(text):
    found = tomllib.loads(text)
    assert tomlkit.parse(text).unwrap() == found
    return found


@given(st.dictionaries(TEXTS, VALUES, max_size=5))
def test_a_table_reads_back_as_it_was(values):
    assert read("\n".join(toml_pairs(values)) + "\n") == values


@given(st.lists(VALUES, max_size=8), st.integers(0, 120))
def test_a_list_in_lines_reads_back_as_it_was(values, width):
    text = toml_lines(values, width)
    assert read(f"x = {text}\n") == {"x": values}
    texts = [row.strip() for row in text.split("\n")[1:-1]]
    assert all(row.endswith(",") for row in texts)
    if width == 0:
        assert len(texts) == len(values)


@given(TEXTS, st.lists(TEXTS, max_size=30), st.integers(20, 120))
def test_lines_are_as_full_as_there_is_room(first, texts, width):
    rows = [row.strip() for row in toml_lines([first, *texts], width).split("\n")[1:-1]]
    words = iter([toml_string(text) + "," for text in [first, *texts]])
    for row in rows:
        taken, several = next(words), False
        while taken != row:
            taken, several = f"{taken} {next(words)}", True
        assert len(row) <= width or not several
    for row, after in itertools.pairwise(rows):
        first_word = next(w for w in (toml_string(t) + "," for t in texts) if after.startswith(w))
        assert len(row) + len(first_word) + 1 > width


@given(TEXTS)
def test_text_is_written_as_tomlkit_writes_it(text):
    assert tomllib.loads(f"x = {toml_string(text)}") == {"x": text}
    if not any(char < " " or char == "\x7f" for char in text):
        assert toml_string(text) == tomlkit.string(text).as_string()


def test_what_toml_has_not_is_refused():
    for value in (None, {1, 2}, datetime.timedelta(1), [None]):
        with pytest.raises(TypeError, match="TOML has no value"):
            toml_value(value)
