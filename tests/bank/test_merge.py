"""Merging: nothing is lost, order and repetition do not matter, and what was settled stays so."""

import datetime
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.merge.union import merge_holdings, settle, signoffs_of
from itembank.bank.model.fields import BankItem, GeneratedSet, PinnedItem
from itembank.bank.model.item_records import Holding, TopicFacts, hold, in_use, join, named
from itembank.bank.model.signed import SignOff
from itembank.errors import ItembankError

DAY = datetime.date(2026, 11, 25)
BASES = ["garden-1", "garden-2", "depot-1"]
TOPICS = ["ratio.share", "number.add"]


def made_item(base, n, **more):
    fields = {"id": base, "tier": "core", "prompt": f"Work out {{{n} + 1}}.", "key": str(n + 1)}
    return BankItem(**(fields | more))


# Each strategy is made once: making them took longer than what is tested.
RECORDS = st.lists(
    st.tuples(st.sampled_from(BASES), st.integers(1, 4), st.sampled_from(TOPICS), st.booleans()),
    max_size=5,
    unique_by=lambda record: record[:3],
)
DAYS = st.dates(datetime.date(2026, 9, 1), datetime.date(2026, 9, 5))
WHY = st.sampled_from(["dull", "moved"])
SIGNERS = st.sets(st.sampled_from(["HT", "NT"]))
CONTENTS = st.sampled_from(["c1", "c2"])
LICENCES = st.sampled_from([None, "CC-BY-4.0"])
SETS = st.builds(GeneratedSet, tier=st.just("core"), count=st.integers(1, 2), seed=st.just(3))
PINS = st.builds(PinnedItem, address=st.sampled_from(["ratio.share/core/1", "ratio.share/core/2"]))
TITLES = st.frozensets(st.sampled_from(["Share", "Add"]), min_size=1)
FACTS = st.dictionaries(st.sampled_from(TOPICS), st.builds(TopicFacts, TITLES))
MADE = st.dictionaries(
    st.sampled_from(TOPICS), st.lists(SETS | PINS, min_size=1, max_size=3).map(Counter)
)
ROLES = st.frozensets(st.sampled_from(["head", "teacher"]), min_size=1)
AUTHORS = st.dictionaries(st.sampled_from(["HT", "NT"]), ROLES)


@st.composite
def banks(draw):
    """Return a holding as some folder might give it: ids of conflicts, retired items and all."""
    records = draw(RECORDS)
    items, signoffs = [], []
    for place, (base, n, topic, gone) in enumerate(records):
        # Several under one base id stand in a bank under ids of their own.
        first = base not in [record[0] for record in records[:place]]
        id = base if first else f"{base}.{place:04x}"
        fields = {}
        if gone:
            fields = {"retired": draw(DAYS), "retired_because": draw(WHY)}
        items.append((topic, made_item(id, n, **fields)))
        for by in draw(SIGNERS):
            signoffs.append(SignOff(id, by, DAY, draw(CONTENTS)))
    if draw(st.booleans()):
        signoffs.append(SignOff("gone-1", "HT", DAY, "c1"))
    holding = hold(items, draw(LICENCES), signoffs)
    return Holding(holding.kept, draw(FACTS), draw(MADE), draw(AUTHORS), holding.loose)


def contents(holding):
    """Return the records of a holding, by base id and hash."""
    return {(base, key) for base, records in holding.kept.items() for key in records}


def written(holding):
    """Return a holding as it is after it has been written into files and read again."""
    items = [
        (
            stored.record.topic,
            stored.record.item.model_copy(
                update={
                    "id": name,
                    "retired": stored.retired and stored.retired[0],
                    "retired_because": stored.retired and stored.retired[1],
                }
            ),
        )
        for name, stored in named(holding).items()
    ]
    again = hold(items, None, signoffs_of(named(holding), holding))
    return Holding(again.kept, holding.topics, holding.made, holding.authors, again.loose)


@given(banks(), banks())
def test_merging_is_commutative_up_to_order(one, other):
    assert join(one, other) == join(other, one)
    assert named(join(one, other)) == named(join(other, one))


@given(banks(), banks(), banks())
def test_merging_is_associative(one, two, three):
    assert join(join(one, two), three) == join(one, join(two, three))


@given(banks(), banks())
def test_merging_again_changes_nothing(one, other):
    both = join(one, other)
    assert join(one, one) == one
    assert join(both, other) == join(both, one) == join(both, both) == both


@given(banks(), banks())
def test_what_is_merged_survives_being_written_and_read(one, other):
    both = join(one, other)
    assert written(both) == both
    assert join(written(both), other) == both


@given(banks(), banks())
def test_no_record_sign_off_or_set_is_lost_and_none_made_up(one, other):
    both = join(one, other)
    assert contents(both) == contents(one) | contents(other)
    assert len(named(both)) == len(contents(both))
    signed = [
        {
            (stored.record.hash, s.by, s.on, s.content)
            for stored in named(side).values()
            for s in stored.signoffs
        }
        for side in (one, other, both)
    ]
    assert signed[2] == signed[0] | signed[1]
    assert both.loose == one.loose | other.loose
    for side in (one, other):
        assert all(made <= both.made[topic] for topic, made in side.made.items())
        assert all(roles <= both.authors[code] for code, roles in side.authors.items())


