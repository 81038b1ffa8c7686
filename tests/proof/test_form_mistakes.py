"""Where a number is to be written in a way, a mistake of form alone is a mistake of its own."""

from __future__ import annotations

from dataclasses import replace

import pytest

from itembank.items.item import Misconception, Slip
from itembank.items.topics.registry import find_item
from itembank.notation import parse
from itembank.proof.likely_mistakes import blind_slip, rivals

ITEM = find_item("number.prime-factors/core/0")  # its key is a product of powers of primes


def with_slips(item, *texts):
    slips = (Slip(Misconception(f"m.{n}", f"does {n}", "?"), parse(t)) for n, t in enumerate(texts))
    return replace(item, slips=tuple(slips))


def test_the_same_worth_in_another_form_is_no_right_answer():
    item = replace(ITEM, key=parse("2^2 × 5"), form="prime-factors")
    assert blind_slip(with_slips(item, "4 × 5", "2 × 10")) == ""
    assert rivals(with_slips(item, "4 × 5", "2 × 10")) is None


@pytest.mark.parametrize("right", ["2^2 × 5", "2 × 2 × 5", "5 × 2^2"])
def test_a_right_answer_is_found_whatever_its_order(right):
    item = replace(ITEM, key=parse("2^2 × 5"), form="prime-factors")
    assert blind_slip(with_slips(item, "2 × 5", right)) == "does 1"


def test_where_the_value_is_asked_for_its_form_does_not_hide_it():
    item = replace(ITEM, key=parse("4"), form="integer")
    assert blind_slip(with_slips(item, "5", "8/2")) == "does 1"
