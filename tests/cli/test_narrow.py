"""Tables in a window of 80 columns: no row is broken, and nothing is left out of them."""

import fcntl
import os
import pty
import struct
import termios

import pytest

from itembank.cli.main import run

from .forked import ended, fork


def in_window(*arguments, columns, status=0):
    """Return the lines that a command prints in a terminal that many columns wide."""
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, columns, 0, 0))

    def command():
        os.environ.pop("COLUMNS", None)
        run(list(arguments))

    child = fork(command, out=theirs, err=theirs if status else None)
    os.close(theirs)
    seen = b""
    while True:
        try:
            more = os.read(ours, 4096)
        except OSError:  # Linux ends a pseudo-terminal so
            break
        if not more:
            break
        seen += more
    os.close(ours)
    assert ended(child) == status
    return seen.decode().splitlines()


TOPIC = "equations.both-sides-brackets"


@pytest.mark.parametrize(
    "arguments", [("topics",), ("audit", TOPIC, "--sample", "3", "--jobs", "1")]
)
def test_no_row_is_broken(arguments):
    narrow, wide = (in_window(*arguments, columns=columns) for columns in (80, 140))
    assert max(map(len, narrow)) <= 80 < max(map(len, wide))


def test_a_topic_s_title_and_numbers_stay_together():
    wide = in_window("topics", "--strand", "equations", columns=140)
    narrow = in_window("topics", "--strand", "equations", columns=80)
    (row,) = [line for line in wide if line.startswith(f"{TOPIC} ")]
    at = next(i for i, line in enumerate(narrow) if line.startswith(f"{TOPIC} "))
    assert sorted((narrow[at] + narrow[at + 1]).split()) == sorted(row.split())


def test_a_narrow_audit_counts_items_and_faults():
    heads, row, total, *_, verdict = in_window(
        "audit", TOPIC, "--sample", "3", "--jobs", "1", columns=80
    )
    assert heads.split() == ["topic", "items", "checked", "faults", "difficulty"]
    assert row.split()[2:4] == ["9", "0"]
    assert total.split()[2:] == ["9", "0"]
    assert verdict == "No faults."


@pytest.mark.parametrize(
    ("arguments", "status", "lines"),
    # A band comes with the caution that it is no grade, on a line of its own.
    [(("band", "5"), 0, 2), (("band", "5", "--bands", "3", "--class", "8K"), 2, 1)],
)
def test_sentences_are_broken_between_words(arguments, status, lines):
    narrow, wide = (in_window(*arguments, columns=n, status=status) for n in (40, 400))
    assert len(wide) == lines < len(narrow)
    assert max(map(len, narrow)) <= 40
    assert " ".join(narrow) == " ".join(wide)
