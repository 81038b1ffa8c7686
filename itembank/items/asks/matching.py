"""Match each card of one row with the card of another row that is worth the same."""

from __future__ import annotations

from itembank.data_class import dataclass
from itembank.items.asks.ask_kind import Ask, Kind, Stored, register_kind
from itembank.items.asks.layers import Layers
from itembank.items.asks.odd_one_out import LETTERS
from itembank.notation import tree as t

PARTNERS = "PQRSTU"
"""The names of the second row's cards: letters, since 1 beside 3/4 would read as 1 3/4."""


@dataclass(frozen=True, slots=True)
class Match(Ask):
    """Each of the `cards` is worth the same as one of the `partners`; some partners may be left.

    The key names a partner for each card: *A–Q, B–P*.
    """

    cards: tuple[t.Node, ...]
    partners: tuple[t.Node, ...]


def pair_name(card: int, partner: int) -> t.Label:
    """Return the name of a pair, its two cards numbered from 0.

    >>> pair_name(0, 2).text
    'A–R'
    """
    return t.Label(f"{LETTERS[card]}–{PARTNERS[partner]}")


def _restore(stored: Stored) -> Match:
    cards = sum(label in LETTERS for label in stored.labels)
    made = Match(stored.target[:cards], stored.target[cards:])
    if (
        stored.labels != _labels(made)
        or not 2 <= cards <= len(made.partners)
        or len(made.partners) > len(PARTNERS)
    ):
        raise t.NotationError("to match takes two rows of cards, with as many partners or more")
    return made


def _labels(ask: Match) -> tuple[str, ...]:
    return (*LETTERS[: len(ask.cards)], *PARTNERS[: len(ask.partners)])


MATCH = register_kind(
    Kind(
        "match",
        Match,
        trees=lambda ask: (*ask.cards, *ask.partners),
        store=lambda ask: Stored((*ask.cards, *ask.partners), labels=_labels(ask)),
        restore=_restore,
        # A row in another order is the same question, and so is the one with its rows changed over.
        twin=lambda ask, form: (("match",), (), (*ask.cards, *ask.partners)),
        does="match pairs",
        told="match pairs",
        frame=True,
        layers=Layers(
            first_road="itembank.proof.exact.cards:find_pairs",
            second_road="itembank.proof.sympy.sympy_cards:pairs",
            working="itembank.proof.lines.line_of_cards:card_fault",
            bank="itembank.bank.question.key_form:PAIRS",
            printed="itembank.proof.claim.printed:frame_unprinted",
            worth="itembank.proof.likely_mistakes:as_written",
            marking="itembank.marking.worth.marked_by_kind:MATCH",
            difficulty="itembank.items.measures.difficulty_by_kind:MATCH",
        ),
    )
)
