"""What holds of every choice of starter, versions and sheets, whatever the topics and seed."""

import random
from collections import Counter
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.items.item import Tier
from itembank.items.measures.closeness import closeness
from itembank.items.measures.looks import answer_of
from itembank.items.topics.registry import find_topic
from itembank.items.topics.space import Space
from itembank.notation import tree as t
from itembank.packs.choosing.chance import shuffled
from itembank.packs.choosing.follow_up import choose_sheet, run_lengths
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.choosing.parameters import along, along_two, differing, kind_at
from itembank.packs.choosing.starter import Share, choose_starter, share_out, slots, tier_counts
from tests.depth import cases
from tests.packs.small_topics import adding

TOPICS = [adding(f"small.t{n}", 18) for n in range(4)]
seeds = st.integers(0, 2**31 - 1)
some_topics = st.integers(1, 4).map(lambda n: TOPICS[:n])


def starter(topics, questions, seed, versions=1, pool=None):
    counts = share_out([None] * len(topics), questions)
    shares = [Share(t, n) for t, n in zip(topics, counts, strict=True) if n]
    return choose_starter(shares, versions, seed, pool or Pool())


@given(some_topics, st.integers(4, 20), seeds)
@settings(max_examples=cases(25, 40), deadline=None)
def test_starter_is_balanced_easy_first_and_without_twins(topics, questions, seed):
    (first,) = starter(topics, questions, seed)
    assert len(first) == questions
    counts = Counter(drawn.item.topic for drawn in first)
    assert len(counts) == len(topics)
    assert max(counts.values()) - min(counts.values()) <= 1
    assert all(a.difficulty <= b.difficulty for a, b in pairwise(first))
    assert len({drawn.item.twin for drawn in first}) == questions
    tiers = Counter(drawn.item.tier for drawn in first)
    assert tiers[Tier.CHALLENGE] <= tiers[Tier.CORE] <= tiers[Tier.SUPPORT]


@given(some_topics, st.integers(2, 10), seeds)
@settings(max_examples=cases(25, 40), deadline=None)
def test_no_two_starter_questions_share_all_parameters_but_one(topics, questions, seed):
    (first,) = starter(topics, questions, seed)
    for place, one in enumerate(first):
        for other in first[:place]:
            if (one.item.topic, one.item.tier) == (other.item.topic, other.item.tier):
                assert differing(one.values, other.values) > 1


@given(some_topics, st.integers(4, 12), st.integers(2, 4), seeds)
@settings(max_examples=25, deadline=None)
def test_versions_match_number_by_number_and_share_no_twin(topics, questions, count, seed):
    versions = starter(topics, questions, seed, count)
    first = versions[0]
    twins = [drawn.item.twin for version in versions for drawn in version]
    assert len(set(twins)) == len(twins) == count * questions
    for version in versions[1:]:
        for one, model in zip(version, first, strict=True):
            assert (one.item.topic, one.item.tier) == (model.item.topic, model.item.tier)
    for number in zip(*versions, strict=True):
        assert len({answer_of(drawn.item) for drawn in number}) == count  # a copied answer is wrong


@given(st.integers(4, 8), seeds)
@settings(max_examples=25, deadline=None)
def test_a_version_takes_the_nearest_difficulty_that_is_left(questions, seed):
    topics = [adding("small.few", 8)]  # 56 points a tier: the whole tier is looked at
    pool = Pool()
    first, second = starter(topics, questions, seed, 2, pool)
    space = topics[0].spaces[Tier.CORE]
    left = [pool.at(topics[0], Tier.CORE, index) for index in range(len(space))]
    left = [drawn for drawn in left if pool.free(drawn)]
    for model, one in zip(first, second, strict=True):
        if model.item.tier is Tier.CORE:
            gap = abs(one.difficulty - model.difficulty)
            others = [drawn for drawn in left if answer_of(drawn.item) != answer_of(model.item)]
            assert all(gap <= abs(drawn.difficulty - model.difficulty) for drawn in others)


def test_one_seed_gives_one_choice_and_another_gives_another():
    addresses = [
        [drawn.item.address for drawn in starter(TOPICS, 8, seed)[0]] for seed in (3, 3, 4)
    ]
    assert addresses[0] == addresses[1] != addresses[2]


def test_more_versions_leave_the_starter_alone():
    alone = starter(TOPICS, 8, 5)[0]
    assert [d.item for d in starter(TOPICS, 8, 5, 3)[0]] == [d.item for d in alone]


