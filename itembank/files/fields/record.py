"""A table of a file as a dataclass: its annotations say what each of its keys may hold.

    @dataclass(frozen=True, kw_only=True)
    class Term:
        \"\"\"A term of the school year.\"\"\"

        name: Annotated[str, Line(40), "What the term is called."]
        first: datetime.date
        last: datetime.date

From this one declaration come reading (:func:`read`, :func:`try_read`), the sentences for what
is refused, plain data (:func:`itembank.files.fields.plain.plain`) and the JSON Schema
(:func:`itembank.files.fields.json_schema.schema_of`). The standard library does it: a validation
library takes longer to load (0.05 to 0.08 s) than `itembank record` may take for a whole file.
"""

from __future__ import annotations

import datetime
import types
from collections.abc import Iterable, Iterator
from dataclasses import MISSING, dataclass, fields
from typing import Annotated, Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

from itembank.files.faults import join_words, nearest
from itembank.files.fields.kinds import (
    AnyText,
    Anything,
    Check,
    Checked,
    Choice,
    Date,
    Definitions,
    Either,
    Flag,
    Kind,
    Limit,
    Many,
    Maybe,
    Number,
    Pairs,
    Whole,
)
from itembank.files.fields.wrong import MISSING_KEY, UNKNOWN_KEY, KeyPath, Refused, Wrong
from itembank.text.characters import shown_value

T = TypeVar("T")
_NONE = type(None)
_KINDS: dict[Any, Kind] = {
    str: AnyText(),
    int: Whole(),
    float: Number(),
    bool: Flag(),
    datetime.date: Date(),
    Any: Anything(),
    object: Anything(),
}


@dataclass(frozen=True, slots=True)
class Called:
    """In an annotation: the key in the file, where it is no name for a field."""

    key: str


@dataclass(frozen=True, slots=True)
class Field:
    """One key of a table: the name of its field, its kind, and what is said of it."""

    name: str
    key: str
    kind: Kind
    needed: bool
    default: Any
    says: str = ""


@dataclass(frozen=True, slots=True)
class Table(Kind):
    """A table read as a dataclass."""

    model: type[Any]
    is_table = True
    wanted = "a table of keys"

    def takes(self, value: Any) -> bool:
        return isinstance(value, dict)

    def read(self, value: Any) -> Any:
        if not isinstance(value, dict):
            if isinstance(value, self.model):
                return value
            raise self.refuse(value)
        model = self.model
        shape = shape_of(model)
        by_key = shape.by_key
        found: dict[str, Any] = {}
        wrongs: list[Wrong] = []
        for key, part in value.items():
            field = by_key.get(key)
            if field is None:
                wrongs.append(
                    Wrong((key,), unknown_key(key, by_key), whole=True, matter=UNKNOWN_KEY)
                )
                continue
            try:
                found[field.name] = field.kind.read(part)
            except Refused as refused:
                wrongs += [wrong.below(key) for wrong in refused.wrongs]
                # The other tables of a list are still looked at.
                partly = field.needed or getattr(field.kind, "of_tables", False)
                found[field.name] = refused.value if partly else field.default
        for field in shape.needed:
            if field.name not in found:
                says = missing_key(field.key, field.kind)
                wrongs.append(Wrong((field.key,), says, whole=True, matter=MISSING_KEY))
                found[field.name] = field.kind.blank()
        made = model(**found)
        if not wrongs and (more := getattr(made, "contradictions", None)) is not None:
            wrongs += [Wrong((key,), f"‘{key}’ {says}.", whole=True) for key, says in more()]
        if wrongs:
            raise Refused(wrongs, made)
        return made

    def blank(self) -> Any:
        return self.model(
            **{field.name: field.kind.blank() for field in shape_of(self.model).needed}
        )

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        from itembank.files.fields.json_schema import defined

        return defined(self.model, definitions)


@dataclass(frozen=True, slots=True)
class OneOf(Kind):
    """A table that is one of several, told apart by the word in a field called ``kind``."""

    models: tuple[type[Any], ...]
    is_table = True
    wanted = "a table of keys"

    def _by_word(self) -> dict[str, Table]:
        found = {}
        for model in self.models:
            kind = shape_of(model).by_key["kind"].kind
            assert isinstance(kind, Choice)
            found[kind.words[0]] = Table(model)
        return found

    def takes(self, value: Any) -> bool:
        return isinstance(value, dict)

    def read(self, value: Any) -> Any:
        if isinstance(value, self.models):
            return value
        if not isinstance(value, dict):
            raise self.refuse(value)
        tables = self._by_word()
        word = value.get("kind")
        if not isinstance(word, str) or word not in tables:
            says = f"must be {join_words(list(tables), 'or')}, not {shown_value(word)}"
            raise Refused([Wrong((), says).below("kind")], self.blank())
        return tables[word].read(value)

    def blank(self) -> Any:
        return Table(self.models[0]).blank()

    def schema(self, definitions: Definitions) -> dict[str, Any]:
        return {"oneOf": [Table(model).schema(definitions) for model in self.models]}


