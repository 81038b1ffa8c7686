"""The bank's commands: their help, their start, and how they look in a window of 80 columns."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from itembank.cli.bank.group import COMMANDS
from tests.cli.test_narrow import in_window
from tests.cli.test_start import HEAVY, LOADED

BANK = Path(__file__).parents[3] / "banks" / "larkhythe" / "questions"


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help_with_examples_that_fits_a_window(said, command):
    status, out, _ = said("bank", command, "--help")
    assert status == 0
    assert f"itembank bank {command}" in out.split("Example")[1]
    assert max(map(len, out.splitlines())) <= 80
    listed = said("bank", "--help").out
    assert f"\n  {command} " in listed


@pytest.mark.parametrize(
    "arguments", [["bank"], ["bank", "--help"], ["bank", "add", "--help"], ["bank", "check", "x"]]
)
def test_help_and_an_early_refusal_load_nothing_heavy(arguments):
    done = subprocess.run(
        [sys.executable, "-c", LOADED.format(arguments=arguments)],
        capture_output=True,
        text=True,
        check=True,
    )
    _, modules = json.loads(done.stdout.splitlines()[-1])
    assert "itembank" in modules
    # What an item may hold is told to pydantic, so that checking a bank loads it.
    light = {"pydantic"} if "check" in arguments else set()
    assert not (HEAVY - light) & set(modules)


def test_help_keeps_the_braces_of_mathematics(said):
    assert "{3/4} of {60} plants" in said("bank", "add", "--help").out


def test_a_list_in_a_window_has_a_line_a_question():
    narrow = in_window("bank", "list", str(BANK), "--topic", "fractions", columns=80)
    wide = in_window("bank", "list", str(BANK), "--topic", "fractions", columns=300)
    assert max(map(len, narrow)) <= 80
    assert len(narrow) == len(wide)
    cut = [line for line in narrow if line.endswith("…")]
    assert cut
    for line in cut:
        assert any(full.startswith(line[:-1].rstrip()) for full in wide)


def test_an_item_in_a_window_is_broken_between_words():
    shown = in_window("bank", "show", "depot-3", "--bank", str(BANK), columns=80)
    assert max(map(len, shown)) <= 80
    text = " ".join(" ".join(shown).split())
    assert "A coach has 9 more seats than a bus." in text
    for part in ("Key", "Working", "Likely", "Model", "Proof", "Signed", "Kept"):
        assert any(line.startswith(f"   {part} ") for line in shown)


def test_every_state_is_told_in_words(said):
    listed = said("bank", "list", BANK).out
    for state in ("proved", "signed", "stale", "needs a person", "retired"):
        assert state in listed
    shown = said("bank", "show", "depot-1", "depot-2", "garden-4", "pool-5", "--bank", BANK).out
    assert "asks the same as depot-2" in shown
    assert "asks the same as depot-1" in shown
    assert "needs a person. The prompt prints no mathematics" in " ".join(shown.split())
    assert "Retired  2 November 2026" in shown
