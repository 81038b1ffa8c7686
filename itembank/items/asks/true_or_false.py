"""Say whether a statement is true."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind, relation
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t

TRUE, FALSE = "true", "false"


@dataclass(frozen=True, slots=True)
class TrueOrFalse(Ask):
    """Say whether `statement` is true, its letters worth what is `given`.

    With letters and nothing given, the statement has to be true whatever the letters stand for.
    The key is the name *true* or *false*; the reason is said aloud.
    """

    statement: t.Relation
    given: tuple[t.Relation, ...] = ()


def _restore(stored: Stored) -> TrueOrFalse:
    return TrueOrFalse(relation(only(stored, 1)[0]), stored.relations)


TRUE_OR_FALSE = register_kind(
    Kind(
        "true or false",
        TrueOrFalse,
        trees=lambda ask: (ask.statement, *ask.given),
        store=lambda ask: Stored((ask.statement,), ask.given),
        restore=_restore,
        twin=lambda ask, form: (("true or false",), (ask.statement,), ask.given),
        does="say whether a statement is true",
        relations=True,
        told="true or false",
        frame=True,
        wrong_answers=1,
        layers=Layers(
            first_road="itembank.proof.exact.cards:find_truth",
            second_road="itembank.proof.sympy.sympy_cards:truth",
            working="itembank.proof.lines.line_of_cards:statement_fault",
            bank="itembank.bank.question.key_form:TRUTH",
            printed="itembank.proof.claim.printed:frame_unprinted",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:TRUTH",
            difficulty="itembank.items.measures.difficulty_by_kind:TRUE_OR_FALSE",
        ),
    )
)
