"""The choice of a week's topics: what must hold holds, and nothing better fits."""

import datetime
import itertools
import random
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.planning.choosing import topic_programme
from itembank.planning.choosing.choose_topics import (
    ChoiceSettings,
    LessonWish,
    TopicState,
    choose_topics,
)
from itembank.planning.choosing.memory import Seen, asked, recall, remember
from itembank.planning.choosing.programme import Programme
from itembank.planning.choosing.reason_words import reason_words
from itembank.planning.choosing.topic_programme import AGAIN
from itembank.planning.choosing.topic_reason import reason
from itembank.planning.choosing.topic_worth import WIDENING, first_worth, next_worths, worth
from tests.depth import cases, each
from tests.planning.choice_samples import MONDAY, PLAIN, counts, some_topics, topic, week


@given(
    st.integers(1, 25),
    st.lists(st.integers(0, 4), min_size=1, max_size=5, unique=True),
    st.integers(1, 12),
    st.integers(0, 99),
)
@settings(max_examples=cases(25, 40), deadline=None)
def test_every_starter_is_full_even_and_only_on_what_was_taught(number, dates, questions, seed):
    topics = some_topics(number)
    lessons = week(*sorted(dates), questions=questions)
    chosen = choose_topics(lessons, topics, {}, seed=seed)
    taught = {topic.topic: topic.taught for topic in topics}
    assert [choice.date for choice in chosen] == [lesson.date for lesson in lessons]
    for choice in chosen:
        found = counts(choice)
        assert sum(found.values()) == questions
        assert all(taught[name] < choice.date for name in found)
        assert max(found.values()) == -(-questions // number)
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
@settings(max_examples=cases(25, 40), deadline=None)
def test_no_other_starter_is_worth_more(rows, questions):
    topics = [topic(f"t{k}", taught, right, seen) for k, (taught, right, seen) in enumerate(rows)]
    (choice,) = choose_topics(week(0, questions=questions), topics, {}, PLAIN)
    values = {topic.topic: worth(topic, MONDAY, PLAIN) for topic in topics}
    best = max(
        sum(values[one.topic] for one in some) for some in itertools.combinations(topics, questions)
    )
    assert sum(values[name] for name in counts(choice)) == pytest.approx(best, abs=1e-3)


class Disordered(Programme):
    """The same programme, put to the solver in another order."""

    def solve(self):
        lot = random.Random(len(self._rows))
        order, rows = list(range(len(self._low))), list(self._rows)
        lot.shuffle(order)
        lot.shuffle(rows)
        other = Programme()
        for number in order:
            other.count(self._low[number], self._high[number], self._worth[number])
        place = {number: k for k, number in enumerate(order)}
        other._rows = [([place[v] for v in some], *rest) for some, *rest in rows]
        solution = other.solve()
        return [solution[place[number]] for number in range(len(order))]


@pytest.mark.parametrize("seed", each(range(8), 3))
@pytest.mark.parametrize("number", [3, 9, 30])
def test_ties_are_settled_by_the_seed_and_not_by_the_solver(monkeypatch, number, seed):
    # Taught and seen on the same days with the same results: all topics tie.
    topics = [topic(f"t{k}", 30, 20, 9) for k in range(number)]
    chosen = choose_topics(week(0, 1, 3, 4), topics, {}, seed=seed)
    monkeypatch.setattr(topic_programme, "Programme", Disordered)
    assert choose_topics(week(0, 1, 3, 4), topics, {}, seed=seed) == chosen


@given(
    st.lists(
        st.tuples(st.integers(1, 60), st.integers(0, 30), st.integers(1, 40)),
        min_size=2,
        max_size=4,
    ),
    st.lists(st.integers(0, 4), min_size=2, max_size=3, unique=True),
    st.sampled_from([0, 2, 4, 7]),
)
@settings(max_examples=cases(25, 40), deadline=None)
def test_no_other_week_is_worth_more(rows, dates, rest):
    topics = [topic(f"t{k}", taught, right, seen) for k, (taught, right, seen) in enumerate(rows)]
    lessons = week(*sorted(dates), questions=1)
    wish = ChoiceSettings(fewest_recent=0, fewest_older=0, rest=rest)
    size = max(sum(worth(topic, lessons[0].date, wish) for topic in topics) / len(topics), 1)

    def total(names):
        found = 0.0
        for state in topics:
            days = [x.date for x, name in zip(lessons, names, strict=True) if name == state.topic]
            start = lessons[0].date
            found += first_worth(state, days[0], start, wish) if days else 0
            for k in range(len(days) - 1):
                found += next_worths(state, days[k : k + 2], wish)[0] - AGAIN * size * (k + 1)
        return found

    chosen = [
        name for choice in choose_topics(lessons, topics, {}, wish) for name in counts(choice)
    ]
    every = itertools.product([topic.topic for topic in topics], repeat=len(lessons))
    assert total(chosen) == pytest.approx(max(map(total, every)), abs=1e-3)


@given(
    st.integers(2, 12),
    st.lists(st.tuples(st.integers(2, 90), st.integers(0, 30), st.integers(0, 30)), max_size=4),
    st.lists(st.integers(0, 4), min_size=1, max_size=5, unique=True),
    st.integers(1, 8),
    st.integers(0, 99),
)
@settings(max_examples=cases(25, 60), deadline=None)
def test_a_weaker_topic_comes_no_later_than_a_stronger_one(others, rows, dates, questions, seed):
    taught = MONDAY - datetime.timedelta(days=100)

    def asked_on(name, choose):
        seen = tuple(
            Seen(MONDAY - datetime.timedelta(days=ago), choose(one, other), 30)
            for ago, one, other in rows
        )
        return TopicState(name, name, taught, remember(taught, seen), seen)

    weak, strong = asked_on("weak", min), asked_on("strong", max)
    lessons = week(*sorted(dates), questions=questions)
    # In either order, so that no place in the list helps.
    for pair in ([weak, strong], [strong, weak]):
        topics = [*pair, *some_topics(others)]
        chosen = choose_topics(lessons, topics, {}, seed=seed)
        when = {
            name: [k for k, choice in enumerate(chosen) if name in counts(choice)]
            for name in ("weak", "strong")
        }
        if worth(weak, MONDAY, PLAIN) > worth(strong, MONDAY, PLAIN) + 1e-2 and when["strong"]:
            assert when["weak"]
            assert when["weak"][0] <= when["strong"][0]


@given(st.sampled_from([0, 2, 3, 5]), st.integers(0, 99))
@settings(max_examples=15, deadline=None)
def test_topics_rest_for_as_long_as_is_wanted(rest, seed):
    topics = [topic(f"t{k}", 50 + k, 20, 10) for k in range(9)]
    chosen = choose_topics(
        week(0, 1, 2, 3, 4, questions=1), topics[:5], {}, ChoiceSettings(rest=rest), seed
    )
    days = {}
    for choice in chosen:
        for name in counts(choice):
            assert all((choice.date - day).days >= rest for day in days.get(name, ()))
            days.setdefault(name, []).append(choice.date)
    fresh = topic("fresh", 50, 2, 1)  # weak, and seen the day before the week begins
    (choice,) = choose_topics(
        week(0, questions=8), [*topics, fresh], {}, ChoiceSettings(rest=rest), seed
    )
    assert "fresh" not in counts(choice)


@given(
    st.integers(1, 10),
    st.integers(1, 8),
    st.dictionaries(st.integers(0, 9), st.integers(1, 3), max_size=3),
    st.sets(st.integers(0, 9), max_size=9),
)
@settings(max_examples=cases(25, 60), deadline=None)
def test_pins_and_bans_are_always_kept(number, questions, pins, bans):
    topics = some_topics(number)
    pinned = {f"t{k}": n for k, n in pins.items() if k < number}
    banned = frozenset(f"t{k}" for k in bans) - set(pinned)
    free = {topic.topic for topic in topics} - banned
    if sum(pinned.values()) > questions or not free:
        return
    wish = LessonWish(MONDAY, questions, pinned=pinned, banned=banned)
    chosen = choose_topics([wish, *week(1, 2, questions=questions)], topics, {})
    found = counts(chosen[0])
    assert sum(found.values()) == questions
    assert set(found) <= free
    assert all(found[name] >= n for name, n in pinned.items())
    if questions - sum(pinned.values()) <= len(free - set(pinned)):
        assert all(found[name] == n for name, n in pinned.items())
        assert all(n == 1 for name, n in found.items() if name not in pinned)


def test_a_week_spreads_topics_out():
    topics = [topic(f"t{k}", 50, 20, 12) for k in range(20)]
    chosen = choose_topics(week(0, 1, 2, 3, 4, questions=4), topics, {})
    asked = [name for choice in chosen for name in counts(choice)]
    assert len(set(asked)) == 20  # twenty questions, twenty topics: none comes twice


def test_what_must_come_again_within_a_week_takes_turns_and_rests():
    topics = [topic(f"t{k}", 50, 20, 12) for k in range(10)]
    chosen = choose_topics(week(0, 1, 2, 3, 4, questions=4), topics, {})
    days = {topic.topic: [] for topic in topics}
    for choice in chosen:
        for name in counts(choice):
            days[name].append(choice.date.day)
    assert all(len(found) == 2 and abs(found[1] - found[0]) >= 2 for found in days.values())


def test_worth_is_days_at_rest_times_weakness_less_for_what_came_often():
    once = topic("once", 60, 15, 8)
    known = recall(once.memory, MONDAY)
    assert worth(once, MONDAY, PLAIN) == pytest.approx(8 * (1 - known) ** 0.5 * 2**-WIDENING)
    assert worth(once, MONDAY, ChoiceSettings(weak=0)) == pytest.approx(8 * 2**-WIDENING)
    early = Seen(MONDAY - datetime.timedelta(days=30), 0, 0)
    often = TopicState("often", "Often", once.taught, once.memory, (early, *once.seen))
    assert 0 < worth(often, MONDAY, PLAIN) < worth(once, MONDAY, PLAIN)
    # Two questions of one day are one return.
    twice = TopicState("twice", "Twice", once.taught, once.memory, once.seen * 2)
    assert worth(twice, MONDAY, PLAIN) == worth(once, MONDAY, PLAIN)
    assert worth(once, once.memory.last, PLAIN) == 0
    # Less is left of it the less it has rested.
    dates = [MONDAY + datetime.timedelta(days=d) for d in range(4)]
    free, held = (next_worths(once, dates, ChoiceSettings(rest=rest)) for rest in (0, 3))
    parts = [some / whole for some, whole in zip(held, free, strict=True)]
    assert parts == pytest.approx([(1 / 3) ** 0.5, (2 / 3) ** 0.5, 1])
    first = first_worth(once, MONDAY, MONDAY, ChoiceSettings(rest=14))
    assert first == pytest.approx(worth(once, MONDAY, ChoiceSettings()) * (8 / 14) ** 0.5)


def test_a_topic_that_was_only_taught_need_not_rest_before_it_is_first_asked():
    """Rest is between two askings: a topic of last week may come as soon as it is worth it."""
    rules = ChoiceSettings(rest=14)
    taught = topic("taught", 8)
    assert first_worth(taught, MONDAY, MONDAY, rules) == worth(taught, MONDAY, rules) > 0
    asked_too = topic("asked", 60, 15, 8)
    assert first_worth(asked_too, MONDAY, MONDAY, rules) < worth(asked_too, MONDAY, rules)


@pytest.mark.parametrize("times", range(3))
def test_a_return_within_the_week_counts_the_asking_before_it(times):
    later = MONDAY + datetime.timedelta(days=2)
    days = [MONDAY - datetime.timedelta(days=10 * (k + 1)) for k in range(times)]
    seen = tuple(Seen(day, 15, 30) for day in reversed(days))
    taught = MONDAY - datetime.timedelta(days=60)
    state = TopicState("often", "Often", taught, remember(taught, seen), seen)
    (found,) = next_worths(state, [MONDAY, later], PLAIN)
    wrong = 1 - recall(asked(state.memory, MONDAY), later)
    assert found == pytest.approx(wrong**0.5 * (times + 2) ** -WIDENING)


@pytest.mark.parametrize("left", [0, 1, None])
def test_a_topic_comes_no_oftener_in_a_week_than_it_has_questions_left(left):
    weak = replace(topic("weak", 90, 1, 30), rested=left)
    strong = [topic(f"t{k}", 50, 29, 2) for k in range(3)]
    chosen = choose_topics(week(0, 2, 4, questions=2), [weak, *strong], {}, PLAIN)
    times = sum("weak" in counts(choice) for choice in chosen)
    assert times == (2 if left is None else left)


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
    found = reason(topics[7], lesson[0], need, [*topics, topic("next", 0)])
    assert "needed today for Next" in reason_words(found)


def test_pins_and_bans_win():
    topics = some_topics(12)
    wish = LessonWish(MONDAY, 8, pinned={"t3": 2, "new": 1}, banned=frozenset({"t0", "t1"}))
    (choice,) = choose_topics([wish], [*topics, topic("new", -20)], {})
    found = counts(choice)
    assert found["t3"] == 2
    assert found["new"] == 1
    assert not {"t0", "t1"} & set(found)


@pytest.mark.parametrize(
    ("wish", "said"),
    [
        (LessonWish(MONDAY, 8, pinned={"nowhere": 1}), "not in the scheme"),
        (LessonWish(MONDAY, 8, pinned={"t1": 1}, banned=frozenset({"t1"})), "both pinned"),
        (LessonWish(MONDAY, 2, pinned={"t1": 3}), "ask for 3 questions"),
        (LessonWish(datetime.date(2020, 1, 6), 8), "nothing in the scheme was taught"),
        (LessonWish(MONDAY, 8, banned=frozenset({"t0", "t1", "t2"})), "all that was taught"),
    ],
)
def test_what_cannot_be_is_refused_in_plain_words(wish, said):
    with pytest.raises(ItembankError, match=said):
        choose_topics([wish], some_topics(3), {})


def test_a_topic_seen_only_as_part_of_a_score_has_no_share_of_its_own():
    taught = MONDAY - datetime.timedelta(days=40)
    alone = Seen(MONDAY - datetime.timedelta(days=20), 15, 30)
    part = Seen(MONDAY - datetime.timedelta(days=6), 0, 0, scored=True)
    said = "last seen 6 days ago, only as part of a score"
    for seen, share in (((part,), ""), ((alone, part), ", 50 % right on")):
        state = TopicState("a", "A", taught, remember(taught, seen), seen)
        found = reason_words(reason(state, LessonWish(MONDAY, 4), {}, [state]))
        assert f"{said}{share}" in found
        assert ("%" in found) == bool(share)


@pytest.mark.parametrize(("left", "most"), [(0, 0), (1, 0), (2, 1)])
def test_what_one_lesson_has_to_ask_of_a_topic_is_gone_for_the_next(left, most):
    few = replace(topic("few", 90, 1, 30), rested=left)
    first, second = week(0, 2, questions=3)
    lessons = [replace(first, pinned={"few": 1}), second]
    limits = topic_programme._limits(lessons, [few, topic("a", 90), topic("b", 90)])
    assert limits[0] == ([1, 1, 1], [1, 1, 1])
    assert limits[1][1][0] == most
