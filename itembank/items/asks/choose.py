"""Name the option that is worth the least or the greatest."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, register_kind
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Choose(Ask):
    """Name the option that is worth the least or the greatest."""

    options: tuple[tuple[str, t.Node], ...]
    detail: Literal["least", "greatest"]


def _nodes(ask: Choose) -> tuple[t.Node, ...]:
    return tuple(node for _, node in ask.options)


def _store(ask: Choose) -> Stored:
    labels = tuple(label for label, _ in ask.options)
    return Stored(_nodes(ask), labels=labels, detail=ask.detail)


def _restore(stored: Stored) -> Choose:
    if not stored.target or len(stored.labels) != len(stored.target):
        raise t.NotationError("a choice needs a label for each option")
    options = tuple(zip(stored.labels, stored.target, strict=True))
    return Choose(options, detail(stored, "choose", ("least", "greatest")))


CHOOSE = register_kind(
    Kind(
        "choose",
        Choose,
        trees=_nodes,
        store=_store,
        restore=_restore,
        twin=lambda ask, form: (("choose", ask.detail), (), _nodes(ask)),
        does="choose the least or the greatest",
        told="choose",
    )
)
