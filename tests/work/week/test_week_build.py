"""The process that builds a week's packs tells what went wrong, and never outlives its work."""

import contextlib
import os
import time
from pathlib import Path

import pytest

from itembank.errors import CheckFailed, ItembankError
from itembank.processes import machine
from itembank.work.week import week_build
from itembank.work.week.week_build import Builder


def written(request):
    return {"pack.json": f"{request} by {os.getpid()}".encode()}


def faulty(request):
    raise ItembankError(f"there is nothing on {request}")


def wrong(request):
    raise CheckFailed(f"{request}: it comes to 3, the key says 4")


def broken(request):
    raise KeyError(request)


def ended(request):
    os._exit(1)


def slow(request):
    time.sleep(600)


def begun():
    """Return every process that this one has begun, and those have."""
    parents = {}
    for stat in Path("/proc").glob("[0-9]*/stat"):
        with contextlib.suppress(OSError):
            parents[int(stat.parent.name)] = int(stat.read_text().rpartition(")")[2].split()[1])
    found, new = set(), {os.getpid()}
    while new := {number for number, parent in parents.items() if parent in new} - found:
        found |= new
    return found - BEFORE


BEFORE: set[int] = set()
"""Processes of other tests of this session, such as a browser that stays open."""


@pytest.fixture(autouse=True)
def _others():
    BEFORE.clear()
    BEFORE.update(begun())


def runs(process):
    """Tell whether a process still runs; one that only waits to be counted does not."""
    try:
        return Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0] not in "ZX"
    except OSError:
        return False


def all_ended(processes):
    """Tell whether all of them end; the system takes a moment to end them."""
    for _ in range(600):
        if not any(map(runs, processes)):
            return True
        time.sleep(0.05)
    return False


def ask(requests, seen):
    with Builder() as builder:
        builder.build(requests)
        seen |= begun()
        return builder.packs()


@pytest.mark.parametrize("number", [1, 2, 5])
def test_packs_come_back_in_order_from_other_processes(monkeypatch, number):
    monkeypatch.setattr(week_build, "build_one", written)
    with Builder() as builder:
        builder.build([f"pack {n}" for n in range(number)])
        found = [pack["pack.json"].decode().split(" by ") for pack in builder.packs()]
    assert [one[0] for one in found] == [f"pack {n}" for n in range(number)]
    assert str(os.getpid()) not in {one[1] for one in found}


@pytest.mark.parametrize("number", [1, 2])
@pytest.mark.parametrize(
    ("build", "kind", "words"),
    [
        (faulty, ItembankError, "there is nothing on pack 0"),
        (wrong, CheckFailed, "the key says 4"),
        (broken, RuntimeError, "KeyError: 'pack 0'"),
        (ended, RuntimeError, "process"),
    ],
)
def test_what_goes_wrong_there_is_told_here(monkeypatch, build, kind, words, number):
    monkeypatch.setattr(week_build, "build_one", build)
    seen = set()
    with pytest.raises(kind, match=words) as error:
        ask([f"pack {n}" for n in range(number)], seen)
    assert type(error.value) is kind
    assert all_ended(seen)


def break_off(asked, seen):
    with Builder() as builder:
        if asked:
            builder.build(["one", "two"])
        for _ in range(600):
            seen |= begun()
            if len(seen) == (3 if asked and machine.cores() > 1 else 1):
                break
            time.sleep(0.05)
        raise KeyboardInterrupt


@pytest.mark.parametrize("asked", [True, False])
def test_it_ends_with_all_it_has_begun_when_the_week_is_broken_off(monkeypatch, asked):
    monkeypatch.setattr(week_build, "build_one", slow)
    seen = set()
    with pytest.raises(KeyboardInterrupt):
        break_off(asked, seen)
    assert seen
    assert all_ended(seen)


def test_on_one_processor_packs_are_built_here(monkeypatch):
    monkeypatch.setattr(machine, "cores", lambda: 1)
    monkeypatch.setattr(week_build, "build_one", written)
    with Builder() as builder:
        builder.build(["one"])
        assert builder.packs() == [written("one")]
