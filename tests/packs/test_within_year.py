"""A class's pack holds nothing beyond its year, and questions keep their addresses."""

from __future__ import annotations

import dataclasses

import pytest

from itembank.errors import ItembankError
from itembank.items.item import Tier
from itembank.items.measures.years import RECURRING_DECIMALS, SURDS, Part
from itembank.items.topics.registry import find_topic
from itembank.packs.build import askable, choose
from itembank.packs.choosing.fixed_questions import find_held
from itembank.packs.choosing.item_pool import Pool
from itembank.packs.sources.within_year import WithinYear, all_beyond, within_year
from itembank.planning.department.pack_request import PlannedTopic
from itembank.planning.department.question_sources import StatedSources
from tests.depth import cases, whole
from tests.packs.bank_files import bank, item
from tests.packs.packs import request
from tests.packs.small_topics import adding

MIXED = "fractions.decimals-percentages"
LATER = "equations.inequalities"


def ask(*topics, year=7, beyond=False, seed=1, stated_sources=None, **more):
    stated_sources = dataclasses.replace(stated_sources or StatedSources(), beyond_year=beyond)
    usual = {"questions": 8, "follow_up": 6, "variants": 2}
    return request(
        topics=tuple(map(PlannedTopic, topics)),
        year=year,
        stated_sources=stated_sources,
        seed=seed,
        **(usual | more),
    )


def drawn(asked):
    return [candidate.item for candidate in choose(asked).taken()]


def is_later(one):
    name, tier, number = one.address.split("/")
    topic = find_topic(name)
    return topic.content(Tier(tier), *topic.spaces[Tier(tier)][int(number)]) is not None


SEEDS = cases(5, 40, 40)


@whole
def test_a_year_7_class_never_gets_recurring_decimals_and_with_the_setting_it_does():
    kept, asked_for = [], []
    for seed in range(SEEDS):
        kept += drawn(ask(MIXED, "ratio.share", seed=seed))
        asked_for += drawn(ask(MIXED, "ratio.share", seed=seed, beyond=(MIXED,)))
    assert sum(one.topic == MIXED and one.tier is Tier.CHALLENGE for one in kept) > 2 * SEEDS
    assert [one.address for one in kept if is_later(one)] == []
    assert sum(map(is_later, asked_for)) > 2 * SEEDS


@pytest.mark.parametrize(("year", "beyond"), [(10, False), (11, False), (7, True), (None, False)])
def test_nothing_changes_where_nothing_is_to_be_left_out(year, beyond):
    plain = request(topics=(PlannedTopic(MIXED),), questions=8, follow_up=6, variants=2, seed=1)
    assert drawn(ask(MIXED, year=year, beyond=beyond)) == drawn(plain)


def test_the_items_left_are_those_of_the_topic_under_their_own_addresses():
    topic = find_topic(MIXED)
    source = within_year(topic, 7)
    space = topic.spaces[Tier.CHALLENGE]
    left = [source.item(Tier.CHALLENGE, n) for n in range(len(source.spaces[Tier.CHALLENGE]))]
    wanted = [
        topic.item(Tier.CHALLENGE, number)
        for number, values in enumerate(space)
        if topic.from_year(Tier.CHALLENGE, *values) <= 7
    ]
    assert left == wanted
    for index, one in enumerate(left):
        number = int(one.address.rpartition("/")[2])
        assert source.spaces[Tier.CHALLENGE][index] == space[number]
        assert source.place(Tier.CHALLENGE, number) == index
        held = find_held([source], one.address, Pool())
        assert held is not None
        assert held.item == one
    gone = {f"{MIXED}/challenge/{n}" for n in range(len(space))} - {o.address for o in left}
    assert gone
    assert all(find_held([source], address, Pool()) is None for address in gone)


def test_a_settled_question_beyond_the_year_may_no_longer_be_asked():
    addresses = (f"{MIXED}/challenge/0", f"{MIXED}/challenge/118", f"{MIXED}/core/0")
    assert is_later(find_topic(MIXED).item(Tier.CHALLENGE, 0))
    assert askable(ask(MIXED), addresses) == addresses[1:]
    assert askable(ask(MIXED, beyond=True), addresses) == addresses
    with pytest.raises(ItembankError, match="cannot be asked"):
        drawn(ask(MIXED, items=addresses[:1]))


