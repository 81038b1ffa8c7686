"""Solve an inequality in one unknown."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind, relation
from itembank.items.asks.layers import Layers
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
        answerable=True,
        together=True,
        layers=Layers(
            first_road="itembank.proof.exact.reckoning.ranges:find_range",
            second_road="itembank.proof.sympy.sympy_solving:inequality",
            working="itembank.proof.lines.line_of_equations:inequality_fault",
            bank="itembank.bank.question.key_form:RANGE",
            repeating="itembank.proof.claim.repeats:range_repeats",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:RANGE",
            difficulty="itembank.items.measures.difficulty_by_kind:INEQUALITY",
            later="itembank.items.measures.later_content:inequality_content",
        ),
    )
)