@given(some_topics, st.sampled_from(list(Tier)), st.integers(1, 12), seeds)
@settings(max_examples=cases(25, 40), deadline=None)
def test_sheet_avoids_the_starter_and_goes_topic_by_topic(topics, tier, count, seed):
    pool = Pool()
    (first,) = starter(topics, 8, seed, 1, pool)
    sheet = choose_sheet(topics, tier, count, tier is Tier.SUPPORT, seed, pool)
    everything = [*first, *sheet.items]
    everything += [
        candidate for candidate in (sheet.worked, sheet.part_finished) if candidate is not None
    ]
    assert len({drawn.item.twin for drawn in everything}) == len(everything)
    assert len(sheet.items) == count
    assert all(drawn.item.tier is tier for drawn in sheet.items)
    order = [drawn.item.topic for drawn in sheet.items]
    wanted = share_out([None] * len(topics), count)
    assert order == [t.id for t, n in zip(topics, wanted, strict=True) for _ in range(n)]
    assert (sheet.worked is None) == (sheet.part_finished is None) == (tier is not Tier.SUPPORT)


@pytest.mark.parametrize(
    ("name", "tier"),
    [
        ("equations.two-step", Tier.SUPPORT),
        ("equations.two-step", Tier.CHALLENGE),
        ("geometry.angles-in-triangles", Tier.SUPPORT),
    ],
)
def test_a_quarter_of_a_sheet_at_most_asks_something_else(name, tier):
    """A sheet is for practice: on the whole it asks what its topic asks."""
    for seed in range(2):
        items = choose_sheet([find_topic(name)], tier, 12, False, seed, Pool()).items
        assert 1 <= sum(kind_at(drawn.values) is not None for drawn in items) <= 3


@given(seeds, st.sampled_from([Tier.SUPPORT, Tier.CORE]))
@settings(max_examples=cases(25, 30), deadline=None)
def test_a_run_changes_little_and_grows_harder(seed, tier):
    sheet = choose_sheet(TOPICS, tier, 12, False, seed, Pool())  # a run of three a topic
    for start in range(0, 12, 3):
        run = sheet.items[start : start + 3]
        # One of these numbers alone would print the same sum with another number in it.
        assert not any(closeness(a.look, b.look) == 1 for a, b in combinations(run, 2))
        assert [d.difficulty for d in run] == sorted(d.difficulty for d in run)
        assert len({drawn.item.key for drawn in run}) == 3


@pytest.mark.parametrize("seed", range(6))
def test_a_run_changes_one_parameter_where_that_is_enough(seed):
    # With another ratio the amount that is shared is another too.
    topic = find_topic("ratio.share")
    sheet = choose_sheet([topic], Tier.SUPPORT, 3, False, seed, Pool()).items
    run = [drawn for drawn in sheet if kind_at(drawn.values) is None]  # but for one with a picture
    assert len(run) >= 2
    changed = {
        axis
        for a, b in combinations(run, 2)
        for axis, (mine, theirs) in enumerate(zip(a.values, b.values, strict=True))
        if mine != theirs
    }
    assert len(changed) == 1


def test_worked_and_part_finished_examples_differ_in_two_parameters_at_most():
    sheet = choose_sheet(TOPICS, Tier.SUPPORT, 4, True, 11, Pool())
    assert sheet.worked is not None
    assert sheet.part_finished is not None
    assert differing(sheet.worked.values, sheet.part_finished.values) <= 2
    assert closeness(sheet.worked.look, sheet.part_finished.look) < 1


@given(
    st.lists(st.integers(0, 9), min_size=1, max_size=5, unique=True),
    st.lists(st.integers(0, 9), min_size=1, max_size=5, unique=True),
    st.integers(2, 4),
    st.data(),
)
def test_along_two_finds_just_what_a_walk_finds(a, b, modulus, data):
    space = Space(lambda x, y, z: (x + y) % modulus != z, a=a, b=b, c=(0, 1))
    if not len(space):
        return
    index = data.draw(st.integers(0, len(space) - 1))
    here = space[index]
    walked = [
        at
        for at, there in enumerate(space)
        if there[0] != here[0] and there[1] != here[1] and there[2] == here[2]
    ]
    assert sorted(along_two(space, index, (0, 1), 999)) == walked
    some = along_two(space, index, (0, 1), 3)
    assert len(some) <= 3
    assert {*some} <= {*walked}


def test_a_topic_too_small_is_named_with_its_size():
    tiny = adding("small.tiny", 3)  # 2, 3, 4: three pairs up to order
    with pytest.raises(ItembankError, match=r"small\.tiny has only 3 support different questions"):
        starter([tiny], 8, 1)


