"""Journeys drawn as distance–time graphs: who goes, from where, in which units, and how fast."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridShape
from itembank.items.forms.form_rules import decimal_node
from itembank.notation import tree as t

COLUMNS, ROWS = 12, 8
"""Squares of every graph: along and up."""

Spot = tuple[int, int]
"""A place on the graph in squares from the corner at nought."""


class Traveller(NamedTuple):
    """Who goes, and the axes of the graph: units, and what a square is worth.

    `each` is the unit of time of a speed, and `slow` and `fast` bound it (plausible for the
    traveller, no source).
    """

    who: str
    place: str
    unit: str
    time: str
    x_step: int
    y_step: int
    each: str
    slow: int
    fast: int

    @property
    def symbol(self) -> str:
        """Return how the unit of distance is written on the axis."""
        return {"kilometres": "km", "metres": "m"}[self.unit]

    @property
    def factor(self) -> int:
        """Return how many of the axis's units of time are one of the speed's."""
        return 60 if (self.time, self.each) == ("minutes", "hour") else 1

    def speed(self, up: int, along: int) -> Fraction:
        """Return the speed of so many squares up in so many along."""
        return Fraction(abs(up) * self.y_step * self.factor, along * self.x_step)

    def fits(self, speed: Fraction) -> bool:
        """Tell whether a speed is whole, and likely."""
        return speed.denominator == 1 and self.slow <= speed <= self.fast


TRAVELLERS = (
    Traveller("bus", "depot", "kilometres", "minutes", 5, 2, "hour", 12, 60),
    Traveller("van", "barn", "kilometres", "minutes", 10, 5, "hour", 15, 75),
    Traveller("cyclist", "pool", "kilometres", "minutes", 5, 1, "hour", 8, 28),
    Traveller("walker", "depot", "kilometres", "minutes", 15, 1, "hour", 2, 7),
    Traveller("coach", "depot", "kilometres", "hours", 1, 20, "hour", 20, 90),
    Traveller("swimmer", "pier", "metres", "minutes", 1, 25, "minute", 15, 80),
    Traveller("tractor", "barn", "metres", "minutes", 1, 100, "minute", 100, 500),
    Traveller("boat", "pier", "kilometres", "minutes", 10, 1, "hour", 4, 20),
    Traveller("runner", "pool", "kilometres", "minutes", 5, 1, "hour", 8, 15),
)


def number(value: Fraction | int) -> t.Node:
    """Return a reading as it is written."""
    return decimal_node(value)


def graph(traveller: Traveller, *journeys: tuple[str, tuple[Spot, ...]]) -> CoordinateGrid:
    """Return the graph of journeys, each a letter (or none) and its places in squares."""
    shapes = tuple(
        GridShape(
            tuple((t.Int(x * traveller.x_step), t.Int(y * traveller.y_step)) for x, y in spots),
            name,
            closed=False,
        )
        for name, spots in journeys
    )
    return CoordinateGrid(
        0,
        COLUMNS * traveller.x_step,
        0,
        ROWS * traveller.y_step,
        traveller.x_step,
        traveller.y_step,
        shapes=shapes,
        x_title=f"Time ({traveller.time})",
        y_title=f"Distance from {traveller.place} ({traveller.symbol})",
    )


def spots(along: int, up: int, stop: int, more: int, on: int) -> tuple[Spot, ...]:
    """Return where a journey with one stop starts, turns and ends; `on` may go back.

    >>> spots(3, 4, 2, 2, -4)
    ((0, 0), (3, 4), (5, 4), (7, 0))
    """
    return ((0, 0), (along, up), (along + stop, up), (along + stop + more, up + on))
