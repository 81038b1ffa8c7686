"""What marking knows of each kind of question."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from typing import Any, Literal, NamedTuple

from itembank.figures.figure import kind_of
from itembank.figures.kinds.plane.congruence import CONDITIONS
from itembank.items.asks import (
    Ask,
    Handlers,
    OfFigure,
    RoundReading,
)
from itembank.items.asks.equivalent import not_equivalent
from itembank.items.asks.matching import PARTNERS
from itembank.items.asks.odd_one_out import LETTERS
from itembank.items.asks.of_figure import as_find, name_read
from itembank.items.asks.true_or_false import FALSE, TRUE
from itembank.items.membership import given_values, unmet
from itembank.notation import tree as t
from itembank.notation.line import shown_line
from itembank.text.late_pattern import late

_NTH = late(
    r"^(?:the )?(?:n(?:th|ᵗʰ)[ -]?term|(?:term|[TUSatus])[ _]?(?:\(n\)|n))(?: ?is)? ?[=:]? ?", re.I
)
_COMMON = late(
    r"^(?:the )?(?:hcf|lcm|h\.c\.f\.?|l\.c\.m\.?|highest common factor|lowest common multiple)"
    r"(?: is)? ?[=:]? ?",
    re.I,
)

To = tuple[Literal["places", "figures", "nearest"], int]
"""What a number is rounded to."""


class Marking(NamedTuple):
    """How answers to one kind of question are marked, where it is not by their worth alone.

    Attributes
    ----------
    unmet
        What keeps an answer from being one of many right ones, a sentence, or ``""``; None where
        an answer is held against the key.
    numbers
        The numbers that such an answer gives.
    names
        The names of the choices, one of which is the answer.
    target
        What is asked for, as it stands in the question.
    equations
        The equations that an answer may be tried in.
    rounded
        The number that is rounded, with the places, figures or amount it is rounded to.
    ordered
        ``ascending`` or ``descending``, where the answer is a list in order.
    any_order
        Whether the numbers of an answer may come in any order.
    sign
        Whether the answer is a sign between two numbers.
    for_letters
        Whether a line of working with such letters has to be true whatever they are worth.
    range
        Whether the answer is an inequality.
    leads
        Words that lead up to an answer and are passed by.
    repeated
        Whether an answer that is given twice is one.
    reads
        What an answer is, where it is read in a way of its own: ``truth``, the letter of one of
        some ``cards``, a ``line`` and a result, or ``pairs`` of letters
        (:mod:`itembank.marking.typing.kind_typed`).
    cards
        The cards of such a question by their letters, as lines.
    partners
        The letters of the cards that others are matched with.
    drawn
        Whether the answer is drawn, so that nothing typed can be marked.
    """

    unmet: Callable[[Any, t.Node], str] | None = None
    numbers: Callable[[Any, t.Node], tuple[t.Node, ...]] | None = None
    names: Callable[[Any], tuple[str, ...]] = lambda ask: ()
    target: Callable[[Any], t.Node | None] = lambda ask: None
    equations: Callable[[Any], tuple[t.Relation, ...]] = lambda ask: ()
    rounded: Callable[[Any], tuple[t.Node, To] | None] = lambda ask: None
    ordered: Callable[[Any], str] = lambda ask: ""
    any_order: Callable[[Any], bool] = lambda ask: False
    sign: bool = False
    for_letters: Callable[[frozenset[str]], bool] = lambda letters: False
    range: bool = False
    repeated: bool = False
    leads: re.Pattern[str] | None = None
    reads: Literal["", "truth", "cards", "line", "pairs"] = ""
    cards: Callable[[Any], dict[str, str]] = lambda ask: {}
    partners: Callable[[Any], str] = lambda ask: ""
    drawn: bool = False


_CHOICES_IN_WORDS: dict[str, Callable[[tuple[str, ...]], Sequence[str]]] = {
    "best name": lambda of: of[1:],
    "called": lambda of: of,
    "condition": lambda of: CONDITIONS,
    "construction": lambda of: of,
    "corner that makes": lambda of: of[4:],
    "point where": lambda of: of[0],
    "shortest": lambda of: of,
}
"""The choices of readings that name them in the question's words, by what the reading is of."""


