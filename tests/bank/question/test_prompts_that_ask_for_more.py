"""Prompts written to have a wrong key proved, each judged by hand before it was tried.

Every row of ``prompts/*.tsv`` is a prompt, its key, what else its file says (JSON), and what may
be said of it: proved (P), disproved (D) or left to a person (N). They ask for another quantity,
add a clause, or move a number out of the braces of a wording that proves.
"""

import csv
import json
from pathlib import Path

import pytest

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import NeedsPerson, as_item
from itembank.bank.question.given.maths import UnreadableMaths
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from tests.depth import some, whole

LETTERS = {State.PROVED: "P", State.DISPROVED: "D", State.NEEDS_PERSON: "N"}


FILES = sorted((Path(__file__).parent / "prompts").glob("*.tsv"))


def rows(path):
    with path.open(encoding="utf-8", newline="") as file:
        yield from csv.reader(file, delimiter="\t", quoting=csv.QUOTE_NONE)


def verdict(prompt, key, fields):
    more = json.loads(fields) if fields else {}
    item = BankItem.model_validate(
        {"id": "a-1", "tier": "core", "prompt": prompt, "key": key, **more}
    )
    try:
        found = as_item(Entry(item, "number.try", "try", Path("number.try.toml"), 1))
    except (NeedsPerson, UnreadableMaths):
        return "N"
    return LETTERS[judge(found).state]


@whole
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_no_more_is_said_than_is_true(path):
    judged = [
        (prompt, key, allowed, verdict(prompt, key, fields))
        for prompt, key, fields, allowed in some(rows(path), 80)
    ]
    assert judged
    assert [row for row in judged if row[3] not in row[2]] == []
