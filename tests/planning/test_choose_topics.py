"""The choice of a week's topics: what must hold holds, and nothing better fits."""

import datetime
import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.planning.choose_topics import (
    ChoiceSettings,
    LessonWish,
    TopicState,
    choose_topics,
    worth,
)
from itembank.planning.memory import Seen, remember

MONDAY = datetime.date(2026, 11, 30)
PLAIN = ChoiceSettings(fewest_recent=0, fewest_older=0)


def topic(name, taught_ago, right=None, seen_ago=None):
    taught = MONDAY - datetime.timedelta(days=taught_ago)
    seen = ()
    if right is not None:
        seen = (Seen(MONDAY - datetime.timedelta(days=seen_ago), right, 30),)
    return TopicState(name, name.title(), taught, remember(taught, seen), seen)


def some_topics(count, gap=9):
    return [topic(f"t{k}", 3 + gap * k, 10 + k, 2 + 5 * (k % 4)) for k in range(count)]


def week(*dates, questions=8, **rest):
    return [LessonWish(MONDAY + datetime.timedelta(days=d), questions, **rest) for d in dates]


def counts(choice):
    return {one.topic: one.count for one in choice.topics}


@given(
    st.integers(1, 25),
    st.lists(st.integers(0, 4), min_size=1, max_size=5, unique=True),
    st.integers(1, 12),
    st.integers(0, 99),
)
@settings(max_examples=40, deadline=None)
def test_every_starter_is_full_even_and_only_on_what_was_taught(number, dates, questions, seed):
    topics = some_topics(number)
    lessons = week(*sorted(dates), questions=questions)
    chosen = choose_topics(lessons, topics, {}, seed=seed)
    taught = {one.topic: one.taught for one in topics}
    assert [one.date for one in chosen] == [one.date for one in lessons]
    for choice in chosen:
        found = counts(choice)
        assert sum(found.values()) == questions
        assert all(taught[name] < choice.date for name in found)
        assert max(found.values()) == -(-questions // number)
        assert all(one.reason for one in choice.topics)
    assert choose_topics(lessons, topics, {}, seed=seed) == chosen


def test_topics_not_yet_taught_are_never_asked():
    topics = [*some_topics(3), topic("next", -2), topic("today", 0)]
    first, last = choose_topics(week(0, 4, questions=5), topics, {})
    assert not {"next", "today"} & set(counts(first))
    assert {"next", "today"} & set(counts(last))


@given(
    st.lists(
        st.tuples(st.integers(1, 60), st.integers(0, 30), st.integers(1, 40)),
        min_size=4,
        max_size=8,
    ),
    st.integers(1, 4),
)
@settings(max_examples=40, deadline=None)
def test_no_other_starter_is_worth_more(rows, questions):
    topics = [topic(f"t{k}", taught, right, seen) for k, (taught, right, seen) in enumerate(rows)]
    (choice,) = choose_topics(week(0, questions=questions), topics, {}, PLAIN)
    values = {one.topic: worth(one, MONDAY, PLAIN) for one in topics}
    best = max(
        sum(values[one.topic] for one in some) for some in itertools.combinations(topics, questions)
    )
    assert sum(values[name] for name in counts(choice)) == pytest.approx(best, abs=1e-4)


def test_a_week_spreads_topics_out():
    topics = [topic(f"t{k}", 50, 20, 12) for k in range(20)]
    chosen = choose_topics(week(0, 1, 2, 3, 4, questions=4), topics, {})
    asked = [name for choice in chosen for name in counts(choice)]
    assert len(set(asked)) == 20  # twenty questions, twenty topics: none comes twice


def test_recent_and_older_topics_are_mixed():
    recent = [topic(f"r{k}", 4 + k, 29, 1) for k in range(4)]  # just seen and nearly all right
    older = [topic(f"o{k}", 60 + k, 6, 30) for k in range(12)]
    (choice,) = choose_topics(week(0), recent + older, {})
    assert sum(name.startswith("r") for name in counts(choice)) == 2


def test_weak_topics_come_first():
    topics = [topic(f"t{k}", 50, 29 if k % 2 else 9, 12) for k in range(8)]
    (choice,) = choose_topics(week(0, questions=4), topics, {}, PLAIN)
    assert set(counts(choice)) == {"t0", "t2", "t4", "t6"}


def test_what_the_coming_lesson_needs_is_preferred_and_said():
    topics = [topic(f"t{k}", 50, 20, 12) for k in range(12)]
    lesson = week(0, questions=3, coming=("next",))
    need = {"next": ("t7", "t9")}
    (choice,) = choose_topics(lesson, [*topics, topic("next", 0)], need, PLAIN)
    assert {"t7", "t9"} <= set(counts(choice))
    assert "next" not in counts(choice)
    said = {one.topic: one.reason for one in choice.topics}
    assert "needed today for Next" in said["t7"]


def test_pins_and_bans_win():
    topics = some_topics(12)
    wish = LessonWish(MONDAY, 8, pinned={"t3": 2, "new": 1}, banned=frozenset({"t0", "t1"}))
    (choice,) = choose_topics([wish], [*topics, topic("new", -20)], {})
    found = counts(choice)
    assert found["t3"] == 2
    assert found["new"] == 1
    assert not {"t0", "t1"} & set(found)
    assert "pinned by you" in next(o.reason for o in choice.topics if o.topic == "t3")


@pytest.mark.parametrize(
    ("wish", "said"),
    [
        (LessonWish(MONDAY, 8, pinned={"nowhere": 1}), "not in the scheme"),
        (LessonWish(MONDAY, 8, pinned={"t1": 1}, banned=frozenset({"t1"})), "both pinned"),
        (LessonWish(MONDAY, 2, pinned={"t1": 3}), "ask for 3 questions"),
        (LessonWish(datetime.date(2020, 1, 6), 8), "nothing in the scheme was taught"),
    ],
)
def test_what_cannot_be_is_refused_in_plain_words(wish, said):
    with pytest.raises(ItembankError, match=said):
        choose_topics([wish], some_topics(3), {})
