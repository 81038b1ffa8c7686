"""Two teachers at one bank: a lock with an owner, and saves that lose nothing."""

import errno
import json
import os
import subprocess
import sys
import threading
import time
from datetime import UTC, datetime, timedelta

import pytest

from itembank.bank.saving import bank_lock
from itembank.bank.saving.bank_lock import locked
from itembank.bank.saving.save import ChangedSince, save, take
from itembank.cli.words.what_to_type import told
from itembank.errors import ItembankError
from itembank.files import renaming
from itembank.people import lock
from itembank.people.lock import (
    GUARD,
    GUARD_SECONDS,
    LOCK_FILE,
    Locked,
    Manners,
    _take_away,
    holder,
    unlock,
)


@pytest.fixture(autouse=True)
def impatient(monkeypatch):
    """Wait for nobody, but where a test says so."""
    monkeypatch.setattr(bank_lock, "WAIT_SECONDS", 0.0)


def lock_of(folder, **changes):
    with locked(folder):
        record = json.loads((folder / LOCK_FILE).read_text(encoding="utf-8"))
    (folder / LOCK_FILE).write_text(json.dumps(record | changes), encoding="utf-8")
    return record


def dead_pid():
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    return ended.pid


def test_a_lock_is_there_while_held_and_gone_after(tmp_path):
    with locked(tmp_path) as mine:
        assert holder(tmp_path) == mine
        assert mine.pid == os.getpid()
    assert holder(tmp_path) is None
    assert list(tmp_path.iterdir()) == []


def test_a_second_holder_is_refused_and_told_who_and_how_long(tmp_path):
    since = datetime.now(UTC) - timedelta(minutes=12, seconds=5)
    lock_of(tmp_path, who="HT", since=since.isoformat())
    with pytest.raises(Locked) as caught, locked(tmp_path):
        pass
    assert "HT has been" in str(caught.value)
    assert "12 minutes" in str(caught.value)
    assert "‘itembank bank unlock" in told(caught.value)
    assert holder(tmp_path).who == "HT"


def test_a_live_process_on_this_machine_keeps_its_lock(tmp_path):
    lock_of(tmp_path, token="another")
    with pytest.raises(Locked), locked(tmp_path):
        pass


def test_a_dead_process_on_this_machine_is_taken_over(tmp_path):
    lock_of(tmp_path, pid=dead_pid(), token="another")
    with locked(tmp_path) as mine:
        assert holder(tmp_path).token == mine.token
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("left_behind", [True, False])
def test_a_guard_is_taken_away_only_where_its_maker_is_long_gone(
    tmp_path, monkeypatch, left_behind
):
    lock_of(tmp_path, pid=dead_pid(), token="another")
    guard = tmp_path / (LOCK_FILE + GUARD)
    guard.touch()
    age = GUARD_SECONDS + 1 if left_behind else 0
    os.utime(guard, (time.time() - age,) * 2)
    if left_behind:
        monkeypatch.setattr(bank_lock, "WAIT_SECONDS", 20.0)
        with locked(tmp_path) as mine:
            assert holder(tmp_path).token == mine.token
        assert list(tmp_path.iterdir()) == []
    else:
        with pytest.raises(Locked), locked(tmp_path):
            pass
        assert guard.exists()
        assert holder(tmp_path).token == "another"


def test_nobody_waits_for_somebody_who_is_not_just_at_work(tmp_path):
    since = datetime.now(UTC) - timedelta(minutes=12)
    lock_of(tmp_path, who="HT", token="another", machine="other", since=since.isoformat())

    def waiting(other):
        raise AssertionError(f"{other.who} is waited for")

    slow = Manners("saving", wait=60.0, stuck=600.0)
    with pytest.raises(Locked), lock.locked(tmp_path, slow, waiting):
        pass
    patient = Manners("saving", wait=60.0, stuck=900.0)
    with pytest.raises(AssertionError, match="HT is waited for"):
        lock.locked(tmp_path, patient, waiting).__enter__()


def test_a_lock_made_by_another_while_one_left_behind_is_looked_at_stays(tmp_path):
    lock_of(tmp_path, pid=dead_pid(), token="left behind")
    left_behind = holder(tmp_path)
    lock_of_another = {"who": "NT", "machine": "another", "token": "theirs"}
    unlock(tmp_path)
    lock_of(tmp_path, **lock_of_another)
    _take_away(tmp_path / LOCK_FILE, left_behind)
    assert holder(tmp_path).token == "theirs"
    assert [path.name for path in tmp_path.iterdir()] == [LOCK_FILE]


