"""What a pack keeps of a question of any topic is read back as the very same question."""

import random

import pytest

from itembank.items.topics.registry import find_topic, topic_ids
from itembank.packs.data.convert import Faces, pack_item
from itembank.packs.data.read_back import read_item
from tests.depth import cases, each, whole

EACH = cases(1, 16, 4)
"""Questions of each part of a tier."""


def some(space, rng):
    """Return indices of a space: some of each of its parts, since parts ask different things."""
    return [
        index for part in space.part_indices for index in rng.sample(part, min(EACH, len(part)))
    ]


@whole
@pytest.mark.parametrize("name", each(topic_ids(), 40, 1))
def test_questions_are_read_back(name):
    topic, rng = find_topic(name), random.Random(name)
    faces = Faces()
    for tier, space in topic.spaces.items():
        for index in some(space, rng):
            item = topic.item(tier, index)
            stored = pack_item(item, topic, faces)
            back = read_item(type(stored).model_validate_json(stored.model_dump_json()))
            assert (back.prompt, back.key, back.ask) == (item.prompt, item.key, item.ask)
            assert back.figure == item.figure
            assert [step.maths for step in back.steps] == [step.maths for step in item.steps]
            assert [slip.wrong for slip in back.slips] == [slip.wrong for slip in item.slips]
