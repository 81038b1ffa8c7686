"""Sine, cosine and tangent: their sides, values and words."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Any

from generators.geometry._calculator import PLACE
from itembank.notation import tree as t

# Which side is asked for, which one is given, and the ratio of the two.
SIDES = {
    "sin": ("opposite", "hypotenuse"),
    "cos": ("adjacent", "hypotenuse"),
    "tan": ("opposite", "adjacent"),
}


def ratio_of(name: str, degrees: Fraction | int) -> Fraction:
    """Return the sine, cosine or tangent of an angle in degrees."""
    turn = math.radians(float(degrees))
    return Fraction({"sin": math.sin, "cos": math.cos, "tan": math.tan}[name](turn))


def angle_of(name: str, ratio: Fraction) -> Fraction:
    """Return the angle in degrees with a sine, cosine or tangent.

    >>> round(angle_of("tan", Fraction(1)))
    45
    """
    undo = {"sin": math.asin, "cos": math.acos, "tan": math.atan}[name]
    return Fraction(math.degrees(undo(float(ratio))))


def swapped_ratio(name: str) -> str:
    """Return the ratio that is taken by mistake."""
    return {"sin": "cos", "cos": "sin", "tan": "sin"}[name]


def ratio_named(name: str) -> Any:
    """Return a ratio as the tree names it."""
    return name


def ratio_tree(name: str, angle: t.Node) -> t.Node:
    """Return the sine, cosine or tangent of an angle as it is written."""
    return t.Trig(ratio_named(name), angle)


def node_or_none(value: Fraction | None, unit: str) -> t.Node | None:
    """Return a value to one place with its unit, or None where there is none."""
    return None if value is None else PLACE.node(value, unit)


def known_side(side: str) -> str:
    """Return how a side is called at the start of a sentence."""
    return {
        "hypotenuse": "The hypotenuse",
        "adjacent": "The side adjacent to it",
        "opposite": "The side opposite it",
    }[side]


def asked_side(side: str) -> str:
    """Return where a side stands from the angle."""
    return {"opposite": "opposite the angle", "adjacent": "adjacent to the angle"}[side]


def asked_whole(side: str) -> str:
    """Return how a side is called that is asked for."""
    return "the hypotenuse" if side == "hypotenuse" else f"the side {asked_side(side)}"


def ratio_said(name: str) -> str:
    """Return what a ratio is, in words."""
    return {
        "sin": "The sine is opposite over hypotenuse.",
        "cos": "The cosine is adjacent over hypotenuse.",
        "tan": "The tangent is opposite over adjacent.",
    }[name]
