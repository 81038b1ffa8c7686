"""The base of the values that make up a pack.

A pack that is made holds what this program put there, which the type checker has read; one that
is read may hold anything, and is checked field by field (:mod:`.pack_models`). That is pydantic's
work, which takes longer to load than a starter takes to choose: so these are plain values that
say what they may hold, and whoever makes a pack does without it. What they do is called as it is
with a model of pydantic's.
"""

from __future__ import annotations

import datetime
import inspect
from collections.abc import Callable, Mapping
from json.encoder import encode_basestring
from typing import Any, ClassVar, NamedTuple, Self, dataclass_transform

NEEDED: Any = ...
"""In place of a default: the field has to be given."""


class Field(NamedTuple):
    """What a value holds under a name: its default, what it says, and its bounds."""

    default: Any = NEEDED
    rules: Mapping[str, Any] = {}


def said(*, default: Any = NEEDED, **rules: Any) -> Any:
    """Return a field with a description or bounds, as pydantic names them: `ge`, `min_length`."""
    return Field(default, rules)


class Checked(NamedTuple):
    """In an annotation: what is read is held to `check` by this, which may raise ValueError.

    It returns the value to keep. With `first` it is given what stands in the file.
    """

    check: Callable[[Any], Any]
    first: bool = False


class Published(NamedTuple):
    """In an annotation: what the published schema says of it."""

    schema: Mapping[str, Any]


class ToldBy(NamedTuple):
    """In the annotation of a union: the field by which its members are told apart."""

    field: str


@dataclass_transform(kw_only_default=True, frozen_default=True, field_specifiers=(said,))
class Data:
    """A value of a pack, made by the names of its fields; nothing changes once it is made.

    >>> class Mark(Data):
    ...     letter: str
    ...     seats: list[str] = said(default=[], description="Who has it.")
    >>> mark = Mark(letter="R")
    >>> mark, mark == Mark(letter="R", seats=[]), mark.model_copy(update={"letter": "S"}).letter
    (Mark(letter='R', seats=[]), True, 'S')
    >>> mark.model_dump_json()
    '{"letter":"R","seats":[]}'
    """

    model_fields: ClassVar[dict[str, Field]] = {}
    """Its fields in the order of the file."""

    def __init_subclass__(cls) -> None:
        own = {}
        for name in inspect.get_annotations(cls):
            default = cls.__dict__.get(name, NEEDED)
            own[name] = default if isinstance(default, Field) else Field(default)
            if name in cls.__dict__:
                delattr(cls, name)
        cls.model_fields = {**cls.model_fields, **own}

    def __init__(self, **values: Any) -> None:
        """Hold what is given, and the defaults of the rest.

        Raises:
            TypeError: a field is missing, or there is none of a name.
        """
        held = self.__dict__
        for name, (default, _) in self.model_fields.items():
            if name in values:
                held[name] = values[name]
            elif default is NEEDED:
                raise TypeError(f"{type(self).__name__} needs ‘{name}’")
            else:
                held[name] = default.copy() if isinstance(default, list) else default
        if len(values) > len(held) or not held.keys() >= values.keys():
            raise TypeError(f"{type(self).__name__} has no ‘{min(values.keys() - held.keys())}’")
        self.hold()

    def hold(self) -> None:
        """Raise ValueError where it may not be made at all, whoever makes it."""

    def __setattr__(self, name: str, value: object) -> None:
        """Refuse it."""
        raise AttributeError(f"‘{name}’ of {type(self).__name__} cannot be changed")

    def __delattr__(self, name: str) -> None:
        """Refuse it."""
        raise AttributeError(f"‘{name}’ of {type(self).__name__} cannot be removed")

    def __eq__(self, other: object) -> bool:
        """Tell whether the other is of the same kind and holds the same."""
        if type(other) is not type(self):
            return NotImplemented
        return self.__dict__ == other.__dict__

    def __hash__(self) -> int:
        """Return the hash of what it holds; raises TypeError where that is a list."""
        return hash((type(self), tuple(self.__dict__.values())))

    def __repr__(self) -> str:
        """Return how it is made."""
        held = ", ".join(f"{name}={value!r}" for name, value in self.__dict__.items())
        return f"{type(self).__name__}({held})"

    def model_copy(self, *, update: Mapping[str, Any] | None = None) -> Self:
        """Return a copy with some fields changed."""
        return type(self)(**self.__dict__ | dict(update or {}))

    def model_dump(self, *, mode: str = "python") -> dict[str, Any]:
        """Return it as a table; in the `mode` "json" with lists, text and numbers alone."""
        table: dict[str, Any] = _plain(self, mode == "json")
        return table

    def model_dump_json(self, *, indent: int | None = None) -> str:
        """Return it as JSON: letters outside ASCII as they are, each value on a line if indented.

        >>> Data().model_dump_json(indent=1)
        '{}'
        """
        parts: list[str] = []
        _write(self, parts.append, None if indent is None else "\n", " " * (indent or 0))
        return "".join(parts)

    @classmethod
    def model_validate(cls, value: object) -> Self:
        """Return what a table says, checked.

        Raises:
            pydantic.ValidationError: it does not hold what it should.
        """
        from itembank.packs.data.pack_models import data_of, model_of

        read: Self = data_of(model_of(cls).model_validate(value))
        return read

    @classmethod
    def model_validate_json(cls, text: str | bytes, *, strict: bool | None = None) -> Self:
        """Return what some JSON says, checked.

        Raises:
            pydantic.ValidationError: it does not hold what it should.
        """
        from itembank.packs.data.pack_models import data_of, model_of

        read: Self = data_of(model_of(cls).model_validate_json(text, strict=strict))
        return read


def _plain(value: Any, json: bool) -> Any:
    if isinstance(value, Data):
        return {name: _plain(part, json) for name, part in value.__dict__.items()}
    if isinstance(value, dict):
        return {key: _plain(part, json) for key, part in value.items()}
    if isinstance(value, list | tuple):
        return (list if json else type(value))(_plain(part, json) for part in value)
    return value.isoformat() if json and isinstance(value, datetime.date) else value


def _write(value: Any, put: Callable[[str], object], line: str | None, deeper: str) -> None:
    """Write a value as JSON; `line` begins a line as deep as this one, where there are lines."""
    kind = type(value)
    if kind is str:
        put(encode_basestring(value))
    elif kind is int or kind is float:
        put(repr(value))
    elif value is None or kind is bool:
        put("null" if value is None else "true" if value else "false")
    elif isinstance(value, datetime.date):
        put(f'"{value.isoformat()}"')
    elif isinstance(value, Data | dict):
        held = value if isinstance(value, dict) else value.__dict__
        inner = None if line is None else line + deeper
        start, colon = ("{", ":") if inner is None else ("{" + inner, ": ")
        for name, part in held.items():
            put(f"{start}{encode_basestring(name)}{colon}")
            _write(part, put, inner, deeper)
            start = "," if inner is None else "," + inner
        put(("" if line is None else line) + "}" if held else "{}")
    elif isinstance(value, list | tuple):
        inner = None if line is None else line + deeper
        start = "[" if inner is None else "[" + inner
        for part in value:
            put(start)
            _write(part, put, inner, deeper)
            start = "," if inner is None else "," + inner
        put(("" if line is None else line) + "]" if value else "[]")
    else:
        raise TypeError(f"a pack cannot hold a {kind.__name__}")
