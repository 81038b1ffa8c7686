"""Items under new ids: nothing is lost, sign-offs go along, and merging stays a union."""

import datetime
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.merge.merge_files import prepare_keep_all, prepare_merge, prepare_rename
from itembank.bank.merge.rename import free_id, keep_all, rename
from itembank.bank.merge.union import merge_holdings
from itembank.bank.model.item_records import hold, in_use, join, named
from itembank.bank.model.signed import SignOff
from itembank.bank.proof.signoff import Signing, read_signoffs, sign_state
from itembank.bank.read.load import read_bank
from itembank.bank.saving.save import ChangedSince
from itembank.errors import ItembankError
from tests.bank.bankfolder import item, make_bank
from tests.bank.merging.holdings import banks, contents, made_item, written

from .test_merge_files import LIKE, SHARED, UNLIKE, files, items, merged, signed

DAY = datetime.date(2026, 11, 25)


def conflicts(holding):
    return [base for base, records in holding.kept.items() if len(in_use(records)) > 1]


def prompts_in_use(holding):
    return sorted(
        (stored.record.topic, stored.record.item.prompt)
        for stored in named(holding).values()
        if stored.retired is None
    )


def signers(holding):
    """Return who signed which content of the items in use, whatever their ids."""
    return sorted(
        (stored.record.topic, stored.record.item.prompt, signoff.by, signoff.content)
        for stored in named(holding).values()
        if stored.retired is None
        for signoff in stored.signoffs
    )


@given(banks(), banks(), st.randoms(use_true_random=False))
def test_keeping_all_loses_nothing_and_stays_so_when_merged_again(one, other, rng):
    both = join(one, other)
    for base in conflicts(both):
        names = [n for n, e in named(both).items() if e.record.item.id == base and not e.retired]
        kept = keep_all(both, rng.choice(sorted(names)), [], DAY).holding
        assert contents(kept) > contents(both)
        assert prompts_in_use(kept) == prompts_in_use(both)
        assert signers(kept) == signers(both)
        assert base not in conflicts(kept)
        assert join(join(kept, other), one) == kept
        assert written(kept) == kept


@given(banks(), banks(), banks(), st.randoms(use_true_random=False))
def test_merging_is_a_union_whatever_was_renamed(one, other, third, rng):
    renamed = []
    for holding in (one, other, third):
        names = sorted(n for n, e in named(holding).items() if e.retired is None)
        if names:
            holding = rename(holding, rng.choice(names), "moved-1", DAY).holding
        renamed.append(holding)
    a, b, c = renamed
    assert join(a, b) == join(b, a)
    assert join(join(a, b), c) == join(a, join(b, c))
    assert join(join(a, b), b) == join(a, b)
    assert named(join(a, b)) == named(join(b, a))
    assert contents(join(a, one)) == contents(a) | contents(one)


@given(banks(), st.randoms(use_true_random=False))
def test_to_rename_and_back_again_changes_nothing(holding, rng):
    alone = sorted(n for n, e in named(holding).items() if len(holding.kept[e.record.item.id]) == 1)
    if not alone:
        return
    name = rng.choice(alone)
    there = rename(holding, name, "moved-1", DAY).holding
    assert name not in there.kept
    assert there.kept["moved-1"]
    assert rename(there, "moved-1", name, DAY).holding == holding


def test_two_who_keep_both_under_other_ids_lose_nothing():
    one, other = (make(n) for n in (1, 2))
    both = join(one, other)
    first, second = sorted(named(both))
    here = keep_all(both, first, ["garden-7"], DAY).holding
    there = keep_all(both, second, ["garden-7"], DAY).holding
    merge = merge_holdings(here, there)
    assert set(prompts_in_use(merge.holding)) == set(prompts_in_use(both))
    assert {conflict.base for conflict in merge.report.conflicts} >= {"garden-7"}


def make(n):
    from .holdings import one_item

    return one_item(n)


@pytest.mark.parametrize(
    ("new", "told"),
    [
        (["garden-1"], "‘garden-1’ is taken. Choose another; garden-2 is free"),
        (["Garden 3"], "cannot be an id"),
        (["garden-3.3f2a"], "cannot be an id"),
        (["a-1", "a-2"], "one question with its id, and 2 new ids"),
    ],
)
def test_ids_that_cannot_be_given_are_refused(new, told):
    both = join(make(1), make(2))
    with pytest.raises(ItembankError, match=re.escape(told)):
        keep_all(both, sorted(named(both))[0], new, DAY)


def test_a_free_id_goes_on_from_the_highest_number():
    assert free_id("garden-12", {"garden-12", "garden-14", "bus-20"}) == "garden-15"
    assert free_id("garden", {"garden"}) == "garden-2"


@pytest.fixture
def ours(tmp_path):
    return make_bank(
        tmp_path / "ours",
        {
            UNLIKE: "# ours, with care\n\n"
            + SHARED.replace("[[", "# first\n[[", 1)
            + "# at the end\n"
        },
    )


@pytest.fixture
def theirs(tmp_path):
    other = item("sum-1") + "# from the shed\n" + item("sum-2", "Work out {2/7 + 1/3}.", "13/21")
    return make_bank(tmp_path / "theirs", {UNLIKE: other, LIKE: item("like-1")})


