"""What a bank cannot take: one plain message for each fault, with its place, and nothing lost."""

import json
import os
import re
from datetime import UTC, datetime

import pytest

from itembank.bank.saving import bank_lock

ITEM = '[[items]]\nid = "a-1"\ntier = "core"\nprompt = "Work out {2 + 3}."\nkey = "5"\n'


@pytest.fixture
def bank(away):
    """A bank with one question, in the folder where the teacher stands."""
    folder = away / "questions"
    folder.mkdir()
    facts = 'name = "larkhythe"\ntitle = "Our own"\n[authors]\nHT = "head of mathematics"\n'
    (folder / "bank.toml").write_text(facts, encoding="utf-8")
    (folder / "ratio.share.toml").write_text(f'topic = "ratio.share"\n\n{ITEM}', encoding="utf-8")
    return folder


def write(bank, text):
    (bank / "ratio.share.toml").write_text(text, encoding="utf-8")


def refused(said, *arguments):
    """Run a command that has to refuse what it is given; return its message."""
    status, out, err = said(*arguments)
    assert (status, out) == (2, "")
    assert "Traceback" not in err
    return err


@pytest.mark.parametrize(
    ("was", "now", "line", "words"),
    [
        ('key = "5"', "key = 5", 7, "‘key’ must be text in quotation marks"),
        ('key = "5"', 'kye = "5"', 7, "Did you mean ‘key’?"),
        ('key = "5"', 'key = "5', 7, "quotation mark"),
        ('key = "5"', 'key = "5/"', 7, "‘key’ cannot be read as mathematics at column 3"),
        ('key = "5"', 'key = "5"\nform = "lowest-term"', 8, "Did you mean ‘lowest-terms’?"),
        ('key = "5"', 'key = "5"\nauthor = "HX"', 8, "There is no author ‘HX’"),
        (
            "core",
            "cor",
            5,
            "must be support, core or challenge, not ‘cor’. Did you mean ‘core’?",
        ),
        ("{2 + 3}", "{2 + 3", 6, "This { is not closed"),
        ('topic = "ratio.share"', 'topic = "ratio.shar"', 1, "Did you mean ratio.share"),
        ('key = "5"\n', f'key = "5"\n\n{ITEM}', 10, "The id ‘a-1’ is taken already"),
    ],
)
def test_a_fault_in_a_file_is_told_with_its_line(said, bank, was, now, line, words):
    file = bank / "ratio.share.toml"
    write(bank, file.read_text(encoding="utf-8").replace(was, now, 1))
    err = refused(said, "bank", "check")
    assert f"{os.path.join('questions', 'ratio.share.toml')}, line {line}" in err
    assert words in err


def test_all_faults_of_all_files_are_told_at_once_and_counted(said, bank):
    write(bank, 'topic = "ratio.share"\n' + ITEM.replace('"5"', '"5/"') + 'form = "x"\nmark = 2\n')
    (bank / "ratio.scale.toml").write_text('topic = "ratio.scale"\nitem = 3\n', encoding="utf-8")
    err = refused(said, "bank", "check")
    for words in ("ratio.scale.toml, line 2", "‘key’ cannot be read", "‘x’", "‘marks’"):
        assert words in err
    assert err.splitlines()[-1] == "4 faults in 2 files."


def test_other_encodings_and_a_byte_order_mark(said, bank):
    file = bank / "ratio.share.toml"
    text = file.read_text(encoding="utf-8").replace("Work out", "£ Work out")
    file.write_bytes(text.encode("latin-1"))
    assert "ratio.share.toml, line 6: A character here is not UTF-8." in refused(
        said, "bank", "check"
    )
    file.write_bytes(text.encode("utf-16"))
    assert "UTF-16" in refused(said, "bank", "check")
    file.write_bytes(b"\xef\xbb\xbf" + text.encode("utf-8"))
    assert said("bank", "check").status == 0
    assert said("bank", "change", "a-1", "--tier", "support").status == 0
    assert file.read_bytes() == b"\xef\xbb\xbf" + text.replace("core", "support").encode("utf-8")


def test_folders_that_are_no_bank(said, bank, away):
    assert "There is no folder nowhere" in refused(said, "bank", "check", "nowhere")
    (away / "file").write_text("")
    assert "A bank is a folder" in refused(said, "bank", "list", "--bank", "file")
    (away / "empty").mkdir()
    assert "is not a bank" in refused(said, "bank", "prove", "empty")
    assert "Give one bank" in refused(said, "bank", "check", "empty", "--bank", "questions")
    assert "there is a bank here already" in refused(said, "bank", "new", "questions")
    (bank / "bank.toml").unlink()
    assert "There is no bank here" in refused(said, "bank", "list")


def locked_by(folder, who):
    """Lock a bank as someone on another machine would."""
    since = datetime.now(UTC).isoformat()
    lock = {"who": who, "pid": 7, "since": since, "token": "t", "machine": "another"}
    (folder / ".lock").write_text(json.dumps(lock), encoding="utf-8")


