"""A week that takes a while says at a terminal what it has come to, and leaves nothing there."""

import io
import sys

from itembank.cli.week_told import STEPS, Steps
from itembank.work.week.request import Step


class Terminal(io.StringIO):
    def isatty(self):
        return True


def screen(written):
    """Return what stands on a line of a terminal in the end."""
    line = ""
    for part in written.split("\r"):
        line = part + line[len(part) :]
    return line.rstrip()


def test_every_step_has_words_and_takes_the_place_of_the_last(monkeypatch):
    out = Terminal()
    monkeypatch.setattr(sys, "stderr", out)
    steps = Steps()
    for step in Step:
        steps(step)
        assert screen(out.getvalue()) == STEPS[step]
    steps.clear()
    assert screen(out.getvalue()) == ""


def test_where_nobody_looks_nothing_is_written(monkeypatch):
    out = io.StringIO()
    monkeypatch.setattr(sys, "stderr", out)
    steps = Steps()
    steps(Step.PLAN)
    steps.clear()
    assert out.getvalue() == ""
