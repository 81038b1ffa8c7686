"""Commands killed at every step they take on the disk: nothing half-made, nothing lost.

Each command runs in a child that ends itself, as the power or a task manager would, in place of
one call that changes the disk; then the next; until it comes through. After each, every file is
as it was before or as it is after, and the same command finishes what was begun.
"""

import os
import shutil
import signal
import sys
from functools import partial
from pathlib import Path

import pytest

from itembank.bank.read.load import read_bank
from itembank.bank.saving.kept_changes import FILE as CHANGES
from itembank.cli.main import run
from itembank.files import renaming
from itembank.people.lock import LOCK_FILE
from tests.depth import WHOLE, cases, left, whole

from .forked import ended, fork

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs a process to be killed")

CALLS = ("open", "fsync", "link", "rename", "replace", "unlink", "mkdir", "rmdir", "chmod")


def status_of(*arguments):
    with pytest.raises(SystemExit) as end:
        run([str(argument) for argument in arguments])
    return end.value.code or 0


def killed(at, work):
    """Do some work in a child that is killed at its call `at` (from 1); tell how it ended."""

    def steps():
        count = 0

        def step(real, *, makes=False):
            def call(*args, **kwargs):
                nonlocal count
                if not makes or args[1] & os.O_CREAT:
                    count += 1
                    if count == at:
                        os.kill(os.getpid(), signal.SIGKILL)
                return real(*args, **kwargs)

            return call

        for name in CALLS:
            setattr(os, name, step(getattr(os, name), makes=name == "open"))
        renaming._renamed = step(renaming._renamed)
        work()

    return ended(fork(steps))


def tree(home):
    """Return every file that a person sees, with what it holds."""
    return {
        path.relative_to(home).as_posix(): path.read_bytes()
        for path in sorted(home.rglob("*"))
        if path.is_file() and not any(part.startswith(".") for part in path.parts)
    }


def put(home, files):
    shutil.rmtree(home, ignore_errors=True)
    for name, data in files.items():
        (home / name).parent.mkdir(parents=True, exist_ok=True)
        (home / name).write_bytes(data)


NEW = ("--tier", "core", "--prompt", "Work out {2/5} of {60}.", "--model", "2/5 of 60")
ADD = ("bank", "add", "--topic", "fractions.of-quantity", *NEW, "--key", "24", "--bank")


@pytest.fixture(scope="module")
def two_banks(tmp_path_factory):
    """Have two banks that hold the same and more, and a table of the one."""
    home = tmp_path_factory.mktemp("banks")
    before = os.getcwd()
    os.chdir(home)
    ours, theirs = Path("ours"), Path("theirs")
    status_of("bank", "new", ours, "--name", "larkhythe", "--title", "Ours", "--author", "HT=head")
    status_of(*ADD, ours, "--id", "garden-1")
    solve = ("--tier", "core", "--prompt", "Solve {5x + 12 = 47}.", "--key", "x = 7")
    status_of("bank", "add", "--topic", "equations.two-step", *solve, "--bank", ours, "--id", "d-1")
    shutil.copytree(ours, theirs)
    status_of("bank", "change", "garden-1", "--prompt", "Find {2/5} of {60}.", "--bank", theirs)
    share = ("--tier", "core", "--task", "share", "--key", "£15, £25")
    prompt = ("--prompt", "Two clubs share {£40} in the ratio {3 : 5}.")
    status_of("bank", "add", "--topic", "ratio.share", *share, *prompt, "--bank", theirs)
    status_of("bank", "sign", "--all-proved", "--by", "HT", "--bank", theirs)
    status_of("bank", "export", "all.csv", "--bank", theirs)
    table = Path("all.csv").read_text("utf-8-sig").replace(",d-1", ",x-1")
    Path("all.csv").write_text(table.replace(",garden-1", ",x-2").replace(",share-1", ",x-3"))
    os.chdir(before)
    return tree(home)


