"""Put the right sign between two numbers."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Compare(Ask):
    """Put the right sign, <, > or =, between two numbers; the key is the relation."""

    left: t.Node
    right: t.Node


def _restore(stored: Stored) -> Compare:
    left, right = only(stored, 2)
    return Compare(left, right)


COMPARE = register_kind(
    Kind(
        "compare",
        Compare,
        trees=lambda ask: (ask.left, ask.right),
        store=lambda ask: Stored((ask.left, ask.right)),
        restore=_restore,
        twin=lambda ask, form: (("compare",), (), (ask.left, ask.right)),
        does="compare",
        told="compare",
        layers=Layers(
            first_road="itembank.proof.exact.comparisons_found:find_sign",
            second_road="itembank.proof.sympy.sympy_comparisons:sign_between",
            working="itembank.proof.lines.line_of_terms:among_fault",
            bank="itembank.bank.question.key_form:SIGN",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:COMPARE",
            difficulty="itembank.items.measures.difficulty_by_kind:COMPARE",
            tasks=(("compare", "itembank.bank.question.tasks.task_asks:compare"),),
        ),
    )
)
