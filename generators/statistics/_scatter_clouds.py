"""Stories of two measurements, and the clouds of points that are drawn of them."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from generators._scatter import scattered, unlike
from itembank.figures.kinds.chart.scatter_asked import UNIT_NAMES
from itembank.figures.kinds.chart.scatter_graph import ScatterGraph
from itembank.items.forms.form_rules import decimal_node
from itembank.notation import tree as t

WIDE, HIGH = 12, 8


WIDE, HIGH = 12, 8


class Story(NamedTuple):
    """What each point is, and what the axes show: title, unit, and what a square is worth.

    `rises` tells whether more of the one goes with more of the other. Numbers are plausible and
    made up.
    """

    things: str
    thing: str
    along: str
    x_unit: str
    x_step: int
    up: str
    y_unit: str
    y_step: int
    rises: bool


STORIES = (
    Story("plants", "plant", "age", "weeks", 1, "height", "cm", 5, True),
    Story("marrows", "marrow", "length", "cm", 4, "mass", "g", 200, True),
    Story("journeys", "journey", "distance", "km", 2, "time", "minutes", 5, True),
    Story("trees", "tree", "age", "years", 2, "height", "m", 1, True),
    Story("parcels", "parcel", "mass", "kg", 1, "price", "pounds", 2, True),
    Story("swimmers", "swimmer", "training time", "hours", 1, "race time", "seconds", 10, False),
    Story("candles", "candle", "burning time", "minutes", 10, "height", "cm", 2, False),
    Story("lorries", "lorry", "load", "tonnes", 2, "speed", "km/h", 10, False),
    Story("vans", "van", "age", "years", 1, "price", "pounds", 1000, False),
)


LINES = ((0, 1), (1, 1), (2, 1))
"""Where rising lines start, and how far they rise in 2 squares; falling ones are these turned."""


VALUE, MORE, CORRELATION, ESTIMATE, OUTLIER, BELOW, BACK, FRACTION = range(8)
"""What is asked."""


VALUE, MORE, CORRELATION, ESTIMATE, OUTLIER, BELOW, BACK, FRACTION = range(8)
"""What is asked."""


VALUE, MORE, CORRELATION, ESTIMATE, OUTLIER, BELOW, BACK, FRACTION = range(8)
"""What is asked."""


VALUE, MORE, CORRELATION, ESTIMATE, OUTLIER, BELOW, BACK, FRACTION = range(8)
"""What is asked."""


Half = int
"""Halves of squares: all places are whole numbers of these."""


class Cloud(NamedTuple):
    """Points in halves of squares, the height of the line at nought, and which way it goes."""

    points: tuple[tuple[Half, Half], ...]
    start: Half
    way: int

    def line(self, x: Half) -> Fraction:
        return self.start + Fraction(self.way * x, 2)


def cloud_of(story: int, number: int, kind: int) -> Cloud:
    """Return six to ten points near a line, one of them far off where an outlier is asked for."""
    way = 1 if STORIES[story].rises else -1
    seed = number * len(STORIES) + story
    (chosen,) = unlike(number, 1, 0, 2)
    start = 2 * LINES[chosen][0] if way > 0 else 2 * HIGH - 2 * LINES[chosen][0]
    picks = scattered(seed, 22, 0, 999)
    count = 6 + picks[21] % 5
    apart = 22 // count
    xs = [2 + place * apart + picks[place] % apart for place in range(count)]
    points = []
    for place, x in enumerate(xs):
        off = (-2, -1, 1, 2)[picks[10 + place] % 4]
        if kind == CORRELATION:
            off = (-1, 0, 1)[picks[10 + place] % 3]
        at = start + Fraction(way * x, 2)
        points.append((x, int(at) + off if at.denominator == 1 else int(at + Fraction(off, 2))))
    if kind == OUTLIER:
        place = picks[20] % len(points)
        x, _ = points[place]
        far = (5, -5, 6, -6)[picks[20] // 10 % 4]
        points[place] = (x, int(start + Fraction(way * x, 2)) + far)
    return Cloud(tuple(points), start, way)


def _sound(cloud: Cloud) -> bool:
    return (
        all(1 <= y <= 2 * HIGH for _, y in cloud.points) and len({y for _, y in cloud.points}) > 4
    )


def figure_of(story: int, cloud: Cloud, *, best: bool) -> ScatterGraph:
    """Return the graph of a cloud, with its line of best fit or without."""
    told = STORIES[story]

    def place(x: Half | Fraction, y: Half | Fraction) -> tuple[t.Node, t.Node]:
        return decimal_node(Fraction(x * told.x_step, 2)), decimal_node(
            Fraction(y * told.y_step, 2)
        )

    ends = (place(0, cloud.start), place(2 * WIDE, cloud.line(2 * WIDE)))
    return ScatterGraph(
        f"{told.along.capitalize()} ({told.x_unit})",
        f"{told.up.capitalize()} ({told.y_unit})",
        WIDE * told.x_step,
        HIGH * told.y_step,
        told.x_step,
        told.y_step,
        tuple(place(x, y) for x, y in cloud.points),
        ends if best else (),
    )


def unit_after(short: str) -> str:
    """Return a unit as it stands in a sentence."""
    return UNIT_NAMES.get(short, short)


def article(word: str) -> str:
    """Return the article before a word."""
    return "an" if word[0] in "aeiou" else "a"
