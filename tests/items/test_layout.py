"""The layout that ships says what the filters decide; where it is not theirs it is not believed."""

from __future__ import annotations

from typing import ClassVar

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.items.item import Tier
from itembank.items.topics import layout, listing
from itembank.items.topics.frozen import own_topics
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from tests.depth import some, whole


def a_topic(asked=None, threshold=3):
    """Return a small topic whose filters note what they are asked."""

    def keep(a, b):
        if asked is not None:
            asked.append((a, b))
        return (a + b) % threshold == 0

    def twice(topic, tier, of): ...

    own = Space(keep, a=range(9), b=range(9)).then(None, a=range(2), b=range(10))
    mixed = own.also(twice, of=own.some(4)).also(twice, of=own.threes(3, lambda a, b: b, 1))

    class Small(Topic):
        id = "ratio.small"
        spaces: ClassVar = {Tier.CORE: mixed}

    return Small()


def test_a_tier_that_a_topic_lacks_has_no_items():
    with pytest.raises(ItembankError, match="no tier support"):
        a_topic().item(Tier.SUPPORT, 0)


def points(topic):
    return [str(point) for point in topic.spaces[Tier.CORE]]


@whole
def test_the_layout_that_ships_is_what_the_filters_decide():
    held = (listing._folder() / layout.NAME).read_text("ascii")
    mark = listing.mark(listing._folder())
    assert held.partition("\n")[0] == mark, "run: python -m itembank.items.topics.frozen"
    looked_at = some(own_topics(), 10)
    ids = {topic.id for topic in looked_at}
    wrong = {line for line in held.splitlines()[1:] if line.partition("/")[0] in ids}
    wrong ^= {*layout.text_of(looked_at, mark).splitlines()[1:]}
    assert not wrong, f"Decided otherwise now: {sorted(line.split()[0] for line in wrong)}"


def test_no_filter_is_asked_of_what_is_known():
    text = layout.text_of([a_topic()], "mark")
    asked = []
    topic = a_topic(asked)
    layout.know(topic, layout.Layout(text).numbers)
    assert points(topic) == points(a_topic())
    assert topic.spaces[Tier.CORE].part_indices == a_topic().spaces[Tier.CORE].part_indices
    assert not asked


def test_writing_asks_the_filters_whatever_is_known():
    old = layout.text_of([a_topic()], "mark")
    topic = a_topic(threshold=4)
    layout.know(topic, layout.Layout(old).numbers)
    assert points(topic) == points(a_topic()), "it is believed"
    assert layout.text_of([topic], "mark") == layout.text_of([a_topic(threshold=4)], "mark")
    assert points(topic) == points(a_topic(threshold=4))


@pytest.mark.parametrize("harm", ["=", "=abc", "=!!", "x", "", "=" + "~" * 40])
def test_the_filter_is_asked_where_a_line_is_damaged(harm):
    text = layout.text_of([a_topic()], "mark")
    lines = [f"{line.split()[0]} {harm}" for line in text.splitlines()[1:]]
    topic = a_topic()
    layout.know(topic, layout.Layout("\n".join(["mark", *lines])).numbers)
    assert points(topic) == points(a_topic())


def test_a_layout_of_other_files_is_not_believed(tmp_path):
    (tmp_path / layout.NAME).write_text(layout.text_of([a_topic()], "mark"), "ascii")
    assert layout.read(tmp_path, "mark") is not None
    assert layout.read(tmp_path, "another") is None
    (tmp_path / layout.NAME).write_bytes(b"mark\nratio.small/core/0 \xff\n")
    assert layout.read(tmp_path, "mark") is None
    (tmp_path / layout.NAME).write_text("mark\nratio.small/core/0\n", "ascii")
    assert layout.read(tmp_path, "mark") is None
    assert layout.read(tmp_path / "nowhere", "mark") is None


@given(st.lists(st.integers(0, 2**31 - 1)))
def test_packed_numbers_are_read_back(numbers):
    assert list(layout.unpacked(layout.packed(numbers))) == numbers
