"""What an item prints has one hash, and what it prints not has none."""

import datetime

from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.model.content import content_hash_of, printed, record_hash_of
from tests.bank.question.prompts_read import item

TEXT = st.sampled_from(["1", "2", "x = 1", "1 + 1"])

CHANGES = st.fixed_dictionaries(
    {},
    optional={
        "prompt": st.sampled_from(["Find {1}.", "Find {2}."]),
        "key": TEXT,
        "tier": st.sampled_from(["core", "support"]),
        "marks": st.integers(1, 3),
        "form": st.sampled_from(["value", "integer"]),
        "working": st.lists(st.tuples(TEXT, TEXT), max_size=2),
        "constants": st.lists(st.integers(0, 3), max_size=2),
        "author": st.sampled_from(["HT", "NT"]),
        "source": TEXT,
        "misconceptions": st.lists(
            st.fixed_dictionaries({"id": st.just("m"), "name": TEXT, "wrong": TEXT, "ask": TEXT}),
            max_size=1,
        ),
    },
)


@given(CHANGES, CHANGES)
def test_two_contents_have_one_hash_exactly_when_they_print_the_same(first, second):
    one, other = item("Find {3}.", **first), item("Find {3}.", **second)
    same = printed(one) == printed(other)
    assert (content_hash_of(one, "a.b") == content_hash_of(other, "a.b")) is same
    assert (record_hash_of(one, "a.b") == record_hash_of(other, "a.b")) is same


def test_history_is_no_content():
    plain = item("Find {3}.")
    day = {"retired": datetime.date(2026, 11, 1), "retired_because": "too easy"}
    retired = item("Find {3}.", **day)
    assert content_hash_of(plain, "a.b") == content_hash_of(retired, "a.b")
    assert record_hash_of(plain, "a.b") == record_hash_of(retired, "a.b")
    assert content_hash_of(plain, "a.b") != content_hash_of(plain, "a.c")
    other = plain.model_copy(update={"id": "a-2"})
    assert record_hash_of(plain, "a.b") != record_hash_of(other, "a.b")
