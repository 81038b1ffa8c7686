"""Options are named by the command line alone; what it advises goes by the matter of an error."""

import ast
import pickle
import re
from functools import cache
from pathlib import Path
from string import Formatter

import pytest

import itembank
from itembank.cli.bank.group import COMMANDS as BANK_COMMANDS
from itembank.cli.main import COMMANDS
from itembank.cli.words.advice_given import Advice
from itembank.cli.words.what_to_type import ADVICE, told
from itembank.errors import CheckFailed, ItembankError, SeveralErrors
from itembank.files.faults import Fault, FileFaults
from itembank.processes.beside import Beside

ROOT = Path(itembank.__file__).parent
OPTION = re.compile(r"(?<![\w-])--[a-z]")
COMMAND = re.compile(
    rf"\bitembank (?:{'|'.join(COMMANDS)})\b|‘bank (?:{'|'.join(BANK_COMMANDS)})\b"
)
BELOW = sorted(path for path in ROOT.rglob("*.py") if path.relative_to(ROOT).parts[0] != "cli")


A_COMMAND = re.compile(r"\bitembank\b(?!\.| import)|‘bank")
"""What stands in a file that has one, however its string is cut: only these are parsed."""


@cache
def source(path):
    return path.read_text(encoding="utf-8")


@cache
def parsed(path):
    return ast.parse(source(path))


def strings(path):
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.lineno, node.value


def messages(path):
    """Yield every string of a file that is not written for its readers alone."""
    docs = set()
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            docs.add(node.value)
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in docs:
            yield node.lineno, node.value


def test_no_message_below_the_command_line_names_a_command():
    found = [
        f"{path.relative_to(ROOT)}:{line}"
        for path in BELOW
        if A_COMMAND.search(source(path))
        for line, text in messages(path)
        if COMMAND.search(text)
    ]
    assert found == []


@pytest.mark.parametrize(
    ("text", "names"),
    [
        (" ‘itembank bank new’ makes one.", True),
        ("Run itembank topics for a list.", True),
        ("Update itembank on this machine.", False),
        ("They move the bank; mark it.", False),
    ],
)
def test_what_names_a_command_is_known(text, names):
    assert bool(COMMAND.search(text)) is names


def test_no_part_below_the_command_line_names_an_option():
    found = [
        f"{path.relative_to(ROOT)}:{line}"
        for path in BELOW
        # A developer's program reads a command line of its own.
        if "--" in source(path) and "ArgumentParser(" not in source(path)
        for line, text in strings(path)
        if OPTION.search(text)
    ]
    assert found == []


def matters():
    """Yield every name that is given to a matter anywhere, and what is told with it."""
    for path in ROOT.rglob("*.py"):
        for node in ast.walk(parsed(path)) if "matter" in source(path) else ():
            for word in getattr(node, "keywords", ()):
                if word.arg == "matter" and isinstance(word.value, ast.Constant):
                    yield word.value.value, {other.arg for other in node.keywords}


def test_every_matter_that_is_named_has_words_at_the_terminal():
    named = dict(matters())
    assert "pack there" in named
    assert set(named) <= set(ADVICE)


def test_every_error_holds_what_its_advice_speaks_of():
    for matter, about in matters():
        wanted = {name for _, name, *_ in Formatter().parse(ADVICE[matter].words) if name}
        assert wanted <= about, matter


def test_advice_is_for_the_commands_that_have_the_option():
    error = ItembankError("All of it is beyond year 7.", matter="beyond the year")
    assert told(error, "pack").endswith("--beyond-year.")
    assert told(error, "week") == str(error)


def test_each_of_several_errors_has_its_own_advice():
    both = SeveralErrors(
        [ItembankError("There.", matter="pack there"), ItembankError("No such day.")]
    )
    lines = told(both).splitlines()
    assert "--replace" in lines[0]
    assert lines[1] == "No such day."


def test_a_path_in_advice_can_be_copied_to_a_shell(monkeypatch):
    advice = {"there": Advice("Write --plan {path} --replace.")}
    monkeypatch.setattr("itembank.cli.words.what_to_type.ADVICE", advice)
    error = ItembankError("There.", matter="there", path=Path("Maths 50%/a.toml"))
    assert told(error) == "There. Write --plan 'Maths 50%/a.toml' --replace."


@pytest.mark.parametrize(
    "error",
    [
        ItembankError("There.", matter="pack there", folder=Path("a")),
        CheckFailed("Wrong."),
        FileFaults([Fault("a.toml", 3, "No."), Fault("a.toml", 1, "Nor this.")]),
        SeveralErrors([ItembankError("One.", matter="pack there"), ItembankError("Two.")]),
    ],
)
def test_an_error_comes_whole_from_another_process(error):
    def fail():
        raise error

    with Beside(fail) as work, pytest.raises(type(error)) as caught:
        work.result()
    assert str(caught.value) == str(error)
    assert told(pickle.loads(pickle.dumps(error))) == told(error)
    assert getattr(caught.value, "faults", None) == getattr(error, "faults", None)
