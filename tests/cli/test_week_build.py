"""The process that builds a week's packs tells what went wrong, and never outlives its work."""

import os
import time
from pathlib import Path

import pytest

from itembank.errors import CheckFailed, ItembankError
from itembank.work.week.build import Builder


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


def runs(group):
    """Tell whether a process of a group still runs; one that only waits to be counted does not."""
    for stat in Path("/proc").glob("[0-9]*/stat"):
        try:
            state, _, its_group = stat.read_text().rpartition(")")[2].split()[:3]
        except OSError:
            continue
        if int(its_group) == group and state not in "ZX":
            return True
    return False


def is_there(group):
    """Tell whether any process of a group stays; the system takes a moment to end them."""
    for _ in range(600):
        if not runs(group):
            return False
        time.sleep(0.1)
    return True


def ask(builder, requests, stop=False):
    with builder:
        if requests:
            builder.start(requests)
        if stop:
            time.sleep(0.5)
            raise KeyboardInterrupt
        return builder.result()


@pytest.mark.parametrize("number", [1, 2, 5])
def test_packs_come_back_in_order_from_other_processes(monkeypatch, number):
    monkeypatch.setattr(week_build, "build_one", written)
    with Builder() as builder:
        builder.start([f"pack {n}" for n in range(number)])
        found = [one["pack.json"].decode().split(" by ") for one in builder.result()]
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
    builder = Builder()
    with pytest.raises(kind, match=words) as error:
        ask(builder, [f"pack {n}" for n in range(number)])
    assert type(error.value) is kind
    assert not is_there(builder._process.pid)


@pytest.mark.parametrize("begun", [True, False])
def test_it_ends_with_all_it_has_begun_when_the_week_is_broken_off(monkeypatch, begun):
    monkeypatch.setattr(week_build, "build_one", slow)
    builder = Builder()
    with pytest.raises(KeyboardInterrupt):
        ask(builder, ["one", "two"] if begun else [], stop=True)
    assert not is_there(builder._process.pid)


def test_on_one_processor_packs_are_built_here(monkeypatch):
    monkeypatch.setattr(os, "cpu_count", lambda: 1)
    monkeypatch.setattr(week_build, "build_one", written)
    with Builder() as builder:
        builder.start(["one"])
        assert builder.result() == [written("one")]
