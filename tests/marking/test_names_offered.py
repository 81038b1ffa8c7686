"""The choices that an answer is told to be one of: the key is there, and all are to be seen."""

from __future__ import annotations

import random

import pytest

from itembank.figures.figure import words
from itembank.items.asks import OfFigure
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic, topic_ids
from itembank.marking.mark import mark
from itembank.marking.worth.marked_by_kind import marking_of
from itembank.notation import tree as t
from tests.depth import cases, each

EACH = cases(3, 30)
"""Questions of each tier."""


@pytest.mark.parametrize("name", each(topic_ids(), 52))
def test_the_key_is_one_of_the_choices_told(name: str) -> None:
    topic, rng = find_topic(name), random.Random(5)
    for tier, space in topic.spaces.items():
        for index in rng.sample(space.own, min(EACH, len(space.own))):
            item = topic.item(tier, index)
            if isinstance(item.ask, OfFigure) and isinstance(item.key, t.Label):
                names = marking_of(item.ask).names(item.ask)
                told = " ".join(run for run in item.prompt if isinstance(run, str))
                shown = f"{told} {words(item.ask.figure)}".casefold()
                assert not names or item.key.text in names, item.address
                assert all(name.casefold() in shown for name in names), (item.address, names)


@pytest.mark.parametrize(
    ("address", "choices"),
    [
        ("geometry.congruent-triangles/challenge/47", "SSS, SAS, ASA, RHS or none"),
        ("geometry.loci/core/3", "P, Q or R"),
        ("geometry.shapes/challenge/3", "P, Q or R"),
    ],
)
def test_what_is_no_choice_is_told_the_choices(address: str, choices: str) -> None:
    topic, tier, index = address.split("/")
    item = find_topic(topic).item(Tier(tier), int(index))
    assert mark(item, "zz").says == f"Give the name of one choice: {choices}."
