"""A bank kept without a screen: plain values in, plain values out, and nothing half-written."""

import datetime
import errno
import shutil
import tomllib

import pytest

from itembank.bank.merge import merge_files
from itembank.bank.read.load import read_bank
from itembank.bank.saving.save import ChangedSince
from itembank.bank.write.edit import move_item
from itembank.errors import CheckFailed, ItembankError
from itembank.files import renaming
from itembank.files.faults import FileFaults
from itembank.proof.outcome import State
from itembank.work.bank.bank_facts import bank_facts, ids_in, next_id
from itembank.work.bank.bank_tables import count_importable, export_questions, import_questions
from itembank.work.bank.looking import show_questions
from itembank.work.bank.merging import compare_banks, merge_banks, settle_question
from itembank.work.bank.moving import move_question, rename_question, retire_question
from itembank.work.bank.question_fields import ItemFaults, check_id, usual_form, why_a_model
from itembank.work.bank.signing_off import SignRequest, sign_questions
from itembank.work.bank.starting import start_bank
from itembank.work.bank.trying import NewQuestion, save_trial, try_change, try_new

SUMS, SHARES = "fractions.add-unlike", "ratio.share"
DAY = datetime.date(2026, 11, 25)
SUM = {"tier": "core", "prompt": "Work out {3/4 + 1/6}.", "key": "11/12"}
SHARE = {"tier": "core", "prompt": "Share {£60} in the ratio {2 : 3}.", "key": "£24, £36"}
HALVES = {"tier": "core", "prompt": "Work out {1/2 + 1/3}.", "key": "5/6"}


@pytest.fixture(autouse=True)
def silent(capfd, monkeypatch):
    """Hold every function here to it: nothing is printed, and nobody is asked."""
    monkeypatch.setattr("builtins.input", lambda *_: pytest.fail("somebody was asked"))
    yield
    assert tuple(capfd.readouterr()) == ("", "")


def add(folder, topic, fields, **more):
    fields = {"created": datetime.date(2026, 9, 14), **fields, **more}
    return save_trial(try_new(folder, NewQuestion(topic, fields)))


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    folder = tmp_path_factory.mktemp("made") / "bank"
    authors = {"HT": "head of mathematics", "T9": "teacher of 9S"}
    start_bank(folder, "larkhythe", licence="CC-BY-4.0", authors=authors)
    add(folder, SUMS, SUM, id="sum-1")
    add(folder, SUMS, HALVES, id="sum-2")
    add(folder, SHARES, SHARE, id="share-1", author="ht")
    return folder


@pytest.fixture
def bank(made, tmp_path):
    return shutil.copytree(made, tmp_path / "bank")


def files(folder):
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def item(folder, id):
    (found,) = show_questions(folder, [id])
    return found


def test_a_new_question_is_tried_before_anything_is_written(bank):
    before = files(bank)
    trial = try_new(bank, NewQuestion(SHARES, {**SHARE, "prompt": "Divide {£60} in {2 : 3}."}))
    assert trial.item.id == "share-2"
    assert trial.outcome.state in (State.PROVED, State.NEEDS_PERSON)
    again = try_new(bank, NewQuestion(SHARES, {**SHARE, "author": "t9"}))
    assert again.outcome.state is State.PROVED
    assert again.sound
    assert again.twins == ("share-1",)
    assert again.item.author == "T9"
    assert again.shown.prompt == ["Share ", ["£60"], " in the ratio ", ["2 : 3"], "."]
    assert (again.shown.key, again.changes) == ("£24, £36", ())
    assert files(bank) == before
    saved = save_trial(again)
    assert saved == type(saved)("share-2", bank / f"{SHARES}.toml")
    assert item(bank, "share-2").stated["author"] == "T9"


def test_two_who_add_at_once_both_add_and_a_named_id_is_given_once(bank):
    first, second = (try_new(bank, NewQuestion(SHARES, SHARE)) for _ in range(2))
    named = try_new(bank, NewQuestion(SUMS, SUM, None))
    mine = try_new(bank, NewQuestion(SUMS, {**SUM, "id": "share-3"}))
    assert [save_trial(first).id, save_trial(second).id] == ["share-2", "share-3"]
    before = files(bank)
    with pytest.raises(ItembankError, match="‘share-3’ is taken already"):
        save_trial(mine)
    assert files(bank) == before
    save_trial(named)


