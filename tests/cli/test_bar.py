"""Progress: a bar at a terminal, lines where asked, and a time left that is true."""

import io
import json
import sys
from itertools import pairwise

import pytest

from itembank.cli.words import bar
from itembank.cli.words.bar import Bar, time_left


class Clock:
    def __init__(self):
        self.now = 0.0

    def monotonic(self):
        return self.now


class Terminal(io.StringIO):
    def isatty(self):
        return True


def run(monkeypatch, stream, seconds_an_item=0.1, **how):
    clock = Clock()
    monkeypatch.setattr(bar, "time", clock)
    monkeypatch.setattr(sys, "stderr", stream)
    one = Bar(**how)
    for done in range(0, 3001, 10):
        clock.now = done * seconds_an_item
        one(done, 3000)
    one.clear()
    return stream.getvalue()


def test_without_a_terminal_nothing_is_said_unless_asked(monkeypatch):
    assert run(monkeypatch, io.StringIO(), steady=True) == ""


def test_lines_where_asked_tell_how_long_it_takes_yet(monkeypatch):
    lines = run(monkeypatch, io.StringIO(), asked=True, steady=True).splitlines()
    assert len(lines) == 21
    assert lines[0] == "0 %: 0 of 3,000 items"
    assert "5 %: 150 of 3,000 items, about 5 minutes left" in lines
    assert "50 %: 1,500 of 3,000 items, about 2 minutes left" in lines
    assert lines[-2].endswith("less than a minute left")
    assert lines[-1] == "100 %: 3,000 of 3,000 items"


def test_where_some_items_are_quicker_no_time_is_told(monkeypatch):
    assert "left" not in run(monkeypatch, io.StringIO(), asked=True)


def test_a_bar_is_taken_away_whole(monkeypatch):
    drawn = run(monkeypatch, Terminal(), steady=True)
    *frames, blank, end = drawn.split("\r")[1:]
    assert (blank.strip(), end) == ("", "")
    assert len(blank) >= len(frames[-1].rstrip())
    assert max(map(len, frames)) <= 79
    assert all(len(later) >= len(before.rstrip()) for before, later in pairwise(frames))


@pytest.mark.parametrize(("done", "seconds"), [(1, 100), (59, 100), (1500, 2)])
def test_too_soon_nobody_can_tell(done, seconds):
    assert time_left(done, 3000, seconds) == ""


def test_an_audit_comes_to_the_same_in_any_order_and_says_so_where_asked(said):
    status, out, err = said("audit", "ratio.share", "--sample", "3", "--jobs", "1", "--progress")
    assert status == 0
    assert "100 %:" in err
    assert said("audit", "ratio.share", "--sample", "3", "--jobs", "1") == (0, out, "")


def test_an_audit_sends_all_items_through_sympy_where_told(said):
    def by_sympy(*more):
        _, out, _ = said("audit", "ratio.share", "--sample", "3", "--json", "--jobs", "1", *more)
        (found,) = json.loads(out)["topics"]
        return found["checked"], found["symbolic"]

    assert by_sympy() == (9, 3)
    assert by_sympy("--sympy-all") == (9, 9)
