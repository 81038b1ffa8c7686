"""What pydantic's models refuse, in the words of every file (:mod:`.fault_words`)."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, get_args

from pydantic import BaseModel

from itembank.files import fault_words as words

Loc = tuple[str | int, ...]


def model_at(top: type[BaseModel], loc: Loc) -> type[BaseModel] | None:
    """Return the model that the last key of a place belongs to; None where several may."""
    at: type[BaseModel] | None = top
    for part in loc[:-1]:
        if isinstance(part, str):
            field = at.model_fields.get(part) if at else None
            below = set(_models(field.annotation)) if field else set()
            at = below.pop() if len(below) == 1 else None
    return at


def _models(annotation: Any) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for part in get_args(annotation):
        yield from _models(part)


def sentence(
    found: Mapping[str, Any], model: type[BaseModel] | None = None, written: bool = True
) -> str | None:
    """Return the sentence for one of the errors of a ``ValidationError``; None for another kind.

    `model` is the one whose key it is about, where that is known; `written` says that the file
    is TOML, and written by a person.

    >>> from pydantic import ValidationError
    >>> class Row(BaseModel):
    ...     year: int
    >>> try:
    ...     Row.model_validate({"year": "x"})
    ... except ValidationError as error:
    ...     print(sentence(error.errors()[0], Row))
    ‘year’ must be a whole number, not 'x'.
    """
    key = next((part for part in reversed(found["loc"]) if isinstance(part, str)), "")
    kind, value, context = found["type"], found.get("input"), found.get("ctx") or {}
    low, high = _bounds(model, key)
    if kind == "missing":
        return words.missing(key, written)
    if kind == "extra_forbidden":
        return words.unknown_key(key, model.model_fields if model else ())
    if kind == "literal_error":
        known = re.findall(r"'([^']*)'", str(context.get("expected", "")))
        return words.not_one_of(key, known, value) if known and isinstance(value, str) else None
    if kind in ("greater_than_equal", "less_than_equal"):
        low = low if low is not None else context.get("ge")
        high = high if high is not None else context.get("le")
        return words.out_of_range(key, low, high, value)
    if kind == "too_long":
        return words.too_many(key, context["max_length"])
    wanted = wanted_of(kind, low, high)
    if wanted == words.DAY and written:
        wanted += words.BARE
    return words.must_be(key, wanted, value) if wanted else None


def wanted_of(kind: str, low: int | None = None, high: int | None = None) -> str | None:
    """Return what is wanted where an error of this kind was found; None for another kind.

    >>> wanted_of("string_type"), wanted_of("int_type", 1, 20)
    ('text in quotation marks', 'a whole number from 1 to 20')
    """
    for start, wanted in (
        ("string", words.TEXT),
        ("int", words.whole_number(low, high)),
        ("bool", words.FLAG),
        ("date", words.DAY),
        ("tuple", words.LIST),
        ("list", words.LIST),
        ("dict", words.KEYS),
        ("model", words.KEYS),
    ):
        if kind.startswith(start):
            return wanted
    return None


def _bounds(model: type[BaseModel] | None, key: str) -> tuple[int | None, int | None]:
    """Return the least and the greatest number that may stand at a key, as its model says."""
    field = model.model_fields.get(key) if model else None
    if field is None:
        return None, None
    found: dict[str, int] = {}
    for mark in _marks([*field.metadata, *get_args(field.annotation), field.annotation]):
        for name in ("ge", "le"):
            if getattr(mark, name, None) is not None:
                found.setdefault(name, getattr(mark, name))
    return found.get("ge"), found.get("le")


def _marks(parts: Sequence[Any]) -> Iterator[Any]:
    for part in parts:
        yield part
        yield from _marks([*getattr(part, "__metadata__", ()), *getattr(part, "metadata", ())])