def test_too_few_within_the_year_says_so_and_how_to_ask_for_more():
    with pytest.raises(ItembankError) as caught:
        drawn(ask(MIXED, questions=20, variants=6, follow_up=30))
    said = str(caught.value)
    assert "only 38 different" not in said  # they are counted without their twins
    assert "468 more questions are beyond year 7: recurring decimals and their fractions" in said
    assert "from year 10" in said
    assert caught.value.matter == "beyond the year"
    assert "beyond_year = true" in said


def test_a_topic_that_is_all_beyond_the_year_is_refused_plainly():
    assert all_beyond(find_topic(LATER), 9)
    assert not all_beyond(find_topic(LATER), 10)
    with pytest.raises(ItembankError) as caught:
        drawn(ask(LATER, "ratio.share", year=9))
    assert str(caught.value).startswith(
        f"{LATER} is beyond year 9: solving inequalities, from year 10"
    )
    assert "beyond_year" in str(caught.value)
    assert {one.topic for one in drawn(ask(LATER, year=9, beyond=(LATER,)))} == {LATER}


def test_two_parts_of_one_tier_are_each_left_out_at_their_year():
    topic = adding("small.mixed", 6)
    eight = dataclasses.replace(SURDS, name="sums of six", from_year=8)
    type(topic).later = {
        Tier.CORE: (
            Part(eight, lambda a, b: a == 6),
            Part(RECURRING_DECIMALS, lambda a, b: b == 6),
        )
    }
    for year, allowed in ((7, lambda a, b: 6 not in (a, b)), (8, lambda a, b: b != 6)):
        source = within_year(topic, year)
        assert isinstance(source, WithinYear)
        core = source.spaces[Tier.CORE]
        assert list(core) == [pair for pair in topic.spaces[Tier.CORE] if allowed(*pair)]
        assert source.spaces[Tier.SUPPORT] is topic.spaces[Tier.SUPPORT]
    assert within_year(topic, 10) is topic


QUESTIONS = [
    item("surd-1", "Simplify {√20}.", "2√5"),
    item("surd-2", "Simplify {√18}.", "3√2", from_year=8),
    *(item(f"root-{n}", f"Work out {{√{n * n}}}.", str(n)) for n in range(2, 12)),
    item("root-20", "Work out {√400}.", "20", from_year=9),
]


@pytest.mark.parametrize(
    ("year", "beyond", "out"),
    [
        (7, False, {"surd-1", "surd-2", "root-20"}),
        (8, False, {"surd-1", "root-20"}),
        (9, False, {"surd-1"}),
        (10, False, set()),
        (7, True, set()),
    ],
)
def test_a_banks_questions_are_left_out_by_what_they_are_and_by_what_they_state(
    tmp_path, year, beyond, out
):
    tables = QUESTIONS + [
        q.replace('"core"', f'"{t}"').replace('id = "', f'id = "{t}-')
        for t in ("support", "challenge")
        for q in QUESTIONS[2:12]
    ]
    folder = bank(tmp_path / "q", {"number.roots": tables})
    stated_sources = StatedSources((folder,), "bank")
    chosen = choose(
        ask(
            "number.roots",
            year=year,
            beyond=beyond,
            stated_sources=stated_sources,
            questions=4,
            variants=1,
            follow_up=1,
        )
    )
    source = chosen.topics[0]
    offered = {q.item.address.partition(":")[2] for q in source.questions[Tier.CORE]}
    assert {"surd-1", "surd-2", "root-20"} - offered == out
    left = {part.why: part.count for part in chosen.banks.said(1).left_out}
    assert left == ({"beyond the year": len(out)} if out else {})


def test_generated_questions_that_a_bank_names_are_left_out_too(tmp_path):
    names = [f"{MIXED}/challenge/{n}" for n in (0, 1, 100)]
    pins = "".join(f'[[pinned]]\naddress = "{name}"\n' for name in names)
    folder = bank(tmp_path / "q", {MIXED: [pins]})
    chosen = choose(
        ask(MIXED, stated_sources=StatedSources((folder,), "both"), questions=2, follow_up=2)
    )
    items = [candidate.item for candidate in chosen.taken()]
    assert not any(map(is_later, items))
    assert chosen.banks.said(2).left_out[0].why == "beyond the year"


@pytest.mark.parametrize("seed", range(3))
def test_a_topic_whose_easier_tier_is_beyond_the_year_gives_what_it_has(seed):
    # Solving two equations by algebra is of key stage 4; balances and stories are not.
    topic = "equations.simultaneous"
    assert all_beyond(find_topic(topic), 9) is False
    found = drawn(ask(topic, "ratio.share", "fractions.divide", year=9, seed=seed))
    mine = [one for one in found if one.topic == topic]
    assert mine
    assert not any(map(is_later, mine))