def test_a_locked_bank_says_who_holds_it_and_can_be_unlocked(said, bank, monkeypatch):
    # That a save is waited for is held by the tests of the lock.
    monkeypatch.setattr(bank_lock, "WAIT_SECONDS", 0.1)
    locked_by(bank, "T7")
    before = (bank / "ratio.share.toml").read_bytes()
    for command in (
        ("retire", "a-1", "--because", "old"),
        ("change", "a-1", "--tier", "support"),
        ("sign", "a-1", "--by", "HT"),
        ("import", "new.csv"),
    ):
        (bank.parent / "new.csv").write_text("topic,tier,prompt,key\nratio.share,core,{2+2},4\n")
        status, _, err = said("bank", *command)
        assert status == 2
        assert "T7 has been saving this bank for" in err
        assert f"itembank bank unlock {bank.name}" in err
    assert (bank / "ratio.share.toml").read_bytes() == before
    assert sorted(file.name for file in bank.iterdir()) == [
        ".lock",
        "bank.toml",
        "ratio.share.toml",
    ]
    assert "The lock of T7" in said("bank", "unlock").out
    assert "is not locked" in said("bank", "unlock").out
    assert said("bank", "change", "a-1", "--tier", "support").status == 0


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="an administrator may write")
def test_a_read_only_folder(said, bank):
    bank.chmod(0o555)
    try:
        status, _, err = said("bank", "change", "a-1", "--tier", "support")
    finally:
        bank.chmod(0o755)
    assert status == 2
    assert "cannot be written" in err


def test_a_folder_that_cannot_be_made(said, away):
    (away / "file").write_text("")
    assert "file" in refused(said, "bank", "new", "file/questions")
    assert "file" in refused(said, "bank", "new", "file")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["show", "a-2"], "There is no item ‘a-2’ in the bank larkhythe. Did you mean a-1?"),
        (["list", "--state", "prooved"], "Did you mean proved?"),
        (["list", "--topic", "ratio.shar"], "Did you mean ratio.share?"),
        (["list", "--tier", "hard"], "support, core or challenge"),
        (["list", "--author", "XX"], "There is no author ‘XX’"),
        (["prove", "--topic", "ratio.shar"], "Did you mean ratio.share?"),
        (["prove", "--jobs", "0"], "--jobs must be 1 or more"),
        (["sign", "a-1"], "--by HT"),
        (["sign", "--by", "HT"], "Which questions?"),
        (["sign", "a-1", "--by", "HX"], "Did you mean HT?"),
        (["sign", "a-1", "--by", "HT", "--on", "next week"], "Write it as 2026-11-30"),
        (["sign", "a-1", "--by", "HT", "--all-proved"], "not both"),
        (["move", "a-1"], "Where to?"),
        (["move", "a-1", "--topic", "ratio.shar"], "Did you mean ratio.share"),
        (["move", "a-1", "--topic", "ratio.share"], "in the topic ratio.share already"),
        (["retire", "a-1"], "Say why"),
        (["change", "a-1"], "What is to change?"),
        (["change", "a-1", "--clear", "forms"], "Did you mean form?"),
        (["change", "a-1", "--form", "mixd"], "Did you mean ‘mixed’?"),
        (["settle", "a-1"], "nothing to settle"),
        (["merge", "questions", "questions"], "the same bank"),
        (["compare", "questions", "nowhere"], "There is no folder nowhere"),
        (["import", "none.csv"], "none.csv: There is no such file."),
        (["schema", "pack"], "Write topic or bank."),
        (["add", "--topic", "ratio.share"], "--tier, --prompt and --key are missing."),
        (["new", "other", "--author", "HT"], "--author CODE=ROLE"),
        (["new", "other", "--name", "Our Bank"], "lower-case letters"),
        (["prv"], "There is no command ‘prv’. Did you mean prove?"),
        (["list", "--stat", "x"], "Did you mean --state"),
    ],
)
def test_what_is_mistyped(said, bank, arguments, words):
    before = {file: file.read_bytes() for file in bank.iterdir()}
    assert words in refused(said, "bank", *arguments)
    assert {file: file.read_bytes() for file in bank.iterdir()} == before


def test_a_wrong_key_is_not_added_unless_asked(said, bank):
    new = ("bank", "add", "-t", "ratio.share", "--tier", "core", "--prompt", "Find {2 × 7}.")
    status, out, err = said(*new, "--key", "15")
    assert status == 1
    assert re.search(r"disproved.*14.*15", " ".join(out.split()))
    assert "--anyway" in err
    assert said("bank", "show", "share-1").status == 2
    assert said(*new, "--key", "15", "--anyway").status == 0
    assert "disproved" in said("bank", "show", "share-1").out


def test_a_file_changed_by_a_colleague_since_it_was_read_is_not_overwritten(
    said, bank, monkeypatch
):
    import itembank.bank.write.edit as edit

    file = bank / "ratio.share.toml"
    take = edit.take

    def take_then_colleague(path):
        found = take(path)
        file.write_text(file.read_text(encoding="utf-8") + "# mine\n", encoding="utf-8")
        return found

    monkeypatch.setattr(edit, "take", take_then_colleague)
    status, _, err = said("bank", "change", "a-1", "--tier", "support")
    assert status == 2
    assert "has been changed since it was read" in err
    assert "+# mine" in err
    assert file.read_text(encoding="utf-8") == f'topic = "ratio.share"\n\n{ITEM}# mine\n'


TRIANGLE = """[[items]]
id = "tri-1"
tier = "core"
prompt = "Find the size of angle x."
key = "70 °"

[items.figure]
kind = "polygon"
corners = [[0, 0], [8, 0], [2, 6]]
angles = { A = "50°", B = "60°", C = "x°" }
"""


def test_a_triangle_whose_label_lies_is_refused_with_what_it_measures(said, bank):
    write(bank, f'topic = "ratio.share"\n\n{TRIANGLE}')
    told = " ".join(refused(said, "bank", "check", "questions").split())
    # Its corner A is 2 along and 6 up from there: atan 3 is 71.565°.
    assert "ratio.share.toml, line 9: The figure cannot be used: " in told
    assert "the angle labelled 50° is drawn as 71.6°." in told
