"""Questions of one kind at the terminal: shown alone, told in the week, and chosen for a place."""

import re

import pytest


def test_one_kind_of_a_topic_is_shown(said):
    status, out, _ = said("show", "equations.one-step", "--kind", "Odd-one-out", "--count", "2")
    assert status == 0
    assert "One-step equations  (equations.one-step): odd one out" in out
    assert set(re.findall(r"Kind +(.*)", out)) == {"odd one out"}
    assert "Which is the odd one out?" in out


@pytest.mark.parametrize(
    ("kind", "says"),
    [
        ("odd one", "Did you mean odd one out?"),
        ("find the rule", "has no questions of the kind ‘find the rule’"),
    ],
)
def test_a_kind_that_is_not_there_is_told_with_those_that_are(said, kind, says):
    status, _, err = said("show", "equations.one-step", "--kind", kind)
    assert status == 2
    said_in_one = " ".join(err.split())
    assert says in said_in_one
    assert "One-step equations has work it out, " in said_in_one
