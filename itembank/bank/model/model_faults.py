"""Turns what the models refuse into sentences for the person who wrote the file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import BaseModel, ValidationError

from itembank.bank.model.field_types import TASKS, TIERS
from itembank.files import fault_words as words
from itembank.files.faults import join_words
from itembank.files.model_words import Loc, model_at, sentence
from itembank.items.forms.form_rules import FORMS

_WORDS = {"task": TASKS, "tier": TIERS, "choose": ("least", "greatest"), "form": tuple(FORMS)}


def sentences(
    error: ValidationError, top: type[BaseModel], at: Loc = ()
) -> Iterator[tuple[Loc, str]]:
    """Yield the place and the sentence of everything the model `top` refused below `at`."""
    for found in error.errors(include_url=False):
        loc = tuple(part for part in found["loc"] if part != "[key]")
        yield (*at, *loc), _sentence(found, loc, model_at(top, loc))


def _key(loc: Loc) -> str:
    return next((part for part in reversed(loc) if isinstance(part, str)), "")


def _sentence(found: Mapping[str, Any], loc: Loc, model: type[BaseModel] | None) -> str:
    key, kind, value = _key(loc), found["type"], found.get("input")
    if isinstance(value, str) and (
        kind == "literal_error" or (kind == "value_error" and key in ("form", "task"))
    ):
        return words.not_one_of(key, _WORDS[key], value)
    if kind == "value_error":
        return f"‘{key}’ {found['ctx']['error']}."
    if kind == "too_long" and key == "working":
        return "A line of ‘working’ is the words and the mathematics, and nothing more."
    if wanted := _wanted(kind, key, loc):
        return words.must_be(key, wanted, value)
    return sentence({**found, "loc": loc}, model) or words.must_be(key, words.TEXT, value)


def _wanted(kind: str, key: str, loc: Loc) -> str:
    """Return what is wanted of a key that stands for more than its type; blank for the others."""
    if kind == "literal_error":
        return join_words(_WORDS[key], "or")
    if kind.startswith("tuple") and key == "working" and isinstance(loc[-1], int):
        return "words, or a list of words and mathematics"
    if key in _TABLES and kind.startswith(("tuple", "dict", "model")):
        return words.tables_headed(_TABLES[key])
    return ""


_TABLES = {
    "items": "items",
    "generated": "generated",
    "pinned": "pinned",
    "misconceptions": "items.misconceptions",
}
