"""A bank kept without a screen: plain values in, plain values out, and nothing half-written."""

import errno
import shutil
import tomllib

import pytest

from itembank.bank.read.load import read_bank
from itembank.bank.saving.save import ChangedSince
from itembank.errors import CheckFailed, ItembankError
from itembank.files import renaming
from itembank.files.faults import FileFaults
from itembank.proof.outcome import State
from itembank.work.bank.bank_tables import export_questions, import_questions
from itembank.work.bank.looking import show_questions
from itembank.work.bank.merging import merge_banks
from itembank.work.bank.moving import move_question, rename_question, retire_question
from itembank.work.bank.question_fields import ItemFaults, usual_form, why_a_model
from itembank.work.bank.reviewers import add_reviewer
from itembank.work.bank.signing_off import SignRequest, sign_questions
from itembank.work.bank.trying import NewQuestion, save_trial, try_change, try_new
from itembank.work.report.titles import Titles
from tests.work.bank.kept_bank import DAY, SHARE, SHARES, SUM, SUMS, add, files, item


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


@pytest.mark.parametrize("authors", ["authors = 3", "authors = [['HT', 'head']]"])
def test_authors_that_are_no_table_are_told_and_nothing_is_written(tmp_path, authors):
    stated = f'{authors}\nname = "ours"\ntitle = "Ours"\n'
    (tmp_path / "bank.toml").write_text(stated)
    with pytest.raises(ItembankError, match="authors are to be a table"):
        add_reviewer(tmp_path, "T7", "checks")
    assert (tmp_path / "bank.toml").read_text() == stated


def test_titles_are_read_though_an_editor_put_a_mark_before_them(tmp_path):
    text = '\ufefftopic = "garden.beds"\ntitle = "Beds of a garden"\n'
    (tmp_path / "garden.beds.toml").write_text(text, "utf-8")
    (tmp_path / "deep.toml").write_text("a = " + "[" * 5000)
    assert Titles([tmp_path]).of("garden.beds") == "Beds of a garden"
