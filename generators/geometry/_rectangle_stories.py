"""Rectangles in stories: what a plot costs, how many tiles a floor takes, sides in two units."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _areas as a
from generators.geometry._areas import length, said_question
from itembank.items.item import Draft, Step
from itembank.notation import tree as t

_PLOTS = (
    ("A vegetable plot at a market garden", "compost"),
    ("A lawn beside a swimming club", "turf"),
    ("A yard at a bus depot", "gravel"),
    ("A bed at an allotment", "bark"),
    ("A floor in a bike workshop", "paint"),
)
_FLOORS = ("kitchen", "changing room", "workshop", "library corner", "shed")


def cost_of_plot(w: int, h: int, unit: str) -> Draft:
    """Return the question what it costs to cover a plot."""
    place, stuff = by_turns(_PLOTS, w * h)
    price = 2 + (w + h) % 5
    first, second, each = length(w, "m"), length(h, "m"), t.Money(t.Int(price))
    area = length(w * h, "m^2")
    cost = w * h * price
    return said_question(
        f"{place} is a rectangle, {{w}} by {{h}}. Enough {stuff} for one square metre costs "
        "{each}. How much does it cost for all of it?",
        t.times(t.Int(w), t.Int(h), each),
        t.Money(t.Int(cost)),
        [
            Step("Find the area.", t.equals(t.times(first, second), area)),
            Step(
                "Multiply by the cost of one square metre.",
                t.equals(t.times(t.Int(w * h), each), t.Money(t.Int(cost))),
            ),
        ],
        [(a.PERIMETER_FOR_AREA, 2 * (w + h) * price), (a.ADDED, (w + h) * price)],
        ("cost", w, h),
        w=first,
        h=second,
        each=each,
    )


def tiles_of_floor(w: int, h: int, unit: str) -> Draft:
    """Return the question how many tiles a floor takes."""
    floor = by_turns(_FLOORS, w * h // 4)
    first, second = t.Quantity(t.Int(w), "m"), t.Quantity(t.Int(h), "m")
    tile = length(50, "cm")
    count = 4 * w * h
    return said_question(
        f"The floor of a {floor} is a rectangle, {{w}} by {{h}}. It is covered with square "
        "tiles. Each tile has sides of {tile}. How many tiles are needed?",
        t.times(t.divide(first, tile), t.Bracket(t.divide(second, tile))),
        t.Int(count),
        [
            Step(
                "See how many tiles fit along the length.",
                t.equals(t.divide(length(100 * w, "cm"), tile), t.Int(2 * w)),
            ),
            Step(
                "See how many fit along the width.",
                t.equals(t.divide(length(100 * h, "cm"), tile), t.Int(2 * h)),
            ),
            Step("Multiply.", t.equals(t.times(t.Int(2 * w), t.Int(2 * h)), t.Int(count))),
        ],
        [(a.ADDED, 2 * (w + h)), (a.PERIMETER_FOR_AREA, 4 * (w + h)), (a.NOT_SHARED, 2 * w * h)],
        ("tiles", w, h),
        w=first,
        h=second,
        tile=tile,
    )


def two_units(w: int, h: int, unit: str) -> Draft:
    """Return the question for the area of a board measured in metres and centimetres."""
    long, wide = Fraction(w, 10), 5 * h
    first, second = length(long, "m"), length(wide, "cm")
    key = length(10 * w * wide, "cm^2")
    return said_question(
        "A rectangular board is {w} long and {h} wide. Work out its area in square centimetres.",
        t.times(first, second),
        key,
        [
            Step("Write both lengths in centimetres.", t.equals(first, length(10 * w, "cm"))),
            Step(
                "Multiply the length by the width.",
                t.equals(t.times(length(10 * w, "cm"), second), key),
            ),
        ],
        [
            (a.UNIT_NOT_CHANGED, long * wide),
            (a.PERIMETER_FOR_AREA, 2 * (10 * w + wide)),
            (a.ADDED, 10 * w + wide),
        ],
        ("mixed", w, h),
        w=first,
        h=second,
    )
