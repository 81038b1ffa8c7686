"""Results in the order of their pieces, which are taken when they are soon to be done."""

import os

import pieces
import pytest

from itembank.errors import CheckFailed, ItembankError
from itembank.processes.forked import Forked
from itembank.processes.pool import stream
from itembank.processes.spawned import Spawned
from itembank.processes.team import AHEAD

NUMBERS = list(range(1, 41))


def test_they_come_in_order_from_several_processes(kind, nothing_left):
    found = list(stream(pieces.told, iter(NUMBERS), processes=2, kind=kind))
    assert [number for number, _ in found] == NUMBERS
    assert len({process for _, process in found} - {os.getpid()}) == 2
    assert nothing_left()


@pytest.mark.parametrize(("processes", "numbers"), [(1, NUMBERS), (2, [5]), (2, [])])
def test_with_one_core_or_one_piece_it_is_done_here(processes, numbers):
    found = list(stream(pieces.told, iter(numbers), processes=processes))
    assert found == [(number, os.getpid()) for number in numbers]


def test_no_more_is_taken_than_is_soon_done(kind, nothing_left):
    taken = []

    def source():
        for number in range(10_000):
            taken.append(number)
            yield number

    results = stream(pieces.double, source(), processes=2, kind=kind)
    for number in range(30):
        assert next(results) == 2 * number
        assert len(taken) <= number + 1 + 2 * AHEAD
    results.close()
    assert nothing_left()


def test_where_no_process_begins_all_is_done_here(monkeypatch):
    def refuse():
        raise BlockingIOError("no more processes")

    monkeypatch.setattr(os, "fork", refuse)
    found = list(stream(pieces.told, iter(NUMBERS), processes=2, kind=Forked))
    assert found == [(number, os.getpid()) for number in NUMBERS]


def test_what_cannot_travel_is_done_here_in_its_place():
    odd = [lambda: 0, 1, lambda: 2, *range(3, 20), lambda: 20]
    found = stream(pieces.told, iter(odd), processes=2, kind=Spawned)
    assert [number for number, _ in found] == odd


def test_a_process_ended_by_somebody_else_loses_nothing(kind, tmp_path):
    cases = [(number, str(tmp_path / "mark")) for number in NUMBERS]
    assert list(stream(pieces.dies_once, iter(cases), processes=2, kind=kind)) == NUMBERS
    assert (tmp_path / "mark").exists()


def test_a_piece_that_ends_its_process_is_a_fault(kind, nothing_left):
    with pytest.raises(RuntimeError, match="ended the process it ran in"):
        list(stream(pieces.dies_at_seven, iter(NUMBERS), processes=2, kind=kind))
    assert nothing_left()


def test_a_fault_comes_as_it_was_raised(kind, nothing_left):
    with pytest.raises(ItembankError, match="no seat 3"):
        list(stream(pieces.faulty, iter(NUMBERS), processes=2, kind=kind))
    with pytest.raises(CheckFailed, match="it comes to 5"):
        list(stream(pieces.faulty, iter(NUMBERS[3:]), processes=2, kind=kind))
    assert nothing_left()
