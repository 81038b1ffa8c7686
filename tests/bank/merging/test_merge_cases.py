"""What a merge says of one question or two: kept, in conflict, retired, signed, clashing."""

import datetime

import pytest

from itembank.bank.merge.union import merge_holdings, settle, signoffs_of
from itembank.bank.model.item_records import Holding, TopicFacts, hold, join, named
from itembank.bank.model.signed import SignOff
from itembank.errors import ItembankError
from tests.bank.merging.holdings import DAY, made_item, one_item


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


@pytest.mark.parametrize("alike", [4, 7])
def test_ids_show_as_many_digits_as_tell_records_apart(alike):
    """Hashes that begin alike are rare, and one of two questions would be lost to the other."""
    (stored,) = hold([("number.add", made_item("garden-1", 1))]).kept["garden-1"].values()
    hashes = ["a" * alike + digit * (64 - alike) for digit in "bcd"]
    found = named(Holding({"garden-1": dict.fromkeys(hashes, stored)}))
    assert len(found) == 3
    assert set(found) == {f"garden-1.{key[: alike + 1]}" for key in hashes}


def test_sign_offs_that_come_in_are_told_by_question_day_and_initials():
    """Kept as sets, whose order is another one in each run of the program."""
    item = [("number.add", made_item("garden-1", 1))]
    days = [datetime.date(2026, 9, day) for day in (3, 1, 2)]
    signed = [SignOff("garden-1", by, day, "c1") for day in days for by in ("NT", "HT")]
    merge = merge_holdings(hold(item), hold(item, None, signed))
    told = [(signoff.on, signoff.by) for signoff in merge.report.signoffs]
    assert told == [(day, by) for day in sorted(days) for by in ("HT", "NT")]


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
