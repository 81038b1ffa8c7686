"""Dataclasses that are there quickly: a command makes some hundred and fifty as it starts.

Python writes the methods of a dataclass as text and compiles each, six to a class and a
millisecond in all, which was a sixth of everything that making a pack took. The methods of two
classes with as many fields differ by names alone. So they are compiled once for each number of
fields, and a class has them with its own names put in. What comes of it is a dataclass like any
other, whose values are also made in half the time, since each field is set by its own slot and
not looked up by its name.
"""

from __future__ import annotations

import dataclasses
import sys
from collections.abc import Mapping
from functools import cache
from reprlib import recursive_repr
from types import CodeType, FunctionType
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:

    def dataclass(kind=None, /, **options):
        """Make a dataclass, as :func:`dataclasses.dataclass` does; a frozen one quickly.

        Quickly where nothing but ``frozen=True, slots=True`` is asked for, no base of it is a
        dataclass, and fields have plain defaults or none. It is Python's own for any other.

        >>> from dataclasses import replace
        >>> @dataclass(frozen=True, slots=True)
        ... class Pair:
        ...     first: int
        ...     other: int = 2
        >>> Pair(1), Pair(other=3, first=1) == replace(Pair(1), other=3)
        (Pair(first=1, other=2), True)
        >>> Pair(1).first = 5
        Traceback (most recent call last):
        dataclasses.FrozenInstanceError: cannot assign to field 'first'
        """
        if kind is None:
            return lambda kind: dataclass(kind, **options)
        if options == {"frozen": True, "slots": True} and _is_plain(kind):
            return _made(kind)
        return dataclasses.dataclass(kind, **options)


WRITTEN = frozenset({"__init__", "__setattr__", "__delattr__", "__getstate__", "__setstate__"})
"""Methods that a class here has not of its own."""

UNUSUAL = ("InitVar", "KW_ONLY")
"""Words in the type of what is no usual field."""


def _is_plain(kind: type) -> bool:
    """Tell whether the fields of a class are its own, and plain."""
    if any(map(dataclasses.is_dataclass, kind.__mro__)) or not WRITTEN.isdisjoint(vars(kind)):
        return False
    told = vars(kind).get("__annotations__")
    if told is None or not all(isinstance(said, str) for said in told.values()):
        return False
    if any(isinstance(vars(kind).get(name), dataclasses.Field) for name in told):
        return False
    if any(word in said for said in told.values() for word in UNUSUAL):
        return False
    has_default = [name in vars(kind) for name, said in told.items() if "ClassVar" not in said]
    return has_default == sorted(has_default)  # Python's own says what is wrong


def _made(kind: type) -> type:
    """Return the dataclass that a plain class makes."""
    own = {name for name in ("__eq__", "__repr__") if name in vars(kind)}
    # Python says None of a class that says when two are equal and not how one is hashed.
    own |= {"__hash__"} if vars(kind).get("__hash__") else set()
    kind.__doc__ = kind.__doc__ or kind.__name__  # else its signature is worked out for it
    made: Any = dataclasses.dataclass(init=False, repr=False, eq=False, slots=True)(kind)
    # A dataclass that rests on this one is held to what this one is.
    told = made.__dataclass_params__
    told.init = told.repr = told.eq = told.frozen = True
    fields = dataclasses.fields(made)
    names = [field.name for field in fields]
    changed: dict[object, str] = {}
    for place, name in enumerate(names):
        changed |= {f"field_{place}": name, f"(field_{place}=": f"({name}="}
        changed |= {f", field_{place}=": f", {name}="}
    methods: dict[str, Any] = {}
    shapes = _shapes(len(names), hasattr(made, "__post_init__"))
    for method in shapes(*(vars(made)[name].__set__ for name in names)):
        method.__code__ = _renamed(method.__code__, changed)
        methods[method.__name__] = method
    methods |= {"__init__": _within(made, methods["__init__"], fields)}
    methods |= {"__repr__": recursive_repr()(methods["__repr__"])}
    for name in own:
        del methods[name]
    methods |= {method.__name__: method for method in _kept_as_made(made, names)}
    for name, method in methods.items():
        method.__qualname__ = f"{made.__qualname__}.{name}"
        setattr(made, name, method)
    whole: type = made
    return whole


def _within(
    made: type, init: FunctionType, fields: tuple[dataclasses.Field[Any], ...]
) -> FunctionType:
    """Return what makes a value as a function of its class's module, with defaults and types."""
    module = sys.modules.get(made.__module__)
    defaults = tuple(field.default for field in fields if field.default is not dataclasses.MISSING)
    own = FunctionType(
        init.__code__, vars(module) if module else {}, "__init__", defaults, init.__closure__
    )
    own.__annotations__ = {**{field.name: field.type for field in fields}, "return": None}
    return own


@cache
def _shapes(count: int, finished: bool) -> FunctionType:
    """Return a function that makes the methods of a class with so many fields, by their slots."""
    fields = [f"field_{place}" for place in range(count)]
    setters = [f"set_{place}" for place in range(count)]
    own, others = ("".join(f"{which}.{field}, " for field in fields) for which in ("self", "other"))
    shown = ", ".join(f"{field}={{self.{field}!r}}" for field in fields)
    text = f"""
def methods({", ".join(setters)}):
    def __init__({", ".join(["self", *fields])}):
        {"; ".join(f"set_{place}(self, field_{place})" for place in range(count)) or "pass"}
        {"self.__post_init__()" if finished else ""}
    def __repr__(self):
        return f"{{self.__class__.__qualname__}}({shown})"
    def __eq__(self, other):
        if other.__class__ is self.__class__:
            return ({own}) == ({others})
        return NotImplemented
    def __hash__(self):
        return hash(({own}))
    return __init__, __repr__, __eq__, __hash__
"""
    known: dict[str, Any] = {}
    exec(text, known)
    made: FunctionType = known["methods"]
    return made


def _renamed(code: CodeType, changed: Mapping[object, str]) -> CodeType:
    """Return what a function does with other names for its arguments and what it looks up."""
    names, constants = code.co_names, code.co_consts
    return code.replace(
        co_names=tuple(changed.get(name, name) for name in names),
        co_varnames=tuple(changed.get(name, name) for name in code.co_varnames),
        co_consts=tuple(changed.get(value, value) for value in constants),
    )


def _kept_as_made(made: Any, names: list[str]) -> tuple[Any, ...]:
    """Return the methods that refuse any change, and those that let a value travel."""

    def __setattr__(self: object, name: str, value: object) -> None:
        if type(self) is made or name in names:
            raise dataclasses.FrozenInstanceError(f"cannot assign to field {name!r}")
        super(made, self).__setattr__(name, value)

    def __delattr__(self: object, name: str) -> None:
        if type(self) is made or name in names:
            raise dataclasses.FrozenInstanceError(f"cannot delete field {name!r}")
        super(made, self).__delattr__(name)

    def __getstate__(self: object) -> list[Any]:
        return [getattr(self, name) for name in names]

    def __setstate__(self: object, state: list[Any]) -> None:
        for name, value in zip(names, state, strict=True):
            object.__setattr__(self, name, value)

    return __setattr__, __delattr__, __getstate__, __setstate__
