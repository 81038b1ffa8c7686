"""Values of declared dataclasses as plain data, and back from JSON."""

from __future__ import annotations

import datetime
import json
from typing import Any, TypeVar

from itembank.files.fields.record import NotRead, read, shape_of
from itembank.files.fields.wrong import Wrong

T = TypeVar("T")


def plain(value: Any, *, stated: bool = False) -> dict[str, Any]:
    """Return a declared dataclass as data for JSON: lists for tuples, text for days.

    `stated` leaves out what is left at its default.
    """
    found: dict[str, Any] = _plain(value, stated)
    return found


def _plain(value: Any, stated: bool) -> Any:
    if isinstance(value, str | int | float) or value is None:
        return value
    if isinstance(value, list | tuple):
        return [_plain(part, stated) for part in value]
    if isinstance(value, dict):
        return {key: _plain(part, stated) for key, part in value.items()}
    if isinstance(value, datetime.date):
        return value.isoformat()
    data = {}
    for field in shape_of(type(value)).fields:
        part = getattr(value, field.name)
        if field.needed or not stated or part != field.default:
            data[field.key] = _plain(part, stated)
    return data


def stated(value: Any) -> dict[str, Any]:
    """Return the fields of a declared dataclass that are not left at their defaults, as they are.

    Tables in it are data too.
    """
    data = {}
    for field in shape_of(type(value)).fields:
        part = getattr(value, field.name)
        if field.needed or part != field.default:
            data[field.key] = _kept(part)
    return data


def _kept(value: Any) -> Any:
    if isinstance(value, tuple | list):
        return type(value)(_kept(part) for part in value)
    return stated(value) if hasattr(value, "__dataclass_fields__") else value


def json_text(value: Any, *, stated: bool = False) -> str:
    """Return a declared dataclass as JSON in one line."""
    return json.dumps(plain(value, stated=stated), ensure_ascii=False, separators=(",", ":"))


def from_json(model: type[T], text: str) -> T:
    """Return what JSON says as a declared dataclass.

    Raises:
        NotRead: it is not JSON, or not what the dataclass declares.
    """
    try:
        data = json.loads(text)
    except ValueError as error:
        raise NotRead([Wrong((), f"This is not JSON: {error}.", whole=True)]) from None
    return read(model, data)
