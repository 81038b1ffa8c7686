"""Many pieces on several processes: all results, none lost, nothing left running."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path
from types import SimpleNamespace

import pieces
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.errors import CheckFailed, ItembankError
from itembank.processes import team
from itembank.processes.forked import Forked
from itembank.processes.lost import Lost
from itembank.processes.pool import each
from itembank.processes.work_place import ThisMachine, all_of, all_or_lost
from tests.depth import cases

NUMBERS = list(range(1, 41))


def test_results_come_in_the_order_of_the_pieces_from_several_processes(kind):
    found = all_of(ThisMachine(2, kind), pieces.told, NUMBERS)
    assert [number for number, _ in found] == NUMBERS
    assert len({process for _, process in found} - {os.getpid()}) == 2


@given(numbers=st.lists(st.integers() | st.text(), max_size=40), count=st.integers(1, 3))
@settings(max_examples=cases(6, 15))
def test_it_is_as_if_they_were_done_here(numbers, count):
    assert all_of(ThisMachine(count), pieces.double, numbers) == [2 * number for number in numbers]


def test_results_come_as_they_are_ready(kind):
    results = each(pieces.slow, [60, 0], processes=2, kind=kind)
    assert next(results)[0] == 1
    results.close()


@pytest.mark.parametrize("processes", [1, 2])
def test_progress_counts_every_piece_once(processes):
    seen = []
    all_or_lost(
        ThisMachine(processes), pieces.double, NUMBERS, lambda done, of: seen.append((done, of))
    )
    assert seen == [(n, 40) for n in NUMBERS]


def test_a_piece_that_ends_its_process_is_lost_and_no_other_is(kind):
    found = all_or_lost(ThisMachine(2, kind), pieces.dies_at_seven, NUMBERS)
    assert found[6] == Lost("ended the process it ran in")
    assert found[:6] + found[7:] == NUMBERS[:6] + NUMBERS[7:]


def test_a_process_ended_by_somebody_else_loses_nothing(kind, tmp_path):
    cases = [(number, str(tmp_path / "mark")) for number in NUMBERS]
    assert all_of(ThisMachine(2, kind), pieces.dies_once, cases) == NUMBERS
    assert (tmp_path / "mark").exists()


def test_a_piece_without_end_is_lost_and_no_other_is(kind):
    found = all_or_lost(ThisMachine(2, kind), pieces.endless_at_nine, NUMBERS, longest=1.0)
    assert found[8] == Lost("took longer than 1 s")
    assert found[:8] + found[9:] == NUMBERS[:8] + NUMBERS[9:]


def test_no_piece_is_blamed_for_the_time_in_which_all_stood_still(monkeypatch):
    """As when a laptop sleeps: hours pass at once, for this process and for the others."""
    slept = iter([0.0] * 3 + [3600.0] * 1000)
    real = time.monotonic
    monkeypatch.setattr(team, "LOOK_EVERY", 0.05)
    monkeypatch.setattr(team.time, "monotonic", lambda: real() + next(slept, 3600.0))
    found = all_or_lost(ThisMachine(2, Forked), pieces.slow, [0.5, 0.5], longest=20.0)
    assert not any(isinstance(one, Lost) for one in found)


def late(monkeypatch, kind, looks, seconds):
    """Have a process be heard of only after so many looks, each of which takes so long."""
    looked = 0

    def ready(children, patience):
        nonlocal looked
        looked += 1
        return heard(children, patience) if looked > looks else []

    heard = kind.ready
    monkeypatch.setattr(kind, "ready", staticmethod(ready))
    clock = SimpleNamespace(monotonic=lambda: min(looked, looks) * seconds)
    monkeypatch.setattr(team, "time", clock)


def test_no_piece_is_blamed_for_the_time_its_process_takes_to_begin(monkeypatch, kind):
    late(monkeypatch, kind, looks=6, seconds=1.5)
    assert all_or_lost(ThisMachine(2, kind), pieces.double, NUMBERS, longest=1.0) == [
        2 * number for number in NUMBERS
    ]


def test_what_processes_that_never_begin_were_given_is_done_here(monkeypatch, kind, nothing_left):
    late(monkeypatch, kind, looks=100, seconds=2.0)
    found = all_of(ThisMachine(2, kind), pieces.told, NUMBERS)
    assert {process for _, process in found} == {os.getpid()}
    assert nothing_left()


def test_the_fault_told_is_that_of_the_first_piece(kind):
    for _ in range(3):
        with pytest.raises(ItembankError, match="no seat 3") as error:
            all_of(ThisMachine(2, kind), pieces.faulty, NUMBERS)
        assert type(error.value) is ItembankError
    with pytest.raises(CheckFailed, match="it comes to 5"):
        all_of(ThisMachine(2, kind), pieces.faulty, NUMBERS[3:])


@pytest.mark.parametrize(
    ("work", "words"), [(pieces.broken, "KeyError: 1"), (pieces.cannot_be_sent, "pickle|local")]
)
def test_any_other_fault_says_what_it_was(kind, work, words):
    with pytest.raises(RuntimeError, match=words):
        all_of(ThisMachine(2, kind), work, [1, 1, 1])


def test_what_is_printed_there_is_no_answer(kind, capfd):
    assert all_of(ThisMachine(2, kind), pieces.noisy, NUMBERS) == NUMBERS


def test_what_cannot_travel_is_done_here(nothing_left):
    from itembank.processes.spawned import Spawned

    here = ThisMachine(2, Spawned)
    assert all_of(here, lambda number: number + 1, NUMBERS) == [n + 1 for n in NUMBERS]
    odd = [lambda: 0, 1, lambda: 2, 3]
    assert [one for one, _ in all_of(here, pieces.told, odd)] == odd
    assert nothing_left()


def test_where_no_process_begins_all_is_done_here(monkeypatch):
    def refuse():
        raise BlockingIOError("no more processes")

    monkeypatch.setattr(os, "fork", refuse)
    found = all_of(ThisMachine(2, Forked), pieces.told, NUMBERS)
    assert found == [(number, os.getpid()) for number in NUMBERS]


def test_what_ended_its_process_is_not_tried_in_this_one(monkeypatch):
    """Where no other process can begin in the place of those that ended."""
    forks = iter([os.fork, os.fork])

    def fork():
        try:
            return next(forks)()
        except StopIteration:
            raise BlockingIOError("no more processes") from None

    monkeypatch.setattr(os, "fork", fork)
    found = all_or_lost(ThisMachine(2, Forked), pieces.dies_twice, NUMBERS)
    lost = Lost("ended the process it ran in")
    assert found == [lost if number in (7, 33) else number for number in NUMBERS]


def test_an_interrupt_leaves_no_process_behind(kind, nothing_left):
    def stop(done, total):
        if done == 10:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        all_or_lost(ThisMachine(2, kind), pieces.double, NUMBERS, stop)
    assert nothing_left()


def test_no_pieces_and_few_pieces(kind):
    assert all_of(ThisMachine(2, kind), pieces.told, []) == []
    assert all_of(ThisMachine(2, kind), pieces.told, [1]) == [(1, os.getpid())]
    few = list(each(pieces.told, [1, 2, 3], processes=2, few=3, kind=kind))
    assert {process for _, (_, process) in few} == {os.getpid()}


OWNER = """
import os, sys
sys.path.insert(0, sys.argv[1])
import pieces
from itembank.processes.forked import Forked
from itembank.processes.pool import each
from itembank.processes.spawned import Spawned
kind = {"Forked": Forked, "Spawned": Spawned}[sys.argv[2]]
for _, pid in each(pieces.slow, [0, 0, 600, 600], processes=2, kind=kind):
    print(pid, flush=True)
"""


def is_there(pid):
    """Tell whether a process still runs; the system takes a moment to end it."""
    for _ in range(200):
        try:
            state = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0]
        except OSError:
            return False
        if state in "ZX":
            return False
        time.sleep(0.05)
    return True


@pytest.mark.skipif(sys.platform != "linux", reason="looks at processes as Linux shows them")
@pytest.mark.parametrize("how", [signal.SIGKILL, signal.SIGTERM, signal.SIGINT])
def test_no_process_outlives_its_owner_whatever_ends_it(kind, how):
    command = [sys.executable, "-c", OWNER, str(Path(__file__).parent), kind.__name__]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL) as owner:
        workers = {int(owner.stdout.readline()) for _ in range(2)}
        children = Path(f"/proc/{owner.pid}/task/{owner.pid}/children").read_text().split()
        assert workers <= set(map(int, children))
        owner.send_signal(how)
        assert owner.wait(30) != 0
    assert not any(is_there(int(pid)) for pid in children)
