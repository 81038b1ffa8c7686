"""Give the nth term of a sequence."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, register_kind
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Sequence(Ask):
    """Give the nth term of a sequence, from its first terms, as an expression in n."""

    terms: tuple[t.Node, ...]


SEQUENCE = register_kind(
    Kind(
        "sequence",
        Sequence,
        trees=lambda ask: ask.terms,
        store=lambda ask: Stored(ask.terms),
        restore=lambda stored: Sequence(stored.target),
        twin=lambda ask, form: (("sequence",), ask.terms, ()),
        does="find the nth term",
        told="find the rule",
    )
)
