"""The map of topics: nothing is lost in it, and no arrow runs through a box."""

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.figures.drawing import Area, Stroke, Text, text_box
from itembank.items.topics.registry import listed_topics
from itembank.planning.topic_map.map_drawing import map_drawing
from itembank.planning.topic_map.topic_places import depths, topic_places, without_detours
from tests.depth import cases, whole

STRANDS = ("number", "ratio", "algebra", "garden")


@st.composite
def graphs(draw):
    """Draw topics, each of which rests on earlier ones alone."""
    count = draw(st.integers(1, 14))
    names = [f"{draw(st.sampled_from(STRANDS))}.t{n:02}" for n in range(count)]
    return {
        name: tuple(
            draw(st.lists(st.sampled_from(names[:n]), max_size=4, unique=True)) if n else ()
        )
        for n, name in enumerate(names)
    }


def reached(rests):
    """Return everything that each topic rests on, near or far, by walking."""

    def walk(name):
        found = set()
        todo = [*rests[name]]
        while todo:
            other = todo.pop()
            if other not in found:
                found.add(other)
                todo += rests[other]
        return found

    return {name: walk(name) for name in rests}


@given(graphs())
def test_detours_go_and_nothing_else(rests):
    short = without_detours(rests)
    assert reached(short) == reached(rests)
    for name, direct in short.items():
        for other in direct:  # none can be spared
            less = {**short, name: tuple(text for text in direct if text != other)}
            assert reached(less) != reached(rests)


@given(graphs())
def test_a_topic_is_deeper_than_all_it_rests_on(rests):
    deep = depths(rests)
    assert all(deep[other] < deep[name] for name in rests for other in rests[name])
    assert all(not deep[name] or deep[name] - 1 in {deep[o] for o in rests[name]} for name in rests)


def crosses(a, b, box):
    """Tell whether the straight line from a to b goes through the inside of a box."""
    left, bottom, right, top = box
    low, high = 0, 1
    for start, step, near, far in (
        (a.x, b.x - a.x, left, right),
        (a.y, b.y - a.y, bottom, top),
    ):
        if step == 0:
            if not near < start < far:
                return False
            continue
        one, other = sorted(((near - start) / step, (far - start) / step))
        low, high = max(low, one), min(high, other)
    return low < high


def held_to(layout, titles):
    made = map_drawing(layout, titles)
    boxes = [
        (min(p.x for p in m.points), min(p.y for p in m.points), *max(m.points))
        for m in made.marks
        if isinstance(m, Area)
    ]
    assert len(boxes) == len(layout.places)
    for one, other in combinations(boxes, 2):
        assert one[2] < other[0] or other[2] < one[0] or one[3] < other[1] or other[3] < one[1]
    arrows = [mark for mark in made.of("rests on") if isinstance(mark, Stroke)]
    assert len(arrows) == len(layout.edges)
    for arrow in arrows:
        for a, b in pairwise(arrow.points):
            assert not any(crosses(a, b, box) for box in boxes)
    for title in made.of("title"):
        assert isinstance(title, Text)
        room = text_box(title)
        assert any(
            b[0] <= room.left and room.right <= b[2] and b[1] <= room.bottom and room.top <= b[3]
            for b in boxes
        )


@whole
@settings(max_examples=cases(12, 60, 25))
@given(graphs(), st.data())
def test_arrows_pass_between_boxes(rests, data):
    titles = {name: data.draw(st.sampled_from(("Ratio", "Adding " * 9))).strip() for name in rests}
    held_to(topic_places(rests, depths(rests)), titles)
    columns = {name: data.draw(st.integers(0, 3)) for name in rests}
    held_to(topic_places(rests, columns, ("a", "b", "c", "d")), titles)


@pytest.fixture(scope="module")
def ours():
    return {name: topic.prerequisites for name, topic in listed_topics().items()}


def test_our_own_topics_have_a_map(ours):
    layout = topic_places(ours, depths(ours))
    assert set(layout.places) == set(ours)
    assert len(set(layout.places.values())) == len(ours)
    held_to(layout, {name: topic.title for name, topic in listed_topics().items()})
