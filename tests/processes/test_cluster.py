"""Work on a cluster: the same results as here, whatever becomes of workers and scheduler."""

import builtins
import os
import shutil
from importlib.util import find_spec
from pathlib import Path

import pieces
import pytest
from dask_here import DaskHere

from itembank.bank.index import words_read as asking
from itembank.bank.proof import judging
from itembank.cli.main import run
from itembank.errors import CheckFailed, ItembankError
from itembank.processes import cluster as cluster_module
from itembank.processes import cluster_run, cluster_workers, on_worker, same_code
from itembank.processes.cluster import Cluster
from itembank.processes.lost import Lost
from itembank.processes.parcel import packed, unpacked
from itembank.processes.work_place import ThisMachine, all_of, all_or_lost
from tests.depth import WHOLE, left, only_whole, whole

# Asked for without loading it: every worker collects this file, and one or two run it.
pytestmark = pytest.mark.skipif(find_spec("distributed") is None, reason="dask is not installed")
NUMBERS = list(range(1, 41))
BANKS = Path(__file__).parent.parent.parent / "banks"


@pytest.fixture(scope="module")
def dask(tmp_path_factory):
    # A worker that may do two pieces at once has an interpreter for each, as two workers have.
    size = {"workers": 2, "threads": 1} if WHOLE else {"workers": 1, "threads": 2}
    with DaskHere(tmp_path_factory.mktemp("dask"), **size) as found:
        yield found


@pytest.fixture(autouse=True)
def _no_hurry(monkeypatch):
    """Wait for workers however slow the machine is; tests of having none say so."""
    monkeypatch.setattr(cluster_run, "PATIENCE", 600.0)
    monkeypatch.setattr(cluster_module, "CONNECT", 120.0)


@pytest.fixture
def remarks():
    return []


@pytest.fixture
def at(remarks):
    def at(dask):
        return Cluster(dask.address, remarks.append, processes=2)

    return at


@whole
def test_results_are_those_of_this_machine_in_order(dask, at, remarks):
    many = [n % 7 for n in range(3000)]
    with at(dask) as place:
        assert all_of(place, pieces.double, many) == all_of(ThisMachine(2), pieces.double, many)
        found = set()
        for _ in range(60):  # one worker may be there some seconds before the other
            found |= set(all_of(place, pieces.slow, [0.1] * 12))
            if len(found) > 1:
                break
        assert all_of(place, pieces.double, []) == []
    ours = {os.getpid(), *(worker.pid for worker in dask.workers)}
    assert len(found - ours) == 2  # an interpreter of its own for each worker's thread
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
        assert len(remarks) == 1
        assert "so this machine does" in remarks[0]
        assert all_of(place, os.path.basename, ["a/b", "c/d"]) == ["b", "d"]
        assert "not data" in remarks[1]  # a worker does no more than the tool asks


def test_an_interrupt_stops_what_the_workers_are_at(dask, at):
    def stop(done, total):
        raise KeyboardInterrupt

    with at(dask) as place, pytest.raises(KeyboardInterrupt):
        all_or_lost(place, pieces.slow, [*[0.01] * 4, *[600] * 20], stop)
    with at(dask) as place:  # they are free again, long before 600 s are over
        assert all_of(place, pieces.double, NUMBERS) == [2 * n for n in NUMBERS]


@pytest.mark.parametrize(
    ("command", "says"),
    [
        (("bank", "prove", "questions"), "keys"),
        left(("bank", "twins", "questions", "more"), "ask the same:"),
        left(("audit", "ratio.share", "--sample", "410", "--json"), '"checked"'),
    ],
)
def test_commands_say_the_same_to_the_byte(dask, tmp_path, monkeypatch, capsys, command, says):
    monkeypatch.setattr(asking, "FEW_ITEMS", 1)
    told = []
    for name, options in {"here": (), "there": ("--cluster", dask.address)}.items():
        folder = tmp_path / name  # neither knows what the other has found out
        shutil.copytree(BANKS / "larkhythe" / "questions", folder / "questions")
        shutil.copytree(BANKS / "larkhythe" / "questions", folder / "more")
        facts = folder / "more" / "bank.toml"
        facts.write_text(facts.read_text("utf-8").replace('"larkhythe"', '"more"'), "utf-8")
        monkeypatch.chdir(folder)
        with pytest.raises(SystemExit) as end:
            run([*command, *options])
        told.append((end.value.code, *capsys.readouterr()))
    assert told[0] == told[1]
    assert says in told[0][1]
    assert told[0][2] == ""


