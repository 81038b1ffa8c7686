"""What is asked about a drawn journey, and how it is told."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from generators.graphs._journeys import Traveller
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid
from itembank.items.item import Misconception, Step
from itembank.notation import tree as t


class Asked(NamedTuple):
    """A question, the numbers in it, its figure, key, working and wrong answers."""

    text: str
    shown: dict[str, t.Node]
    figure: CoordinateGrid
    key: Fraction
    steps: list[Step]
    wrongs: list[tuple[Misconception, Fraction | int | None]]


def lead_of(who: Traveller) -> str:
    """Return the sentence that says whose journey the graph shows."""
    return f"The graph shows the journey of a {who.who} from the {who.place}. "


def said(value: Fraction) -> str:
    """Return a number as it stands among words."""
    return str(float(value)).removesuffix(".0")
