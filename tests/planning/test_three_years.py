"""The three years of the demo school teach every topic there is, each after what it rests on."""

from pathlib import Path

import pytest

from itembank.items.topics.registry import listed_topics
from itembank.work.topics.taught_by_year import taught_by_year
from itembank.work.week.begin import folder_of

HOME = Path(__file__).resolve().parents[2] / "banks" / "three-years"


@pytest.fixture(scope="module")
def folder():
    return folder_of(HOME)


def test_every_topic_is_taught_in_one_year(folder):
    taught = [topic.topic for scheme in folder.schemes.values() for topic in scheme.topics]
    assert sorted(taught) == list(listed_topics())
    assert taught_by_year(HOME, tuple(listed_topics())).untaught == ()


def test_each_topic_comes_after_what_it_rests_on(folder):
    assert folder.remarks == ()
    last = folder.schemes["year-9"]
    order = [each.topic for each in last.known]
    assert sorted(order) == list(listed_topics())
    for name, topic in listed_topics().items():
        for below in topic.prerequisites:
            assert order.index(below) <= order.index(name), (below, name)


def test_a_class_of_year_9_knows_what_years_7_and_8_were_taught(folder):
    group = folder.department.find_class("9S")
    known = {topic.topic for topic in folder.scheme_of(group).topics}
    for year in ("year-7", "year-8"):
        assert {topic.topic for topic in folder.schemes[year].topics} <= known