def test_a_command_goes_on_without_its_cluster(tmp_path, monkeypatch, capsys):
    monkeypatch.setattr(cluster_module, "CONNECT", 0.5)
    monkeypatch.setattr(judging, "FEW", 1)
    monkeypatch.setattr(os, "sched_getaffinity", lambda _: {0}, raising=False)
    (tmp_path / "questions").mkdir()
    for name in ("bank.toml", "ratio.share.toml"):
        shutil.copy(BANKS / "larkhythe" / "questions" / name, tmp_path / "questions")
    monkeypatch.chdir(tmp_path)
    with pytest.raises(SystemExit):
        run(["bank", "prove", "questions", "--cluster", "tcp://127.0.0.1:9"])
    out, err = capsys.readouterr()
    assert "keys" in out
    assert err.startswith("Note: No scheduler answers at tcp://127.0.0.1:9.")


@only_whole
def test_whatever_ends_in_the_middle_nothing_is_lost(tmp_path, at, remarks, monkeypatch):
    """First one of two workers, then the scheduler; a third worker is without the tool."""
    monkeypatch.setattr(cluster_workers, "LOOK_EVERY", 0.5)

    def end_all():
        monkeypatch.setattr(cluster_run, "PATIENCE", 0.5)
        dask.scheduler.kill()

    bare = tmp_path / "bare" / "itembank" / "__init__.py"
    bare.parent.mkdir(parents=True)
    bare.write_text("raise ImportError('none here')")
    times = [0.05] * 80
    with DaskHere(tmp_path) as dask, at(dask) as place:
        doomed = {6: dask.workers[0].kill}
        found = all_or_lost(place, pieces.slow, times, lambda n, _: doomed.get(n, int)())
        assert len(found) == 80
        assert all(isinstance(one, int) for one in found)
        assert remarks == []
        dask.add(first_path=bare.parent.parent)
        for _ in range(60):
            if remarks:
                break
            assert all_of(place, pieces.slow, times[:20])
            assert all_of(place, pieces.double, list(range(2000))) == [2 * n for n in range(2000)]
        assert "it has no itembank" in remarks[0]
        assert "on this machine" not in remarks[0]
        doomed = {6: end_all}
        found = all_or_lost(place, pieces.slow, times, lambda n, _: doomed.get(n, int)())
        assert all(isinstance(one, int) for one in found)
    assert len(remarks) == 2
    assert "does not answer any more. What is left is done on this machine." in remarks[1]


@only_whole  # a scheduler of its own; workers of other code are as good as none
def test_a_cluster_without_workers_is_a_remark(tmp_path, at, remarks, monkeypatch):
    monkeypatch.setattr(cluster_run, "PATIENCE", 0.5)
    with DaskHere(tmp_path, workers=0) as dask, at(dask) as place:
        assert all_of(place, pieces.double, NUMBERS) == [2 * n for n in NUMBERS]
    (only,) = remarks
    assert "has no worker that is free. What is left is done on this machine." in only


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
    judge, judged = same_code.differences, []

    def differences(ours, theirs):
        judged.append(theirs)
        if len(judged) == len(dask.workers):  # each has told what it has: none is to come
            monkeypatch.setattr(cluster_run, "PATIENCE", 0.0)
        return judge(ours, theirs)

    monkeypatch.setattr(same_code, "differences", differences)
    with at(dask) as place:
        assert all_of(place, pieces.told, NUMBERS)[0][0] == 1
    (only,) = remarks
    assert "its code differs" in only
    assert "1.0 here" in only
    assert "on this machine" in only


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
    assert remarks[0].startswith("tls:// needs certificates")
    assert "ssl_context" not in remarks[0]
