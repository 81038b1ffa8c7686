"""One week at a time in a department's folder, and nobody kept out for good."""

import os
import threading
from datetime import UTC, datetime, timedelta

import pytest

from itembank.people.lock import Locked, holder
from itembank.work.week import week_turn
from itembank.work.week.week_turn import FILE, one_at_a_time


@pytest.fixture
def somebody(tmp_path, monkeypatch):
    """Have somebody else, on another thread, plan a week in the folder until the test ends."""
    monkeypatch.setenv("ITEMBANK_INITIALS", "HT")
    inside, go = threading.Event(), threading.Event()

    def other():
        with one_at_a_time(tmp_path):
            inside.set()
            go.wait()

    thread = threading.Thread(target=other)
    thread.start()
    inside.wait()
    yield tmp_path
    go.set()
    thread.join()
    assert os.listdir(tmp_path) == []


def test_one_who_waits_is_told_for_whom_and_sent_away_in_the_end(somebody, monkeypatch):
    seen = []
    monkeypatch.setattr(week_turn, "WAIT_SECONDS", 0.1)
    # It is not yet as old as the longest week: what is left behind is another matter.
    monkeypatch.setattr("itembank.people.lock.Holder.seconds", lambda *_: 0.0)
    with (
        pytest.raises(Locked, match=r"HT has been planning a week here .* nothing was done"),
        one_at_a_time(somebody, seen.append),
    ):
        pass
    assert {other.who for other in seen} == {"HT"}


def test_what_is_older_than_any_week_takes_was_left_behind(tmp_path):
    with one_at_a_time(tmp_path):
        record = (tmp_path / FILE).read_text()
        now = holder(tmp_path, FILE).since
    old = (datetime.now(UTC) - timedelta(seconds=week_turn.WAIT_SECONDS + 1)).isoformat()
    record = record.replace(now.isoformat(), old).replace('"machine": "', '"machine": "another')
    (tmp_path / FILE).write_text(record)
    with one_at_a_time(tmp_path):
        assert holder(tmp_path, FILE).pid == os.getpid()
    assert os.listdir(tmp_path) == []


def test_a_folder_that_cannot_be_written_to_keeps_nobody_from_planning(tmp_path, monkeypatch):
    def refuse(*_):
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr("itembank.people.lock.write_first", refuse)
    done = []
    with one_at_a_time(tmp_path):
        done.append(True)
    assert done
