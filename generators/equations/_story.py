"""What a story of "form and solve" is made of: a question in words, with its model.

A story's numbers are printed as the very trees its model uses, so a key is proved from
what the pupil reads. Lengths are in metres and money in pounds, so that the working can
leave the units out until its last line.
"""

from __future__ import annotations

from typing import NamedTuple

from itembank.items.item import Find, Misconception, Run, Step
from itembank.notation.tree import (
    Int,
    Money,
    Node,
    Quantity,
    Sym,
)

N = Sym("n")
X = Sym("x")
W = Sym("w")
NUMBER = "Let n be the number."


class Story(NamedTuple):
    """A question in words: what is printed, its model, key, working and wrong answers."""

    text: tuple[Run, ...]
    ask: Find
    key: Node
    form: str
    steps: tuple[Step, ...]
    wrong: tuple[tuple[Misconception, Node], ...]
    constants: tuple[int, ...] = ()


def pounds(n: int) -> Node:
    """Return a whole number of pounds."""
    return Money(Int(n))


def metres(n: int) -> Node:
    """Return a whole number of metres."""
    return Quantity(Int(n), "m")


def litres(n: int) -> Node:
    """Return a whole number of litres."""
    return Quantity(Int(n), "l")


def degrees(n: int) -> Node:
    """Return a whole number of degrees."""
    return Quantity(Int(n), "°")


def ending(steps: tuple[Step, ...], say: str, key: Node) -> tuple[Step, ...]:
    """Return the working with one more line: the answer with its unit.

    The equation is about numbers, so it ends in a number; what was asked for has a unit.
    """
    return (*steps, Step(say, key))
