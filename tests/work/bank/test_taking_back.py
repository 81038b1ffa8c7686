"""Every change of a bank is taken back, one by one, to the byte; nobody's later work is lost."""

import shutil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.bank.saving import kept_changes
from itembank.bank.saving.kept_changes import FILE, file_was
from itembank.bank.saving.save import save, take
from itembank.errors import ItembankError
from itembank.work.bank.bank_tables import export_questions, import_questions
from itembank.work.bank.merging import merge_banks, settle_question
from itembank.work.bank.moving import move_question, rename_question, retire_question
from itembank.work.bank.signing_off import SignRequest, sign_questions
from itembank.work.bank.taking_back import changes_of, take_back
from itembank.work.bank.trying import save_trial, try_change
from tests.work.bank.kept_bank import DAY, HALVES, SHARES, SUMS, add, files


def change(bank, id, **fields):
    save_trial(try_change(bank, id, fields))


def test_every_kind_of_change_is_taken_back_in_turn(bank, tmp_path):
    other = shutil.copytree(bank, tmp_path / "other")
    change(other, "sum-1", prompt="Add {3/4 + 1/6}.")
    table = tmp_path / "table.csv"
    export_questions(bank, table, [SHARES])
    table.write_text(table.read_text("utf-8-sig").replace("share-1", "share-9"), encoding="utf-8")
    first = len(changes_of(bank))
    steps = [
        lambda: add(bank, SUMS, HALVES, id="sum-7"),
        lambda: change(bank, "sum-7", tier="support"),
        lambda: sign_questions(bank, SignRequest("HT", ("sum-1", "share-1"), on=DAY)),
        lambda: retire_question(bank, "sum-2", "too hard", DAY),
        lambda: move_question(bank, "share-1", "garden.beds", title="Beds"),
        lambda: rename_question(bank, "sum-7", "pond-1", DAY),
        lambda: import_questions(bank, table),
        lambda: merge_banks(bank, other),
        lambda: settle_question(bank, next(id for id in ids(bank) if id.startswith("sum-1."))),
    ]
    states = [files(bank)]
    for step in steps:
        step()
        states.append(files(bank))
        assert states[-1] != states[-2]
    said = [each.words for each in changes_of(bank)][: len(steps)]
    assert said[-1] == "sum-7 added"
    assert said[-3] == "2 questions signed by HT"
    for state, words in zip(reversed(states[:-1]), said, strict=True):
        assert take_back(bank).words == words
        assert files(bank) == state
    assert len(changes_of(bank)) == first


def ids(bank):
    from itembank.work.bank.looking import find_questions
    from itembank.work.bank.wanted import Wanted

    return [line.id for line in find_questions(bank, Wanted()).lines]


def test_what_somebody_changed_since_stays_theirs(bank):
    change(bank, "sum-1", tier="support")
    path = bank / f"{SUMS}.toml"
    path.write_text(path.read_text() + "# mine\n")
    before = files(bank)
    with pytest.raises(ItembankError, match=f"{SUMS}.toml has been changed since"):
        take_back(bank)
    assert files(bank) == before
    path.write_text(path.read_text().removesuffix("# mine\n"))
    assert take_back(bank).words == "sum-1 changed"


def test_a_new_bank_has_nothing_to_take_back_and_a_strange_record_is_none(bank):
    (bank / FILE).write_bytes(b'{"words": "x", "on": "2026-11-25", "files": [["../x", 1, 2')
    with pytest.raises(ItembankError, match="no change of it is known"):
        take_back(bank)
    (bank / FILE).write_text(
        '{"words": "x", "on": "2026-11-25", "files": [["../x.toml", null, null, 0, 0, ""]]}\n'
    )
    assert changes_of(bank) == ()


def test_a_change_that_was_taken_back_as_the_power_failed_is_no_more(bank, monkeypatch):
    change(bank, "sum-1", tier="support")
    now = files(bank)
    change(bank, "sum-1", tier="challenge")
    record = (bank / FILE).read_bytes()
    take_back(bank)
    (bank / FILE).write_bytes(record)
    assert files(bank) == now
    change(bank, "sum-2", tier="support")
    assert take_back(bank).words == "sum-2 changed"
    assert take_back(bank).words == "sum-1 changed"
    assert files(bank) != now


def test_what_is_kept_stays_small(tmp_path, monkeypatch):
    monkeypatch.setattr(kept_changes, "MOST", 3)
    path = tmp_path / "a.toml"
    for number in range(5):
        save(tmp_path, [(take(path), f"{number}\n" * 1000)], f"change {number}")
    assert [each.words for each in changes_of(tmp_path)] == ["change 4", "change 3", "change 2"]
    monkeypatch.setattr(kept_changes, "MOST_BYTES", 3_000)
    save(tmp_path, [(take(path), "end")], "the last")
    assert [each.words for each in changes_of(tmp_path)] in ([], ["the last"])


@given(st.binary(max_size=40), st.binary(max_size=40), st.binary(max_size=40))
def test_what_a_file_was_is_had_back_whatever_it_was(start, old, new):
    before, after = start + old + start, start + new + start
    kept = file_was("a.toml", before, after)
    assert kept.was(after) == before
    assert len(kept.middle) <= len(old)
    if after != before:
        with pytest.raises(ValueError, match=r"a\.toml"):
            kept.was(before)
