"""A week's packs, page and plan: all of them are written, or none and nothing is lost."""

import errno
import os
import signal
import threading

import pytest

from itembank.errors import ItembankError
from itembank.files import renaming
from itembank.packs.data.write_packs import write_together

OLD = {"pack.json": b"old", "starter.pdf": b"old"}
NEW = {"pack.json": b"new", "core.pdf": b"new"}


def tree(folder):
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def asked(home):
    folders = {home / "out" / "8K-1": NEW, home / "out" / "8K-2": NEW}
    return folders, {home / "out" / "week.pdf": b"page", home / "plans" / "week.toml": b"plan"}


WHOLE = {
    **{f"out/8K-{n}/{name}": data for n in (1, 2) for name, data in NEW.items()},
    "out/week.pdf": b"page",
    "plans/week.toml": b"plan",
}


@pytest.fixture
def standing(tmp_path):
    """Have an older pack, an older page and an older plan."""
    write_together(
        {tmp_path / "out" / "8K-1": OLD},
        {tmp_path / "out" / "week.pdf": b"old", tmp_path / "plans" / "week.toml": b"old"},
    )
    return tmp_path


def test_folders_and_files_are_made_with_what_is_above_them(tmp_path):
    write_together(*asked(tmp_path))
    assert tree(tmp_path) == WHOLE


def test_what_stood_there_makes_way_as_a_whole(standing):
    write_together(*asked(standing), replace=True)
    assert tree(standing) == WHOLE  # and the old starter.pdf is gone


def test_without_replace_nothing_is_touched_and_every_pack_is_named(standing):
    write_together({standing / "out" / "8K-2": OLD}, {})
    before = tree(standing)
    with pytest.raises(ItembankError) as caught:
        write_together(*asked(standing))
    assert "8K-1" in str(caught.value)
    assert "8K-2" in str(caught.value)
    assert tree(standing) == before


def test_a_folder_with_something_of_the_teachers_is_not_replaced(standing):
    (standing / "out" / "8K-1" / "my notes.txt").write_bytes(b"mine")
    before = tree(standing)
    with pytest.raises(ItembankError, match=r"it holds my notes\.txt"):
        write_together(*asked(standing), replace=True)
    assert tree(standing) == before


FULL = OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


class Refusing:
    """Stands for the system's calls; the one of number `at` (from 1) does `instead`."""

    def __init__(self, at, instead):
        self.at, self.instead, self.calls = at, instead, 0

    def __call__(self, real):
        def call(*args, **kwargs):
            self.calls += 1
            if self.calls == self.at:
                self.instead()
            return real(*args, **kwargs)

        return call


def refused():
    raise OSError(errno.EACCES, os.strerror(errno.EACCES))


def full():
    raise FULL


@pytest.fixture(params=["exchanged", "moved aside"], autouse=True)
def system(request, monkeypatch):
    """Have a system that can exchange two names in one step, and one that cannot."""
    if request.param == "moved aside":
        monkeypatch.setattr(renaming, "_renamed", lambda *_: False)


def renames(step):
    return (
        (renaming, "_renamed", step(renaming._renamed)),
        (os, "rename", step(os.rename)),
        (os, "replace", step(os.replace)),
    )


@pytest.mark.parametrize("at", range(1, 7))
def test_a_full_disk_while_writing_changes_nothing(standing, monkeypatch, at):
    before = tree(standing)
    step = Refusing(at, full)
    monkeypatch.setattr(os, "fsync", step(os.fsync))
    with pytest.raises(ItembankError, match=r"No space left on device. Nothing was changed"):
        write_together(*asked(standing), replace=True)
    assert step.calls == at
    assert tree(standing) == before
    assert not list(standing.rglob(".*"))


@pytest.mark.parametrize("replace", [True, False])
@pytest.mark.parametrize("at", range(1, 5))
def test_a_name_that_cannot_be_had_puts_all_back(tmp_path, monkeypatch, at, replace):
    if replace:
        write_together(
            {tmp_path / "out" / "8K-1": OLD},
            {tmp_path / "out" / "week.pdf": b"old", tmp_path / "plans" / "week.toml": b"old"},
        )
    before = tree(tmp_path)
    step = Refusing(at, refused)
    with monkeypatch.context() as patch:
        for change in renames(step):
            patch.setattr(*change)
        with pytest.raises(ItembankError, match="Permission denied"):
            write_together(*asked(tmp_path), replace)
    assert tree(tmp_path) == before
    assert not list(tmp_path.rglob(".*"))


def test_folders_made_for_nothing_are_taken_away(tmp_path, monkeypatch):
    monkeypatch.setattr(os, "fsync", Refusing(1, full)(os.fsync))
    with pytest.raises(ItembankError):
        write_together(*asked(tmp_path))
    assert list(tmp_path.iterdir()) == []


def test_ctrl_c_waits_until_all_have_their_names(standing, monkeypatch):
    step = Refusing(2, lambda: os.kill(os.getpid(), signal.SIGINT))
    for change in renames(step):
        monkeypatch.setattr(*change)
    # Another thread must not hand the signal on to this one before its time.
    done = threading.Event()
    other = threading.Thread(target=done.wait)
    other.start()
    try:
        with pytest.raises(KeyboardInterrupt):
            write_together(*asked(standing), replace=True)
    finally:
        done.set()
        other.join()
    assert signal.getsignal(signal.SIGINT) is signal.default_int_handler
    assert tree(standing) == WHOLE
    assert not list(standing.rglob(".*"))


@pytest.mark.parametrize("at", range(1, 5))
def test_a_file_is_there_whole_whenever_the_power_fails(standing, at):
    child = os.fork()
    if child == 0:  # whatever happens here, it must not go on as a second test run
        try:
            step = Refusing(at, lambda: os._exit(9))
            for owner, name, call in renames(step):
                setattr(owner, name, call)
            write_together(*asked(standing), replace=True)
        finally:
            os._exit(1)
    _, status = os.waitpid(child, 0)
    assert os.waitstatus_to_exitcode(status) == 9
    assert (standing / "plans" / "week.toml").read_bytes() in (b"old", b"plan")
    assert (standing / "out" / "week.pdf").read_bytes() in (b"old", b"page")
    # What was left beside does not stand in the way of the next try.
    write_together(*asked(standing), replace=True)
    assert {k: v for k, v in tree(standing).items() if "/." not in k} == WHOLE
