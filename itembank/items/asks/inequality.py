"""Solve an inequality in one unknown."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind, relation
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Inequality(Ask):
    """Solve an inequality in one unknown."""

    relation: t.Relation


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
