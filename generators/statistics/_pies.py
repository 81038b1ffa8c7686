"""Pies that questions are about: their stories, their angles, how many a sector stands for."""

from __future__ import annotations

from fractions import Fraction

from generators._scatter import unlike
from itembank.figures.kinds.chart.pie_chart import PieChart

# What is counted, the names of the sectors, what was done, and what is shown.
STORIES = (
    ("pupils", ("bus", "car", "bike", "train"), "came by", "how pupils came to school"),
    ("pupils", ("rose", "tulip", "iris", "daisy"), "chose", "the flower that pupils chose"),
    ("people", ("soup", "pasta", "curry", "salad"), "chose", "the dish that people chose"),
    ("swimmers", ("crawl", "fly", "breast", "back"), "chose", "the stroke that swimmers chose"),
    ("plants", ("beans", "peas", "leeks", "kale"), "are", "the plants on an allotment"),
)
_STEP = 10
TOTALS = (12, 18, 24, 36, 60, 72, 90, 120, 180)


def angles_of(story: int, seed: int) -> tuple[int, ...] | None:
    """Return the angles of four sectors in steps of 10 degrees, or None where they do not fit."""
    first = tuple(_STEP * step for step in unlike(story + len(STORIES) * seed, 3, 5, 17))
    last = 360 - sum(first)
    angles = (*first, last)
    if last < 5 * _STEP or last > 200 or len({*angles}) < 4 or 90 in angles:
        return None
    return angles


def count_for(total: int, degrees: int) -> Fraction:
    """Return how many of the total a sector of so many degrees stands for."""
    return Fraction(total * degrees, 360)


def two_sectors(seed: int) -> tuple[int, int]:
    """Return the places of two sectors that a question compares."""
    first = seed % 4
    return first, (first + 1 + seed // 4 % 3) % 4


def pie_chart(story: int, angles: tuple[int, ...], total: int = 0, hidden: int = -1) -> PieChart:
    """Return the chart of a story; the sector `hidden` has a letter for its angle."""
    thing, names, _, _ = STORIES[story]
    letters = ((names[hidden], "x"),) if hidden >= 0 else ()
    return PieChart(tuple(zip(names, angles, strict=True)), thing, total, letters=letters)


def lead_to(story: int) -> str:
    """Return the sentence that says what the chart shows."""
    return f"The pie chart shows {STORIES[story][3]}."
