"""The last change of a bank taken back at the terminal, wherever it was made."""

import pytest


@pytest.fixture
def bank(said, tmp_path):
    folder = tmp_path / "questions"
    said("bank", "new", folder, "--name", "larkhythe", "--author", "HT=head")
    said(
        *("bank", "add", "--bank", folder, "--topic", "fractions.add-unlike", "--tier", "core"),
        *("--prompt", "Work out {3/4 + 1/6}.", "--key", "11/12"),
    )
    return folder


def files(bank):
    return {path.name: path.read_bytes() for path in bank.glob("*.toml")}


def test_changes_are_told_and_taken_back_one_by_one(said, bank):
    before = files(bank)
    said("bank", "sign", "add-unlike-1", "--by", "HT", "--bank", bank)
    listed = said("bank", "undo", "--list", "--bank", bank).out
    assert "add-unlike-1 signed by HT.\n" in listed
    assert listed.count("\n") == 2
    assert "Taken back: add-unlike-1 signed by HT" in said("bank", "undo", "--bank", bank).out
    assert files(bank) == before
    said("bank", "undo", "--bank", bank)
    assert list(files(bank)) == ["bank.toml"]
    nothing = said("bank", "undo", "--bank", bank)
    assert nothing.status == 2
    assert "no change of it is known" in nothing.err
    assert "No change" in said("bank", "undo", "--list", "--bank", bank).out
