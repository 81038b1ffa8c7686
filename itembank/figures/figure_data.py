"""A figure as data for files, and back: one way for ``pack.json`` and for a bank's TOML.

The fields of a figure's class say all there is to say. Mathematics is a line, and a whole number
may stand for itself; pairs may be written as a table. What is not given keeps its usual value.

>>> data = {"kind": "number line", "first": 0, "last": "1", "steps": 4, "points": {"A": 3}}
>>> figure = from_data(data)
>>> to_data(figure)
{'kind': 'number line', 'first': '0', 'last': '1', 'steps': 4, 'points': [['A', 3]]}
>>> from_data(to_data(figure)) == figure
True
"""

from __future__ import annotations

import dataclasses
import difflib
import importlib
import types
import typing
from collections.abc import Mapping, Sequence
from functools import cache, reduce
from operator import or_
from typing import Any

from itembank.figures.bare_numbers import misfit
from itembank.figures.figure import KINDS, Figure, FigureError, drawn, kind_of, sound
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import ParseError, parse_written
from itembank.notation.tree.face import FACES
from itembank.text.characters import shown

MOST = 2000
"""The most words, numbers and rows that one figure's data may hold."""

MOST_SIGNS = 60
"""The longest label."""


_WRITTEN: dict[str, t.Node] = {}
"""What lines written here stand for. To read them again would cost the grammar, 0.1 s to build,
and pages do so for nearly every pack."""
_MOST_WRITTEN = 4096


class Misplaced(FigureError):
    """A figure's data that cannot be read; `key` is the first key on the way to the fault."""

    def __init__(self, message: str, key: str = "") -> None:
        super().__init__(message)
        self.key = key


def to_data(figure: Figure) -> dict[str, Any]:
    """Return a figure as data; what has its usual value is left out."""
    return {"kind": kind_of(figure).name, **_fields(figure)}


def _fields(value: Any) -> dict[str, Any]:
    out = {}
    for field in dataclasses.fields(value):
        held = getattr(value, field.name)
        usual = (
            field.default
            if field.default_factory is dataclasses.MISSING
            else field.default_factory()
        )
        if held != usual:
            out[field.name] = _plain(held)
    return out


def _plain(value: Any) -> Any:
    if value is None or isinstance(value, str | int):
        return value
    if isinstance(value, tuple):
        return [_plain(part) for part in value]
    if type(value) in FACES:
        text = line(value)
        if len(_WRITTEN) < _MOST_WRITTEN:
            _WRITTEN[text] = value
        return text
    return _fields(value)


def from_data(data: Any) -> Figure:
    """Return the figure that data describes, sound and with room for its drawing.

    Raises
    ------
    Misplaced
        If it has an unknown kind or key, or a value of a wrong type.
    FigureError
        If the figure has a fault of its own.
    """
    if not isinstance(data, Mapping):
        raise Misplaced("a figure is a table with a kind")
    kinds = importlib.import_module("itembank.figures.kinds")
    name = data.get("kind")
    if isinstance(name, str):
        kinds.load(name)  # it puts itself into the table
    if not isinstance(name, str) or name not in KINDS:
        kinds.load_all()
    if name is None:
        raise Misplaced(f"it has no kind: give one of {_among(KINDS)}", "kind")
    if not isinstance(name, str) or name not in KINDS:
        raise Misplaced(
            f"there is no kind of figure called ‘{shown(str(name))}’{_near(str(name), KINDS)}",
            "kind",
        )
    if _count(data, MOST) <= 0:
        raise Misplaced(f"it holds more than {MOST} values")
    rest = {key: value for key, value in data.items() if key != "kind"}
    figure = sound(_made(KINDS[name].figure, rest, ""))
    if found := misfit(figure):
        field, node = found
        raise Misplaced(
            f"{field}: ‘{shown(line(node))}’ is no plain number, and what is read there is one: "
            "write the number alone, and let a name or the question tell the unit",
            field,
        )
    drawn(figure)  # there has to be room for it
    return figure


def _count(data: Any, left: int) -> int:
    """Return how many values are left of a number when those in data are taken away."""
    stack = [data]
    while stack and left > 0:
        value = stack.pop()
        left -= 1
        if isinstance(value, Mapping):
            stack.extend(list(value.values())[: left + 1])
        elif isinstance(value, Sequence) and not isinstance(value, str):
            stack.extend(value[: left + 1])
    return left


