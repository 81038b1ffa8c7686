"""Turns what the models refuse into sentences for the person who wrote the file."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from pydantic import BaseModel, ValidationError

from itembank.bank.model.field_types import TASKS, TIERS
from itembank.bank.model.fields import (
    BankItem,
    GeneratedSet,
    MisconceptionText,
    PinnedItem,
    TopicFile,
)
from itembank.files.faults import join_words, nearest
from itembank.items.forms.form_rules import FORMS
from itembank.text.characters import shown_value

Loc = tuple[str | int, ...]

_BELOW: dict[type[BaseModel], dict[str, type[BaseModel]]] = {
    TopicFile: {"items": BankItem, "generated": GeneratedSet, "pinned": PinnedItem},
    BankItem: {"misconceptions": MisconceptionText},
}
_WORDS = {"task": TASKS, "tier": TIERS, "choose": ("least", "greatest"), "form": tuple(FORMS)}


def sentences(
    error: ValidationError, top: type[BaseModel], at: Loc = ()
) -> Iterator[tuple[Loc, str]]:
    """Yield the place and the sentence of everything the model `top` refused below `at`."""
    for found in error.errors(include_url=False):
        loc = tuple(part for part in found["loc"] if part != "[key]")
        yield (*at, *loc), _sentence(found, loc, _model_at(top, loc))


def _model_at(top: type[BaseModel], loc: Loc) -> type[BaseModel]:
    for part in loc[:-1]:
        top = _BELOW.get(top, {}).get(str(part), top)
    return top


def _key(loc: Loc) -> str:
    return next((part for part in reversed(loc) if isinstance(part, str)), "")


def _sentence(found: Mapping[str, Any], loc: Loc, model: type[BaseModel]) -> str:
    key, kind, value = _key(loc), found["type"], found.get("input")
    context = found.get("ctx") or {}
    if kind == "extra_forbidden":
        known = sorted(model.model_fields)
        near = nearest(key, known, 1)
        advice = f"Did you mean ‘{near[0]}’?" if near else f"The keys here are {join_words(known)}."
        return f"There is no key ‘{key}’ here. {advice}"
    if kind == "missing":
        return f"‘{key}’ is missing here. Add a line {key} = …"
    if isinstance(value, str) and (
        kind == "literal_error" or (kind == "value_error" and key in ("form", "task"))
    ):
        return _not_a_word(key, value)
    if kind == "value_error":
        return f"‘{key}’ {context['error']}."
    if kind in ("greater_than_equal", "less_than_equal"):
        bound = f"at least {context.get('ge')}" if "ge" in context else f"at most {context['le']}"
        return f"‘{key}’ must be {bound}, not {value}."
    if kind == "too_long" and key == "working":
        return "A line of ‘working’ is the words and the mathematics, and nothing more."
    if kind == "too_long":
        return f"‘{key}’ may hold at most {context['max_length']} entries."
    return f"‘{key}’ must be {_wanted(kind, key, loc)}, not {shown_value(value)}."


def _not_a_word(key: str, value: str) -> str:
    words: Sequence[str] = _WORDS[key]
    near = nearest(value.lower(), words, 1)
    advice = f"Did you mean ‘{near[0]}’?" if near else f"It may be {join_words(words, 'or')}."
    return f"There is no {'way to choose' if key == 'choose' else key} ‘{value}’. {advice}"


def _wanted(kind: str, key: str, loc: Loc) -> str:
    if kind == "literal_error":
        return join_words(_WORDS[key], "or")
    if kind.startswith("date"):
        return "a day such as 2026-09-14, without quotation marks"
    if kind.startswith("int"):
        return "a whole number"
    if kind.startswith("tuple") and key == "working" and isinstance(loc[-1], int):
        return "words, or a list of words and mathematics"
    if key in _TABLES and (kind.startswith("tuple") or isinstance(loc[-1], int)):
        return f"tables, each headed [[{_TABLES[key]}]]"
    if kind.startswith("tuple"):
        return "a list in square brackets"
    if kind.startswith(("dict", "model")):
        return "a table of keys"
    return "text in quotation marks"


_TABLES = {
    "items": "items",
    "generated": "generated",
    "pinned": "pinned",
    "misconceptions": "items.misconceptions",
}
