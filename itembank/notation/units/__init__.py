"""The units and currency signs that school notation prints, and what each is worth.

Only facts of definition; nothing is approximate. Sources:

* the SI prefixes and units: BIPM, *The International System of Units*, 9th ed., 2019, with
  the minute, hour, day, degree, hectare, litre and tonne as non-SI units accepted for use
  with it (its table 8; from memory);
* yard and pound: the international yard and pound agreement of 1959 (0.9144 m and
  0.453 592 37 kg exactly), as in the Weights and Measures Act 1985, schedule 1, which also
  gives 3 feet to the yard, 12 inches to the foot, 1760 yards to the mile, 16 ounces to the
  pound, 14 pounds to the stone, 8 pints to the gallon, and the gallon as 4.546 09 litres (the parts
  of the schedule are from memory);
* a week of 7 days and a year of 12 months: the calendar. A month is no number of days, so
  years and months are a kind of their own.

``docs/units.md`` lists them for people who write questions.
"""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple


class Unit(NamedTuple):
    """A unit: the dimension it measures, its size in that dimension's base unit, its names."""

    dimension: str
    size: Fraction
    singular: str
    many: str


def _unit(dimension: str, size: int | str | Fraction, singular: str, many: str = "") -> Unit:
    return Unit(dimension, Fraction(size), singular, many or singular + "s")


_FOOT = Fraction("0.3048")
_MILE = 5280 * _FOOT
_POUND = Fraction("0.45359237")
_GALLON = Fraction("0.00454609")

UNITS: dict[str, Unit] = {
    "mm": _unit("length", "0.001", "millimetre"),
    "cm": _unit("length", "0.01", "centimetre"),
    "m": _unit("length", 1, "metre"),
    "km": _unit("length", 1000, "kilometre"),
    "in": _unit("length", _FOOT / 12, "inch", "inches"),
    "ft": _unit("length", _FOOT, "foot", "feet"),
    "yd": _unit("length", 3 * _FOOT, "yard"),
    "mile": _unit("length", _MILE, "mile"),
    "mg": _unit("mass", "0.000001", "milligram"),
    "g": _unit("mass", "0.001", "gram"),
    "kg": _unit("mass", 1, "kilogram"),
    "t": _unit("mass", 1000, "tonne"),
    "oz": _unit("mass", _POUND / 16, "ounce"),
    "lb": _unit("mass", _POUND, "pound"),
    "st": _unit("mass", 14 * _POUND, "stone", "stone"),
    "s": _unit("time", 1, "second"),
    "min": _unit("time", 60, "minute"),
    "h": _unit("time", 3600, "hour"),
    "day": _unit("time", 86_400, "day"),
    "week": _unit("time", 7 * 86_400, "week"),
    "month": _unit("calendar time", 1, "month"),
    "year": _unit("calendar time", 12, "year"),
    "°": _unit("angle", 1, "degree"),
    "°C": _unit("temperature", 1, "degree Celsius", "degrees Celsius"),
    "mm^2": _unit("area", "0.000001", "square millimetre"),
    "cm^2": _unit("area", "0.0001", "square centimetre"),
    "m^2": _unit("area", 1, "square metre"),
    "km^2": _unit("area", 1_000_000, "square kilometre"),
    "ha": _unit("area", 10_000, "hectare"),
    "mm^3": _unit("volume", "0.000000001", "cubic millimetre"),
    "cm^3": _unit("volume", "0.000001", "cubic centimetre"),
    "m^3": _unit("volume", 1, "cubic metre"),
    "ml": _unit("volume", "0.000001", "millilitre"),
    "cl": _unit("volume", "0.00001", "centilitre"),
    "l": _unit("volume", "0.001", "litre"),
    "pt": _unit("volume", _GALLON / 8, "pint"),
    "gal": _unit("volume", _GALLON, "gallon"),
    "km/h": _unit("speed", Fraction(5, 18), "kilometre per hour", "kilometres per hour"),
    "m/s": _unit("speed", 1, "metre per second", "metres per second"),
    "mph": _unit("speed", _MILE / 3600, "mile per hour", "miles per hour"),
    "g/cm^3": _unit("density", 1000, "gram per cubic centimetre", "grams per cubic centimetre"),
    "kg/m^3": _unit("density", 1, "kilogram per cubic metre", "kilograms per cubic metre"),
}

CURRENCY: dict[str, Unit] = {
    "£": _unit("money", 1, "pound"),
    "p": _unit("money", "0.01", "penny", "pence"),
    "€": _unit("euros", 1, "euro"),
    "$": _unit("dollars", 1, "dollar"),
}


def unit_known(name: str) -> Unit:
    """Return what is known of a unit or a currency sign.

    Raises
    ------
    KeyError
        There is neither of that name.

    >>> unit_known("kg").many, unit_known("p").dimension
    ('kilograms', 'money')
    """
    return UNITS.get(name) or CURRENCY[name]


BASE: dict[str, str] = {
    "length": "m",
    "mass": "kg",
    "time": "s",
    "calendar time": "month",
    "angle": "°",
    "temperature": "°C",
    "area": "m^2",
    "volume": "m^3",
    "speed": "m/s",
    "density": "kg/m^3",
}
"""The base unit of each dimension: the one whose size is 1."""

MADE_OF: dict[str, dict[str, int]] = {
    "area": {"length": 2},
    "volume": {"length": 3},
    "speed": {"length": 1, "time": -1},
    "density": {"mass": 1, "length": -3},
}
"""The base dimensions, with their exponents, of the dimensions that are made of others."""

AS_WORDS = frozenset({"mile", "day", "week", "month", "year"})
"""Units without a sign that a classroom uses; they are written out: 1 day, 3 days."""

NEEDS_SPACE = frozenset(
    {"m/s", "g/cm^3", "in", "ft", "yd", "oz", "lb", "st", "pt", "gal", "ha"} | AS_WORDS
)
"""Units that are read only after a space: close up, 2lb is 2 × l × b and 3st is 3 × s × t."""

TOGETHER: dict[str, tuple[str, ...]] = {
    "week": ("day",),
    "day": ("h",),
    "h": ("min",),
    "min": ("s",),
    "year": ("month",),
    "km": ("m",),
    "m": ("cm", "mm"),
    "cm": ("mm",),
    "mile": ("yd",),
    "yd": ("ft", "in"),
    "ft": ("in",),
    "t": ("kg",),
    "kg": ("g",),
    "g": ("mg",),
    "st": ("lb",),
    "lb": ("oz",),
    "l": ("ml", "cl"),
    "gal": ("pt",),
}
"""The smaller units that may follow a larger one in a quantity such as 2 h 35 min."""


def shown_unit(unit: str, singular: bool) -> str:
    """Return a unit as it stands after a number: its sign, or its name where it has no sign.

    >>> shown_unit("kg", False), shown_unit("day", True), shown_unit("day", False)
    ('kg', 'day', 'days')
    """
    if unit not in AS_WORDS:
        return unit
    return UNITS[unit].singular if singular else UNITS[unit].many
