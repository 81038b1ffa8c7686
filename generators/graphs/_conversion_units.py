"""What conversion graphs convert: two units, and the axes that show them."""

from __future__ import annotations

from typing import NamedTuple


class Units(NamedTuple):
    """What the axes show, how far they go and by what steps; the line goes to the far corner."""

    along: str
    up: str
    right: int
    top: int
    x_step: int
    y_step: int


UNITS = (
    # A mile is 1.609 km, a gallon 4.546 litres, an inch 2.54 cm, a kilogram 2.205 pounds, a foot
    # 30.48 cm, an ounce 28.35 g (from memory); the lines take the rounded values of classrooms.
    Units("miles", "kilometres", 50, 80, 5, 8),
    Units("gallons", "litres", 10, 45, 1, 9),
    Units("inches", "centimetres", 20, 50, 2, 5),
    Units("kilograms", "pounds", 50, 110, 5, 11),
    Units("feet", "centimetres", 10, 300, 1, 30),
    Units("pounds", "euros", 50, 60, 5, 6),
    Units("pounds", "dollars", 40, 50, 4, 5),
    Units("ounces", "grams", 10, 280, 1, 28),
    Units("stones", "pounds", 10, 140, 1, 14),
    Units("weeks", "days", 10, 70, 1, 7),
    Units("days", "hours", 10, 240, 1, 24),
    Units("yards", "feet", 10, 30, 1, 3),
    Units("feet", "inches", 10, 120, 1, 12),
)
