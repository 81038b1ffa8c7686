"""Short questions: their keys found again from the printed text, their length, and how many."""

from __future__ import annotations

from fractions import Fraction

import pytest
from flint import fmpq

from itembank.items.tier import Tier
from itembank.items.topics.registry import topics
from tests.depth import whole
from tests.generators.in_brief import (
    brief_geometry,
    brief_probability,
    brief_ratio,
    brief_statistics,
)
from tests.generators.in_brief.brief_reader import brief_points, check_keys, check_room, compiled

ROWS = {
    **brief_statistics.TOPICS,
    **brief_probability.TOPICS,
    **brief_geometry.TOPICS,
    **brief_ratio.TOPICS,
}
BY_TRYING = {**brief_geometry.TOPICS, **brief_ratio.TOPICS}
BRIEF = sorted(topic.id for topic in topics() if any(map(brief_points, topic.spaces.values())))
HELD_ALREADY = {
    ("geometry.bearings", Tier.SUPPORT),
    ("geometry.bearings", Tier.CORE),
    ("geometry.area-of-rectangles", Tier.CORE),
    ("geometry.area-of-parallelograms", Tier.CORE),
    ("geometry.area-of-triangles", Tier.CHALLENGE),
    ("geometry.pythagoras", Tier.SUPPORT),
    *(("probability.sets", tier) for tier in Tier),
}
"""Tiers whose own questions are often as short as these, or stand without a picture as these do."""


@whole
@pytest.mark.parametrize("topic_id", BRIEF)
def test_every_key_is_found_again_from_the_printed_text(topic_id):
    rows = {compiled(row): solve for row, solve in ROWS[topic_id].items()}
    check_keys(topic_id, rows, fmpq if topic_id in BY_TRYING else Fraction)


@pytest.mark.parametrize("topic_id", BRIEF)
def test_every_tier_has_a_fair_share_of_short_questions(topic_id):
    check_room(topic_id, [tier for tier in Tier if (topic_id, tier) not in HELD_ALREADY])


def test_every_row_is_of_a_topic_with_short_questions():
    assert set(ROWS) <= set(BRIEF)
