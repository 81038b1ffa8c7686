"""Questions signed, retired, moved and renamed, and brought in from elsewhere, without a screen."""

import shutil

import pytest

from itembank.bank.merge import merge_files
from itembank.bank.write.edit import move_item
from itembank.errors import CheckFailed, ItembankError
from itembank.files.faults import FileFaults
from itembank.work.bank.bank_facts import bank_facts, ids_in, next_id
from itembank.work.bank.bank_tables import count_importable, export_questions, import_questions
from itembank.work.bank.merging import compare_banks, merge_banks, settle_question
from itembank.work.bank.moving import move_question, rename_question, retire_question
from itembank.work.bank.question_fields import check_id
from itembank.work.bank.signing_off import SignRequest, sign_questions
from itembank.work.bank.starting import start_bank
from itembank.work.bank.trying import save_trial, try_change
from tests.work.bank.kept_bank import DAY, HALVES, SHARE, SHARES, SUM, SUMS, add, files, item


def test_questions_are_signed_by_id_by_strand_and_by_proof(bank):
    add(
        bank, SUMS, {"tier": "core", "prompt": "How many trays are there?", "key": "4"}, id="tale-1"
    )
    (signed,) = sign_questions(bank, SignRequest("ht", ("sum-1",), on=DAY))
    assert (signed.id, signed.signoff.by, signed.signoff.on) == ("sum-1", "HT", DAY)
    strand = sign_questions(bank, SignRequest("HT", topic="fractions", all_proved=True, on=DAY))
    assert [(signed.id, signed.new) for signed in strand] == [("sum-1", False), ("sum-2", True)]
    retire_question(bank, "sum-1", "too easy", DAY)
    everything = sign_questions(bank, SignRequest("T9", topic=SUMS, on=DAY))
    assert [(signed.id, signed.proved) for signed in everything] == [
        ("sum-2", True),
        ("tale-1", False),
    ]


@pytest.mark.parametrize(
    ("request_", "matter"),
    [
        (SignRequest(None, ("sum-1",)), "reviewer needed"),
        (SignRequest("HT"), "questions to sign"),
        (SignRequest("HT", ("sum-1",), topic=SUMS), "ids alone"),
        (SignRequest("XX", ("sum-1",)), ""),
        (SignRequest("HT", ("sum-9",)), ""),
        (SignRequest("HT", topic="geometry.angles"), ""),
    ],
)
def test_what_cannot_be_signed_is_told_and_nothing_is_written(bank, request_, matter):
    before = files(bank)
    with pytest.raises(ItembankError) as caught:
        sign_questions(bank, request_)
    assert caught.value.matter == matter
    assert files(bank) == before


def test_a_wrong_key_is_not_signed_whatever_was_proved_before(bank):
    sign_questions(bank, SignRequest("HT", ("sum-1",), on=DAY))
    save_trial(try_change(bank, "sum-1", {"key": "10/12"}), anyway=True)
    with pytest.raises(CheckFailed, match="sum-1 cannot be signed"):
        sign_questions(bank, SignRequest("HT", ("sum-2", "sum-1"), on=DAY))
    assert item(bank, "sum-1").state.sign.state.value == "stale"


def test_a_question_is_retired_once_with_a_reason(bank):
    with pytest.raises(ItembankError) as caught:
        retire_question(bank, "sum-1", " ")
    assert caught.value.matter == "reason to retire"
    assert retire_question(bank, "sum-1", "too hard", DAY).on == DAY
    with pytest.raises(ItembankError, match="retired already, since 25 November 2026: too hard"):
        retire_question(bank, "sum-1", "again", DAY)
    with pytest.raises(ItembankError, match="nothing to sign"):
        sign_questions(bank, SignRequest("HT", ("sum-1",)))


def test_a_question_moves_with_its_title_and_to_another_bank_with_its_licence(bank, tmp_path):
    other = tmp_path / "other"
    start_bank(other, licence="CC0-1.0")
    moved = move_question(bank, "sum-1", "garden.beds", title="Beds")
    assert moved.file == bank / "garden.beds.toml"
    gone = move_question(bank, "sum-1", to=other)
    assert gone.file == other / "garden.beds.toml"
    assert bank_facts(other).topics == {"garden.beds": "Beds"}
    assert item(other, "sum-1").stated["licence"] == "CC-BY-4.0"
    add(other, SUMS, HALVES, id="sum-2")
    before = files(bank), files(other)
    with pytest.raises(ItembankError, match=r"‘sum-2’ is taken, in fractions\.add-unlike\.toml"):
        move_question(bank, "sum-2", SHARES, to=other)
    with pytest.raises(ItembankError, match="‘sum-2’ is taken there already"):  # since it looked
        move_item(
            *(bank / f"{SUMS}.toml", "sum-2", SHARES),
            folder=other,
            ids=lambda beginning: ids_in(other, beginning),
        )
    with pytest.raises(ItembankError, match="no author ‘HT’"):
        move_question(bank, "share-1", to=other)
    assert (files(bank), files(other)) == before


