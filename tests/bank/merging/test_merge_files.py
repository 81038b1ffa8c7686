"""Merging on the disk: comments stay, nothing is half written, and merging again adds nothing."""

import datetime
import os
import re
import shutil

import pytest

from itembank.bank.index.opened import with_bank
from itembank.bank.merge.compare import compare
from itembank.bank.merge.merge_files import prepare_merge, prepare_settle
from itembank.bank.proof.signoff import (
    Signing,
    read_signoffs,
    sign_state,
    signoff_of,
    signoffs_text,
)
from itembank.bank.read.load import read_bank
from itembank.bank.saving.save import ChangedSince
from itembank.errors import ItembankError
from itembank.files import renaming
from tests.bank.bankfolder import FACTS, item, make_bank

DAY = datetime.date(2026, 11, 25)
LIKE, UNLIKE = "fractions.add-like", "fractions.add-unlike"
SHARED = item("sum-1") + item("sum-2", "Work out {1/2 + 1/3}.", "5/6")
EDITED = SHARED.replace("Work out {1/2 + 1/3}.", "Add {1/2 + 1/3} in lowest terms.")


def signed(bank, *ids, by="HT"):
    """Sign items without proving them: what is proved is not the matter here."""
    new = [signoff_of(bank.find(id), by, DAY) for id in ids]
    text = signoffs_text([*read_signoffs(bank.folder), *new])
    (bank.folder / "signoffs.toml").write_text(text, encoding="utf-8")


def files(folder):
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def items(folder):
    return {entry.item.id: entry.item for entry in read_bank(folder).entries()}


@pytest.fixture
def ours(tmp_path):
    return make_bank(
        tmp_path / "ours", {UNLIKE: "# ours, with care\n\n" + SHARED + "# at the end\n"}
    )


@pytest.fixture
def theirs(tmp_path):
    more = item("sum-3", "Work out {2/3 + 1/5}.", "13/15", author='"PT"', created="2026-09-01")
    return make_bank(
        tmp_path / "theirs",
        {UNLIKE: EDITED + more, LIKE: item("like-1", "Work out {1/5 + 2/5}.", "3/5")},
        facts=FACTS.format(name="larkhythe") + 'PT = "part-time teacher"\n',
    )


def merged(into, other):
    prepared = prepare_merge(into.folder, other.folder)
    prepared.save()
    return prepared.report


def test_everything_of_both_is_there_and_comments_stay(ours, theirs):
    report = merged(ours, theirs)
    found = items(ours.folder)
    assert {id.partition(".")[0] for id in found} == {"sum-1", "sum-2", "sum-3", "like-1"}
    assert len(found) == 5
    text = (ours.folder / f"{UNLIKE}.toml").read_text(encoding="utf-8")
    assert "# ours, with care" in text
    assert "# at the end" in text
    assert set(report.only_second) >= {"sum-3", "like-1"}
    assert report.same == ("sum-1",)
    (conflict,) = report.conflicts
    assert conflict.base == "sum-2"
    assert {found[id].prompt for id in conflict.ids} == {
        "Work out {1/2 + 1/3}.",
        "Add {1/2 + 1/3} in lowest terms.",
    }
    assert read_bank(ours.folder).authors["PT"] == "part-time teacher"


def test_nothing_is_written_before_it_is_saved(ours, theirs):
    before = files(ours.folder), files(theirs.folder)
    prepare_merge(ours.folder, theirs.folder)
    assert (files(ours.folder), files(theirs.folder)) == before


def test_the_other_bank_is_left_alone(ours, theirs):
    before = files(theirs.folder)
    merged(ours, theirs)
    assert files(theirs.folder) == before


def test_merging_again_changes_no_byte(ours, theirs):
    merged(ours, theirs)
    before = files(ours.folder)
    assert prepare_merge(ours.folder, theirs.folder).changes == ()
    assert prepare_merge(ours.folder, ours.folder).changes == ()
    assert files(ours.folder) == before


def test_both_ways_round_the_banks_come_to_the_same(ours, theirs, tmp_path):
    copy = make_bank(
        tmp_path / "copy",
        {UNLIKE: SHARED},
    )
    merged(ours, theirs)
    merged(theirs, copy)
    found = compare(read_bank(ours.folder), read_bank(theirs.folder))
    assert found.equal
    assert len(found.same) == 5


def test_sign_offs_go_with_their_items_and_still_stand(ours, theirs):
    signed(ours, "sum-1", "sum-2")
    signed(theirs, "sum-2", "sum-3", by="NT")
    report = merged(ours, theirs)
    bank = read_bank(ours.folder)
    signoffs = read_signoffs(ours.folder)
    assert len(signoffs) == 4
    states = {e.item.id: sign_state(e, signoffs) for e in bank.entries()}
    who = {
        bank.find(id).item.prompt: [s.by for s in state.signoffs] for id, state in states.items()
    }
    assert who["Work out {1/2 + 1/3}."] == ["HT"]
    assert who["Add {1/2 + 1/3} in lowest terms."] == ["NT"]
    assert all(s.state in (Signing.SIGNED, Signing.UNSIGNED) for s in states.values())
    assert {s.by for s in report.signoffs} == {"NT"}


