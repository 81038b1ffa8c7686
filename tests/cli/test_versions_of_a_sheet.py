"""Typed answers are marked by what each seat was shown: its version, as the pack has it."""

import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from itembank.bank.index.any_address import find_any
from itembank.cli.main import run
from itembank.notation import tree as t
from itembank.records.entries.pack_items import starter_items
from tests.depth import only_whole

pytestmark = pytest.mark.usefixtures("pages_outlined")

DEPARTMENT = """
school = "Larkhythe School"
default_class = "8K"
[[classes]]
name = "8K"
year = 8
seats = ["A1-A6"]
topics = ["ratio.share", "fractions.add-unlike"]
questions = 2
"""
DAY = "2026-11-16"


def make(folder, *options):
    folder.mkdir(exist_ok=True)
    (folder / "department.toml").write_text(DEPARTMENT)
    with pytest.raises(SystemExit) as end:
        run(["pack", "--date", DAY, "--department", str(folder), "--output", str(folder), *options])
    assert not end.value.code


@pytest.fixture(scope="module")
def two_versions(tmp_path_factory):
    folder = tmp_path_factory.mktemp("two")
    make(folder, "--variants", "2")
    return folder


@pytest.fixture
def home(two_versions, tmp_path, monkeypatch):
    shutil.copytree(two_versions, tmp_path / "here")
    monkeypatch.chdir(tmp_path / "here")
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return tmp_path / "here"


def keys_of(folder):
    """Return the lines of the keys of each version."""
    data = json.loads((folder / f"8K-{DAY}" / "pack.json").read_text())
    return {
        version["letter"]: [item["key"]["line"] for item in version["items"]]
        for version in data["versions"]
    }


def sheet(path, rows, heading="seat,version,1,2"):
    cells = [[seat, *more] for seat, *more in rows]
    text = "\n".join([heading, *(",".join(f'"{cell}"' for cell in row) for row in cells)])
    path.write_text(text + "\n")
    return path


def test_each_seat_is_marked_by_its_own_version(said, home):
    keys = keys_of(home)
    assert keys["A"] != keys["B"]
    rows = [("A1", "A", *keys["A"]), ("A2", "b", *keys["B"]), ("A3", "B", *keys["A"])]
    path = sheet(home / "typed.csv", rows)
    assert said("record", "--date", DAY, "--sheet", path, "--output", ".").status == 0
    said("export", "--to", "out")
    scores = (home / "out" / "scores.csv").read_text().splitlines()[1:]
    assert [row.split(",")[-2:] for row in scores][:2] == [["A1", "2"], ["A2", "2"]]
    assert scores[2].split(",")[-1] < "2"
    done = said("mark", "--pack", f"8K-{DAY}", "--sheet", path, "--output", "marked.csv")
    assert done.status == 0
    assert "version A: 1 seat" in done.out
    assert "version B: 2 seats" in done.out
    marked = (home / "marked.csv").read_text().splitlines()
    assert marked[1].startswith("A1,right,right,2")
    assert marked[2].startswith("A2,right,right,2")
    assert done.out.count("not a grade") == 1


@pytest.mark.parametrize("command", ["record", "mark"])
def test_without_a_column_of_versions_nothing_is_guessed(said, home, command):
    path = sheet(home / "typed.csv", [("A1", "3", "4/5")], "seat,1,2")
    words = {
        "record": ["record", "--date", DAY, "--sheet", path, "--output", "."],
        "mark": ["mark", "--pack", f"8K-{DAY}", "--sheet", path],
    }
    status, out, err = said(*words[command])
    assert (status, out) == (2, "")
    assert "versions A and B" in err
    assert "column headed ‘version’" in err


def test_ones_and_noughts_need_no_versions(said, home):
    path = sheet(home / "marks.csv", [("A1", "1", "0")], "seat,1,2")
    done = said("record", "--date", DAY, "--sheet", path, "--output", ".")
    assert "1 pupil" in done.out


@pytest.mark.parametrize(
    ("rows", "fault"),
    [
        ([("A1", "C", "1", "2")], "line 2: There is no version C. The versions are A and B."),
        ([("A1", "", "1", "2")], "line 2: The version is missing."),
        ([("A1",)], "line 2: The version is missing."),
    ],
)
def test_a_wrong_version_is_told_with_its_line(said, home, rows, fault):
    path = sheet(home / "typed.csv", rows)
    status, _, err = said("record", "--date", DAY, "--sheet", path, "--output", ".")
    assert status == 2
    assert fault in err