def test_a_new_id_may_be_none_of_the_whole_bank(bank):
    sign_questions(bank, SignRequest("HT", ("sum-1",), on=DAY))
    for taken in ("sum-2", "share-1"):
        with pytest.raises(ItembankError, match=f"The id ‘{taken}’ is taken"):
            rename_question(bank, "sum-1", taken)
    before = files(bank)
    assert rename_question(bank, "sum-1", "pond-3", DAY) == ("sum-1", "pond-3")
    after = files(bank)
    for name in (f"{SUMS}.toml", "signoffs.toml"):
        assert after[name] == before[name].replace(b'"sum-1"', b'"pond-3"')
    assert {**after, f"{SUMS}.toml": 0, "signoffs.toml": 0} == {
        **before,
        f"{SUMS}.toml": 0,
        "signoffs.toml": 0,
    }
    assert item(bank, "pond-3").state.signed
    assert next_id(bank, "number.pond") == "pond-1"
    with pytest.raises(ItembankError, match="is taken"):
        check_id(bank, "pond-3")


def test_an_id_that_is_written_while_a_question_is_renamed_is_not_given_twice(bank, monkeypatch):
    path, late = bank / f"{SUMS}.toml", ["[[items]]", 'id = "pond-3"', 'tier = "core"']
    real = merge_files.take

    def take(wanted):
        if wanted == path and late:
            text = "\n".join(
                [path.read_text(encoding="utf-8"), *late, 'prompt = "{1}"', 'key = "1"']
            )
            path.write_text(f"{text}\n", encoding="utf-8")
            late.clear()
        return real(wanted)

    monkeypatch.setattr(merge_files, "take", take)
    with pytest.raises(ItembankError, match="The id ‘pond-3’ is taken"):
        rename_question(bank, "sum-1", "pond-3", DAY)
    assert not late


def test_a_table_comes_in_whole_or_not_at_all(bank, tmp_path):
    out = tmp_path / "out.csv"
    assert export_questions(bank, out, ["fractions"]).questions == 2
    with pytest.raises(ItembankError) as caught:
        export_questions(bank, out)
    assert caught.value.matter == "table there"
    rows = out.read_text(encoding="utf-8-sig")
    out.write_text(rows.replace("sum-", "new-").replace("11/12", "11/13"), encoding="utf-8")
    assert count_importable(bank, out) == 2
    added = import_questions(bank, out)
    assert (added.ids, added.topics) == (("new-1", "new-2"), (SUMS,))
    assert added.proofs == {"proved": 1, "disproved": 1}
    before = files(bank)
    with pytest.raises(FileFaults, match="is taken already"):
        import_questions(bank, out)
    assert files(bank) == before


def test_versions_that_a_merge_finds_are_told_as_data_and_settled(bank, tmp_path):
    other = shutil.copytree(bank, tmp_path / "other")
    save_trial(try_change(other, "sum-1", {"prompt": "Add {3/4 + 1/6}."}))
    add(other, SHARES, SHARE, id="share-7")
    found = compare_banks(bank, other)
    assert (found.only_second, [difference.id for difference in found.different]) == (
        ("share-7",),
        ["sum-1"],
    )
    before = files(bank)
    would = merge_banks(bank, other, only_say=True)
    assert (would.written, files(bank)) == (False, before)
    assert would.report.only_second[-1] == "share-7"
    (versions,) = merge_banks(bank, other).apart
    first, second = versions.conflict.ids
    assert set(versions.says) == {"prompt"}
    assert set(versions.says["prompt"].values()) == {SUM["prompt"], "Add {3/4 + 1/6}."}
    both = shutil.copytree(bank, tmp_path / "both")
    assert settle_question(bank, second, on=DAY).base == "sum-1"
    kept = settle_question(both, second, keep_all=True, on=DAY)
    assert kept.renamed == ((first, "sum-3"),)