def test_a_settled_conflict_stays_settled(ours, theirs):
    report = merged(ours, theirs)
    names = items(ours.folder)
    wanted = next(id for id in report.conflicts[0].ids if names[id].prompt.startswith("Add"))
    prepare_settle(ours.folder, f"larkhythe:{wanted}", DAY).save()
    found = items(ours.folder)
    assert found["sum-2"].prompt.startswith("Add")
    (other,) = (one for id, one in found.items() if id.startswith("sum-2."))
    assert other.retired == DAY
    before = files(ours.folder)
    again = merged(ours, theirs)
    assert again.conflicts == ()
    assert files(ours.folder) == before


def test_an_id_that_is_several_items_until_one_is_chosen_says_which(ours, theirs):
    ids = merged(ours, theirs).conflicts[0].ids
    told = r"‘sum-2’ is several items in .*: sum-2\.\w+ and sum-2\.\w+\. Name one of them\."
    for find in (
        lambda: prepare_settle(ours.folder, "sum-2", DAY),
        lambda: read_bank(ours.folder).find("sum-2"),
        lambda: with_bank(ours.folder, lambda bank: bank.find("sum-2")),
    ):
        with pytest.raises(ItembankError, match=told) as caught:
            find()
        assert all(id in str(caught.value) for id in ids)


def test_an_item_edited_since_the_merge_can_be_settled_under_its_old_mark(ours, theirs):
    wanted, _ = merged(ours, theirs).conflicts[0].ids
    path = ours.folder / f"{UNLIKE}.toml"
    text = path.read_text(encoding="utf-8")
    head, block = text.split(f'id = "{wanted}"')
    path.write_text(f'{head}id = "{wanted}"\nmarks = 2{block}', encoding="utf-8")
    prepare_settle(ours.folder, wanted, DAY).save()
    assert items(ours.folder)["sum-2"].marks == 2


def test_ids_that_change_places_are_not_mixed_up(ours, theirs, tmp_path):
    merged(ours, theirs)
    report = prepare_merge(ours.folder, theirs.folder).report
    first, _ = report.conflicts[0].ids
    prepare_settle(ours.folder, first, DAY).save()
    plain = items(ours.folder)["sum-2"]
    # The other way about: the item in use is retired, the retired one brought back.
    path = ours.folder / f"{UNLIKE}.toml"
    text = path.read_text(encoding="utf-8")
    gone = re.search(r"retired = .*\nretired_because = .*\n", text).group()
    text = text.replace(gone, "").replace('id = "sum-2"\n', f'id = "sum-2"\n{gone}', 1)
    path.write_text(text, encoding="utf-8")
    prepare_merge(ours.folder, ours.folder).save()
    found = items(ours.folder)
    assert found["sum-2"].prompt != plain.prompt
    assert found["sum-2"].retired is None
    assert found[first].prompt == plain.prompt
    assert len(found) == 5


def test_retirement_is_taken_over(ours, tmp_path):
    gone = SHARED.replace(
        'key = "5/6"', 'key = "5/6"\nretired = 2026-10-01\nretired_because = "too easy"'
    )
    theirs = make_bank(tmp_path / "theirs", {UNLIKE: gone})
    report = merged(ours, theirs)
    assert report.retired == ("sum-2",)
    assert items(ours.folder)["sum-2"].retired_because == "too easy"


@pytest.mark.parametrize("licence", ["CC0-1.0", None])
def test_the_licence_of_another_bank_is_written_out(ours, tmp_path, licence):
    facts = FACTS.format(name="riverside")
    line = f'licence = "{licence}"\n' if licence else ""
    facts = facts.replace('licence = "CC-BY-4.0"\n', line)
    theirs = make_bank(
        tmp_path / "t", {UNLIKE: item("new-1", "Work out {1/7 + 1/2}.", "9/14")}, facts=facts
    )
    signed(theirs, "new-1")
    report = merged(ours, theirs)
    assert items(ours.folder)["new-1"].licence == (licence or "none stated")
    assert any("licences" in clash for clash in report.clashes)
    assert prepare_merge(ours.folder, theirs.folder).changes == ()
    new = read_bank(ours.folder).find("new-1")
    assert sign_state(new, read_signoffs(ours.folder)).state is Signing.SIGNED


