"""Lengths of time as a speed wants them: in hours, and in hours and minutes."""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._parts import amount
from itembank.notation import tree as t


def in_hours(minutes: int) -> t.Node:
    """Return a number of minutes in hours: as a decimal where it ends, else as a fraction."""
    value = Fraction(minutes, 60)
    if 100 % value.denominator == 0:
        return amount(value, "h")
    whole, rest = divmod(minutes, 60)
    part = Fraction(rest, 60)
    top, bottom = part.numerator, part.denominator
    return t.Quantity(t.Mixed(whole, top, bottom) if whole else t.frac(top, bottom), "h")


def hours_and_minutes(minutes: int) -> t.Node:
    """Return a length of time in hours and minutes."""
    hours, rest = divmod(minutes, 60)
    return t.MixedUnits((t.Quantity(t.Int(hours), "h"), t.Quantity(t.Int(rest), "min")))