def test_a_dead_number_on_another_machine_says_nothing(tmp_path):
    lock_of(tmp_path, pid=dead_pid(), machine="another")
    with pytest.raises(Locked), locked(tmp_path):
        pass


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", '{"who": 1}', '{"owner": "ht@staff-room", "pid": 1}', "[" * 10_000, "\x00"],
)
def test_a_damaged_lock_is_a_plain_refusal(tmp_path, text):
    (tmp_path / LOCK_FILE).write_text(text, encoding="utf-8")
    with pytest.raises(Locked, match="a colleague has been saving"), locked(tmp_path):
        pass
    assert unlock(tmp_path) is not None
    with locked(tmp_path):
        pass


@pytest.mark.parametrize("text", ["", "{"])
def test_a_lock_that_says_nothing_is_not_kept_for_ever(tmp_path, text):
    (tmp_path / LOCK_FILE).write_text(text, encoding="utf-8")
    old = time.time() - 2 * GUARD_SECONDS
    os.utime(tmp_path / LOCK_FILE, (old, old))
    with locked(tmp_path) as mine:
        assert holder(tmp_path) == mine


@pytest.mark.parametrize("links", [True, False])
def test_a_full_disk_leaves_no_lock(tmp_path, monkeypatch, links):
    def full(_handle):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    def unlinked(*_):
        raise OSError(errno.EPERM, os.strerror(errno.EPERM))

    if not links:
        monkeypatch.setattr(os, "link", unlinked)
        with locked(tmp_path) as mine:
            assert holder(tmp_path) == mine
    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", full)
        with pytest.raises(ItembankError, match="No space left"), locked(tmp_path):
            pass
    assert list(tmp_path.iterdir()) == []


def test_somebody_who_is_just_saving_is_waited_for(tmp_path, monkeypatch):
    monkeypatch.setattr(bank_lock, "WAIT_SECONDS", 60.0)
    path = tmp_path / "a.toml"
    inside, go = threading.Event(), threading.Event()

    def other():
        with locked(tmp_path):
            inside.set()
            go.wait()
            save(tmp_path, [(take(path), "theirs")])

    thread = threading.Thread(target=other)
    thread.start()
    inside.wait()
    threading.Timer(0.05, go.set).start()
    with locked(tmp_path):
        assert path.read_text(encoding="utf-8") == "theirs"
    thread.join()


def test_a_lock_taken_away_and_made_anew_is_not_let_go_by_the_first(tmp_path):
    record = lock_of(tmp_path) | {"machine": "another", "token": "theirs"}
    unlock(tmp_path)
    with locked(tmp_path):
        unlock(tmp_path)
        (tmp_path / LOCK_FILE).write_text(json.dumps(record), encoding="utf-8")
    assert holder(tmp_path).token == "theirs"


def test_the_lock_goes_when_the_body_fails(tmp_path):
    with pytest.raises(RuntimeError), locked(tmp_path):
        raise RuntimeError
    assert holder(tmp_path) is None


