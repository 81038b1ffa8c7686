"""Every address there ever was still asks its question.

Where this fails, a change gave addresses other questions: packs, banks and results name
questions by them. Change it back, and let the space grow at its end (``Space.then``). Where new
questions are not frozen yet: ``python -m itembank.items.topics.frozen``.

The whole of every space is looked at by ``make whole``. A change moves the questions of a part from
somewhere to its end, or words all of them otherwise, so a few of each part, the first and the last
among them, show it on every run.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from itembank.items.topics.frozen import faults, own_topics, stretch, unfrozen
from itembank.items.topics.frozen_files import Stretch, read
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from tests.depth import only_whole, spread

FROZEN = read(Path(__file__).with_name("frozen"))
TOPICS = {topic.id: topic for topic in own_topics()}
OF_A_PART = 4
"""Questions of each part of a tier: one that has changed is told apart in 63 cases of 64."""


def held_for(name: str) -> dict[str, tuple[Stretch, ...]]:
    return {key: held for key, held in FROZEN.items() if key.startswith(f"{name}/")}


@only_whole
@pytest.mark.parametrize("name", sorted({key.partition("/")[0] for key in FROZEN}))
def test_every_frozen_address_asks_what_it_did(name):
    found = faults([TOPICS[name]] if name in TOPICS else [], held_for(name))
    assert not found, " ".join(found)


def changed(topic: Topic) -> list[str]:
    """Return the addresses that ask something else, of a few in each part of each tier."""
    found = []
    for tier, space in topic.spaces.items():
        each = "".join(held.each for held in FROZEN.get(f"{topic.id}/{tier}", ()))
        if len(space) < len(each):
            found.append(f"{topic.id}/{tier}/{len(each) - 1} is gone")
        for part in space.part_indices:
            for index in spread(part, OF_A_PART):
                if each[index : index + 1] not in ("", stretch(topic, tier, index, index + 1).each):
                    found.append(f"{topic.id}/{tier}/{index} asks something else")
    return found


def test_a_few_of_every_part_of_every_tier_ask_what_they_did():
    assert {key.partition("/")[0] for key in FROZEN} <= TOPICS.keys()
    found = [fault for topic in TOPICS.values() for fault in changed(topic)]
    assert not found, ", ".join(found)


def test_every_question_is_frozen():
    new = [f"{topic.id}/{tier}/{start}" for topic, tier, start in unfrozen(TOPICS.values(), FROZEN)]
    assert not new, f"Not frozen from {', '.join(new)} on: python -m itembank.items.topics.frozen"


def test_a_wider_range_in_a_real_topic_is_found(monkeypatch):
    topic = TOPICS["ratio.one-part"]
    tier = next(iter(topic.spaces))
    axes = dict(topic.spaces[tier].axes) | {"value": range(3, 14)}
    spaces = dict(topic.spaces) | {tier: Space(None, **axes)}
    monkeypatch.setattr(type(topic), "spaces", spaces)
    found = faults([topic], held_for("ratio.one-part"))
    assert "ratio.one-part/support/10 asks something else" in " ".join(found)
    assert any(fault.startswith("ratio.one-part/support/") for fault in changed(topic))
