"""A bank of three questions; and nothing that keeps one prints or asks."""

import shutil

import pytest

from itembank.work.bank.starting import start_bank
from tests.work.bank.kept_bank import HALVES, SHARE, SHARES, SUM, SUMS, add


@pytest.fixture(autouse=True)
def silent(capfd, monkeypatch):
    """Hold every function here to it: nothing is printed, and nobody is asked."""
    monkeypatch.setattr("builtins.input", lambda *_: pytest.fail("somebody was asked"))
    yield
    assert tuple(capfd.readouterr()) == ("", "")


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    folder = tmp_path_factory.mktemp("made") / "bank"
    authors = {"HT": "head of mathematics", "T9": "teacher of 9S"}
    start_bank(folder, "larkhythe", licence="CC-BY-4.0", authors=authors)
    add(folder, SUMS, SUM, id="sum-1")
    add(folder, SUMS, HALVES, id="sum-2")
    add(folder, SHARES, SHARE, id="share-1", author="ht")
    return folder


@pytest.fixture
def bank(made, tmp_path):
    return shutil.copytree(made, tmp_path / "bank")
