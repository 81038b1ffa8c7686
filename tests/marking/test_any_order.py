"""Numbers that the question asks for in no order are right in any."""

import random
from itertools import permutations

import pytest

from itembank.items.topics.registry import find_topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import tree as t
from itembank.notation.line import shown_line

IN_NO_ORDER = {
    "algebra.factorise-quadratics": "Find two numbers whose sum",
    "number.negatives-multiply": "Write two numbers whose sum",
    "equations.inequalities-on-a-line": "List the integers",
    "probability.sets": "List the members",
}
IN_ORDER = {
    "fractions.order": "Put these in order",
    "ratio.share": "Share",
    "sequences.find-term": "Write the first four terms",
    "graphs.coordinates": "coordinates",
}
MOST = 5
"""Numbers of which every order is tried."""


def items(topic, words):
    rng = random.Random(9)
    for tier, space in find_topic(topic).spaces.items():
        for i in space.sample(min(len(space), 120), rng):
            item = find_topic(topic).item(tier, i)
            text = "".join(run for run in item.prompt if isinstance(run, str))
            several = isinstance(item.key, t.Listing) and 1 < len(set(item.key.parts)) <= MOST
            if words in text and several and not isinstance(item.key.parts[0], t.Label):
                yield item


def in_every_order(key):
    for parts in permutations(key.parts):
        if parts != key.parts:
            yield shown_line(t.Listing(parts, key.brackets))


@pytest.mark.parametrize("topic", IN_NO_ORDER)
def test_every_order_is_right(topic):
    found = list(items(topic, IN_NO_ORDER[topic]))
    assert len(found) >= 5
    for item in found[:12]:
        for typed in in_every_order(item.key):
            assert mark(item, typed).verdict is Verdict.RIGHT, (item.address, typed)


@pytest.mark.parametrize("topic", IN_NO_ORDER)
def test_another_number_is_wrong_wherever_it_stands(topic):
    for item in list(items(topic, IN_NO_ORDER[topic]))[:12]:
        for place in range(len(item.key.parts)):
            parts = list(item.key.parts)
            parts[place] = t.Int(997)
            typed = shown_line(t.Listing(tuple(parts), item.key.brackets))
            assert mark(item, typed).verdict is Verdict.WRONG, (item.address, typed)


@pytest.mark.parametrize("topic", IN_ORDER)
def test_an_order_that_is_asked_for_counts(topic):
    found = list(items(topic, IN_ORDER[topic]))
    assert len(found) >= 5
    for item in found[:12]:
        for typed in in_every_order(item.key):
            assert mark(item, typed).verdict is not Verdict.RIGHT, (item.address, typed)
