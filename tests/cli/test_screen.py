"""Nothing typed or printed steers a terminal, fails on a narrow encoding or fills a page."""

import io
import os
import re
import shutil
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from typer.main import get_command

from itembank.cli.main import COMMANDS, app, run
from itembank.cli.words.screen import ERRORS, Screen
from itembank.text.characters import hidden
from tests.depth import WHOLE, cases, whole

LARKHYTHE = Path(__file__).parents[2] / "banks" / "larkhythe"
HUGE = "9" * cases(20_000, 200_000, 200_000)


def every_command():
    """Yield the words of every command there is, those of groups too."""

    def below(words, command):
        yield words
        for name in getattr(command, "LATER", ()):
            yield from below((*words, name), command.read_command(name))

    yield from below((), get_command(app))


ALL = list(every_command())


def printed(arguments, encoding="utf-8", errors="strict"):
    """Run a command with both streams in an encoding; return status, output and errors as bytes."""
    streams = [io.TextIOWrapper(io.BytesIO(), encoding, errors, newline="\n") for _ in range(2)]
    before = sys.stdout, sys.stderr
    sys.stdout, sys.stderr = streams
    try:
        with pytest.raises(SystemExit) as end:
            run(arguments)
    finally:
        sys.stdout, sys.stderr = before
    for stream in streams:
        stream.flush()
    return (end.value.code or 0, *(stream.buffer.getvalue() for stream in streams))


def test_the_table_holds_every_command():
    assert {words[0] for words in ALL if words} == set(COMMANDS)
    assert ("bank", "merge") in ALL
    assert len(ALL) > 30


TYPED = {
    "bytes": "a\udcff\udcfe",
    "bytes in an option": "--bank=\udcc3(",
    "escape": "\x1b]0;mine\x07",
    "bidi": "abc\u202edef",
    "zero width": "ratio.\u200bshare",
    "look-alike": "8К",
    "huge": HUGE,
    "huge option": f"--{HUGE}",
    "huge words": "no such thing " * (len(HUGE) // 10),
    "letters": "½ × 3 − √2 ✓ 数",
}


ENCODINGS = ("ascii", "cp1252")


@whole
@pytest.mark.parametrize("words", ALL, ids=" ".join)
def test_no_command_falls_over_what_is_typed(words, away, monkeypatch):
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    at, sorts = ALL.index(words), list(TYPED.items())
    # A command is given every second sort, and the next command the others.
    for number, (name, typed) in enumerate(sorts if WHOLE else sorts[at % 2 :: 2], at // 2):
        for encoding in ENCODINGS if WHOLE else (ENCODINGS[number % 2],):
            status, out, err = printed([*words, typed], encoding)
            said = (out + err).decode(encoding)
            assert status in (0, 1, 2), (name, said)
            assert "fault of its own" not in said, (name, said)
            assert "Traceback" not in said, name
            assert said.strip(), name
            assert len(said) < 8_000, name
            assert not list(hidden(said)), name
            if name in ("bytes", "bytes in an option", "escape", "bidi", "zero width"):
                assert status == 2, (name, said)
    # A folder may be called what a person likes.
    assert os.listdir(".") == [] or words in {("bank", "new"), ("demo",)}


SHOWING = [
    ("topics",),
    ("show", "ratio.share"),
    ("show", "fractions.divide"),
    ("show", "algebra.expand-double"),
    ("band", "5", "--out-of", "8"),
    ("mark", "fractions.add-unlike/core/3", "½"),
    ("bank", "list"),
    ("bank", "show", "stall-1"),
    ("bank", "check"),
    *(((*words, "--help")) for words in ALL),
]


@pytest.fixture(scope="module")
def school(tmp_path_factory):
    """Stand in a copy of the demo department."""
    home = tmp_path_factory.mktemp("school") / "larkhythe"
    shutil.copytree(LARKHYTHE, home, ignore=shutil.ignore_patterns("*.sqlite3*"))
    before = os.getcwd()
    os.chdir(home)
    yield home
    os.chdir(before)


@pytest.mark.parametrize("words", SHOWING, ids=" ".join)
def test_what_an_encoding_lacks_is_written_in_words_and_never_as_a_question(words, school):
    status, whole, _ = printed(words)
    for encoding in ("cp1252", "ascii"):
        found, narrow, err = printed(words, encoding)
        assert (found, err) == (status, b"") or status
        assert narrow.count(b"?") == whole.count(b"?")
        assert len(narrow.split(b"\n")) == len(whole.split(b"\n"))


def plain(text, encoding="ascii"):
    return text.encode(encoding, ERRORS).decode(encoding)


@given(st.text(st.characters(exclude_categories=["Cs"])), st.sampled_from(["ascii", "cp1252"]))
def test_any_text_can_be_written(text, encoding):
    assert plain(text, encoding).count("?") == text.count("?")
    whole = text.encode(encoding, "ignore").decode(encoding)
    assert plain(whole, encoding) == whole


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("3½", "3 1/2"),
        ("½ ÷ ¾", " 1/2  divided by   3/4"),
        ("x²⁴ + 1", "x^(24) + 1"),
        ("5 − −3", "5 - -3"),
        ("2x × 3x", "2x  times  3x"),
        ("8É", "8\\xc9"),
        ("0.3\u0307", "0.3\\u0307"),
        ("✓ ‘ok’ …", "(tick) 'ok' ..."),
    ],
)
def test_an_answer_reads_as_itself_and_as_no_other(text, says):
    assert plain(text) == says


