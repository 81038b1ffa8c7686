"""Name the option that is worth the least or the greatest."""

from __future__ import annotations

from typing import Literal

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, detail, register_kind
from itembank.items.asks.layers import Layers
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
        layers=Layers(
            first_road="itembank.proof.exact.comparisons_found:find_choice",
            second_road="itembank.proof.sympy.sympy_comparisons:choice",
            working="itembank.proof.lines.line_of_terms:among_fault",
            bank="itembank.bank.question.key_form:NAME",
            printed="itembank.proof.claim.printed:choices_unprinted",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:CHOOSE",
            difficulty="itembank.items.measures.difficulty_by_kind:CHOOSE",
        ),
    )
)
