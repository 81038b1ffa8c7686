"""A pack's folder appears whole or not at all, and what a person put there is safe."""

import os
import stat
from pathlib import Path

import pytest

from itembank.errors import ItembankError
from itembank.files import renaming, together
from itembank.packs.data.pack_files import write_folder

NEW = {"starter.pdf": b"new starter", "core.pdf": b"new core", "pack.json": b"{}\n"}
OLD = {"starter.pdf": b"old", "support.pdf": b"old too", "pack.json": b"[]\n"}


def held(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_folder_holds_just_the_files_and_nothing_stays_beside_it(tmp_path):
    write_folder(NEW, tmp_path / "8K-2026-11-30")
    assert held(tmp_path / "8K-2026-11-30") == NEW
    assert os.listdir(tmp_path) == ["8K-2026-11-30"]


def test_folders_above_are_made(tmp_path):
    write_folder(NEW, tmp_path / "a" / "b" / "pack")
    assert held(tmp_path / "a" / "b" / "pack") == NEW


def test_others_may_read_the_folder_as_the_umask_allows(tmp_path):
    before = os.umask(0o022)
    try:
        write_folder(NEW, tmp_path / "pack")
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "pack").stat().st_mode) == 0o755


def test_an_existing_folder_is_refused_and_left_alone(tmp_path):
    write_folder(OLD, tmp_path / "pack")
    with pytest.raises(ItembankError, match=r"already"):
        write_folder(NEW, tmp_path / "pack")
    assert held(tmp_path / "pack") == OLD


def test_replace_leaves_nothing_of_the_old_pack(tmp_path):
    write_folder(OLD, tmp_path / "pack")
    write_folder(NEW, tmp_path / "pack", replace=True)
    assert held(tmp_path / "pack") == NEW
    assert os.listdir(tmp_path) == ["pack"]


def test_replace_refuses_a_folder_with_a_person_s_own_file(tmp_path):
    write_folder(OLD, tmp_path / "pack")
    (tmp_path / "pack" / "seating plan.docx").write_bytes(b"mine")
    with pytest.raises(ItembankError, match=r"seating plan\.docx"):
        write_folder(NEW, tmp_path / "pack", replace=True)
    assert held(tmp_path / "pack") == OLD | {"seating plan.docx": b"mine"}


def test_replace_refuses_a_folder_that_was_never_a_pack(tmp_path):
    (tmp_path / "pack").mkdir()
    (tmp_path / "pack" / "letter.pdf").write_bytes(b"mine")
    with pytest.raises(ItembankError, match=r"it holds no pack\.json"):
        write_folder(NEW, tmp_path / "pack", replace=True)
    assert held(tmp_path / "pack") == {"letter.pdf": b"mine"}


def test_a_file_in_the_way_is_refused_even_with_replace(tmp_path):
    (tmp_path / "pack").write_bytes(b"mine")
    with pytest.raises(ItembankError, match="is no folder"):
        write_folder(NEW, tmp_path / "pack", replace=True)
    assert (tmp_path / "pack").read_bytes() == b"mine"


def test_a_link_is_refused_even_with_replace(tmp_path):
    write_folder(OLD, tmp_path / "real")
    (tmp_path / "pack").symlink_to(tmp_path / "real")
    with pytest.raises(ItembankError, match="is no folder"):
        write_folder(NEW, tmp_path / "pack", replace=True)
    assert held(tmp_path / "real") == OLD


@pytest.mark.parametrize("name", ["../x.pdf", "", "..", "a/b.pdf"])
def test_a_file_cannot_leave_its_folder(tmp_path, name):
    with pytest.raises(ItembankError, match="cannot be called"):
        write_folder({name: b"x"}, tmp_path / "pack")
    assert not os.listdir(tmp_path)


def test_a_file_where_a_folder_should_be_is_a_plain_error(tmp_path):
    (tmp_path / "here").write_text("mine")
    with pytest.raises(ItembankError, match=r"cannot be written: Not a directory"):
        write_folder(NEW, tmp_path / "here" / "pack")
    assert os.listdir(tmp_path) == ["here"]


class Stop(BaseException):
    """Stands for Ctrl-C: no handler of plain errors catches it."""


def stopping(real, at: int, error: BaseException):
    """Return `real`, raising `error` in place of its call number `at`."""
    calls = 0

    def step(*args, **kwargs):
        nonlocal calls
        calls += 1
        if calls == at:
            raise error
        return real(*args, **kwargs)

    return step


FULL = OSError(28, "No space left on device")


@pytest.mark.parametrize("old", [None, OLD])
@pytest.mark.parametrize("error", [FULL, Stop()])
@pytest.mark.parametrize(
    ("what", "at"),
    [("write_file", 1), ("write_file", 3), ("sync_folder", 1), ("put_in_place", 1)],
)
def test_a_stop_at_any_step_leaves_all_as_it_was(tmp_path, monkeypatch, what, at, error, old):
    parent = tmp_path / "deep" / "output"
    if old:
        write_folder(old, parent / "pack")
    monkeypatch.setattr(together, what, stopping(getattr(together, what), at, error))
    expected = ItembankError if error is FULL else Stop
    with pytest.raises(expected) as caught:
        write_folder(NEW, parent / "pack", replace=old is not None)
    if error is FULL:
        assert "No space left on device. Nothing was written" in str(caught.value)
    if old:
        assert os.listdir(parent) == ["pack"]
        assert held(parent / "pack") == old
    else:
        assert not os.listdir(tmp_path)


@pytest.mark.parametrize("error", [FULL, Stop()])
def test_the_old_pack_comes_back_when_the_new_one_cannot_take_its_place(
    tmp_path, monkeypatch, error
):
    write_folder(OLD, tmp_path / "pack")
    monkeypatch.setattr(renaming, "_renamed", lambda *_: False)  # where names cannot be exchanged
    monkeypatch.setattr(os, "rename", stopping(os.rename, 2, error))
    with pytest.raises(ItembankError if error is FULL else Stop):
        write_folder(NEW, tmp_path / "pack", replace=True)
    assert os.listdir(tmp_path) == ["pack"]
    assert held(tmp_path / "pack") == OLD


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may write")
def test_an_unwritable_folder_is_a_plain_error(tmp_path):
    tmp_path.chmod(0o500)
    try:
        with pytest.raises(ItembankError, match="cannot be written: Permission denied"):
            write_folder(NEW, tmp_path / "pack")
    finally:
        tmp_path.chmod(0o700)