@cache
def _hints(kind: type) -> dict[str, Any]:
    hints = typing.get_type_hints(kind)
    return {field.name: hints[field.name] for field in dataclasses.fields(kind)}


def _made(kind: type, data: Mapping[str, Any], at: str) -> Any:
    hints = _hints(kind)
    values = {}
    for key, value in data.items():
        if key not in hints:
            raise Misplaced(
                f"{at}there is no key ‘{shown(key)}’{_near(key, hints)}",
                at.partition(":")[0] or key,
            )
        values[key] = _read(hints[key], value, f"{at}{key}: ")
    for field in dataclasses.fields(kind):
        needed = (
            field.default is dataclasses.MISSING and field.default_factory is dataclasses.MISSING
        )
        if needed and field.name not in values:
            raise Misplaced(f"{at}‘{field.name}’ is missing", at.partition(":")[0])
    return kind(**values)


def _read(wanted: Any, value: Any, at: str) -> Any:
    key = at.partition(":")[0].partition(" ")[0]
    origin, args = typing.get_origin(wanted), typing.get_args(wanted)
    if _is_node(wanted):
        return _maths(value, at, key)
    if origin in (typing.Union, types.UnionType):
        inner = [arg for arg in args if arg is not type(None)]
        if value is None or (value == "" and type(None) in args):
            return None
        # A piece of mathematics is a union too, of every node.
        left = inner[0] if len(inner) == 1 else reduce(or_, inner)
        return _read(left, value, at)
    if origin is typing.Literal:
        if value not in args:
            raise Misplaced(f"{at}‘{shown(str(value))}’ is none of {_among(args)}", key)
        return value
    if origin is tuple:
        if isinstance(value, Mapping):
            value = [[name, held] for name, held in value.items()]
        if not isinstance(value, list | tuple):
            raise Misplaced(f"{at}it is to be a list", key)
        if len(args) == 2 and args[1] is ...:
            return tuple(
                _read(args[0], part, f"{at}number {n}: ") for n, part in enumerate(value, 1)
            )
        if len(value) != len(args):
            raise Misplaced(f"{at}it is to hold {len(args)} values", key)
        return tuple(_read(arg, part, at) for arg, part in zip(args, value, strict=True))
    if dataclasses.is_dataclass(wanted):
        if not isinstance(value, Mapping):
            raise Misplaced(f"{at}it is to be a table", key)
        return _made(wanted, value, at)  # type: ignore[arg-type]
    if wanted is bool or wanted is int:
        if type(value) is not wanted:
            kind = "true or false" if wanted is bool else "a whole number"
            raise Misplaced(f"{at}it is to be {kind}, not ‘{shown(str(value))}’", key)
        if wanted is int and abs(value) > 10**9:
            raise Misplaced(f"{at}{shown(str(value))} is too large", key)
        return value
    if not isinstance(value, str):
        raise Misplaced(f"{at}it is to be text in quotation marks, not {shown(str(value))}", key)
    return _short(value, at, key)


def _is_node(wanted: Any) -> bool:
    return bool(wanted == t.Node)


def _maths(value: Any, at: str, key: str) -> t.Node:
    if type(value) is int:
        return t.num(value)
    if not isinstance(value, str):
        raise Misplaced(
            f'{at}write mathematics in quotation marks, as in "0.5", not {shown(str(value))}', key
        )
    if (known := _WRITTEN.get(value)) is not None:
        return known
    written = _short(value, at, key)
    try:
        return parse_written(written)
    except (ParseError, t.NotationError) as error:
        raise Misplaced(f"{at}‘{value}’ cannot be read: {error}", key) from None


def _short(value: str, at: str, key: str) -> str:
    if len(value) > MOST_SIGNS:
        raise Misplaced(f"{at}a label has at most {MOST_SIGNS} signs, this one {len(value)}", key)
    if not value.isprintable():
        raise Misplaced(f"{at}it holds a sign that cannot be printed", key)
    return value


def _among(names: Any) -> str:
    return ", ".join(f"‘{name}’" for name in names)


def _near(name: str, known: Any) -> str:
    near = difflib.get_close_matches(name[:80], list(known), 1)
    return f"; did you mean ‘{near[0]}’?" if near else f", only {_among(known)}"
