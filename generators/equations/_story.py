"""What a story of "form and solve" is made of: a question in words, with its model.

A story's numbers are printed as the very trees its model uses, so a key is proved from
what the pupil reads. Lengths are in metres and money in pounds, so that the working can
leave the units out until its last line.
"""

from __future__ import annotations

from typing import NamedTuple

from itembank.items.item import Find, Run, Step
from itembank.items.wrong_answers import Wrong
from itembank.notation import tree as t

N = t.Sym("n")
X = t.Sym("x")
W = t.Sym("w")
NUMBER = "Let n be the number."


class Story(NamedTuple):
    """A question in words: what is printed, its model, key, working and wrong answers."""

    text: tuple[Run, ...]
    ask: Find
    key: t.Node
    form: str
    steps: tuple[Step, ...]
    wrong: tuple[Wrong, ...]
    constants: tuple[int, ...] = ()


def pounds(n: int) -> t.Node:
    """Return a whole number of pounds."""
    return t.Money(t.Int(n))


def metres(n: int) -> t.Node:
    """Return a whole number of metres."""
    return t.Quantity(t.Int(n), "m")


def litres(n: int) -> t.Node:
    """Return a whole number of litres."""
    return t.Quantity(t.Int(n), "l")


def degrees(n: int) -> t.Node:
    """Return a whole number of degrees."""
    return t.Quantity(t.Int(n), "°")


def ending(steps: tuple[Step, ...], say: str, key: t.Node) -> tuple[Step, ...]:
    """Return the working with one more line: the answer with its unit.

    The equation is about numbers, so it ends in a number; what was asked for has a unit.
    """
    return (*steps, Step(say, key))
