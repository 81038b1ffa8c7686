"""Quantities in several units, as in 2 h 35 min: an amount split, and whether it is carried."""

from __future__ import annotations

from fractions import Fraction

from itembank.notation.tree import Dec, Int, MixedUnits, Quantity
from itembank.notation.units import UNITS
from itembank.notation.value import exact


def split(value: Fraction, like: MixedUnits) -> MixedUnits | None:
    """Return an amount in the units of `like`, or None where the last has no short decimal.

    `value` is in the base unit of the dimension, zero or more.

    >>> from itembank.notation import line, parse
    >>> line(split(Fraction(9300), parse("1 h 5 min")))
    '2 h 35 min'
    """
    if value < 0:
        return None
    parts = []
    # As much as goes into the largest unit, then the next; only the last may be broken.
    for part in like.parts[:-1]:
        count = value // UNITS[part.unit].size
        value -= count * UNITS[part.unit].size
        parts.append(Quantity(Int(count), part.unit))
    last = like.parts[-1].unit
    rest = value / UNITS[last].size
    if rest.denominator == 1:
        return MixedUnits((*parts, Quantity(Int(int(rest)), last)))
    # No more than three places: 1 h 2.345 min is as much as anybody would print.
    if 1000 % rest.denominator:
        return None
    whole, places = divmod(rest * 1000, 1000)
    shown = Dec(str(int(whole)), f"{int(places):03d}".rstrip("0"))
    return MixedUnits((*parts, Quantity(shown, last)))


def carry_fault(node: MixedUnits) -> str:
    """Return what is left to carry in a quantity in several units, or ``""``.

    >>> from itembank.notation import parse
    >>> carry_fault(parse("2 h 75 min")), carry_fault(parse("2 h 35 min"))
    ('75 min is not less than 1 h', '')
    """
    for before, after in zip(node.parts, node.parts[1:], strict=False):
        if exact(after) >= UNITS[before.unit].size:
            from itembank.notation.line import shown_line

            single = Quantity(Int(1), before.unit)
            return f"{shown_line(after)} is not less than {shown_line(single)}"
    return ""
