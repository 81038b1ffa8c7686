"""What the page knows of marking is what the marker knows: nothing is written twice."""

import json
import re

from hypothesis import given
from hypothesis import strategies as st

from itembank.selfmark.patterns import in_javascript
from itembank.selfmark.tables import FILE, written


def test_the_tables_are_those_of_the_marker_as_it_is():
    kept, now = json.loads(FILE.read_text(encoding="ascii")), json.loads(written())
    if kept["characters"]["version"] != now["characters"]["version"]:
        # Another Python has another Unicode; all else is the marker's own.
        del kept["characters"], now["characters"]
    current = json.dumps(kept) == json.dumps(now)
    assert current, "Run: python -m itembank.selfmark.tables"


def test_a_pattern_keeps_its_groups_and_its_meaning():
    source, flags = in_javascript(r"(?P<n>\d+) ?(?:kg|g)\b(?!\^)", re.I)
    assert flags == "iu"
    assert "(?<n>" in source
    assert r"\p{Nd}" in source
    assert r"\b" not in source
    assert source.endswith(r"(?!\^)")


def test_case_that_counts_in_one_part_alone_is_written_out():
    source, flags = in_javascript(r"(?:a|(?-i:B))c", re.I)
    assert (source, flags) == ("(?:[aA]|(?:B))[cC]", "u")


@given(st.sampled_from("^$\\.*+?()[]{}|/-"))
def test_signs_with_a_meaning_stand_for_themselves(sign):
    source, _ = in_javascript(re.escape(sign))
    assert re.fullmatch(source, sign)
