"""The units and currency signs that school notation prints, and what each is worth.

Sources: the SI prefixes and units (BIPM, *The International System of Units*, 9th ed.,
2019), with the litre, minute, hour, degree and tonne as non-SI units accepted for use
with it (its table 8). Only facts of definition; nothing is approximate.
"""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple


class Unit(NamedTuple):
    """A unit: the dimension it measures, its size in that dimension's base unit, its names."""

    dimension: str
    size: Fraction
    one: str
    many: str


def _unit(dimension: str, size: int | Fraction, one: str, many: str = "") -> Unit:
    return Unit(dimension, Fraction(size), one, many or one + "s")


UNITS: dict[str, Unit] = {
    "mm": _unit("length", Fraction(1, 1000), "millimetre"),
    "cm": _unit("length", Fraction(1, 100), "centimetre"),
    "m": _unit("length", 1, "metre"),
    "km": _unit("length", 1000, "kilometre"),
    "mg": _unit("mass", Fraction(1, 1_000_000), "milligram"),
    "g": _unit("mass", Fraction(1, 1000), "gram"),
    "kg": _unit("mass", 1, "kilogram"),
    "t": _unit("mass", 1000, "tonne"),
    "ml": _unit("capacity", Fraction(1, 1000), "millilitre"),
    "cl": _unit("capacity", Fraction(1, 100), "centilitre"),
    "l": _unit("capacity", 1, "litre"),
    "s": _unit("time", 1, "second"),
    "min": _unit("time", 60, "minute"),
    "h": _unit("time", 3600, "hour"),
    "°": _unit("angle", 1, "degree"),
    "mm^2": _unit("area", Fraction(1, 1_000_000), "square millimetre"),
    "cm^2": _unit("area", Fraction(1, 10_000), "square centimetre"),
    "m^2": _unit("area", 1, "square metre"),
    "cm^3": _unit("volume", Fraction(1, 1_000_000), "cubic centimetre"),
    "m^3": _unit("volume", 1, "cubic metre"),
    "km/h": _unit("speed", Fraction(5, 18), "kilometre per hour", "kilometres per hour"),
    "m/s": _unit("speed", 1, "metre per second", "metres per second"),
}

CURRENCY: dict[str, Unit] = {
    "£": _unit("money", 1, "pound"),
    "p": _unit("money", Fraction(1, 100), "penny", "pence"),
    "€": _unit("euros", 1, "euro"),
    "$": _unit("dollars", 1, "dollar"),
}
