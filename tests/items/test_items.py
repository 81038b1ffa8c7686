"""Spaces, addresses, forms and the registry."""

from __future__ import annotations

import random
from fractions import Fraction
from math import gcd

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.items.forms.form_rules import (
    FORMS,
    decimal_node,
    form_fault,
    number_node,
    simplest_node,
)
from itembank.items.item import Tier, prompt
from itembank.items.topics.registry import UnknownTopic, find_item, find_topic, topic_ids
from itembank.items.topics.space import Space
from itembank.notation import tree as t
from itembank.notation.value import exact

values = st.fractions(min_value=-50, max_value=50, max_denominator=400)


@given(st.integers(1, 9), st.integers(1, 9))
def test_a_space_is_its_filtered_product(m, n):
    space = Space(lambda a, b: a != b, a=range(m), b=range(n))
    walked = list(space)
    assert walked == [(a, b) for a in range(m) for b in range(n) if a != b]
    assert len(space) == len(walked)
    assert [space[i] for i in range(len(space))] == walked
    drawn = space.sample(len(space), random.Random(4))
    assert sorted(drawn) == list(range(len(space)))


def test_farey_counts():
    # |F_n| counts fractions in lowest terms from 0/1 to 1/1: OEIS A005728, from memory.
    farey = [2, 3, 5, 7, 11, 13, 19, 23, 29, 33]
    for n, count in enumerate(farey, start=1):
        space = Space(lambda a, b: a <= b and gcd(a, b) == 1, a=range(n + 1), b=range(1, n + 1))
        assert len(space) == count


@pytest.mark.parametrize("index", [-1, 3])
def test_a_space_has_no_other_indices(index):
    with pytest.raises(IndexError):
        Space(None, a=range(3))[index]


@given(values)
def test_builders_keep_the_value_and_have_their_form(value):
    for build, form in ((number_node, "number"), (simplest_node, "simplest")):
        assert exact(build(value)) == value
        assert form_fault(form, build(value)) == ""
    assert exact(decimal_node(value)) == value
    assert form_fault("decimal", decimal_node(value)) == ""


@given(st.integers(2, 9), st.integers(1, 40), st.integers(2, 40))
def test_a_fraction_that_cancels_is_not_in_lowest_terms(k, top, bottom):
    assert form_fault("lowest-terms", t.Frac(t.Int(k * top), t.Int(k * bottom)))


@pytest.mark.parametrize(
    ("form", "node"),
    [
        ("integer", t.frac(1, 2)),
        ("mixed", t.frac(7, 4)),
        ("mixed", t.Mixed(1, 5, 4)),
        ("simplest", t.frac(7, 4)),
        ("improper", t.frac(3, 4)),
        ("decimal", t.Dec("0", "50")),
        ("percentage", t.Dec("0", "5")),
        ("ratio", t.frac(1, 2)),
        ("solution", t.Int(5)),
        ("money", t.Int(5)),
        ("quantity", t.Int(5)),
    ],
)
def test_forms_refuse_what_is_not_theirs(form, node):
    assert form_fault(form, node) != ""
    assert FORMS[form][0]


def test_prompts_put_the_mathematics_in_its_place():
    assert prompt("{a} and {b}", a=t.Int(1), b=t.Neg(t.Int(2))) == (
        t.Int(1),
        " and ",
        t.Neg(t.Int(2)),
    )


def test_addresses_name_items_for_ever():
    for name in topic_ids():
        item = find_item(f"{name}/core/0")
        assert item == find_topic(name).item(Tier.CORE, 0)
        assert item.address == f"{name}/core/0"


@pytest.mark.parametrize("address", ["", "a/b", "fractions.add-unlike/hard/1", "x.y/core/0"])
def test_bad_addresses_are_refused_plainly(address):
    with pytest.raises(UnknownTopic):
        find_item(address)


def test_an_index_past_the_end_is_refused_plainly():
    with pytest.raises(ItembankError, match="no such item"):
        find_item("fractions.add-unlike/core/9999999")


def test_a_near_name_is_suggested():
    with pytest.raises(UnknownTopic, match=r"fractions\.add-unlike"):
        find_topic("fractions.add-unlik")


def test_decimals_recur_as_long_division_says():
    # 1/7 = 0.142857 recurring and 1/12 = 0.083 recurring: by long division.
    assert decimal_node(Fraction(1, 7)) == t.Dec("0", "", "142857")
    assert decimal_node(Fraction(1, 12)) == t.Dec("0", "08", "3")


def test_misconceptions_say_what_the_pupil_does():
    # Notes print the name after "the pupil probably", so it has to go on from there.
    for name in topic_ids():
        for misconception in find_topic(name).misconceptions:
            assert misconception.name[0].islower(), misconception.id
            assert not misconception.name.endswith("."), misconception.id
            assert misconception.ask.rstrip("”").endswith(("?", ".")), misconception.id
