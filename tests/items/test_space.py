"""Spaces grow at their end: whatever is added, an index keeps its point."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.items.topics.space import Space

AXES = st.lists(st.integers(0, 4), min_size=1, max_size=4, unique=True)
PARTS = st.lists(st.tuples(AXES, AXES, st.integers(1, 3)), min_size=1, max_size=4)


def built(parts):
    (a, b, k), *more = parts
    space = Space(lambda x, y: (x + y) % k == 0, a=a, b=b)
    for a, b, k in more:
        space = space.then(lambda x, y, k=k: (x + y) % k == 0, a=a, b=b)
    return space


@given(PARTS, st.tuples(AXES, AXES))
def test_growth_keeps_every_index_and_repeats_no_point(parts, ranges):
    before = built(parts)
    after = before.then(None, a=ranges[0], b=ranges[1])
    points = list(after)
    assert points[: len(before)] == list(before)
    assert len(set(points)) == len(points)
    assert set(points) == {*before, *((x, y) for x in ranges[0] for y in ranges[1])}
    assert [after.place(values) for values in points] == list(range(len(points)))
    assert after.place((9, 9)) is None


@given(PARTS)
def test_a_filter_over_all_parts_keeps_the_order(parts):
    space = built(parts)
    assert list(space.where(lambda x, y: x != 1)) == [point for point in space if point[0] != 1]


@given(PARTS)
def test_the_axes_hold_every_value_a_point_has(parts):
    space = built(parts)
    assert all(x in space.axes["a"] and y in space.axes["b"] for x, y in space)


@given(PARTS, st.integers(0, 9), st.tuples(AXES, AXES))
def test_a_lasting_sample_is_the_same_after_growth(parts, seed, ranges):
    before = built(parts)
    after = before.then(None, a=ranges[0], b=ranges[1])
    for count in (0, 1, len(before) // 2, len(before)):
        if count <= len(before):
            drawn = before.lasting_sample(count, random.Random(seed))
            assert drawn == after.lasting_sample(count, random.Random(seed))
    everything = after.lasting_sample(len(after), random.Random(seed))
    assert sorted(everything) == list(range(len(after)))
    with pytest.raises(ValueError, match="larger"):
        after.lasting_sample(len(after) + 1, random.Random(seed))


def test_a_sample_reaches_what_was_added():
    grown = Space(None, a=range(5)).then(None, a=range(50))
    assert max(grown.sample(40, random.Random(1))) >= 5
    assert max(grown.lasting_sample(5, random.Random(1))) == 4


@pytest.mark.parametrize("axes", [{"a": (1,)}, {"b": (1,), "a": (1,)}, {"a": (1,), "c": (1,)}])
def test_a_further_part_has_the_same_axes(axes):
    with pytest.raises(ValueError, match="same axes"):
        Space(None, a=(1,), b=(2,)).then(None, **axes)


def test_its_repr_says_how_it_grew():
    space = Space(None, a=(1, 2)).then(len, a=(3,))
    assert repr(space) == "Space(a=(1, 2)).then(len, a=(3,))"