def test_a_second_column_of_versions_and_an_option_beside_it(said, home):
    path = sheet(home / "typed.csv", [("A1", "A", "B", "1")], "seat,version,version,1")
    assert "‘version’" in said("mark", "--pack", f"8K-{DAY}", "--sheet", path).err
    path = sheet(home / "typed.csv", [("A1", "A", "1")], "seat,version,1")
    done = said("mark", "--pack", f"8K-{DAY}", "--sheet", path, "--version", "B")
    assert "leave --version out" in done.err


BANK = Path(__file__).parents[2] / "banks" / "key-stage-3"


@pytest.fixture(scope="module")
def made_of_bank(tmp_path_factory):
    """Make a pack from a bank's questions, and return the bank's folder and the pack's."""
    folder = tmp_path_factory.mktemp("of-bank")
    bank, home = folder / "bank", folder / "home"
    shutil.copytree(BANK, bank)
    make(home, "--bank", str(bank), "--questions-from", "bank", "--topic", "number.hcf")
    return bank, home / f"8K-{DAY}"


@pytest.fixture
def from_bank(made_of_bank, tmp_path, monkeypatch):
    """Return a copy to change: the department's folder, the bank's and the pack's."""
    bank, pack = made_of_bank
    shutil.copytree(bank, tmp_path / "bank")
    home = Path(shutil.copytree(pack.parent, tmp_path / "home"))
    monkeypatch.chdir(home)
    monkeypatch.delenv("ITEMBANK_STORE", raising=False)
    return home, tmp_path / "bank", home / pack.name


def test_an_item_is_taken_from_its_bank_while_it_is_what_was_printed(made_of_bank):
    bank, pack = made_of_bank
    stored = json.loads((pack / "pack.json").read_text())["versions"][0]["items"]
    found = starter_items(pack, (bank,))["A"]
    assert [item.address for item in found] == [one["address"] for one in stored]
    assert all(":" in item.address for item in found)


@only_whole
def test_a_question_edited_since_is_marked_as_it_was_printed(said, from_bank):
    home, bank, pack = from_bank
    items = json.loads((pack / "pack.json").read_text())["versions"][0]["items"]
    (home / "department.toml").write_text(
        DEPARTMENT.replace("[[classes]]", f'banks = ["{bank}"]\n[[classes]]', 1)
    )
    rows = sheet(home / "typed.csv", [("A1", *keys_of(home)["A"])], "seat,1,2")
    id = items[0]["address"].partition(":")[2]
    done = said(
        *("bank", "change", id, "--bank", bank, "--prompt", "Work out {7 * 8}.", "--key", "56"),
        *(
            "--task",
            "work-out",
            "--clear",
            "working",
            "--clear",
            "misconceptions",
            "--clear",
            "model",
        ),
    )
    assert done.status == 0, done.err
    found = starter_items(pack, (bank,))["A"]
    assert [item.address for item in found] == [item["address"] for item in items]
    done = said("record", "--date", DAY, "--sheet", rows, "--output", ".")
    assert done.status == 0, done.err
    said("export", "--to", "out")
    assert (home / "out" / "scores.csv").read_text().splitlines()[1].endswith("A1,2")


@pytest.mark.parametrize("face", ["prompt", "key", "form", "accept"])
def test_an_item_that_differs_from_the_pack_in_anything_is_taken_from_the_pack(
    made_of_bank, monkeypatch, face
):
    bank, pack = made_of_bank
    printed = starter_items(pack, ())["A"]
    assert [item.key for item in printed] == [
        item.key for item in starter_items(pack, (bank,))["A"]
    ]
    other = {
        "prompt": ("Work out it.",),
        "key": t.num(999),
        "form": "value",
        "accept": ("any-form",),
    }

    def edited(address, banks):
        return replace(find_any(address, banks), **{face: other[face]})

    monkeypatch.setattr("itembank.records.entries.pack_items.find_any", edited)
    found = starter_items(pack, (bank,))["A"]
    assert [getattr(item, face) for item in found] == [getattr(item, face) for item in printed]
