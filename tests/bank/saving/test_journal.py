"""A save that was cut off among several files is finished, but not over what a person wrote."""

import os

import pytest

from itembank.bank.saving.bank_lock import finish_saving, locked
from itembank.files.disk import JOURNAL_FILE, clear_leftovers, stage
from itembank.files.journal import begin, finish


@pytest.fixture
def begun(tmp_path):
    """Have two files to be replaced, one to be made and one to go, and none of it done."""
    for name in ("a", "b", "gone"):
        (tmp_path / name).write_text(f"old {name}")
    new = [(stage(tmp_path / n, f"new {n}".encode()), tmp_path / n) for n in ("a", "b", "c")]
    begin(tmp_path, new, [tmp_path / "gone"])
    return tmp_path


def texts(folder):
    return {path.name: path.read_text() for path in folder.iterdir()}


def test_what_was_begun_is_finished_once(begun):
    os.replace(next(begun.glob(".a.*")), begun / "a")  # this far it had come
    finish_saving(begun)
    assert texts(begun) == {"a": "new a", "b": "new b", "c": "new c"}
    finish_saving(begun)
    assert texts(begun) == {"a": "new a", "b": "new b", "c": "new c"}


def test_what_one_has_begun_under_ones_own_lock_is_not_finished_before_it_is_done(tmp_path):
    with locked(tmp_path):
        begin(tmp_path, [(stage(tmp_path / "a", b"new"), tmp_path / "a")], [])
        with locked(tmp_path):
            assert not (tmp_path / "a").exists()
            assert (tmp_path / JOURNAL_FILE).exists()
    with locked(tmp_path):
        assert (tmp_path / "a").read_bytes() == b"new"


def test_what_a_person_wrote_since_stays(begun):
    (begun / "b").write_text("mine")
    (begun / "gone").write_text("mine")
    finish(begun)
    seen = {name: text for name, text in texts(begun).items() if name[0] != "."}
    assert seen == {"a": "new a", "b": "mine", "c": "new c", "gone": "mine"}
    assert not (begun / JOURNAL_FILE).exists()


def test_hidden_files_that_are_still_needed_are_not_cleared_however_old(begun):
    for path in begun.iterdir():
        os.utime(path, (0, 0))
    clear_leftovers(begun)
    finish_saving(begun)
    assert texts(begun) == {"a": "new a", "b": "new b", "c": "new c"}


DAMAGED = [
    "",
    "{",
    "[]",
    '{"new": 1}',
    '{"new": [[1, 2, 3, 4]], "gone": ["", [1, 2]]}',
    '{"new": [[null, "a", "", ""]], "gone": [[null, "a"]]}',
]


@pytest.mark.parametrize("text", DAMAGED)
def test_a_damaged_journal_changes_nothing(tmp_path, text):
    (tmp_path / "a").write_text("old")
    (tmp_path / JOURNAL_FILE).write_text(text)
    finish(tmp_path)
    assert texts(tmp_path) == {"a": "old"}


def test_what_a_half_staged_file_holds_is_never_put_in_place(begun):
    staged = next(begun.glob(".b.*"))
    staged.write_text("ne")
    finish(begun)
    assert (begun / "b").read_text() == "old b"


def test_a_journal_reaches_no_other_folder(tmp_path):
    (tmp_path / "bank").mkdir()
    precious = tmp_path / "precious"
    precious.write_text("mine")
    begin(tmp_path / "bank", [], [precious])
    text = (tmp_path / "bank" / JOURNAL_FILE).read_text()
    (tmp_path / "bank" / JOURNAL_FILE).write_text(text.replace('"precious"', '"../precious"'))
    finish(tmp_path / "bank")
    assert precious.read_text() == "mine"


def test_a_link_to_a_file_stays_one(tmp_path):
    (tmp_path / "there").mkdir()
    (tmp_path / "there" / "real").write_text("old")
    (tmp_path / "a").symlink_to("there/real")
    begin(tmp_path, [(stage(tmp_path / "there" / "real", b"new"), tmp_path / "a")], [])
    finish(tmp_path)
    assert (tmp_path / "a").is_symlink()
    assert texts(tmp_path / "there") == {"real": "new"}