def test_many_at_once_hold_the_lock_one_after_the_other(tmp_path, monkeypatch):
    lock_of(tmp_path, pid=dead_pid(), token="left behind")
    inside, most, saved = [], [], []
    start = threading.Barrier(8)
    monkeypatch.setattr(bank_lock, "WAIT_SECONDS", 60.0)

    def work():
        start.wait()
        for _ in range(5):
            with locked(tmp_path):
                inside.append(1)
                most.append(len(inside))
                saved.append(1)
                inside.pop()

    threads = [threading.Thread(target=work) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(saved) == 8 * 5
    assert max(most) == 1
    assert list(tmp_path.iterdir()) == []


def test_saving_replaces_the_file_whole(tmp_path):
    path = tmp_path / "a.toml"
    path.write_text("old", encoding="utf-8")
    os.chmod(path, 0o640)
    save(tmp_path, [(take(path), "new ½")])
    assert path.read_bytes() == "new ½".encode()
    assert path.stat().st_mode & 0o777 == 0o640
    assert [p.name for p in tmp_path.iterdir()] == ["a.toml"]


def test_a_new_file_and_one_taken_away(tmp_path):
    old = tmp_path / "old.toml"
    old.write_text("x", encoding="utf-8")
    save(tmp_path, [(take(tmp_path / "new.toml"), "y"), (take(old), None)])
    assert [(p.name, p.read_text(encoding="utf-8")) for p in tmp_path.iterdir()] == [
        ("new.toml", "y")
    ]


def test_line_ends_and_the_byte_order_mark_stay(tmp_path):
    path = tmp_path / "a.toml"
    path.write_bytes(b"\xef\xbb\xbfa = 1\r\nb = 2\r\n")
    before = take(path)
    assert before.text == "a = 1\nb = 2\n"
    save(tmp_path, [(before, before.text.replace("2", "3"))])
    assert path.read_bytes() == b"\xef\xbb\xbfa = 1\r\nb = 3\r\n"


def test_a_file_changed_since_is_not_overwritten_and_the_difference_is_shown(tmp_path):
    one, two = tmp_path / "a.toml", tmp_path / "b.toml"
    one.write_text("a = 1\n", encoding="utf-8")
    two.write_text("b = 1\n", encoding="utf-8")
    first, second = take(one), take(two)
    two.write_text("b = 7\n", encoding="utf-8")
    with pytest.raises(ChangedSince) as caught:
        save(tmp_path, [(first, "a = 2\n"), (second, "b = 2\n")])
    assert "-b = 1\n+b = 7" in caught.value.difference
    assert one.read_text(encoding="utf-8") == "a = 1\n"
    assert two.read_text(encoding="utf-8") == "b = 7\n"
    assert len(list(tmp_path.iterdir())) == 2


def test_a_file_made_or_taken_away_since_is_told(tmp_path):
    path = tmp_path / "a.toml"
    absent = take(path)
    path.write_text("theirs", encoding="utf-8")
    present = take(path)
    with pytest.raises(ChangedSince, match="has been made since"):
        save(tmp_path, [(absent, "mine")])
    path.unlink()
    with pytest.raises(ChangedSince, match="taken away since"):
        save(tmp_path, [(present, "mine")])
    assert not path.exists()


def test_a_folder_that_cannot_be_written_to(tmp_path, monkeypatch):
    path = tmp_path / "a.toml"
    path.write_text("old", encoding="utf-8")
    before = take(path)

    def refuse(*args, **kwargs):
        raise OSError(errno.EROFS, "Read-only file system", str(tmp_path))

    monkeypatch.setattr(os, "open", refuse)
    with pytest.raises(ItembankError, match="cannot be written to") as caught:
        save(tmp_path, [(before, "new")])
    assert caught.value.exit_status == 2
    assert path.read_text(encoding="utf-8") == "old"


@pytest.mark.parametrize("exchanged", [True, False])
@pytest.mark.parametrize("fails_at", [1, 2])
def test_a_disk_that_fails_half_way_leaves_everything_as_it_was(
    tmp_path, monkeypatch, fails_at, exchanged
):
    paths = [tmp_path / "a.toml", tmp_path / "b.toml"]
    for path in paths:
        path.write_text("old", encoding="utf-8")
    before = [take(path) for path in paths]
    owner, name = (renaming, "_renamed") if exchanged else (os, "replace")
    real, calls = getattr(owner, name), []
    if not exchanged:  # a system that has no such call
        monkeypatch.setattr(renaming, "_renamed", lambda *_: False)

    def rename(*args):
        calls.append(args)
        if len(calls) == fails_at:
            raise OSError(errno.ENOSPC, "No space left on device", str(args[1]))
        return real(*args)

    monkeypatch.setattr(owner, name, rename)
    with pytest.raises(ItembankError, match="No space left"):
        save(tmp_path, [(snapshot, "new") for snapshot in before])
    assert [path.read_text(encoding="utf-8") for path in paths] == ["old", "old"]
    assert len(list(tmp_path.iterdir())) == 2


def test_a_save_under_another_lock_writes_nothing(tmp_path):
    path = tmp_path / "a.toml"
    path.write_text("old", encoding="utf-8")
    lock_of(tmp_path, machine="another")
    with pytest.raises(Locked):
        save(tmp_path, [(take(path), "new")])
    assert path.read_text(encoding="utf-8") == "old"


def test_an_old_lock_of_a_killed_process_is_taken_though_another_was_killed_taking_it(tmp_path):
    since = datetime.now(UTC) - timedelta(days=3)
    lock_of(tmp_path, pid=dead_pid(), token="left behind", since=since.isoformat())
    guard = tmp_path / f"{LOCK_FILE}{GUARD}"
    guard.touch()
    nearly = time.time() - GUARD_SECONDS + 0.2
    os.utime(guard, (nearly, nearly))
    with lock.locked(tmp_path, Manners("saving", wait=60.0, stuck=600.0)) as mine:
        assert holder(tmp_path).token == mine.token
    guard.touch()
    lock_of(tmp_path, pid=dead_pid(), token="left behind", since=since.isoformat())
    with (
        pytest.raises(Locked, match="just now"),
        lock.locked(tmp_path, Manners("saving", wait=0.0, stuck=600.0)),
    ):
        pass
