"""The map of topics as a drawing: boxes with titles, and an arrow to each from what it rests on.

Arrows run between the columns and between the rows, never through a box.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise

from itembank.figures.drawing import (
    Area,
    Drawing,
    Mark,
    Point,
    Stroke,
    Text,
    drawing,
    rectangle,
)
from itembank.figures.label_room import text_width
from itembank.planning.topic_map.topic_places import Place, TopicPlaces

BOX = Fraction(13)
"""Width of a box, in ems."""
PAD = Fraction(3, 10)
LINE = Fraction(11, 10)
"""From one line of a title to the next."""
GUTTER = Fraction(4)
"""Between columns: room for lines to find their way."""
GAP = Fraction(9, 10)
"""Between rows: room for lines that pass columns."""
LANE = Fraction(11)
"""Room for the names of the strands."""


def title_lines(title: str, width: Fraction = BOX - 2 * PAD) -> list[str]:
    """Return a title in lines that a box has room for.

    >>> title_lines("Adding and subtracting fractions")
    ['Adding and subtracting', 'fractions']
    """
    lines: list[str] = []
    for word in title.split():
        if lines and text_width(f"{lines[-1]} {word}") <= width:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def map_drawing(layout: TopicPlaces, titles: Mapping[str, str]) -> Drawing:
    """Return the drawing of a layout; each topic is called by its title."""
    return drawing(_Map(layout, titles).marks())


class _Map:
    """Turns columns and rows into places, top down from 0."""

    def __init__(self, layout: TopicPlaces, titles: Mapping[str, str]) -> None:
        self.layout = layout
        self.lines = {name: title_lines(titles[name]) for name in layout.places}
        most: dict[int, int] = defaultdict(lambda: 1)
        for name, place in layout.places.items():
            most[place.row] = max(most[place.row], len(self.lines[name]))
        self.rows = sum(lane.rows for lane in layout.lanes)
        first_rows = {lane.first for lane in layout.lanes}
        self.tops: list[Fraction] = []
        self.heights = [LINE * most[row] + PAD for row in range(self.rows)]
        y = Fraction(0)
        for row, height in enumerate(self.heights):
            y -= GAP * (2 if row in first_rows else 1)
            self.tops.append(y)
            y -= height
        self.foot = y - GAP

    def left(self, column: int) -> Fraction:
        return LANE + column * (BOX + GUTTER)

    def middle(self, place: Place) -> Fraction:
        return self.tops[place.row] - self.heights[place.row] / 2

    def marks(self) -> Iterator[Mark]:
        yield from self.frame()
        yield from self.arrows()
        for name, place in self.layout.places.items():
            yield from self.box(name, place)

    def frame(self) -> Iterator[Mark]:
        """Draw the lanes with their names, and the heads of the columns."""
        columns = 1 + max(place.column for place in self.layout.places.values())
        right = self.left(columns - 1) + BOX
        for lane in self.layout.lanes:
            top = self.tops[lane.first]
            if lane.first:
                line = top + GAP
                yield Stroke((Point(0, line), Point(right, line)), "lane", "thin")
            name = lane.strand.capitalize()
            yield Text(Point(0, top - PAD), name, "left", "top", "strand", bold=True)
        for column, head in enumerate(self.layout.columns):
            yield Text(Point(self.left(column), 0), head, "left", "bottom", "column", bold=True)

    def box(self, name: str, place: Place) -> Iterator[Mark]:
        left, top, height = self.left(place.column), self.tops[place.row], self.heights[place.row]
        yield Area(rectangle(left, top - height, left + BOX, top), "topic", "paper", "thin")
        lines = self.lines[name]
        y = top - (height - LINE * len(lines)) / 2
        for line in lines:
            yield Text(Point(left + PAD, y), line, "left", "top", "title")
            y -= LINE

    def arrows(self) -> Iterator[Mark]:
        """Draw an arrow for each pair, each with its own track where several share a passage."""
        leaving: dict[str, list[tuple[str, str]]] = defaultdict(list)
        arriving: dict[str, list[tuple[str, str]]] = defaultdict(list)
        places = self.layout.places
        for edge in self.layout.edges:
            leaving[edge[0]].append(edge)
            arriving[edge[1]].append(edge)
        starts = dict(self._ports(leaving, other=1))
        ends = dict(self._ports(arriving, other=0))
        tracks: dict[int, int] = defaultdict(int)
        sides: dict[int, int] = defaultdict(int)
        for edge in self.layout.edges:
            start, end = places[edge[0]], places[edge[1]]
            a = Point(self.left(start.column) + BOX, starts[edge])
            b = Point(self.left(end.column), ends[edge])
            points = [a]
            if end.column == start.column:
                # Both stand below each other: a bracket at their left.
                sides[end.column] += 1
                # Four tracks are as many as the gutter has room for; a fifth lies on the first.
                x = b.x - Fraction(1 + sides[end.column] % 4, 2) - Fraction(1, 2)
                down = self.middle(start)
                points = [Point(b.x, down), Point(x, down), Point(x, b.y)]
            elif end.column != start.column + 1:
                # Fifths of the gap, so that none of four tracks touches the boxes above and below.
                track = Fraction(1 + tracks[end.row] % 4, 5)
                tracks[end.row] += 1
                y = self.tops[end.row] + GAP * track
                points += [
                    Point(a.x + GUTTER * Fraction(2, 5), y),
                    Point(b.x - GUTTER * Fraction(2, 5), y),
                ]
            yield Stroke(tuple(_apart([*points, b])), "rests on", arrow="end")

    def _ports(
        self, edges: Mapping[str, list[tuple[str, str]]], other: int
    ) -> Iterator[tuple[tuple[str, str], Fraction]]:
        """Yield where on a box's edge each of its arrows is, in the order of their other ends."""
        places = self.layout.places
        for name, here in edges.items():
            place = places[name]
            height = self.heights[place.row]
            ordered = sorted(here, key=lambda edge: places[edge[other]].row)
            for number, edge in enumerate(ordered, start=1):
                yield edge, self.tops[place.row] - height * Fraction(number, len(ordered) + 1)


def _apart(points: list[Point]) -> Iterator[Point]:
    """Yield points without one that repeats the one before."""
    yield points[0]
    for before, point in pairwise(points):
        if point != before:
            yield point
