"""A bank gone through a page at a time, with nothing proved that is not asked for."""

import shutil

import pytest

from itembank.errors import ItembankError, NotFound
from itembank.files.shipped import shipped_folder
from itembank.work.bank import browsing
from itembank.work.bank.banks_at_hand import banks_at_hand, the_bank
from itembank.work.bank.browsing import browse, prove_some
from itembank.work.bank.merge_preview import BOTH, MINE, merge_and_settle, preview_merge
from itembank.work.bank.moving import retire_question
from itembank.work.bank.received import files_sent, lay_out
from itembank.work.bank.taking_back import take_back
from itembank.work.bank.trying import save_trial, try_change
from itembank.work.bank.wanted import Wanted
from tests.work.bank.kept_bank import DAY, SHARE, SHARES, SUM, SUMS, add, files


def test_a_page_holds_so_many_and_says_how_many_there_are(bank, monkeypatch):
    monkeypatch.setattr(browsing, "A_PAGE", 2)
    retire_question(bank, "sum-1", "too easy", DAY)
    first, last = browse(bank, Wanted()), browse(bank, Wanted(), 9)
    lines = [*first.lines, *last.lines]
    assert [line.id for line in lines] == ["sum-1", "sum-2", "share-1"]
    assert (first.number, last.number, first.pages, first.wanted) == (1, 2, 2, 3)
    assert {topic.id: topic.questions for topic in first.topics} == {SUMS: 2, SHARES: 1}
    assert [line.retired for line in lines] == [True, False, False]
    assert (lines[2].asked[1], lines[2].key) == (["£60"], "£24, £36")


def test_what_is_proved_is_known_only_once_it_was_looked_at(bank):
    wanted = Wanted(states=("disproved",))
    add_wrong(bank)
    before = browse(bank, wanted)
    assert (before.wanted, before.unknown) == (0, 4)
    assert prove_some(bank, wanted, seconds=60) == 0
    after = browse(bank, wanted)
    assert ([line.id for line in after.lines], after.unknown) == (["wrong-1"], 0)
    assert prove_some(bank, Wanted()) == 0


def add_wrong(bank):
    from itembank.work.bank.trying import NewQuestion, try_new

    wrong = {**SUM, "id": "wrong-1", "key": "1"}
    save_trial(try_new(bank, NewQuestion(SUMS, wrong)), anyway=True)


def test_a_departments_own_banks_come_first_and_a_copy_hides_what_it_is_of(bank, tmp_path):
    home = tmp_path / "home"
    shutil.copytree(bank, home / "questions")
    shutil.copytree(shipped_folder() / "key-stage-4", home / "copied")
    found = banks_at_hand(None, home)
    assert [(bank.name, bank.own) for bank in found] == [
        ("key-stage-4", True),
        ("larkhythe", True),
        ("key-stage-3", False),
    ]
    with pytest.raises(NotFound):
        the_bank(found, "nowhere")


def test_a_merge_is_seen_before_it_is_written_and_settled_as_chosen(bank, tmp_path):
    other = shutil.copytree(bank, tmp_path / "other")
    save_trial(try_change(other, "sum-1", {"prompt": "Add {3/4 + 1/6}."}))
    save_trial(try_change(other, "sum-2", {"tier": "support"}))
    add(other, SHARES, {**SHARE, "key": "£24, £36", "prompt": "Split {£60} in the ratio {2 : 3}."})
    sent = files_sent((name, data) for name, data in files(other).items())
    theirs = tmp_path / "theirs"
    theirs.mkdir()
    lay_out(sent, theirs)
    before = files(bank)
    seen = preview_merge(bank, theirs)
    assert [difference.base for difference in seen.apart] == ["sum-1", "sum-2"]
    assert [str(change) for change in seen.apart[1].changes] == [
        "tier: was ‘core’, is now ‘support’"
    ]
    assert [item.id for item in seen.new] == ["share-2"]
    assert files(bank) == before
    _, left = merge_and_settle(bank, theirs, {"sum-1": MINE, "sum-2": BOTH})
    assert left == ()
    kept = {line.id: line.tier for line in browse(bank, Wanted()).lines if not line.retired}
    assert kept == {"sum-1": "core", "sum-2": "core", "sum-3": "support"} | {
        "share-1": "core",
        "share-2": "core",
    }
    assert take_back(bank).words.endswith("merged, with what was chosen")
    assert files(bank) == before


@pytest.mark.parametrize("name", ["../bank.toml", "a/bank.toml", ".bank.toml", "c:bank.toml"])
def test_nothing_is_laid_out_by_a_name_that_leads_elsewhere(tmp_path, name):
    with pytest.raises(ItembankError):
        lay_out({"bank.toml": b"", name: b"x"}, tmp_path)
