"""The squares of the sides of a right-angled triangle, and the working from them to a side."""

from __future__ import annotations

from generators.geometry._calculator import amount
from itembank.items.item import Step
from itembank.notation import tree as t

TWO = t.Int(2)


SQUARES = "Pythagoras: the squares of the shorter sides add up to the square of the longest."


def squared(side: t.Node) -> t.Node:
    """Return the square of a side, which stands in brackets for its unit."""
    return t.Power(t.Bracket(side), TWO)


def sum_of_squares(a: t.Node, b: t.Node) -> t.Node:
    """Return the sum of the squares of two sides."""
    return t.add(squared(a), squared(b))


def difference_of_squares(c: t.Node, a: t.Node) -> t.Node:
    """Return the square of the longest side less that of another."""
    return t.sub(squared(c), squared(a))


def root_of_sum(a: t.Node, b: t.Node) -> t.Node:
    """Return the longest side as a root."""
    return t.Root(sum_of_squares(a, b))


def root_of_difference(c: t.Node, a: t.Node) -> t.Node:
    """Return a shorter side as a root."""
    return t.Root(difference_of_squares(c, a))


def add_steps(a: t.Node, b: t.Node, square: int, unit: str, key: t.Node) -> tuple[Step, ...]:
    """Return the working from two shorter sides to the longest one."""
    whole = amount(square, f"{unit}^2")
    return (
        Step(SQUARES, t.equals(sum_of_squares(a, b), whole)),
        Step("Take the square root.", t.equals(t.Root(whole), key)),
    )


def subtract_steps(c: t.Node, a: t.Node, square: int, unit: str, key: t.Node) -> tuple[Step, ...]:
    """Return the working from the longest side and another to the third."""
    whole = amount(square, f"{unit}^2")
    return (
        Step(
            "Pythagoras: subtract the square of the known side from that of the longest.",
            t.equals(difference_of_squares(c, a), whole),
        ),
        Step("Take the square root.", t.equals(t.Root(whole), key)),
    )
