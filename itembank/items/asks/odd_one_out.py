"""Find the one card that is not worth what all the others are worth."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, register_kind
from itembank.items.asks.layers import Layers
from itembank.notation import tree as t

LETTERS = "ABCDEF"
"""The names of cards, in the order in which they are printed."""


@dataclass(frozen=True, slots=True)
class OddOneOut(Ask):
    """All cards but one are worth the same; the key is the letter of that one.

    An equation is worth its solution, an expression what it comes to whatever its letters are.
    """

    cards: tuple[t.Node, ...]


def _restore(stored: Stored) -> OddOneOut:
    if not 3 <= len(stored.target) <= len(LETTERS):
        raise t.NotationError(f"an odd one out takes 3 to {len(LETTERS)} cards")
    return OddOneOut(stored.target)


ODD_ONE_OUT = register_kind(
    Kind(
        "odd one out",
        OddOneOut,
        trees=lambda ask: ask.cards,
        store=lambda ask: Stored(ask.cards),
        restore=_restore,
        twin=lambda ask, form: (("odd one out",), (), ask.cards),
        does="find the odd one out",
        told="odd one out",
        frame=True,
        layers=Layers(
            first_road="itembank.proof.exact.cards:find_odd",
            second_road="itembank.proof.sympy.sympy_cards:odd_one_out",
            working="itembank.proof.lines.line_of_cards:card_fault",
            bank="itembank.bank.question.key_form:NAME",
            printed="itembank.proof.claim.printed:frame_unprinted",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:ODD_ONE_OUT",
            difficulty="itembank.items.measures.difficulty_by_kind:ODD_ONE_OUT",
        ),
    )
)
