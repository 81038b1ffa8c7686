"""Put numbers in order of size."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, register_kind
from itembank.items.asks.layers import Layers
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
        layers=Layers(
            first_road="itembank.proof.exact.comparisons_found:find_order",
            second_road="itembank.proof.sympy.sympy_comparisons:in_order",
            working="itembank.proof.lines.line_of_terms:among_fault",
            bank="itembank.bank.question.key_form:IN_ORDER",
            printed="itembank.proof.claim.printed:order_unprinted",
            repeating="itembank.proof.claim.repeats:order_repeats",
            forms="itembank.proof.exact.key_forms:IN_ORDER",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:ORDER",
            difficulty="itembank.items.measures.difficulty_by_kind:ORDER",
            tasks=(("order", "itembank.bank.question.tasks.task_asks:order"),),
        ),
    )
)
