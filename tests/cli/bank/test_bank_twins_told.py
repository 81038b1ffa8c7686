"""Questions that ask the same are told by their addresses, in one bank and across several."""

import shutil
from pathlib import Path

import pytest

from itembank.cli.main import run

BANKS = Path(__file__).parents[3] / "banks"


def told(capsys, *arguments):
    with pytest.raises(SystemExit) as end:
        run(["bank", "twins", *map(str, arguments)])
    out, err = capsys.readouterr()
    return end.value.code or 0, out, err


def add(bank, id, prompt, key):
    new = ["--topic", "fractions.add-unlike", "--tier", "core", "--prompt", prompt]
    with pytest.raises(SystemExit) as end:
        run(["bank", "add", *new, "--key", key, "--id", id, "--bank", str(bank)])
    assert not end.value.code


@pytest.fixture
def bank(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(SystemExit):
        run(["bank", "new", "ours", "--name", "ours", "--title", "Ours", "--author", "HT=head"])
    return Path("ours")


def test_twins_in_one_bank_and_across_two(bank, capsys):
    add(bank, "sum-1", "Work out {3/4 + 1/6}.", "11/12")
    add(bank, "sum-2", "Work out {3/4 - 1/6}.", "7/12")
    shutil.copytree(bank, "theirs")
    facts = Path("theirs/bank.toml")
    facts.write_text(facts.read_text().replace('"ours"', '"theirs"'))
    capsys.readouterr()
    assert told(capsys, bank) == (0, "No two questions ask the same.\n", "")
    add(bank, "sum-3", "Work out {1/6 + 3/4}.", "11/12")
    capsys.readouterr()
    text = "1 group of questions that ask the same:\n  ours:sum-1, ours:sum-3\n"
    assert told(capsys, bank) == (0, text, "")
    status, out, _ = told(capsys, bank, "theirs")
    assert status == 0
    assert "ours:sum-1, ours:sum-3, theirs:sum-1" in out
    assert "ours:sum-2, theirs:sum-2" in out
    assert told(capsys, bank, "ours/") == (0, text, "")


def test_two_banks_of_one_name_are_refused(bank, capsys):
    shutil.copytree(bank, "copy")
    status, out, err = told(capsys, bank, "copy")
    assert (status, out) == (2, "")
    assert "Two of these banks are called ours" in err
