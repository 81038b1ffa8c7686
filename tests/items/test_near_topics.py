"""Who writes a topic in a teacher's words is shown its id."""

import pytest

from itembank.errors import ItembankError
from itembank.items.topics.near_topics import near_topics
from itembank.items.topics.registry import find_topic, listed_topics, topic_ids
from itembank.planning.topic_names import unknown_topic


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("hcf", "number.hcf"),
        ("HCF", "number.hcf"),
        ("circle area", "geometry.area-of-circles"),
        ("Pythagoras", "geometry.pythagoras"),
        ("trig", "geometry.trigonometry"),
        ("two step", "equations.two-step"),
        ("pie charts", "statistics.pie-charts"),
        ("highest common factor", "number.hcf"),
        ("fractons.add-unlike", "fractions.add-unlike"),
    ],
)
def test_what_a_teacher_calls_a_topic_is_found_wherever_a_topic_is_asked_for(written, meant):
    assert near_topics(written, topic_ids())[0] == meant
    assert meant in unknown_topic(written, topic_ids())
    with pytest.raises(ItembankError, match=meant):
        find_topic(written)


def test_every_topic_is_found_by_its_title():
    for topic in listed_topics().values():
        assert topic.id in near_topics(topic.title, topic_ids()), topic.title


def test_words_of_no_topic_find_none():
    assert near_topics("minibus", topic_ids()) == []
    assert near_topics("", topic_ids()) == []
    assert near_topics("…", topic_ids()) == []


def test_a_strand_is_said_to_be_one():
    told = unknown_topic("Fractions", topic_ids())
    assert told.startswith(
        "‘Fractions’ is a strand, not a topic. Its topics are fractions.add-like,"
    )
    count = sum(topic.startswith("fractions.") for topic in topic_ids())
    assert told.endswith(f"and {count - 3} more.")
