"""Answers to *which line is wrong* of a figure or a story: both markers take them alike."""

import re

import pytest

from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.marking.mark import Verdict, mark
from itembank.notation.line import shown_line
from itembank.selfmark.questions import question_data
from tests.other_kinds import made_by
from tests.selfmark.test_same_verdict import MARK_ALL, marker_page, said

TOPICS = (
    "geometry.angles-in-triangles",
    "geometry.area-of-trapeziums",
    "statistics.mean",
    "probability.trees",
    "geometry.pythagoras",
)


def spotted(name, count=8):
    topic = find_topic(name)
    for tier in Tier:
        there = made_by(
            topic.spaces[tier], lambda make: "with_working_spotted" in make.__qualname__
        )
        for index in there[:: len(there) // count + 1]:
            yield topic.item(tier, index)


def spellings(item):
    """Return usual spellings of the key, and answers with another line or another result."""
    name, result = item.key.parts
    number = int(name.text.removeprefix("line "))
    value = shown_line(result)
    bare = re.sub(r" ?(?:°|c?m(?:\^\d)?|mm(?:\^\d)?)$", "", value)
    right = [f"line {number}, {value}", f"{number}, {value}", f"Line {number} {value}"]
    right += [f"line {number}: {value}", f"LINE {number}; {value}", f"line {number}, {bare}"]
    other = number % 3 + 1
    wrong = [f"line {other}, {value}", f"line {number}, {shown_line(item.ask.lines[-1])}"]
    return right, wrong


@pytest.mark.parametrize("name", TOPICS)
def test_usual_spellings_are_right_and_another_line_or_result_is_not(name):
    for item in spotted(name):
        right, wrong = spellings(item)
        for answer in right:
            assert mark(item, answer).verdict is Verdict.RIGHT, answer
        for answer in wrong:
            assert mark(item, answer).verdict in (Verdict.WRONG, Verdict.KNOWN), answer


def test_the_page_says_the_same(browser):
    items = [item for name in TOPICS for item in spotted(name, 4)]
    asked = [(item, [*right, *wrong]) for item in items for right, wrong in [spellings(item)]]
    page = marker_page(browser)
    made = page.evaluate(MARK_ALL, [[question_data(item), answers] for item, answers in asked])
    assert made == [[said(item, answer) for answer in answers] for item, answers in asked]
