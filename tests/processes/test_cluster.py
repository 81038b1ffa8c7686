"""Work on a cluster: the same results as here, whatever becomes of workers and scheduler."""

import builtins
import os
import time

import pieces
import pytest
from dask_here import DaskHere

from itembank.errors import CheckFailed, ItembankError
from itembank.processes import cluster as cluster_module
from itembank.processes import on_worker, same_code
from itembank.processes.cluster import Cluster
from itembank.processes.parcel import packed, unpacked
from itembank.processes.place import ThisMachine, all_of, all_or_lost
from itembank.processes.pool import Lost

pytest.importorskip("distributed")
NUMBERS = list(range(1, 41))


@pytest.fixture(scope="module")
def dask(tmp_path_factory):
    with DaskHere(tmp_path_factory.mktemp("dask")) as found:
        yield found


@pytest.fixture
def own_dask(tmp_path):
    with DaskHere(tmp_path) as found:
        yield found


@pytest.fixture
def remarks():
    return []


@pytest.fixture
def at(remarks):
    def at(dask):
        return Cluster(dask.address, remarks.append, processes=2)

    return at


def test_results_are_those_of_this_machine_in_order(dask, at, remarks):
    many = [n % 7 for n in range(3000)]
    with at(dask) as place:
        assert all_of(place, pieces.double, many) == all_of(ThisMachine(2), pieces.double, many)
        found = all_of(place, pieces.slow, [0.2] * 12)
        assert all_of(place, pieces.double, []) == []
    ours = {os.getpid(), *(worker.pid for worker in dask.workers)}
    assert len(set(found) - ours) == 2  # an interpreter of its own for each worker's thread
    assert remarks == []


def test_pieces_that_hang_or_end_their_process_are_lost_as_here(dask, at, remarks):
    with at(dask) as place:
        found = all_or_lost(place, pieces.endless_at_nine, NUMBERS, longest=1.0)
        assert found == [*NUMBERS[:8], Lost("took longer than 1 s"), *NUMBERS[9:]]
        found = all_or_lost(place, pieces.dies_at_seven, NUMBERS)
        assert found == [*NUMBERS[:6], Lost("ended the process it ran in"), *NUMBERS[7:]]
    assert remarks == []


def test_the_fault_told_is_that_of_the_first_piece(dask, at):
    with at(dask) as place:
        with pytest.raises(ItembankError, match="no seat 3"):
            all_of(place, pieces.faulty, NUMBERS)
        with pytest.raises(CheckFailed, match="it comes to 5"):
            all_of(place, pieces.faulty, NUMBERS[3:])
        with pytest.raises(RuntimeError, match=r"pickle|local"):
            all_of(place, pieces.cannot_be_sent, NUMBERS)


def test_what_cannot_travel_is_done_here(dask, at, remarks):
    with at(dask) as place:
        assert all_of(place, lambda n: n + 1, NUMBERS) == [n + 1 for n in NUMBERS]
        assert all_of(place, os.path.basename, ["a/b", "c/d"]) == ["b", "d"]  # not ours to ask


def test_an_interrupt_stops_what_the_workers_are_at(dask, at):
    def stop(done, total):
        raise KeyboardInterrupt

    with at(dask) as place, pytest.raises(KeyboardInterrupt):
        all_or_lost(place, pieces.slow, [0.01, *[600] * 20], stop)
    with at(dask) as place:  # they are free again, long before 600 s are over
        assert all_of(place, pieces.double, NUMBERS) == [2 * n for n in NUMBERS]


def test_a_worker_that_is_killed_in_the_middle_loses_nothing(own_dask, at, remarks):
    times = [0.05] * 60

    def kill(done, total):
        if done == 6:
            own_dask.workers[0].kill()

    with at(own_dask) as place:
        found = all_or_lost(place, pieces.slow, times, kill)
        assert len(found) == 60
        assert all(isinstance(one, int) for one in found)
        again = all_of(place, pieces.double, list(range(2000)))
    assert again == [2 * n for n in range(2000)]
    assert remarks == []