def _names_on(ask: OfFigure) -> tuple[str, ...]:
    """Return the names on a figure, where one of them is the answer."""
    if name_read(ask) is None:
        return ()
    for _, reading in ask.readings:
        if (choices := _CHOICES_IN_WORDS.get(reading.name)) is not None:
            return tuple(choices(reading.of))
        if reading.name == "as far":
            return _as_far(ask.figure, reading.of[0])
    printed = kind_of(ask.figure).printed(ask.figure)
    return tuple(node.text for node in printed if isinstance(node, t.Label))


def _as_far(figure: Any, other: str) -> tuple[str, ...]:
    """Return the points of a construction, or the lines from the corner of its angle."""
    letters: str = figure.letters
    if len(other) < 2:
        return tuple(letters)
    corner = letters[1]
    return tuple(f"{corner}{letter}" for letter in letters if letter != corner)


def _lists_a_set(ask: OfFigure) -> bool:
    sets = kind_of(ask.figure).sets
    return any(reading.name in sets for _, reading in ask.readings)


def _read_and_rounded(ask: RoundReading) -> tuple[t.Node, To]:
    """Return what is rounded; where it hangs on a letter, its worth is for the key alone to say."""
    return as_find(ask.of).target, (ask.detail, ask.amount)


def _cards(cards: Sequence[t.Node]) -> dict[str, str]:
    """Return cards by their letters, each as a pupil might type it."""
    return {name: shown_line(card) for name, card in zip(LETTERS, cards, strict=False)}


MARKING: Handlers[Marking] = Handlers("marking", "marking", otherwise=Marking())
"""How each kind of question is marked; one that names nothing, by the worth of its key."""

# What the kinds name: by the kind, or by the answer where several have one.

FIND = Marking(
    target=lambda ask: ask.target,
    equations=lambda ask: ask.relations if isinstance(ask.target, t.Sym) else (),
)
DRAW = Marking(drawn=True)
OF_FIGURE = Marking(names=lambda ask: _names_on(ask), any_order=lambda ask: _lists_a_set(ask))
SOLVE = Marking(equations=lambda ask: ask.relations, repeated=True)
RANGE = Marking(range=True)
ORDER = Marking(ordered=lambda ask: ask.detail)
COMPARE = Marking(sign=True)
CHOOSE = Marking(names=lambda ask: tuple(name for name, _ in ask.options))
REWRITE = Marking(for_letters=lambda letters: True)
SEQUENCE = Marking(for_letters=lambda letters: letters == {"n"}, leads=_NTH)
COMMON = Marking(leads=_COMMON)
ROUND = Marking(rounded=lambda ask: (ask.target, (ask.detail, ask.amount)))
ROUND_READING = Marking(rounded=lambda ask: _read_and_rounded(ask))
TWO_NUMBERS = Marking(any_order=lambda ask: True)
EQUIVALENT = Marking(unmet=not_equivalent, numbers=lambda ask, answer: (answer,))
GIVE = Marking(unmet=unmet, numbers=given_values)
TRUTH = Marking(names=lambda ask: (TRUE, FALSE), reads="truth")
WHO_IS_RIGHT = Marking(names=lambda ask: tuple(name for name, _ in ask.answers))
ODD_ONE_OUT = Marking(
    names=lambda ask: tuple(LETTERS[: len(ask.cards)]),
    reads="cards",
    cards=lambda ask: _cards(ask.cards),
)
LINE_AND_RESULT = Marking(reads="line")
MATCH = Marking(
    reads="pairs",
    cards=lambda ask: _cards(ask.cards),
    partners=lambda ask: PARTNERS[: len(ask.partners)],
)

_PLAIN = Marking()


def marking_of(ask: Ask | None) -> Marking:
    """Return how answers to a question are marked.

    >>> from itembank.items.asks import Order
    >>> from itembank.notation.tree import Int
    >>> marking_of(Order((Int(2), Int(1)))).ordered(Order((Int(2), Int(1))))
    'ascending'
    """
    return _PLAIN if ask is None else MARKING.of(ask)
