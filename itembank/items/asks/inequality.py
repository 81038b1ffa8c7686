"""Solve an inequality in one unknown."""

from __future__ import annotations

from dataclasses import dataclass

from itembank.items.asks.kind import Ask, Kind, Stored, only, register_kind
from itembank.notation.line import line
from itembank.notation.tree import Node, NotationError, Relation


@dataclass(frozen=True, slots=True)
class Inequality(Ask):
    """Solve an inequality in one unknown."""

    relation: Relation


def relation(node: Node) -> Relation:
    """Return a node that has to be an equation or an inequality.

    Raises
    ------
    NotationError
        If it is something else.
    """
    if not isinstance(node, Relation):
        raise NotationError(f"‘{line(node)}’ is not an equation or an inequality")
    return node


def _restore(stored: Stored) -> Inequality:
    return Inequality(relation(only(stored, 1)[0]))


INEQUALITY = register_kind(
    Kind(
        "inequality",
        Inequality,
        trees=lambda ask: (ask.relation,),
        store=lambda ask: Stored((ask.relation,)),
        restore=_restore,
        twin=lambda ask, form: (("inequality",), (ask.relation,), ()),
        does="solve an inequality",
    )
)