def test_a_twin_that_is_retired_is_none(bank):
    retire_question(bank, "share-1", "too easy", DAY)
    assert try_new(bank, NewQuestion(SHARES, SHARE)).twins == ()


def test_an_id_that_an_editor_wrote_elsewhere_meanwhile_is_not_given_again(bank):
    trial = try_new(bank, NewQuestion(SUMS, {**SUM, "id": "pool-1"}))
    path = bank / f"{SHARES}.toml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace('"share-1"', '"pool-1"'), encoding="utf-8")
    with pytest.raises(ItembankError, match="‘pool-1’ is taken already"):
        save_trial(trial)
    with pytest.raises(ItembankError, match=r"taken, in ratio\.share\.toml, line"):
        try_new(bank, NewQuestion(SUMS, {**SUM, "id": "pool-1"}))


def test_what_a_question_lacks_comes_as_data(bank):
    with pytest.raises(ItembankError) as caught:
        try_new(bank, NewQuestion(fields={"prompt": "Work out {1 + 1}."}))
    assert caught.value.matter == "question not whole"
    assert caught.value.about == {"fields": ["topic", "tier", "key"]}
    with pytest.raises(ItemFaults) as faults:
        try_new(bank, NewQuestion(SUMS, {"tier": "hard", "prompt": "Find {1 + 1}.", "key": "2"}))
    assert [fault.field for fault in faults.value.faults] == [("tier",)]
    with pytest.raises(ItemFaults) as faults:
        try_new(bank, NewQuestion(SUMS, {"tier": "core", "prompt": "Find {1 + }.", "key": "("}))
    assert {fault.field[0] for fault in faults.value.faults} == {"prompt", "key"}


@pytest.mark.parametrize(
    ("topic", "title", "matter"),
    [("ratio", None, "no such topic"), ("garden.beds", None, "topic without title")],
)
def test_a_topic_that_is_not_there_is_told_by_its_matter(bank, topic, title, matter):
    with pytest.raises(ItembankError) as caught:
        try_new(bank, NewQuestion(topic, SUM, title))
    assert caught.value.matter == matter


def test_a_wrong_key_is_a_question_and_is_saved_only_by_the_answer(bank):
    before = files(bank)
    trial = try_change(bank, "sum-1", {"key": "10/12"})
    assert not trial.sound
    assert [str(change) for change in trial.changes] == ["key: was ‘11/12’, is now ‘10/12’"]
    with pytest.raises(CheckFailed) as caught:
        save_trial(trial)
    assert caught.value.matter == "key is wrong"
    assert files(bank) == before
    save_trial(trial, anyway=True)
    assert item(bank, "sum-1").state.outcome.state is State.DISPROVED


def test_a_change_touches_its_question_alone(bank):
    path = bank / f"{SUMS}.toml"
    text = path.read_text(encoding="utf-8").replace('"sum-2"', '"sum-2"  # halves and thirds')
    path.write_text(f"# Sums.\n{text}", encoding="utf-8")
    save_trial(try_change(bank, "larkhythe:sum-1", {"source": "our own", "tier": None} | SUM))
    added = f"# Sums.\n{text}".replace("created", 'source = "our own"\ncreated', 1)
    assert path.read_text(encoding="utf-8") == added


def test_of_two_who_change_a_question_the_second_is_told_and_loses_nothing(bank):
    first = try_change(bank, "sum-1", {"source": "mine"})
    second = try_change(bank, "sum-1", {"key": "22/24", "form": "any"} | {"form": None})
    other = try_change(bank, "sum-2", {"source": "yours"})
    save_trial(first)
    before = files(bank)
    with pytest.raises(ChangedSince) as caught:
        save_trial(second)
    assert "added ‘mine’" in caught.value.difference
    assert files(bank) == before
    save_trial(other)
    assert [item(bank, id).stated["source"] for id in ("sum-1", "sum-2")] == ["mine", "yours"]


def test_a_change_made_up_for_an_older_version_is_refused(bank):
    seen = item(bank, "sum-1").version
    save_trial(try_change(bank, "sum-1", {"source": "mine"}, as_of=seen))
    with pytest.raises(ItembankError) as caught:
        try_change(bank, "sum-1", {"source": "yours"}, as_of=seen)
    assert caught.value.matter == "changed since"