COMMANDS = {
    "add": (*ADD, "ours", "--id", "garden-9"),
    "change": ("bank", "change", "garden-1", "--tier", "support", "--bank", "ours"),
    "retire": ("bank", "retire", "garden-1", "--because", "too easy", "--bank", "ours"),
    "rename": ("bank", "rename", "garden-1", "plot-1", "--bank", "ours"),
    "move": ("bank", "move", "d-1", "--topic", "equations.one-step", "--bank", "ours"),
    "sign": ("bank", "sign", "--all-proved", "--by", "HT", "--bank", "ours"),
    "merge": ("bank", "merge", "ours", "theirs"),
    "merge into": ("bank", "merge", "ours", "theirs", "--into", "both"),
    "import": ("bank", "import", "all.csv", "--bank", "ours"),
    "export": ("bank", "export", "out.csv", "--bank", "ours"),
}
OFTEN = ("change", "merge into")
"""One that writes a file anew, and one that makes a folder and puts it into its place."""
FURTHER = {} if WHOLE else {"merge into": 3}
"""At which calls it is killed: each, or where it makes dozens of them, each third."""


@whole
@pytest.mark.parametrize("name", [name if name in OFTEN else left(name) for name in COMMANDS])
def test_a_bank_is_whole_wherever_a_command_is_killed(two_banks, tmp_path, monkeypatch, name):
    command = COMMANDS[name]
    home = tmp_path / "home"
    put(home, two_banks)
    monkeypatch.chdir(home)
    assert status_of(*command) == 0
    after = tree(home)
    assert after != two_banks
    status, at = 1, 1 - FURTHER.get(name, 1)
    while status != 0:
        at += FURTHER.get(name, 1)
        assert at < 200
        monkeypatch.chdir(tmp_path)
        put(home, two_banks)
        monkeypatch.chdir(home)
        status = killed(at, lambda: run(list(command)))
        assert status in (0, -signal.SIGKILL)
        now = tree(home)
        for file in {*two_banks, *after, *now}:
            assert now.get(file) in (two_banks.get(file), after.get(file)), (at, file)
        if Path("both").exists():
            assert {file for file in now if file.startswith("both/")} == {
                file for file in after if file.startswith("both/")
            }
        assert "d-1" in {entry.item.id for entry in read_bank("ours").entries()}
        # What was begun on some files of the bank is finished by whoever reads it.
        now = tree(home)
        assert now in (two_banks, after), at
        # The same command finishes what was begun, or says that all of it is done.
        again = status_of(*command)
        assert again == 0 or now == after
        assert tree(home) == after
    assert at > 3
    leave_for_a_day(home)
    assert status_of("bank", "export", "last.csv", "--bank", "ours") == 0
    assert status_of("bank", "change", "d-1", "--marks", "2", "--bank", "ours") == 0
    left = [path.name for path in home.rglob(".*") if path.parent.name != "both"]
    # What can be taken back stays, and after all those kills the last change still can be.
    assert set(left) <= {CHANGES}
    changed = tree(home)
    assert status_of("bank", "undo", "--bank", "ours") == 0
    assert tree(home) != changed


def leave_for_a_day(home):
    for path in home.rglob("*"):
        if path.name.endswith(".itembank-new") or path.name == LOCK_FILE:
            os.utime(path, (0, 0))


@whole
def test_twenty_processes_that_add_at_once_all_keep_their_questions(two_banks, tmp_path):
    many = cases(6, 20, 12)
    put(tmp_path, two_banks)

    def add(number):
        command = ["--topic", "equations.one-step", "--tier", "support", "--key"]
        sum_of = ["--prompt", f"Solve {{x + {number + 2} = 50}}.", "--bank"]
        run(["bank", "add", *command, f"x = {48 - number}", *sum_of, str(tmp_path / "ours")])

    children = [fork(partial(add, number)) for number in range(many)]
    statuses = [ended(child) for child in children]
    kept = [entry.item for entry in read_bank(tmp_path / "ours").entries()]
    new = {item.id: item.prompt for item in kept if item.id.startswith("one-step")}
    assert set(statuses) <= {0, 2}  # who has to wait too long is told so
    assert len(set(new.values())) == len(new) == statuses.count(0)
    assert statuses.count(0) == many or sys.platform != "linux"
