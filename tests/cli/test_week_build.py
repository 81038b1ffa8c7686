"""The process that builds a week's packs tells what went wrong, and never outlives its work."""

import os
import time

import pytest

from itembank.cli import week_build
from itembank.cli.week_build import Builder
from itembank.errors import CheckFailed, ItembankError


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


def is_there(group):
    try:
        os.killpg(group, 0)
    except ProcessLookupError:
        return False
    return True


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
        (ended, RuntimeError, ""),
    ],
)
def test_what_goes_wrong_there_is_told_here(monkeypatch, build, kind, words, number):
    monkeypatch.setattr(week_build, "build_one", build)
    with pytest.raises(kind, match=words) as error, Builder() as builder:
        builder.start([f"pack {n}" for n in range(number)])
        builder.result()
    assert type(error.value) is kind
    assert not is_there(builder._process.pid)


@pytest.mark.parametrize("begun", [True, False])
def test_it_ends_with_all_it_has_begun_when_the_week_is_broken_off(monkeypatch, begun):
    monkeypatch.setattr(week_build, "build_one", slow)
    with pytest.raises(KeyboardInterrupt), Builder() as builder:
        if begun:
            builder.start(["one", "two"])
            time.sleep(0.5)
        raise KeyboardInterrupt
    assert not is_there(builder._process.pid)


def test_on_one_processor_packs_are_built_here(monkeypatch):
    monkeypatch.setattr(os, "cpu_count", lambda: 1)
    monkeypatch.setattr(week_build, "build_one", written)
    with Builder() as builder:
        builder.start(["one"])
        assert builder.result() == [written("one")]