def test_a_renamed_item_keeps_its_place_its_comments_and_its_sign_offs(ours):
    signed(ours, "sum-1", "sum-2")
    path, signoffs = ours.folder / f"{UNLIKE}.toml", ours.folder / "signoffs.toml"
    before, were = path.read_text(encoding="utf-8"), signoffs.read_text(encoding="utf-8")
    prepare_rename(ours.folder, "sum-1", "pond-3", DAY).save()
    assert path.read_text(encoding="utf-8") == before.replace('"sum-1"', '"pond-3"')
    assert signoffs.read_text(encoding="utf-8") == were.replace('"sum-1"', '"pond-3"')
    bank = read_bank(ours.folder)
    state = sign_state(bank.find("pond-3"), read_signoffs(ours.folder))
    assert state.state is Signing.SIGNED


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("sum-1", "sum-2", "‘sum-2’ is taken. Choose another; sum-3 is free"),
        ("sum-1", "sum-1", "‘sum-1’ is taken"),
        ("sum-1", "Sum 1", "cannot be an id"),
        ("sun-1", "sum-3", "no item ‘sun-1’.*Did you mean sum-1"),
    ],
)
def test_a_rename_that_cannot_be_is_refused_and_writes_nothing(ours, old, new, told):
    before = files(ours.folder)
    with pytest.raises(ItembankError, match=told):
        prepare_rename(ours.folder, old, new, DAY)
    assert files(ours.folder) == before


def test_what_somebody_saved_before_the_rename_is_not_overwritten(ours):
    prepared = prepare_rename(ours.folder, "sum-1", "pond-3", DAY)
    path = ours.folder / f"{UNLIKE}.toml"
    path.write_text(path.read_text(encoding="utf-8") + "# mine\n", encoding="utf-8")
    with pytest.raises(ChangedSince):
        prepared.save()
    assert 'id = "sum-1"' in path.read_text(encoding="utf-8")


def test_both_questions_of_one_id_are_kept_and_merging_again_changes_no_byte(ours, theirs):
    signed(theirs, "sum-2", by="NT")
    report = merged(ours, theirs)
    (conflict,) = report.conflicts
    mine = next(id for id in conflict.ids if "1/2" in items(ours.folder)[id].prompt)
    prepare_keep_all(ours.folder, mine, ["shed-1"], DAY).save()
    found = items(ours.folder)
    assert "1/2 + 1/3" in found["sum-2"].prompt
    assert "2/7 + 1/3" in found["shed-1"].prompt
    assert found["shed-1"].retired is None is found["sum-2"].retired
    bank = read_bank(ours.folder)
    state = sign_state(bank.find("shed-1"), read_signoffs(ours.folder))
    assert (state.state, state.who) == (Signing.SIGNED, "NT on 25 November 2026")
    text = (ours.folder / f"{UNLIKE}.toml").read_text(encoding="utf-8")
    assert text.startswith(f'topic = "{UNLIKE}"\n\n# ours, with care\n\n# first\n')
    before = files(ours.folder)
    again = merged(ours, theirs)
    assert again.conflicts == ()
    assert files(ours.folder) == before
    # The colleague gets both as well, with the same ids in use.
    merged(theirs, ours)
    used = {id for id, one in items(theirs.folder).items() if one.retired is None}
    assert used == {id for id, one in found.items() if one.retired is None}


def test_to_rename_one_of_a_conflict_settles_it(ours, theirs):
    (conflict,) = merged(ours, theirs).conflicts
    theirs_now = next(id for id in conflict.ids if "2/7" in items(ours.folder)[id].prompt)
    prepare_rename(ours.folder, theirs_now, "shed-1", DAY).save()
    found = items(ours.folder)
    assert "1/2 + 1/3" in found["sum-2"].prompt
    assert "2/7 + 1/3" in found["shed-1"].prompt
    (trace,) = (one for id, one in found.items() if id.startswith("sum-2."))
    assert (trace.retired, trace.retired_because) == (DAY, "renamed: it is kept as shed-1")
    assert prepare_merge(ours.folder, theirs.folder).report.conflicts == ()
    with pytest.raises(ItembankError, match="retired version of sum-2"):
        prepare_rename(ours.folder, trace.id, "shed-2", DAY)


def test_new_ids_go_to_the_others_in_the_order_of_the_ids_they_go_by():
    found = hold([("number.add", made_item(f"garden-1.{n:04x}", n)) for n in range(1, 6)])
    wanted, *others = sorted(named(found))
    new = [f"depot-{n}" for n in range(1, 5)]
    kept = keep_all(found, wanted, new, DAY)
    prompts = [named(found)[old].record.item.prompt for old in others]
    assert [named(kept.holding)[id].record.item.prompt for id in new] == prompts
    assert kept.ids == tuple(zip(others, new, strict=True))


def test_the_id_of_a_question_that_is_gone_is_not_given_away_while_it_is_signed():
    """Who signed the one would else have signed the other."""
    found = hold(
        [("number.add", made_item("garden-1", 1))],
        signoffs=[SignOff("garden-2", "HT", DAY, "c1")],
    )
    with pytest.raises(ItembankError, match="garden-2’ is taken"):
        rename(found, "garden-1", "garden-2", DAY)
    assert rename(found, "garden-1", "garden-3", DAY)
