"""Prompts written to have a wrong key proved, each judged by hand before it was tried.

Every row of ``prompts/*.tsv`` is a prompt, its key, what else its file says (JSON), and what may
be said of it: proved (P), disproved (D) or left to a person (N). They ask for another quantity,
add a clause, or move a number out of the braces of a wording that proves.
"""

import csv
import json
import re
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


def in_capitals(prompt):
    """Yield a prompt with each of its words in capitals, one at a time; not what is in braces."""
    for word in re.finditer(r"(?<![{\w])[a-z]{3,}(?![\w}])", prompt):
        before = prompt[: word.start()]
        if before.count("{") == before.count("}"):
            yield before + word[0].upper() + prompt[word.end() :]


@whole
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_no_word_in_capitals_proves_what_was_not(path):
    refused = [row for row in rows(path) if "P" not in row[3]]
    for prompt, key, fields, _ in some(refused, 8):
        for louder in list(in_capitals(prompt))[::4]:
            assert verdict(louder, key, fields) != "P", louder


@pytest.mark.parametrize(
    ("prompt", "key", "model"),
    [
        ("A can holds {330 ml}. How many litres are in {12} CANS?", "3960", "12 × 330"),
        (
            "He types {1200} WORDS in {25} minutes. How fast in words per minute?",
            "1/48",
            "25 ÷ 1200",
        ),
        ("ANN AND BEN EACH BUY {3} PENS AT {85p} EACH. HOW MUCH IS IT?", "£2.55", "3 × 85p"),
        ("Here are the DIFFERENCES: {3, 5, 7}. Find the next term.", "9", ""),
        ("SHARE {£40} BETWEEN ANN, BO AND CY IN THE RATIO {3 : 5}.", "£15, £25", ""),
    ],
)
def test_what_is_said_aloud_is_read(prompt, key, model):
    fields = json.dumps({"model": [model]} if model else {})
    assert verdict(prompt, key, fields) == "N"


@pytest.mark.parametrize(
    ("prompt", "key", "model"),
    [
        ("A bag costs {£12}. How much do {4} bags cost ALTOGETHER?", "£48", "4 × £12"),
        ("VAT of {20%} is put on {£120}. How much is it altogether?", "£144", "£120 + 20% of £120"),
        ("Find the HCF of {12} and {18}.", "6", ""),
        ("SOLVE {2x = 6}.", "x = 3", ""),
        ("TRUE OR FALSE? {2 + 2 = 5}", '"false"', ""),
    ],
)
def test_capitals_that_change_nothing_do_no_harm(prompt, key, model):
    fields = json.dumps({"model": [model]} if model else {})
    assert verdict(prompt, key, fields) == "P"
