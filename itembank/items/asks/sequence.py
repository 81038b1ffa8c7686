"""Give the nth term of a sequence."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, register_kind
from itembank.items.asks.layers import Layers
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
        answerable=True,
        layers=Layers(
            first_road="itembank.proof.exact.integers:find_nth_term",
            second_road="itembank.proof.sympy.sympy_integers:nth_term",
            working="itembank.proof.lines.line_of_terms:terms_fault",
            bank="itembank.bank.question.key_form:NTH_TERM",
            marking="itembank.marking.worth.marked_by_kind:SEQUENCE",
            trying="itembank.marking.telling.tried:term_tried",
            difficulty="itembank.items.measures.difficulty_by_kind:SEQUENCE",
            later="itembank.items.measures.later_content:sequence_content",
            tasks=(("nth-term", "itembank.bank.question.tasks.task_asks:nth_term"),),
        ),
    )
)
