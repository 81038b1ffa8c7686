"""A TOML file changed in place: it says what it is to say, and what a person wrote stays."""

import tomllib

from hypothesis import given
from hypothesis import strategies as st

from itembank.files.toml_document import toml_document
from itembank.files.toml_edit import with_data
from itembank.files.toml_read import Locator

NAMES = st.sampled_from(["name", "year", "b c", "ü", "x.y"])
VALUES = st.one_of(
    st.integers(0, 99),
    st.booleans(),
    st.dates(),
    st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc"]), max_size=8),
    st.lists(st.integers(0, 9), max_size=3),
)
ROWS = st.dictionaries(NAMES, VALUES, min_size=1, max_size=4)
TABLES = st.one_of(
    ROWS,
    st.lists(ROWS, min_size=1, max_size=4),
    st.lists(st.builds(lambda row, below: {**row, "below": below}, ROWS, ROWS), max_size=3),
)
DATA = st.builds(
    lambda plain, tables: {**plain, **tables},
    st.dictionaries(st.sampled_from(["school", "default"]), VALUES),
    st.dictionaries(st.sampled_from(["classes", "bands", "terms"]), TABLES),
)


@given(DATA)
def test_a_document_says_its_data(data):
    assert tomllib.loads(toml_document(data)) == data


@given(DATA, DATA)
def test_a_changed_file_says_what_it_is_to_say(before, after):
    text = toml_document(before)
    assert tomllib.loads(with_data(text, after)) == after
    assert with_data(text, before) == text


@given(DATA, st.data())
def test_no_comment_is_lost_but_what_touches_a_table_that_goes(data, draw):
    lines = toml_document(data).split("\n")
    places = {0, *(number - 1 for number in Locator("\n".join(lines)).starts)}
    for place in sorted(places, reverse=True):
        lines[place:place] = [f"# note {place}", ""]
    text = "\n".join(lines)
    name = draw.draw(st.sampled_from(sorted(data) or ["school"]))
    now = {**data, name: draw.draw(VALUES if name in ("school", "default") else TABLES)}
    edited = with_data(text, now)
    notes = [line for line in lines if line.startswith("# note")]
    # A table that has another place takes along what stands above it.
    assert sorted(line for line in edited.split("\n") if line.startswith("# note")) == sorted(notes)


FILE = """\
# Our classes.

[[classes]]
name = "7M"   # HT's
lessons = [
    "Mon 1",  # hall
]

# The top set; ask before changing.
[[classes]]
name = "8K"
year = 8

[classes.taught]
"ratio.share" = 2026-11-19  # early

# Ours by vote.
[bands]
cuts = [5, 7]
"""


def test_only_the_lines_that_change_change():
    data = tomllib.loads(FILE)
    data["classes"][1]["year"] = 9
    assert with_data(FILE, data) == FILE.replace("year = 8", "year = 9")


def test_a_class_that_is_renamed_keeps_its_comments_beside_a_new_one():
    data = tomllib.loads(FILE)
    data["classes"][1]["name"] = "8L"
    data["classes"].insert(0, {"name": "7Q", "year": 7})
    edited = with_data(FILE, data)
    assert edited == FILE.replace('"8K"', '"8L"').replace(
        "# Our classes.\n", '# Our classes.\n\n[[classes]]\nname = "7Q"\nyear = 7\n'
    ) or edited.count("#") == FILE.count("#")
    assert tomllib.loads(edited) == data


def test_a_class_that_goes_takes_what_was_said_of_it_and_nothing_else():
    data = tomllib.loads(FILE)
    del data["classes"][1]
    start, end = FILE.index("# The top set"), FILE.index("# Ours by vote")
    assert with_data(FILE, data) == FILE[:start] + FILE[end:]


def test_a_layout_that_cannot_be_edited_in_place_still_says_it():
    text = 'classes = [{ name = "8K" }]  # one line\n'
    data = {"classes": [{"name": "8K"}, {"name": "8L", "taught": {"ratio.share": "not yet"}}]}
    edited = with_data(text, data)
    assert tomllib.loads(edited) == data
    assert "# one line" in edited
