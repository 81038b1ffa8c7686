"""How terms of sequences are called and listed."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from itembank.items.forms.form_rules import number_node
from itembank.items.item import Misconception
from itembank.notation import tree as t


def ending(place: int) -> str:
    """Return what follows the number of a place, as in 21st.

    >>> [f"{n}{ending(n)}" for n in (1, 2, 3, 4, 11, 12, 13, 21, 22, 101)]
    ['1st', '2nd', '3rd', '4th', '11th', '12th', '13th', '21st', '22nd', '101st']
    """
    if place % 100 in (11, 12, 13):
        return "th"
    return {1: "st", 2: "nd", 3: "rd"}.get(place % 10, "th")


def listed(values: Iterable[Fraction | int]) -> t.Listing:
    """Return numbers as a list in their order."""
    return t.Listing(tuple(map(number_node, values)))


def asking(which: Misconception, question: str) -> Misconception:
    """Return a misconception with a question of the item's own."""
    return Misconception(which.id, which.name, question)


def shown(value: Fraction | int) -> str:
    """Return a number as it may stand among words.

    >>> shown(-3), shown(Fraction(1, 2))
    ('−3', '1/2')
    """
    return str(value).replace("-", "−")


def signed(first: t.Node, value: int) -> t.Node:
    """Return `first` + value, or `first` − its size; nothing is added to 0.

    >>> from itembank.notation.line import line
    >>> line(signed(t.Sym("n"), -3))
    'n - 3'
    """
    return t.add(first, t.num(value)) if value else first
