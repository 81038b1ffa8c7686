"""What short questions about areas in words have in common."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry._areas import length
from itembank.notation import tree as t

TWO = t.Int(2)


def shortened(number: Fraction) -> Fraction | None:
    """Return a number of at most one decimal place, and None for another."""
    return number if (10 * number).denominator == 1 else None


def area_in(size: Fraction | int, unit: str) -> t.Node:
    """Return an area in the square of a unit of length."""
    return length(size, f"{unit}^2")


def keep_wide(w: int, h: int) -> bool:
    """Tell whether sides make a rectangle that is no strip and tells area and edge apart."""
    return h < w < 4 * h and w * h not in (w + h, 2 * (w + h))
