"""Likely mistakes whose answer cannot be told from a right one, or from another mistake's."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any

from itembank.items.asks import (
    Ask,
    Find,
    Give,
    Handlers,
    OfFigure,
    Subject,
    kind_of,
)
from itembank.items.asks.of_figure import as_find, name_read
from itembank.items.forms.form_rules import form_fault
from itembank.items.item import Item
from itembank.notation import tree as t
from itembank.notation.value import parts
from itembank.proof.claim.key_solutions import value_given
from itembank.proof.exact.exact_road import by_first_road


def blind_slip(item: Item) -> str:
    """Return the name of a misconception that gives a right answer here, or ``""``.

    >>> from itembank.items.topics.registry import find_item
    >>> blind_slip(find_item("fractions.add-unlike/core/12"))
    ''
    """
    return next((s.misconception.name for s in item.slips if _right(item, s.wrong)), "")


def _right(item: Item, wrong: t.Node) -> bool:
    if not kind_of(item.ask).many:
        return _worth(item, wrong) == _worth(item, item.key)
    try:
        return not by_first_road(replace(item, key=wrong)).fault
    except t.NotationError:
        return False


def rivals(item: Item) -> tuple[str, str] | None:
    """Return the names of two misconceptions that give the same wrong answer, or None.

    Whoever sees that answer cannot know which of them it was, so an item names them together
    (:func:`~itembank.items.wrong_answers.told_apart`).

    >>> from itembank.items.topics.registry import find_item
    >>> rivals(find_item("fractions.add-unlike/core/12")) is None
    True
    """
    seen: dict[object, str] = {}
    for slip in item.slips:
        worth, name = _worth(item, slip.wrong), slip.misconception.name
        if worth in seen:
            return seen[worth], name
        seen[worth] = name
    return None


WRITINGS = frozenset(["prime-factors", "prime-powers", "standard-form"])
"""Forms that are all that is asked: the number is there already, and is to be written in a way.

4 × 5 for 2² × 5 is worth the same and not right, and marking knows it by what is written. With
other forms it is the value that is asked for: who gets 8/2 where 4 is right writes 4.
"""


def _worth(item: Item, answer: t.Node) -> object:
    """Return what is equal for answers that are marked as one."""
    if item.form in WRITINGS and form_fault(item.form, answer):
        return answer
    try:
        return WORTH.of(item.ask)(item.ask, answer)
    except t.NotationError:
        return answer


def _values(ask: Ask, answer: t.Node) -> tuple[Fraction, ...]:
    return parts(value_given(answer))


def found_worth(ask: Find, answer: t.Node) -> tuple[Fraction, ...]:
    """Return the numbers of an answer; of a ratio, its parts over the first."""
    values = parts(value_given(answer))
    if isinstance(ask.target, t.Ratio) and values[0]:
        return tuple(value / values[0] for value in values)
    return values


def reading_worth(ask: OfFigure, answer: t.Node) -> object:
    """Return what is equal for answers about a figure that are marked as one."""
    # A name, and an equation of a line, are what is written: x = 2 is not y = 2.
    if name_read(ask) is not None or isinstance(answer, t.Relation):
        return answer
    return found_worth(as_find(ask), answer)


def subject_worth(ask: Subject, answer: t.Node) -> object:
    """Return what is equal for formulas that are marked as one."""
    # y = 2 is no slip about x: it is another line.
    about = answer.first if isinstance(answer, t.Relation) else ask.letter
    return _values(ask, answer) if about == ask.letter else answer


WORTH: Handlers[Callable[[Any, t.Node], object]] = Handlers(
    "worth", "likely mistakes", otherwise=_values
)
"""What is equal for answers that are marked as one, for each kind of question."""


def as_written(ask: Ask, answer: t.Node) -> object:
    """Return the answer itself, where it is what is written that counts and not its worth."""
    return answer


def given_worth(ask: Give, answer: t.Node) -> object:
    """Return the numbers that are given, whatever their order."""
    return tuple(sorted(_values(ask, answer)))
