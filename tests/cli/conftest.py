"""Runs a command in this process and hands back what it said."""

from typing import NamedTuple

import pytest

from itembank.cli.main import run


class Said(NamedTuple):
    status: int
    out: str
    err: str


@pytest.fixture
def said(capsys):
    def call(*arguments):
        with pytest.raises(SystemExit) as end:
            run([str(argument) for argument in arguments])
        captured = capsys.readouterr()
        return Said(end.value.code or 0, captured.out, captured.err)

    return call


@pytest.fixture
def away(tmp_path, monkeypatch):
    """Stand in an empty folder with no department around it."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


USUAL_DAY = "2026-11-28"


@pytest.fixture(autouse=True, scope="module")
def usual_day():
    """Let what a module's tests share be made on the day on which they run."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("ITEMBANK_TODAY", USUAL_DAY)
        yield


@pytest.fixture(autouse=True)
def on_day(monkeypatch):
    """Let every command run on one day, whatever the clock says; call it for another day."""

    def on(text):
        monkeypatch.setenv("ITEMBANK_TODAY", text)

    on(USUAL_DAY)
    return on


@pytest.fixture(autouse=True, scope="module")
def _here(one_core, drawn_once, proved_once):
    """Let every command do its work in this process, and draw and prove nothing twice."""