def test_without_any_worker_left_the_rest_is_done_here(own_dask, at, remarks, monkeypatch):
    monkeypatch.setattr(cluster_module, "PATIENCE", 1.0)

    def kill(done, total):
        if done == 6:
            for worker in own_dask.workers:
                worker.kill()

    with at(own_dask) as place:
        found = all_or_lost(place, pieces.double, list(range(3000)), kill)
        assert found == [2 * n for n in range(3000)]
    assert len(remarks) <= 1
    found = all_or_lost(at(own_dask), pieces.slow, [0.01] * 20)
    assert len(found) == 20
    assert "no worker" in remarks[-1]
    assert "on this machine" in remarks[-1]


def test_a_scheduler_that_ends_in_the_middle_loses_nothing(own_dask, at, remarks, monkeypatch):
    monkeypatch.setattr(cluster_module, "PATIENCE", 1.0)

    def kill(done, total):
        if done == 6:
            own_dask.scheduler.kill()

    with at(own_dask) as place:
        found = all_or_lost(place, pieces.slow, [0.05] * 60, kill)
    assert len(found) == 60
    assert all(isinstance(one, int) for one in found)
    assert len(remarks) == 1
    assert "does not answer any more" in remarks[0]


def test_a_scheduler_that_is_not_there_is_a_remark(remarks, monkeypatch):
    monkeypatch.setattr(cluster_module, "CONNECT", 0.5)
    with Cluster("tcp://127.0.0.1:9", remarks.append, processes=2) as place:
        assert all_of(place, pieces.double, NUMBERS) == [2 * n for n in NUMBERS]
        assert all_of(place, pieces.double, NUMBERS) == [2 * n for n in NUMBERS]
    (only,) = remarks
    assert only.startswith("No scheduler answers at tcp://127.0.0.1:9")
    assert only.endswith("The work is done on this machine.")


def test_workers_with_other_code_are_not_used_and_are_named(dask, at, remarks, monkeypatch):
    other = {**same_code.code(), "its code": "0123456789", "sympy": "1.0"}
    monkeypatch.setattr(same_code, "code", lambda: other)
    monkeypatch.setattr(cluster_module, "PATIENCE", 1.0)
    with at(dask) as place:
        assert all_of(place, pieces.told, NUMBERS)[0][0] == 1
    (only,) = remarks
    assert "its code differs" in only
    assert "1.0 here" in only
    assert "on this machine" in only


def test_a_worker_without_the_tool_is_left_out_and_named(own_dask, at, remarks, tmp_path):
    (tmp_path / "none" / "itembank").mkdir(parents=True)
    (tmp_path / "none" / "itembank" / "__init__.py").write_text("raise ImportError('none here')")
    own_dask.add(first_path=tmp_path / "none")
    with at(own_dask) as place:
        for _ in range(40):
            assert len(all_of(place, pieces.slow, [0.05] * 30)) == 30
            if remarks:
                break
            time.sleep(0.1)
    assert "it has no itembank" in remarks[0]
    assert "on this machine" not in remarks[0]


def test_a_worker_does_nothing_for_other_code():
    other = {**same_code.code(), "sympy": "1.0"}
    assert unpacked(on_worker.run(other, packed((len, ["a"], None)))) is None


@pytest.mark.parametrize(
    "address",
    ["", "tcp://", "10.0.0.1:8786", "http://h:1", "tcp://h:0", "tcp://h:99999", "tcp://h"],
)
def test_what_is_no_address_is_refused(address):
    with pytest.raises(ItembankError, match="tcp://HOST:PORT"):
        Cluster(address, print)


def test_without_dask_the_extra_is_named(monkeypatch):
    real = builtins.__import__

    def without(name, *args, **kwargs):
        if name == "distributed":
            raise ImportError(name)
        return real(name, *args, **kwargs)

    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(ItembankError, match=r"pip install 'itembank\[cluster\]'"):
        Cluster("tcp://127.0.0.1:8786", print)


def test_certificates_that_are_not_there_are_a_remark(dask, remarks, monkeypatch):
    monkeypatch.setattr(cluster_module, "CONNECT", 1.0)
    with Cluster(dask.address.replace("tcp:", "tls:"), remarks.append, 2) as place:
        assert all_of(place, pieces.double, NUMBERS) == [2 * n for n in NUMBERS]
    assert len(remarks) == 1
    assert "on this machine" in remarks[0]
