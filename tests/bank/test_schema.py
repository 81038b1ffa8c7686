"""The published schemas say what the models say, and the banks that ship keep to them."""

import contextlib
import copy
import datetime
import json
import tomllib
from pathlib import Path

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from itembank.bank.model.fields import BankItem, TopicFile
from itembank.bank.model.schema import SCHEMAS, schema, schema_text

ROOT = Path(__file__).parents[2]
SHIPPED = sorted((ROOT / "banks").rglob("bank.toml"))


def validator(name):
    return jsonschema.Draft202012Validator(
        schema(name), format_checker=jsonschema.Draft202012Validator.FORMAT_CHECKER
    )


TOPIC = validator("bank-topic.schema.json")


def as_json(path):
    """Return TOML as JSON has it: a day is text."""
    with path.open("rb") as file:
        return json.loads(json.dumps(tomllib.load(file), default=datetime.date.isoformat))


@pytest.mark.parametrize("name", SCHEMAS)
def test_what_is_published_is_what_the_models_say(name):
    assert (ROOT / "docs" / name).read_text(encoding="utf-8") == schema_text(name)
    jsonschema.Draft202012Validator.check_schema(schema(name))


def test_the_banks_that_ship_keep_to_the_schemas():
    assert SHIPPED
    for facts in SHIPPED:
        assert list(validator("bank.schema.json").iter_errors(as_json(facts))) == []
        for path in sorted(facts.parent.glob("*.toml")):
            if path.name not in ("bank.toml", "signoffs.toml"):
                errors = list(validator("bank-topic.schema.json").iter_errors(as_json(path)))
                assert errors == [], path


GOOD = {
    "topic": "ratio.share",
    "title": "Share",
    "items": [
        {
            "id": "garden-1.3f2a",
            "tier": "core",
            "task": "work-out",
            "prompt": "Work out {1/2}.",
            "key": "1/2",
            "form": "value",
            "marks": 2,
            "model": ["x = 1"],
            "working": [["Add", "1 + 1"], ["Look"], "Stop"],
            "misconceptions": [{"id": "m", "name": "n", "wrong": "1", "ask": "Why?"}],
            "options": {"Pack A": "1"},
            "created": "2026-09-14",
        }
    ],
    "generated": [{"tier": "core", "count": 5, "seed": 3}],
    "pinned": [{"address": "ratio.share/core/1"}],
}
PLACES = st.sampled_from(
    [
        *((key,) for key in (*GOOD, "extra")),
        *(("items", 0, key) for key in (*GOOD["items"][0], "extra", "choose", "author", "find")),
        *(("items", 0, "misconceptions", 0, key) for key in ("id", "name", "wrong", "ask", "x")),
        *(("items", 0, "working", n) for n in range(3)),
        *(("generated", 0, key) for key in ("tier", "count", "seed", "topic", "addresses")),
        ("pinned", 0, "address"),
    ]
)
VALUES = st.sampled_from(
    [
        *("core", "least", "solve", "value", "ratio.share", "HT", "", "x y", "2026-09-14", "A"),
        *(0, 1, 21, 501, -1, True, 1.5, [], ["a"], [[]], [["a", "b"]], [["a", "b", "c"]], [1], {}),
        *({"a": 1}, {"a": "b"}, [{}], [{"id": "m"}]),
    ]
)


@given(PLACES, VALUES | st.just("taken out"))
def test_schema_and_model_agree_on_what_is_allowed(place, value):
    data = copy.deepcopy(GOOD)
    at = data
    for key in place[:-1]:
        at = at[key]
    if value == "taken out":
        if isinstance(at, dict):
            at.pop(place[-1], None)
    else:
        at[place[-1]] = value
    by_schema = TOPIC.is_valid(data)
    try:
        TopicFile.model_validate(with_days(data))
    except ValidationError:
        by_model = False
    else:
        by_model = True
    assert by_schema == by_model


def with_days(data):
    """Return the data as TOML reads it: days as days."""
    data = copy.deepcopy(data)
    for item in data.get("items", []) if isinstance(data.get("items"), list) else []:
        if isinstance(item, dict) and isinstance(item.get("created"), str):
            with contextlib.suppress(ValueError):
                item["created"] = datetime.date.fromisoformat(item["created"])
    return data


def test_every_field_of_an_item_is_in_the_schema():
    published = schema("bank-topic.schema.json")["$defs"]["BankItem"]["properties"]
    assert set(published) == set(BankItem.model_fields)
