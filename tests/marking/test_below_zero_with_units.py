"""Answers below zero with a unit or a sign of money: right with it, and right where it may miss."""

from __future__ import annotations

from dataclasses import replace

import pytest

from itembank.items.item import Find
from itembank.items.topics.registry import find_item
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import line, parse

ITEM = replace(find_item("ratio.scale/core/3"), prompt=("How much is it?",), slips=())


@pytest.mark.parametrize("key", ["-9 °C", "-9 kg", "-£70", "-£4.50", "9 °C"])
def test_the_key_is_right_and_so_is_its_number_alone(key):
    node = parse(key)
    form = "money" if "£" in key else "quantity"
    item = replace(ITEM, ask=Find(node), key=node, form=form)
    bare = line(node).replace("£", "").removesuffix(" °C").removesuffix(" kg")
    for typed in (key, bare):
        assert mark(item, typed).verdict is Verdict.RIGHT, typed
    assert mark(item, bare.removeprefix("-") + "1").verdict is Verdict.WRONG