@given(banks(), banks())
def test_the_earliest_retirement_holds(one, other):
    both = join(one, other)
    for base, records in both.kept.items():
        for key, stored in records.items():
            sides = [side.kept.get(base, {}).get(key) for side in (one, other)]
            days = [side.retired for side in sides if side and side.retired]
            assert stored.retired == min(days, default=None)


@given(banks(), banks())
def test_the_plain_id_goes_to_the_only_item_in_use(one, other):
    both = join(one, other)
    names = named(both)
    for base, records in both.kept.items():
        used = in_use(records)
        if len(used) == 1:
            assert names[base].record.hash == used[0]
        assert (base in names) == (len(used) < 2)


@given(banks(), banks())
def test_the_report_tells_of_every_item_once(one, other):
    merge = merge_holdings(one, other)
    report = merge.report
    told = [*report.only_first, *report.only_second, *report.same]
    assert sorted(told) == sorted(merge.items)
    hashes = {name: (e.record.item.id, e.record.hash) for name, e in merge.items.items()}
    assert {hashes[name] for name in report.same} == contents(one) & contents(other)
    assert {hashes[name] for name in report.only_first} == contents(one) - contents(other)


@given(banks(), banks())
def test_every_base_id_with_several_items_in_use_is_a_conflict(one, other):
    merge = merge_holdings(one, other)
    told = {conflict.base: conflict.ids for conflict in merge.report.conflicts}
    for base, records in merge.holding.kept.items():
        if len(in_use(records)) > 1:
            assert len(told[base]) == len(in_use(records))


@given(banks(), banks(), st.randoms(use_true_random=False))
def test_what_is_settled_stays_settled_when_merged_again(one, other, rng):
    both = join(one, other)
    for base, records in both.kept.items():
        if len(in_use(records)) > 1:
            names = [
                n for n, e in named(both).items() if e.record.item.id == base and not e.retired
            ]
            wanted = rng.choice(sorted(names))
            chosen = named(both)[wanted].record
            settled = settle(both, wanted, DAY)
            assert contents(settled) == contents(both)
            assert named(settled)[base].record == chosen
            again = join(join(settled, other), one)
            assert again == settled
            told = {conflict.base for conflict in merge_holdings(settled, other).report.conflicts}
            assert base not in told


# The cases by name.


def one_item(n, **more):
    return hold([("ratio.share", made_item("garden-1", n, **more))])


def test_the_same_item_in_both_banks_keeps_its_id():
    merge = merge_holdings(one_item(1), one_item(1))
    assert list(merge.items) == ["garden-1"]
    assert merge.report.same == ("garden-1",)
    assert merge.report.sound


def test_different_items_with_one_id_are_both_kept_and_reported():
    merge = merge_holdings(one_item(1), one_item(2))
    assert len(merge.items) == 2
    for name, stored in merge.items.items():
        base, _, mark = name.partition(".")
        assert base == "garden-1"
        assert len(mark) >= 4
        assert stored.record.hash.startswith(mark)
    (conflict,) = merge.report.conflicts
    assert (conflict.base, set(conflict.ids)) == ("garden-1", set(merge.items))
    ((old, new),) = merge.report.renamed
    assert (old, merge.items[new].record.item.key) == ("garden-1", "2")


def test_settling_two_ways_is_told():
    both = join(one_item(1), one_item(2))
    first, second = sorted(named(both))
    merge = merge_holdings(settle(both, first, DAY), settle(both, second, DAY))
    (conflict,) = merge.report.conflicts
    assert "settled in two ways" in conflict.says


def test_one_bank_retires_what_the_other_changes():
    gone = one_item(1, retired=DAY, retired_because="dull")
    merge = merge_holdings(gone, one_item(2))
    assert merge.items["garden-1"].record.item.key == "3"
    (conflict,) = merge.report.conflicts
    assert "retired it while the other changed it" in conflict.says


def test_an_item_retired_in_one_bank_is_retired_in_both_and_reported():
    merge = merge_holdings(one_item(1), one_item(1, retired=DAY, retired_because="dull"))
    assert merge.items["garden-1"].retired == (DAY, "dull")
    assert merge.report.retired == ("garden-1",)


def test_of_two_retirements_the_earlier_one_holds_and_its_reason():
    early, late = DAY - datetime.timedelta(days=9), DAY
    one = one_item(1, retired=late, retired_because="dull")
    other = one_item(1, retired=early, retired_because="moved")
    for merge in (merge_holdings(one, other), merge_holdings(other, one)):
        assert merge.items["garden-1"].retired == (early, "moved")
        assert merge.report.retired == ()


def test_where_all_are_retired_the_last_one_used_keeps_the_id():
    early, late = DAY - datetime.timedelta(days=9), DAY
    for first, second, kept in ((early, late, "3"), (late, early, "2")):
        one = one_item(1, retired=first, retired_because="dull")
        other = one_item(2, retired=second, retired_because="dull")
        names = named(join(one, other))
        assert names["garden-1"].record.item.key == kept
        assert len(names) == 2