def test_a_terminal_is_never_steered():
    class Terminal(io.StringIO):
        def isatty(self):
            return True

    out = Terminal()
    Screen(out).writelines(["\x1b[2J", "a\rb", "\x9b31m", "\u202eabc", "line\r\n"])
    assert out.getvalue() == "\\x1b[2Ja\\x0db\\x9b31m\\u202eabcline\r\n"


def test_all_that_commands_print_goes_through_the_screen():
    home = Path(__file__).parents[2] / "itembank"
    around = re.compile(r"sys\.__std(out|err)__|os\.write\(|std(out|err)\.buffer")
    found = {
        str(path.relative_to(home))
        for path in home.rglob("*.py")
        if around.search(path.read_text("utf-8"))
    }
    # The pipe between two processes, which no person reads.
    assert found <= {"processes/message_line.py"}


def test_a_system_set_to_ascii_reads_what_is_typed_and_says_plainly_what_it_cannot_name(tmp_path):
    import subprocess

    plain = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}
    for arguments, status in (
        (["mark", "fractions.add-unlike/core/3", "½"], 0),
        (["bank", "new", "übung", "--name", "own", "--title", "Own"], 2),
    ):
        done = subprocess.run(
            [sys.executable, "-m", "itembank.cli", *arguments],
            cwd=tmp_path,
            env={**os.environ, **plain, "PYTHONPATH": str(LARKHYTHE.parents[1])},
            capture_output=True,
            check=False,
        )
        assert done.returncode == status, done.stderr
        assert (b"set PYTHONUTF8=1" in done.stderr) == bool(status)
        assert b"no UTF-8" not in done.stdout + done.stderr
    assert list(tmp_path.iterdir()) == []


FILES = sorted(
    path.relative_to(LARKHYTHE).as_posix()
    for path in LARKHYTHE.rglob("*.toml")
    if "plan" not in path.name
)
WITHIN = {
    b"\xff": "not UTF-8",
    b"\x1b[2J": "U+001B",
    "\u202e".encode(): "U+202E",
    "\u200b".encode(): "U+200B",
    "К8".encode(): "looks like K",
}


@pytest.mark.parametrize("file", FILES)
def test_every_file_of_a_department_tells_the_line_of_what_cannot_be_seen(file, school, said):
    path = school / file
    whole = path.read_bytes()
    command = ("bank", "check") if "questions" in file else ("week", "8K", "--from", "2026-11-30")
    try:
        for within, says in WITHIN.items():
            path.write_bytes(whole + b"# \xc2\xbd " + within + b"\n")
            status, _, err = said(*command)
            line = whole.count(b"\n") + 1
            assert status == 2
            assert f"{path.name}, line {line}" in err
            assert says in err
            assert within == b"\xff" or f"line {line}, column 5" in err
    finally:
        path.write_bytes(whole)


@pytest.mark.parametrize("within", WITHIN)
def test_sheets_and_packs_that_hold_no_text_are_told(within, away, said):
    (away / "a.csv").write_bytes(b"seat,q1\nA1,2" + within + b"\n")
    (away / "pack.json").write_bytes(b'{"title": "' + within + b'"}')
    for command in (
        ("mark", "--sheet", "a.csv", "fractions.add-unlike/core/3"),
        ("bank", "import", "a.csv"),
        ("record", "--pack", "pack.json", "--bands", "1,2,3"),
    ):
        status, out, err = said(*command)
        assert status == 2
        assert "fault of its own" not in err
        assert not list(hidden(out + err))
