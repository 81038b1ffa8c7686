"""Merging: nothing is lost, order and repetition do not matter, and what was settled stays so."""

from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.merge.union import merge_holdings, settle
from itembank.bank.model.item_records import in_use, join, named
from tests.bank.merging.holdings import DAY, banks, contents, written


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
