"""`itembank mark` answers in two lines."""

from __future__ import annotations

import csv
import json

import pytest
from typer.testing import CliRunner

from itembank.cli.main import app
from itembank.items.topics.registry import find_item
from itembank.notation import line

pytestmark = pytest.mark.usefixtures("pages_outlined")

ADDRESS = "ratio.share/support/7"
ITEM = find_item(ADDRESS)


def run(*arguments):
    return CliRunner().invoke(app, ["mark", *arguments])


def test_a_right_answer():
    done = run(ADDRESS, line(ITEM.key))
    assert done.exit_code == 0
    assert done.output == f"Right.\nThe key is {line(ITEM.key)}.\n"


def test_a_known_mistake_names_it_and_what_to_ask():
    slip = ITEM.slips[0]
    done = run(ADDRESS, line(slip.wrong))
    assert slip.misconception.name in done.output
    assert slip.misconception.ask in done.output


@pytest.mark.parametrize("address", ["nonsense", "ratio.share/support/99999", "ratio.x/core/1"])
def test_an_unknown_question_is_one_plain_line(address):
    done = run(address, "5")
    assert done.exit_code == 2
    assert "Traceback" not in done.output


def test_a_negative_answer_needs_no_dashes():
    address = "equations.negative-solutions/support/3"
    value = line(find_item(address).key).partition(" = ")[2]
    assert value.startswith("-")
    assert run(address, value).output.startswith("Right.")
    assert run(address, "--", value).output.startswith("Right.")


@pytest.mark.parametrize(
    "words",
    [
        [],
        [ADDRESS],
        [ADDRESS, "5", "--pack", "p", "--sheet", "s"],
        ["--pack", "p"],
        ["--sheet", "s"],
        [ADDRESS, "5", "--output", "o"],
    ],
)
def test_what_does_not_go_together_is_told(words):
    done = run(*words)
    assert done.exit_code == 2
    assert "Traceback" not in done.output


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """Return the folder of a small pack made by the command."""
    home = tmp_path_factory.mktemp("home")
    topics = ["ratio.share", "fractions.add-unlike"]
    words = [word for topic in topics for word in ("--topic", topic)]
    done = CliRunner().invoke(app, ["pack", *words, "--class", "8K", "--output", str(home)])
    assert done.exit_code == 0, done.output
    return next(path.parent for path in home.rglob("pack.json"))


def test_a_sheet_is_marked_by_its_pack(made, tmp_path):
    stored = json.loads((made / "pack.json").read_text("utf-8"))["versions"][0]["items"]
    sheet, out = tmp_path / "answers.csv", tmp_path / "marks.csv"
    with sheet.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(["seat", *range(1, len(stored) + 1)])
        writer.writerow(["A1", *(one["key"]["line"] for one in stored)])
        writer.writerow(["A2", *("999" for _ in stored)])
    words = ["--pack", str(made), "--sheet", str(sheet), "--output", str(out)]
    done = run(*words)
    assert done.exit_code == 0, done.output
    assert "50% right" in done.output
    assert "Bands are a teaching aid, not a grade." in done.output
    rows = list(csv.DictReader(out.open(encoding="utf-8")))
    assert [(row["seat"], row["marks"]) for row in rows] == [
        ("A1", str(len(stored))),
        ("A2", "0"),
    ]
    before = out.read_bytes()
    again = run(*words)
    assert again.exit_code == 2
    assert "--replace" in again.output
    assert out.read_bytes() == before
    assert run(*words, "--replace").exit_code == 0
    assert run(*words, "--replace", "--version", "Q").exit_code == 2