def test_topics_sets_pins_and_prerequisites_come_along(ours, tmp_path):
    theirs = make_bank(
        tmp_path / "theirs",
        {
            UNLIKE: f'prerequisites = ["{LIKE}"]\n\n'
            '[[generated]]\ntier = "core"\ncount = 3\nseed = 4\n',
            "school.maps": 'title = "Maps"\n\n' + item("map-1", "Work out {2 × 3}.", "6"),
        },
    )
    merged(ours, theirs)
    bank = read_bank(ours.folder)
    own = next(topic for topic in bank.topics if topic.id == "school.maps")
    assert own.title == "Maps"
    unlike = next(topic for topic in bank.topics if topic.id == UNLIKE)
    assert unlike.prerequisites == (LIKE,)
    assert [made.count for made in unlike.generated] == [3]
    assert "# ours, with care" in unlike.path.read_text(encoding="utf-8")
    assert prepare_merge(ours.folder, theirs.folder).changes == ()


def test_roles_that_differ_are_both_kept_and_told(ours, tmp_path):
    facts = FACTS.format(name="larkhythe").replace("new teacher", "numeracy tutor")
    theirs = make_bank(tmp_path / "theirs", {UNLIKE: SHARED}, facts=facts)
    report = merged(ours, theirs)
    assert read_bank(ours.folder).authors["NT"] == "new teacher / numeracy tutor"
    assert any("NT stands for" in clash for clash in report.clashes)
    assert prepare_merge(ours.folder, theirs.folder).changes == ()


def test_what_somebody_saved_in_between_is_not_overwritten(ours, theirs):
    prepared = prepare_merge(ours.folder, theirs.folder)
    path = ours.folder / f"{UNLIKE}.toml"
    path.write_text(path.read_text(encoding="utf-8") + "# mine\n", encoding="utf-8")
    before = files(ours.folder)
    with pytest.raises(ChangedSince, match="# mine"):
        prepared.save()
    assert files(ours.folder) == before


def test_settling_what_is_not_there_is_refused(ours):
    with pytest.raises(ItembankError, match="Did you mean sum-"):
        prepare_settle(ours.folder, "sum-22", DAY)
    with pytest.raises(ItembankError, match="nothing to settle"):
        prepare_settle(ours.folder, "sum-2", DAY)


def test_compare_tells_of_every_item_field_by_field(ours, theirs, tmp_path):
    found = compare(ours, theirs)
    assert (found.only_first, found.only_second) == ((), ("like-1", "sum-3"))
    assert found.same == ("sum-1",)
    (difference,) = found.different
    assert difference.id == "sum-2"
    assert [str(change) for change in difference.changes] == [
        "prompt: was ‘Work out {1/2 + 1/3}.’, is now ‘Add {1/2 + 1/3} in lowest terms.’"
    ]
    assert not found.equal
    twin = make_bank(tmp_path / "twin", {LIKE: item("z-1", "Find {1/6 + 3/4}.")}, "riverside")
    assert compare(ours, twin).twins == ((("sum-1",), ("z-1",)),)


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs a process that can be killed")
def test_a_copy_is_whole_or_not_there_whenever_its_making_is_killed(ours, theirs, tmp_path):
    both = tmp_path / "new" / "both"
    for at in range(1, 40):
        child = os.fork()
        if child == 0:  # whatever happens here, it must not go on as a second test run
            try:
                step = dying(at)
                os.fsync, os.link = step(os.fsync), step(os.link)
                renaming._renamed = step(renaming._renamed)
                prepare_merge(ours.folder, theirs.folder).save_copy(both)
                os._exit(0)
            finally:
                os._exit(1)
        _, status = os.waitpid(child, 0)
        code = os.waitstatus_to_exitcode(status)
        assert code in (0, 9)
        if both.exists():
            assert {path.name for path in both.iterdir()} == {
                *("bank.toml", f"{UNLIKE}.toml", f"{LIKE}.toml")
            }
            assert len(items(both)) == 5
        if code == 0:
            break
        # The next run is not stood in the way of by what was left.
        if both.exists():
            shutil.rmtree(both)
    assert code == 0
    assert at > 5
    hidden = [path for path in both.parent.iterdir() if path != both]
    assert hidden
    for path in hidden:
        os.utime(path, (0, 0))
    prepare_merge(ours.folder, theirs.folder).save_copy(tmp_path / "new" / "again")
    assert sorted(path.name for path in both.parent.iterdir()) == ["again", "both"]


def dying(at):
    calls = []

    def step(real):
        def call(*args):
            calls.append(args)
            if len(calls) == at:
                os._exit(9)
            return real(*args)

        return call

    return step


def test_a_copy_takes_no_name_that_is_taken_and_no_bank_changed_since(ours, theirs, tmp_path):
    prepared = prepare_merge(ours.folder, theirs.folder)
    (tmp_path / "both").mkdir()
    with pytest.raises(ItembankError, match="There is something in"):
        prepared.save_copy(tmp_path / "both")
    path = ours.folder / f"{UNLIKE}.toml"
    path.write_text(path.read_text(encoding="utf-8") + "# later\n", encoding="utf-8")
    with pytest.raises(ChangedSince):
        prepared.save_copy(tmp_path / "new" / "both")
    assert not (tmp_path / "new").exists()
