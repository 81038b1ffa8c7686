"""What one layer does with each kind of question, found by the name that the kind gives it."""

from __future__ import annotations

from collections.abc import Iterator
from importlib import import_module
from typing import Any, Generic, TypeVar, cast

from itembank.items.asks.ask_kind import BY_CLASS, KINDS, Ask, Kind, kind_of
from itembank.notation import tree as t

Handler = TypeVar("Handler")

TABLES: dict[str, Handlers[Any]] = {}
"""The table of each layer that is imported, by its name in `Layers`."""


class Handlers(Generic[Handler]):
    """What one layer does with each kind of question.

    Parameters
    ----------
    name
        Under which name a kind says it: a field of :class:`~itembank.items.asks.layers.Layers`.
    layer
        What the layer is called in a message.
    otherwise
        What is done with a kind that names nothing there; without it such a question is refused
        with a NotationError, and so left to a person.

    >>> from itembank.items.asks import Find
    >>> from itembank.proof.exact.exact_road import ROAD
    >>> from itembank.notation import parse
    >>> ask = Find(parse("2 + 3"))
    >>> ROAD.of(ask)(ask, parse("6")).fault
    'it comes to 5, the key says 6'
    """

    __slots__ = ("by_kind", "layer", "name", "otherwise")

    def __init__(self, name: str, layer: str, otherwise: Handler | None = None) -> None:
        self.name = name
        self.layer = layer
        self.otherwise = otherwise
        self.by_kind: dict[type[Ask], Handler] = {}
        """What was asked for, since a name is looked up once."""
        TABLES[name] = self

    def of(self, ask: Ask) -> Handler:
        """Return the handler for a question.

        Raises
        ------
        NotationError
            If its kind has none here, and nothing is done otherwise.
        ImportError
            If what the kind names is not there.
        """
        found = self.by_kind.get(type(ask))
        if found is None:
            kind = kind_of(ask)
            found = self.named_by(kind) or self.otherwise
            if found is None:
                raise t.NotationError(f"{self.layer} cannot do questions to {kind.does}")
            self.by_kind[type(ask)] = found
        return found

    def named_by(self, kind: Kind) -> Handler | None:
        """Return the handler that a kind names, or None where it names none.

        Raises
        ------
        ImportError
            If there is no such thing.
        """
        reference = getattr(kind.layers, self.name)
        if not reference:
            return None
        try:
            return cast(Handler, resolved(reference))
        except (ImportError, AttributeError, ValueError) as error:
            raise ImportError(
                f"the kind {kind.name!r} names {reference!r} as its {self.name}: {error}"
            ) from error

    def without(self) -> Iterator[str]:
        """Yield the names of the kinds that have no handler of their own."""
        return (kind.name for kind in KINDS.values() if not getattr(kind.layers, self.name))


def resolved(reference: str) -> Any:
    """Return what a name such as ``module:function`` stands for; the module is imported.

    Raises
    ------
    ImportError, AttributeError, ValueError
        If there is no such module, nothing of that name in it, or the name is none.

    >>> resolved("math:gcd")(12, 18)
    6
    """
    module, _, name = reference.partition(":")
    return getattr(import_module(module), name)


def forget_kind(name: str) -> None:
    """Take a kind out again, and what was looked up for it; for a test that makes one up."""
    kind = KINDS.pop(name)
    del BY_CLASS[kind.ask]
    for table in TABLES.values():
        table.by_kind.pop(kind.ask, None)
