"""Put numbers in order of size."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, register_kind
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Order(Ask):
    """Put `things` in order of size."""

    things: tuple[t.Node, ...]
    detail: Literal["ascending", "descending"] = "ascending"


def _restore(stored: Stored) -> Order:
    return Order(stored.target, detail(stored, "order", ("ascending", "descending")))


ORDER = register_kind(
    Kind(
        "order",
        Order,
        trees=lambda ask: ask.things,
        store=lambda ask: Stored(ask.things, detail=ask.detail),
        restore=_restore,
        twin=lambda ask, form: (("order", ask.detail), (), ask.things),
        does="put in order",
        told="put in order",
    )
)
