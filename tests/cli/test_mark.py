"""`itembank mark` answers in two lines."""

from __future__ import annotations

import pytest
from typer.testing import CliRunner

from itembank.cli.main import app
from itembank.items.registry import find_item
from itembank.notation import line

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
