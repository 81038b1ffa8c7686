"""Whole files: written beside under a name of nobody else's, never through a link."""

import errno
import os
import re
import threading
import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.errors import ItembankError
from itembank.files import disk
from itembank.files.disk import beside, clear_leftovers, stage, stage_folder, write_first
from itembank.files.together import write_whole

DAY = 24 * 3600


@given(st.text(st.characters(exclude_characters="/\0", exclude_categories=["Cs"]), min_size=1))
def test_a_hidden_name_is_in_the_same_folder_and_no_longer_than_a_disk_takes(name):
    from pathlib import Path

    path = Path("/a") / name
    if path.name != name:  # ‘.’ and ‘..’
        return
    assert beside(path).parent == path.parent
    assert len(os.fsencode(beside(path).name)) < 255
    assert beside(path) != beside(path)


def test_a_link_waiting_under_the_old_fixed_name_is_not_followed(tmp_path):
    precious = tmp_path / "precious"
    precious.write_bytes(b"mine")
    (tmp_path / ".out.csv.new").symlink_to(precious)
    write_whole(tmp_path / "out.csv", b"new")
    assert precious.read_bytes() == b"mine"
    assert (tmp_path / "out.csv").read_bytes() == b"new"


def test_a_hidden_name_that_is_there_is_never_written_over(tmp_path, monkeypatch):
    precious = tmp_path / "precious"
    precious.write_bytes(b"mine")
    taken = beside(tmp_path / "out.csv")
    taken.symlink_to(precious)
    monkeypatch.setattr(disk, "beside", lambda *_: taken)
    with pytest.raises(ItembankError, match="cannot be written: File exists"):
        write_whole(tmp_path / "out.csv", b"new")
    assert precious.read_bytes() == b"mine"


def test_a_link_to_a_file_stays_a_link(tmp_path):
    (tmp_path / "there").mkdir()
    (tmp_path / "there" / "out.csv").write_bytes(b"old")
    (tmp_path / "out.csv").symlink_to("there/out.csv")
    write_whole(tmp_path / "out.csv", b"new")
    assert (tmp_path / "out.csv").is_symlink()
    assert (tmp_path / "there" / "out.csv").read_bytes() == b"new"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="pipes with a name")
def test_what_is_no_file_is_written_to_and_not_replaced(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    got = []
    reader = threading.Thread(target=lambda: got.append((tmp_path / "pipe").read_bytes()))
    reader.start()
    write_whole(tmp_path / "pipe", b"new")
    reader.join()
    assert got == [b"new"]
    assert not (tmp_path / "pipe").is_file()


def test_permissions_stay_and_new_ones_can_be_named(tmp_path):
    path = tmp_path / "out.csv"
    write_whole(path, b"1", mode=0o600)
    assert path.stat().st_mode & 0o777 == 0o600
    write_whole(path, b"2")
    assert path.stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("old", [b"old", None])
def test_a_full_disk_leaves_what_was_there(tmp_path, monkeypatch, old):
    path = tmp_path / "new folder" / "out.csv"
    if old is not None:
        write_whole(path, old)

    def full(_handle):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(ItembankError, match=r"out\.csv cannot be written: No space left"):
        write_whole(path, b"new")
    assert [(p.name, p.is_file()) for p in tmp_path.rglob("*")] == (
        [] if old is None else [("new folder", False), ("out.csv", True)]
    )


def test_many_writers_of_one_file_leave_one_of_their_texts_whole(tmp_path):
    path = tmp_path / "out.csv"
    texts = [bytes([65 + n]) * 50_000 for n in range(8)]
    threads = [threading.Thread(target=write_whole, args=(path, text)) for text in texts]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert path.read_bytes() in texts
    assert os.listdir(tmp_path) == ["out.csv"]


def test_only_the_first_has_a_name(tmp_path):
    path = tmp_path / "first"
    won = []
    start = threading.Barrier(8)

    def work(number):
        start.wait()
        if write_first(path, str(number).encode()):
            won.append(number)

    threads = [threading.Thread(target=work, args=(n,)) for n in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert path.read_bytes() == str(*won).encode()
    assert os.listdir(tmp_path) == ["first"]


def aged(path, seconds):
    then = time.time() - seconds
    os.utime(path, (then, then), follow_symlinks=False)


def test_what_a_killed_program_left_goes_after_a_day_and_nothing_else(tmp_path):
    target = tmp_path / "out.csv"
    old = stage(target, b"half")
    old_folder = stage_folder(target)
    (old_folder / "pack.json").write_bytes(b"half")
    link = beside(target)
    link.symlink_to(tmp_path / "mine.csv")
    young = stage(target, b"half")
    theirs = [
        tmp_path / name
        for name in (
            *("mine.csv", ".out.csv.new", ".hidden", ".out.csv.0123456789abcdef.new"),
            *("out.csv.0123456789abcdef.itembank-new", ".out.csv.0123.itembank-new"),
            *(".out.csv.0123456789ABCDEF.itembank-new", ".x.0123456789abcdef.itembank-new.txt"),
        )
    ]
    for their in theirs:
        their.write_bytes(b"mine")
    for their in (old, old_folder, link, *theirs):
        aged(their, DAY + 60)
    aged(young, DAY - 600)
    write_whole(target, b"whole")
    assert sorted(tmp_path.iterdir()) == sorted([target, young, *theirs])


def test_what_was_moved_aside_when_the_power_failed_is_put_back(tmp_path, monkeypatch):
    pack = tmp_path / "pack"
    pack.mkdir()
    (pack / "pack.json").write_bytes(b"whole")
    os.rename(pack, beside(pack, "old"))
    clear_leftovers(tmp_path)
    assert not pack.exists()  # another may be at it in this moment
    monkeypatch.setattr(disk, "PUT_BACK", -1)
    clear_leftovers(tmp_path)
    assert (pack / "pack.json").read_bytes() == b"whole"
    assert os.listdir(tmp_path) == ["pack"]


def test_no_part_of_the_tool_writes_in_a_way_of_its_own():
    from pathlib import Path

    import itembank

    home = Path(itembank.__file__).parent
    own = re.compile(r"mkstemp|mkdtemp|NamedTemporary|os\.replace|\.write_(text|bytes)\(|O_CREAT")
    found = {
        str(path.relative_to(home))
        for path in home.rglob("*.py")
        if path.parent != home / "files" and path.name != "schema.py"
        if own.search(path.read_text("utf-8"))
    }
    # A guard without a word in it, and a database that fills while it is made.
    assert found <= {"people/lock.py", "bank/index/store/index_store.py"}
