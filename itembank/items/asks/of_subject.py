"""Make a letter the subject of a formula."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, only, register_kind, relation
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
    )
)