def test_every_question_of_a_tier_can_be_used_but_none_twice():
    tiny = adding("small.tiny", 3)
    pool = Pool()
    rng = random.Random(1)
    taken = [pool.pick(tiny, Tier.CORE, rng).item.twin for _ in range(3)]
    assert len(set(taken)) == 3
    with pytest.raises(ItembankError, match="only 3 core"):
        pool.pick(tiny, Tier.CORE, rng)


@given(st.lists(st.none() | st.integers(1, 3), min_size=1, max_size=6), st.integers(0, 20))
def test_shares_add_up_and_open_ones_differ_by_at_most_one(counts, extra):
    fixed = sum(count or 0 for count in counts)
    open_ones = [place for place, count in enumerate(counts) if count is None]
    questions = fixed + (extra if open_ones else 0)
    shares = share_out(counts, questions)
    assert sum(shares) == questions
    assert all(share == count for share, count in zip(shares, counts, strict=True) if count)
    spread = [shares[place] for place in open_ones]
    assert not spread or max(spread) - min(spread) <= 1


@given(st.integers(1, 20))
def test_tiers_add_up(questions):
    counts = tier_counts(questions)
    assert sum(counts.values()) == questions
    assert counts[Tier.SUPPORT] - counts[Tier.CORE] in (0, 1)


def test_each_topic_meets_more_than_one_tier_when_it_has_two_questions():
    dealt = slots([Share(topic, 2) for topic in TOPICS], random.Random(2))
    for topic in TOPICS:
        assert len({tier for one, tier in dealt if one is topic}) == 2


@given(st.integers(1, 300), seeds)
@settings(deadline=None)
def test_shuffled_gives_each_index_once(count, seed):
    assert sorted(shuffled(count, random.Random(seed))) == list(range(count))


@given(
    st.lists(st.integers(0, 9), min_size=1, max_size=6, unique=True),
    st.lists(st.integers(0, 9), min_size=1, max_size=6, unique=True),
    st.integers(2, 4),
    st.data(),
)
def test_along_finds_just_what_a_walk_finds(a, b, modulus, data):
    space = Space(lambda x, y: (x + y) % modulus != 0, a=a, b=b)
    if not len(space):
        return
    index = data.draw(st.integers(0, len(space) - 1))
    axis = data.draw(st.integers(0, 1))
    here = space[index]
    walked = [
        at
        for at, there in enumerate(space)
        if there[axis] != here[axis] and there[1 - axis] == here[1 - axis]
    ]
    assert sorted(along(space, index, axis)) == walked


@given(st.integers(0, 40))
def test_runs_hold_two_or_three(count):
    lengths = run_lengths(count)
    assert sum(lengths) == count
    assert all(length <= 3 for length in lengths)
    assert count < 2 or all(length >= 2 for length in lengths)


def test_an_example_to_finish_has_the_steps_of_the_one_before_it_where_nothing_is_linked(
    monkeypatch,
):
    from itembank.packs.choosing import worked_example

    monkeypatch.setattr(worked_example, "linked_run", lambda *_, **__: [])
    topics = [find_topic("equations.both-sides")]
    for seed in range(12):
        sheet = choose_sheet(topics, Tier.SUPPORT, 2, True, seed, Pool())
        assert sheet.part_finished.structure == sheet.worked.structure


@pytest.mark.parametrize(
    "name",
    ["geometry.similarity", "number.order-of-operations", "geometry.cylinders", "measures.time"],
)
def test_an_example_to_finish_has_the_steps_of_the_one_before_it_and_is_not_that_turned_round(name):
    """From 4 cm by 8 cm to 24 cm, then from 24 cm by 48 cm to 4 cm: the answer could be copied."""
    same = turned = 0
    for seed in range(cases(12, 40)):
        sheet = choose_sheet([find_topic(name)], Tier.SUPPORT, 2, True, seed, Pool())
        worked, second = sheet.worked.item, sheet.part_finished.item
        same += sheet.part_finished.structure == sheet.worked.structure
        turned += parts_printed(second) <= parts_printed(worked)
    assert same == cases(12, 40)
    assert turned == 0


def parts_printed(item):
    """Return what stands in a prompt and its key: numbers, times and letters."""
    return {
        str(part)
        for run in (*item.prompt, item.key)
        if not isinstance(run, str)
        for part in t.walk(run)
        if not t.children(part)
    }
