"""The starter on the desktop: it runs, whatever characters stand in the path."""

import shlex
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.desk.serving.shortcut import shortcut, write_shortcut

HOME = Path("/home/ht")
PATHS = st.text(st.characters(codec="utf-8", exclude_categories=["C"]), min_size=1)


def exec_words(line):
    """Return the words of an Exec line, as section 7 of the specification has them read."""
    text = line.replace("%%", "%").replace("\\\\", "\\")
    assert text[0] == '"'
    word, place = "", 1
    while text[place] != '"':
        if text[place] == "\\":
            place += 1
        word += text[place]
        place += 1
    return [word, *text[place + 1 :].split()]


@given(PATHS)
def test_linux(python):
    lines = shortcut("linux", HOME, python).text.split("\n")
    (run,) = [line.removeprefix("Exec=") for line in lines if line.startswith("Exec=")]
    assert exec_words(run) == [python, "-m", "itembank.cli", "desk"]


@given(PATHS)
def test_macos(python):
    text = shortcut("darwin", HOME, python).text.removeprefix("#!/bin/sh\n")
    assert shlex.split(text) == ["exec", python, "-m", "itembank.cli", "desk"]


def test_windows():
    made = shortcut("win32", HOME, r"C:\100% py\python.exe")
    assert '"C:\\100%% py\\python.exe" -m itembank.cli desk\r\n' in made.text
    assert made.path.suffix == ".cmd"


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such bit")
def test_it_is_written_and_may_be_run(tmp_path, monkeypatch):
    monkeypatch.setenv("HOME", str(tmp_path))
    (tmp_path / "Desktop").mkdir()
    path = write_shortcut()
    assert path.parent == tmp_path / "Desktop"
    assert path.stat().st_mode & 0o111
    assert write_shortcut() == path  # again, over its own