def missing_key(key: str, kind: Kind) -> str:
    """Return what is said of a table in which a key is missing.

    >>> missing_key("year", Whole())
    '‘year’ is missing here. Add a line year = …'
    """
    return f"‘{key}’ is missing here. Add a line {key} = {kind.example}"


def unknown_key(key: str, known: Iterable[str]) -> str:
    """Return what is said of a key that is none of those a table may hold.

    >>> unknown_key("yaer", ["name", "year"])
    'There is no key ‘yaer’ here. Did you mean ‘year’?'
    """
    there = sorted(known)
    near = nearest(key, there, 1)
    advice = f"Did you mean ‘{near[0]}’?" if near else f"The keys here are {join_words(there)}."
    return f"There is no key ‘{key}’ here. {advice}"


def kind_of(hint: Any) -> Kind:
    """Return the kind of value that an annotation declares.

    >>> kind_of(tuple[int, ...]).read([1, 2])
    (1, 2)
    """
    if hint in _KINDS:
        return _KINDS[hint]
    origin, parts = get_origin(hint), get_args(hint)
    if origin is Annotated:
        return _annotated(parts[0], parts[1:])
    if origin is Literal:
        return Choice(parts)
    if origin in (Union, types.UnionType):
        return _union(parts)
    if origin is list:
        return Many(kind_of(parts[0]), into=list)
    if origin is tuple and parts[-1] is Ellipsis:
        return Many(kind_of(parts[0]))
    if origin is tuple:
        return Many(kind_of(parts[0]), len(parts), len(parts))
    if origin is dict:
        return Pairs(kind_of(parts[0]), kind_of(parts[1]))
    return Table(hint)


def _annotated(hint: Any, told: tuple[Any, ...]) -> Kind:
    kind = next((one for one in told if isinstance(one, Kind)), None)
    kind = kind_of(hint) if kind is None else kind
    for one in told:
        if isinstance(one, Check):
            kind = Checked(kind, one)
        elif isinstance(one, Limit):
            kind = one.of(kind)
    return kind


def _union(hints: tuple[Any, ...]) -> Kind:
    some = tuple(hint for hint in hints if hint is not _NONE)
    if len(some) == 1:
        kind = kind_of(some[0])
    elif all(isinstance(hint, type) and hasattr(hint, "__dataclass_fields__") for hint in some):
        kind = OneOf(some)
    else:
        kind = Either(tuple(kind_of(hint) for hint in some))
    return kind if len(some) == len(hints) else Maybe(kind)


@dataclass(frozen=True, slots=True)
class Shape:
    """What a dataclass declares: its fields, by their keys, and those that must be there."""

    fields: tuple[Field, ...]
    by_key: dict[str, Field]
    needed: tuple[Field, ...]


_SHAPES: dict[type[Any], Shape] = {}


def shape_of(model: type[Any]) -> Shape:
    """Return what a dataclass declares; its annotations are looked at once."""
    found = _SHAPES.get(model)
    if found is None:
        all_fields = tuple(_fields(model))
        by_key = {field.key: field for field in all_fields}
        needed = tuple(field for field in all_fields if field.needed)
        found = _SHAPES[model] = Shape(all_fields, by_key, needed)
    return found


def _fields(model: type[Any]) -> Iterator[Field]:
    hints = get_type_hints(model, include_extras=True)
    for field in fields(model):
        hint = hints[field.name]
        told = tuple(_told(hint))
        key = next((one.key for one in told if isinstance(one, Called)), field.name)
        says = next((one for one in told if isinstance(one, str)), "")
        default = field.default
        if field.default_factory is not MISSING:
            default = field.default_factory()
        needed = default is MISSING
        yield Field(field.name, key, kind_of(hint), needed, default, says)


def _told(hint: Any) -> Iterator[Any]:
    if get_origin(hint) is Annotated:
        yield from get_args(hint)[1:]


def try_read(model: type[T], data: Any, at: KeyPath = ()) -> tuple[T, list[Wrong]]:
    """Return what data says as a dataclass, and everything that is wrong with it.

    Where something is wrong a default or a blank stands for it. `at` is where the data stands.

    >>> @dataclass(frozen=True)
    ... class Bed:
    ...     rows: Annotated[int, Whole(1, 9)]
    >>> made, wrongs = try_read(Bed, {"rows": 12})
    >>> wrongs[0].says
    '‘rows’ must be from 1 to 9, not 12.'
    """
    try:
        return Table(model).read(data), []
    except Refused as refused:
        made = refused.value
        return made, [wrong.told(at) for wrong in refused.wrongs]


class NotRead(ValueError):
    """Data is not what a dataclass declares; `wrongs` says all that is wrong with it."""

    def __init__(self, wrongs: list[Wrong]) -> None:
        super().__init__("\n".join(wrong.says for wrong in wrongs))
        self.wrongs = wrongs


def read(model: type[T], data: Any) -> T:
    """Return what data says as a dataclass.

    Raises:
        NotRead: anything is wrong with it.
    """
    made, wrongs = try_read(model, data)
    if wrongs:
        raise NotRead(wrongs)
    return made
