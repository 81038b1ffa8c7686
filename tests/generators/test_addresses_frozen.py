"""Every address there ever was still asks its question.

Where this fails, a change gave addresses other questions: packs, banks and results name
questions by them. Change it back, and let the space grow at its end (``Space.then``). Where new
questions are not frozen yet: ``python -m itembank.items.topics.frozen``.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from itembank.items.topics.frozen import faults, own_topics, read, unfrozen
from itembank.items.topics.space import Space

FROZEN = read(Path(__file__).with_name("frozen"))
TOPICS = {topic.id: topic for topic in own_topics()}


@pytest.mark.parametrize("name", sorted({key.partition("/")[0] for key in FROZEN}))
def test_every_frozen_address_asks_what_it_did(name):
    held = {key: stretches for key, stretches in FROZEN.items() if key.startswith(f"{name}/")}
    found = faults([TOPICS[name]] if name in TOPICS else [], held)
    assert not found, " ".join(found)


def test_every_question_is_frozen():
    new = [f"{topic.id}/{tier}/{start}" for topic, tier, start in unfrozen(TOPICS.values(), FROZEN)]
    assert not new, f"Not frozen from {', '.join(new)} on: python -m itembank.items.topics.frozen"


def test_a_wider_range_in_a_real_topic_is_found(monkeypatch):
    topic = TOPICS["ratio.one-part"]
    tier = next(iter(topic.spaces))
    axes = dict(topic.spaces[tier].axes) | {"value": range(3, 14)}
    changed = dict(topic.spaces) | {tier: Space(None, **axes)}
    monkeypatch.setattr(type(topic), "spaces", changed)
    held = {key: stretches for key, stretches in FROZEN.items() if key.startswith("ratio.one-part")}
    assert "ratio.one-part/support/10 asks something else" in " ".join(faults([topic], held))
