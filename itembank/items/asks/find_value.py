"""Work something out: a sum, or an expression whose letters are given or settled."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, Twin, only, register_kind
from itembank.notation import tree as t

NUMBER_FORMS = frozenset({"value", "number", "fraction", "lowest-terms", "improper", "mixed"})
NUMBER_FORMS |= {"simplest", "integer", "solution", "roots", "amount", "quantity", "money"}
"""Forms that say how the answer to a calculation is written, not which question it is."""


@dataclass(frozen=True, slots=True)
class Find(Ask):
    """Work out `target`, given that every relation holds.

    With no relations the target is worked out as it stands. With relations the letters
    (or the empty box) are unknowns; the target is an expression, a ratio or a list in them.
    """

    target: t.Node
    relations: tuple[t.Relation, ...] = ()


def _twin(ask: Find, form: str) -> Twin:
    calculation = ask.relations or any(map(t.is_operation, t.walk(ask.target)))
    said = "number" if calculation and form in NUMBER_FORMS else form
    return ("find", said), (ask.target,), ask.relations


def _restore(stored: Stored) -> Find:
    return Find(only(stored, 1)[0], stored.relations)


FIND = register_kind(
    Kind(
        "find",
        Find,
        trees=lambda ask: (ask.target, *ask.relations),
        store=lambda ask: Stored((ask.target,), ask.relations),
        restore=_restore,
        twin=_twin,
        does="work something out",
        relations=True,
        model=lambda ask: ask.relations,
    )
)
