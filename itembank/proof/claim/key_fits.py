"""Checks that a key answers the question that is asked: in its letter, and in its units."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.figures.figure import printed_on
from itembank.items.asks import Find, Handlers, OfFigure, Round, RoundReading, Summary, asked
from itembank.items.asks.of_figure import as_find, name_read
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.proof.claim.dimensions import answers, dimension, dimension_words, kinds
from itembank.proof.claim.finding import text
from itembank.proof.claim.key_solutions import value_given
from itembank.wording.sentences.units_said import kinds_in_words, other_unit
from itembank.wording.tasks.sums.list_sums import as_sum

FITTING: Handlers[Callable[[Any, t.Node], str]] = Handlers(
    "fitting", "fit", otherwise=lambda ask, key: ""
)
"""How a key is about another letter than the question, for each kind; ``""`` where it is not."""

MEASURING: Handlers[Callable[[Any, t.Node], str]] = Handlers(
    "measuring", "measure", otherwise=lambda ask, key: ""
)
"""How a key measures another thing than the question, for each kind; ``""`` where it does not."""


def mismatched(item: Item) -> str:
    """Return how the key's letter or units are not those of the question, or ``""``.

    Two answers worth the same number are not the same answer: y = 5 does not solve an
    equation in x, and 6 litres are not 6 kilograms.
    """
    said = "".join(run if isinstance(run, str) else " " for run in item.prompt)
    if fault := other_unit(item.key, said):
        return fault
    key, ask = item.key, item.ask
    if fault := FITTING.of(ask)(ask, key):
        return fault
    # A unit may be printed as a word (metres) as well as by its sign.
    if strange := kinds(key) - kinds_in_words(said):
        on_figure = printed_on(item.figure) if item.figure else ()
        in_words = (run for run in item.prompt if not isinstance(run, str))
        for node in (*in_words, *on_figure, *asked(ask)):
            strange -= kinds(node)
        if strange:
            units = " and ".join(sorted(strange))
            return f"the key is in units of {units}, which the prompt does not print"
    return MEASURING.of(ask)(ask, key)


def another_letter(ask: Find, key: t.Node) -> str:
    """Return how a key is about another letter than the question, or ``""``."""
    if isinstance(key, t.Relation) and ask.target not in _ends(key):
        return f"the key is about {text(key.first)}, the question about {text(ask.target)}"
    return ""


def found_measures(ask: Find, key: t.Node) -> str:
    """Return how a key measures another thing than the sum it answers."""
    return "" if ask.relations else rounding_measures(ask, key)


def summary_measures(ask: Summary, key: t.Node) -> str:
    """Return how a key measures another thing than the numbers of a list."""
    return rounding_measures(Find(as_sum(ask)), key)


def reading_measures(ask: OfFigure, key: t.Node) -> str:
    """Return how a key measures another thing than what a figure shows."""
    return "" if name_read(ask) is not None else found_measures(as_find(ask), key)


def rounded_reading_measures(ask: RoundReading, key: t.Node) -> str:
    """Return how a rounded key measures another thing than what a figure shows."""
    return reading_measures(ask.of, key)


def rounding_measures(ask: Find | Round, key: t.Node) -> str:
    """Return how a key measures another thing than the number it comes from."""
    if isinstance(ask.target, t.Ratio | t.Listing):
        return ""
    try:
        wanted, given = dimension(ask.target), dimension(value_given(key))
    except t.NotationError:
        return ""
    if not answers(wanted, given):
        asks, gives = dimension_words(wanted), dimension_words(given)
        return f"the question asks for {asks}, the key gives {gives}"
    return ""


def _ends(key: t.Relation) -> tuple[t.Node, t.Node]:
    """Return the first and the last side of a relation: x = 3 may be written 3 = x."""
    return key.first, key.rest[-1][1]
