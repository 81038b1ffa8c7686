"""The lines of keys in TOML text, whatever marks stand inside its strings."""

import tomllib

from hypothesis import given
from hypothesis import strategies as st

from itembank.files.toml_read import Locator

MARKS = st.lists(
    st.sampled_from(
        ['"""', "'''", '"', "'", "#", "\\", "[", "]", "{", "}", "=", "k1 = 2", " ", "a"]
    )
).map("".join)


def one_line(text):
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def many_lines(text):
    return '"""' + text.replace("\\", "\\\\").replace('"', '\\"') + '\nb = 1\n"""'


def raw(text):
    return "'" + text.replace("'", "") + "'"


def raw_lines(text):
    return "'''" + text.replace("'", "") + "\nb = 1\n'''"


VALUES = st.tuples(st.sampled_from([one_line, many_lines, raw, raw_lines]), MARKS).map(
    lambda pair: pair[0](pair[1])
)


@given(st.lists(st.tuples(VALUES, st.sampled_from(["", " # '''", ' # """', " # ["])), min_size=1))
def test_every_key_is_found_on_its_line(values):
    lines = []
    places = {}
    for number, (value, comment) in enumerate(values):
        places[f"k{number}"] = len(lines) + 1
        lines += f"k{number} = {value}{comment}".split("\n")
    text = "\n".join(lines) + "\n"
    assert set(tomllib.loads(text)) == set(places)
    locator = Locator(text)
    assert {key: locator.line((key,)) for key in places} == places