@pytest.mark.parametrize("name", ["ky", "id", "topic"])
def test_only_parts_of_a_question_can_be_changed(bank, name):
    with pytest.raises(ItembankError, match=f"no part ‘{name}’"):
        try_change(bank, "sum-1", {name: "x"})


def test_questions_are_signed_by_id_by_strand_and_by_proof(bank):
    add(
        bank, SUMS, {"tier": "core", "prompt": "How many trays are there?", "key": "4"}, id="tale-1"
    )
    (signed,) = sign_questions(bank, SignRequest("ht", ("sum-1",), on=DAY))
    assert (signed.id, signed.signoff.by, signed.signoff.on) == ("sum-1", "HT", DAY)
    strand = sign_questions(bank, SignRequest("HT", topic="fractions", all_proved=True, on=DAY))
    assert [(one.id, one.new) for one in strand] == [("sum-1", False), ("sum-2", True)]
    retire_question(bank, "sum-1", "too easy", DAY)
    everything = sign_questions(bank, SignRequest("T9", topic=SUMS, on=DAY))
    assert [(one.id, one.proved) for one in everything] == [("sum-2", True), ("tale-1", False)]


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
    assert (found.only_second, [each.id for each in found.different]) == (("share-7",), ["sum-1"])
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


def test_a_form_reads_what_is_written_so_far():
    assert usual_form(SUM) == usual_form({**SUM, "form": "mixed"})
    assert why_a_model(SUM) == ""
    assert why_a_model({"tier": "core", "prompt": "How many of {60} trays?", "key": "4"})


OPERATIONS = {
    "add": lambda bank, other: add(bank, SHARES, SHARE),
    "add a topic": lambda bank, other: add(bank, "ratio.scale", SHARE),
    "change": lambda bank, other: save_trial(try_change(bank, "sum-1", {"source": "x"})),
    "sign": lambda bank, other: sign_questions(bank, SignRequest("HT", ("sum-2",), on=DAY)),
    "retire": lambda bank, other: retire_question(bank, "sum-1", "old", DAY),
    "move": lambda bank, other: move_question(bank, "sum-1", SHARES),
    "rename": lambda bank, other: rename_question(bank, "sum-1", "pond-1", DAY),
    "import": lambda bank, other: import_questions(bank, other / "in.csv"),
    "merge": lambda bank, other: merge_banks(bank, other),
}


@pytest.mark.parametrize("name", OPERATIONS)
def test_a_disk_that_fails_in_the_middle_leaves_the_bank_as_it_was(
    bank, tmp_path, monkeypatch, name
):
    sign_questions(bank, SignRequest("HT", ("sum-1",), on=DAY))
    other = shutil.copytree(bank, tmp_path / "other")
    save_trial(try_change(other, "sum-2", {"source": "theirs"}))
    table = export_questions(bank).text.replace("sum-", "new-").replace("share-", "more-")
    (other / "in.csv").write_text(table, encoding="utf-8")
    before, failed = files(bank), 0
    real = renaming._renamed
    for fails_at in range(1, 9):
        calls = []

        def rename(*args, calls=calls, fails_at=fails_at):
            calls.append(args)
            if len(calls) == fails_at:
                raise OSError(errno.ENOSPC, "No space left on device", str(args[1]))
            return real(*args)

        with monkeypatch.context() as patch:
            patch.setattr(renaming, "_renamed", rename)
            try:
                OPERATIONS[name](bank, other)
                break
            except ItembankError as error:
                told = str(error)
        assert "No space left" in told
        assert files(bank) == before
        failed += 1
    assert failed
    assert files(bank) != before
    read_bank(bank)


@pytest.mark.parametrize("name", ["add", "change", "sign", "retire", "move", "rename"])
def test_nothing_is_read_of_files_that_an_index_knows(bank, monkeypatch, name):
    add(
        bank, "equations.one-step", {"tier": "core", "prompt": "Solve {x + 2 = 5}.", "key": "x = 3"}
    )
    show_questions(bank, ["sum-1"])
    real, seen = tomllib.loads, []

    def loads(text, **more):
        seen.append(text)
        return real(text, **more)

    monkeypatch.setattr(tomllib, "loads", loads)
    OPERATIONS[name](bank, bank)
    assert seen
    assert not [text for text in seen if "equations.one-step" in text]
    path = bank / "equations.one-step.toml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("x = 3", "x = "), encoding="utf-8")
    with pytest.raises(FileFaults, match="equations"):
        add(bank, SHARES, SHARE, id="later-1")