def test_a_report_is_sound_where_nothing_is_left_to_settle():
    author = Holding(authors={"HT": frozenset(["head"])})
    clash = Holding(authors={"HT": frozenset(["tutor"])})
    assert merge_holdings(one_item(1), one_item(1)).report.sound
    assert not merge_holdings(one_item(1), one_item(2)).report.sound
    assert not merge_holdings(author, clash).report.sound


def test_a_sign_off_follows_its_item_to_its_new_id():
    item = [("ratio.share", made_item("garden-1", 1))]
    signed = hold(item, None, [SignOff("garden-1", "HT", DAY, "c1")])
    merge = merge_holdings(one_item(2), signed)
    (found,) = merge.report.signoffs
    assert merge.items[found.item].record.item.key == "2"
    assert [s.item for s in signoffs_of(merge.items, merge.holding)] == [found.item]


def test_twins_under_different_ids_are_reported_with_their_ids():
    holding = hold([("number.add", made_item("garden-1", 7))])
    other = hold([("number.add", made_item("depot-1", 1, prompt="Find {1 + 7}.", key="8"))])
    assert merge_holdings(holding, other).report.twins == (("depot-1", "garden-1"),)


def test_a_retired_item_is_nobodys_twin():
    one = hold([("number.add", made_item("garden-1", 7))])
    gone = {"retired": DAY, "retired_because": "dull"}
    twin = made_item("depot-1", 1, prompt="Find {1 + 7}.", key="8", **gone)
    assert merge_holdings(one, hold([("number.add", twin)])).report.twins == ()


def test_the_licence_of_its_bank_stays_with_an_item():
    item = [("number.add", made_item("garden-1", 7))]
    merge = merge_holdings(hold(item, "CC-BY-4.0"), hold(item, "CC0-1.0"))
    assert {e.record.item.licence for e in merge.items.values()} == {"CC-BY-4.0", "CC0-1.0"}


def test_clashes_of_facts_are_told():
    one = Holding(authors={"HT": frozenset(["head of mathematics"])})
    other = Holding(authors={"HT": frozenset(["holiday teacher"])})
    assert merge_holdings(one, other).report.clashes == (
        "The author code HT stands for ‘head of mathematics’ and ‘holiday teacher’.",
    )


def test_titles_that_differ_are_told_and_two_topics_under_one_id_too():
    one = Holding(topics={"ratio.share": TopicFacts(frozenset(["Share"]))})
    other = Holding(topics={"ratio.share": TopicFacts(frozenset(["Sharing"]))})
    assert merge_holdings(one, one).report.clashes == ()
    assert merge_holdings(one, other).report.clashes == (
        "The topic ratio.share has the titles ‘Share’ and ‘Sharing’.",
    )
    elsewhere = hold([("number.add", made_item("garden-1", 1))])
    assert merge_holdings(one_item(2), elsewhere).report.clashes == (
        "Items with the id garden-1 are in the topics number.add and ratio.share.",
    )
    assert merge_holdings(one_item(2), one_item(1)).report.clashes == ()


def test_what_stays_as_it_was_is_no_change():
    """Same ids, sign-offs that were there, items that both banks have retired."""
    signed = hold(
        [("ratio.share", made_item("garden-1", 1))],
        None,
        [SignOff("garden-1", "HT", DAY, "c1"), SignOff("gone-1", "HT", DAY, "c1")],
    )
    report = merge_holdings(signed, signed).report
    assert (report.renamed, report.signoffs) == ((), ())
    gone = {"retired": DAY, "retired_because": "dull"}
    both = join(one_item(1, **gone), one_item(2, **gone))
    merge = merge_holdings(both, both)
    assert len(merge.items) == 2
    assert merge.report.sound
    assert merge.report.retired == ()


def test_a_sign_off_whose_item_is_gone_is_gained_like_any_other():
    signoff = SignOff("gone-1", "HT", DAY, "c1")
    loose = hold([], None, [signoff])
    assert merge_holdings(one_item(1), loose).report.signoffs == (signoff,)
    assert merge_holdings(loose, one_item(1)).report.signoffs == ()


def test_twins_under_one_id_are_a_conflict_and_told_once():
    other = hold([("ratio.share", made_item("garden-1", 7, prompt="Find {1 + 7}.", key="8"))])
    report = merge_holdings(one_item(7), other).report
    assert len(report.conflicts) == 1
    assert report.twins == ()


@pytest.mark.parametrize(
    ("wanted", "told"),
    [("garden-1", "nothing to settle"), ("gardn-1", "There is no item ‘gardn-1’.*garden-1")],
)
def test_what_cannot_be_settled_is_refused(wanted, told):
    with pytest.raises(ItembankError, match=told):
        settle(one_item(1), wanted, DAY)


def test_a_retired_one_cannot_be_chosen():
    three = join(join(one_item(1), one_item(2)), one_item(3, retired=DAY, retired_because="x"))
    retired = next(name for name, each in named(three).items() if each.retired)
    with pytest.raises(ItembankError, match="is retired"):
        settle(three, retired, DAY)
