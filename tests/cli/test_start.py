"""Starting: help is light and complete, and faults end in a message and a status."""

import json
import os
import signal
import subprocess
import sys

import pytest

HEAVY = {"sympy", "reportlab", "ziamath", "lark", "rich", "generators"}
COMMANDS = ("pack", "band", "topics", "show", "audit")


def itembank(*arguments, cwd=None):
    return subprocess.run(
        [sys.executable, "-m", "itembank.cli", *arguments],
        capture_output=True,
        text=True,
        cwd=cwd,
        check=False,
        env={**os.environ, "PYTHONIOENCODING": "utf-8", "COLUMNS": "100"},
    )


LOADED = """
import json, sys
from itembank.cli.main import run
try:
    run({arguments!r})
except SystemExit as end:
    print()
    print(json.dumps([end.code, sorted({{name.partition(".")[0] for name in sys.modules}})]))
"""


@pytest.mark.parametrize(
    "arguments", [["--help"], ["band", "5"], *([c, "--help"] for c in COMMANDS)]
)
def test_help_and_band_import_nothing_heavy(arguments):
    done = subprocess.run(
        [sys.executable, "-c", LOADED.format(arguments=arguments)],
        capture_output=True,
        text=True,
        check=True,
    )
    status, modules = json.loads(done.stdout.splitlines()[-1])
    assert status == 0
    assert "itembank" in modules
    assert not HEAVY & set(modules)
    if arguments == ["--help"]:  # to read a command's own options, typer itself needs pydantic
        assert "pydantic" not in modules


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help_with_examples(command):
    done = itembank(command, "--help")
    assert done.returncode == 0
    assert f"\n    itembank {command}" in done.stdout
    assert command in itembank("--help").stdout


def test_usage_errors_end_with_two():
    for arguments in (["no-such-command"], ["band", "--no-such-option"], ["show"]):
        done = itembank(*arguments)
        assert done.returncode == 2
        assert done.stderr
        assert "Traceback" not in done.stderr


def test_a_fault_goes_to_the_error_stream_with_status_two():
    done = itembank("band", "9", "--out-of", "8")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr == "The score 9 is not between 0 and 8.\n"


def test_a_reader_that_goes_away_is_no_fault():
    read, write = os.pipe()
    os.close(read)
    with os.fdopen(write, "wb") as nowhere:
        done = subprocess.run(
            [sys.executable, "-m", "itembank.cli", "band", "1", "2", "3"],
            stdout=nowhere,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
        )
    assert "Traceback" not in done.stderr


def test_stopping_with_the_keyboard(tmp_path):
    pipe = tmp_path / "scores.csv"
    os.mkfifo(pipe)
    with (
        subprocess.Popen(
            [sys.executable, "-m", "itembank.cli", "band", "--csv", str(pipe)],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        ) as running,
        pipe.open("wb"),
    ):  # opens once the command reads it, and then it waits for rows
        running.send_signal(signal.SIGINT)
        out, err = running.communicate()
    assert running.returncode == 128 + signal.SIGINT
    assert (out, err.strip()) == ("", "Stopped.")


def test_version():
    done = itembank("--version")
    assert done.returncode == 0
    assert done.stdout.startswith("itembank 0.")
