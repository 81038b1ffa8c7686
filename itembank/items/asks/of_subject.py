"""Make a letter the subject of a formula."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind, relation
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t


@dataclass(frozen=True, slots=True)
class Subject(Ask):
    """Make `letter` the subject of a formula."""

    relation: t.Relation
    letter: t.Sym


def _restore(stored: Stored) -> Subject:
    formula, letter = only(stored, 2)
    if not isinstance(letter, t.Sym):
        raise t.NotationError("only a letter can be made the subject")
    return Subject(relation(formula), letter)


SUBJECT = register_kind(
    Kind(
        "subject",
        Subject,
        trees=lambda ask: (ask.relation, ask.letter),
        store=lambda ask: Stored((ask.relation, ask.letter)),
        restore=_restore,
        twin=lambda ask, form: (("subject",), (ask.letter, ask.relation), ()),
        does="change the subject",
        answerable=True,
        layers=Layers(
            first_road="itembank.proof.exact.subject:find_subject",
            second_road="itembank.proof.sympy.sympy_algebra:subject",
            working="itembank.proof.lines.line_of_equations:subject_fault",
            bank="itembank.bank.question.key_form:FORMULA",
            repeating="itembank.proof.claim.repeats:subject_repeats",
            forms="itembank.proof.exact.key_forms:TURNED",
            worth="itembank.proof.likely_mistakes:subject_worth",
            difficulty="itembank.items.measures.difficulty_by_kind:SUBJECT",
            tasks=(("make-subject", "itembank.bank.question.tasks.letter_tasks:make_subject"),),
        ),
    )
)
