"""A model whose sign no check and no reader holds to the words is left to a person.

The property is of the mechanism, and so is tried on models of every printed prompt: whatever story
is proved, the same story with one sign of its model turned is not, though its key is right for it.
"""

import csv
import json
from pathlib import Path

import pytest

from itembank.bank.model.bank import Entry
from itembank.bank.model.fields import BankItem
from itembank.bank.question.as_item import NeedsPerson, as_item
from itembank.bank.question.given.maths import UnreadableMaths
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.tree import NotationError
from itembank.notation.value import exact
from itembank.proof.judge import judge
from itembank.proof.outcome import State
from itembank.wording.meaning.amounts.related import solved
from itembank.wording.story.turned_models import turned_models

PROMPTS = Path(__file__).parents[1] / "bank/question/prompts"


def proved(prompt, key, more):
    item = BankItem.model_validate(
        {"id": "a-1", "tier": "core", "prompt": prompt, "key": key, **more}
    )
    try:
        found = as_item(Entry(item, "number.try", "try", Path("number.try.toml"), 1))
    except (NeedsPerson, UnreadableMaths):
        return None
    return found if judge(found).state is State.PROVED else None


def proved_stories():
    for path in sorted(PROMPTS.glob("*.tsv")):
        with path.open(encoding="utf-8", newline="") as file:
            for prompt, key, fields, said in csv.reader(
                file, delimiter="\t", quoting=csv.QUOTE_NONE
            ):
                more = json.loads(fields) if fields else {}
                if said == "P" and "find" not in more and len(more.get("model", ())) == 1:
                    yield prompt, key, more


def key_like(key, value):
    """Return a key as the old one is written, worth another value."""
    node = parse(key)
    plain = (
        t.Int(value.numerator)
        if value.denominator == 1
        else t.Frac(t.Int(value.numerator), t.Int(value.denominator))
    )
    match node:
        case t.Quantity(_, unit) if value.denominator == 1:
            return line(t.Quantity(plain, unit))
        case t.Int() | t.Frac():
            return line(plain)
    return ""


def test_no_story_is_proved_both_ways():
    both, tried = [], 0
    for prompt, key, more in proved_stories():
        (model,) = more["model"]
        try:
            tree = parse(model)
        except NotationError:
            continue
        for (turned,), _, says in turned_models((), (tree,), None):
            if isinstance(turned, t.Relation):
                continue
            try:
                value = exact(turned)
            except NotationError:
                continue
            other = key_like(key, value) if value > 0 else ""
            if other and other != key:
                tried += 1
                if proved(prompt, other, {**more, "model": [line(turned)]}):
                    both.append((prompt, other, says))
    assert tried > 50
    assert both == []


@pytest.mark.parametrize(
    ("prompt", "right", "wrong"),
    [
        (
            "A fence is {48 m} long. It is made of {8} panels of the same length and a gate of "
            "{4 m}. How long is each panel?",
            ("5.5 m", "(48 m - 4 m) ÷ 8"),
            ("6.5 m", "(48 m + 4 m) ÷ 8"),
        ),
        (
            "Ann has {£24}, which is {£7} more than Ben has. How much does Ben have?",
            ("£17", "£24 - £7"),
            ("£31", "£24 + £7"),
        ),
    ],
)
def test_the_wrong_sign_is_never_proved(prompt, right, wrong):
    assert proved(prompt, wrong[0], {"model": [wrong[1]]}) is None
    found = proved(prompt, right[0], {"model": [right[1]]})
    assert found is None or found.key == parse(right[0])


def test_equations_that_clash_or_leave_it_open_have_no_answer():
    assert solved(["a", "b"], [({"a": 1, "b": 1}, 9), ({"a": 2, "b": 2}, 17)]) is None
    assert solved(["a", "b"], [({"a": 1, "b": 1}, 9)]) is None
