"""Where each topic stands on the map: a lane for its strand, a column for when it comes.

A column is how many topics deep a topic rests on others, or the term in which a scheme of work
teaches it. Topics of one lane and column stand below each other.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from typing import NamedTuple

STRANDS = (
    *("number", "fractions", "percentages", "ratio", "measures"),
    *("algebra", "equations", "sequences", "graphs"),
    *("geometry", "transformations", "statistics", "probability"),
)
"""The order of the lanes, top down: what rests on much stands below; other strands follow."""

Rests = Mapping[str, Sequence[str]]
"""What each topic rests on, by id."""


class Lane(NamedTuple):
    """A strand's part of the map: its first row, and how many rows it has."""

    strand: str
    first: int
    rows: int


class Place(NamedTuple):
    """A column and a row, from 0, from the left and from the top."""

    column: int
    row: int


class TopicPlaces(NamedTuple):
    """The whole layout. `columns` are the heads of the columns, empty where they have none."""

    places: Mapping[str, Place]
    lanes: tuple[Lane, ...]
    columns: tuple[str, ...]
    edges: tuple[tuple[str, str], ...]
    """Pairs of topics: the first is what the second rests on, and no way round says so already."""


def without_detours(rests: Rests) -> dict[str, tuple[str, ...]]:
    """Return what each topic rests on, without what follows from the rest of it.

    It is the transitive reduction of a graph without circles (Aho, Garey and Ullman, *SIAM
    Journal on Computing* 1, 1972; from memory).

    >>> without_detours({"a": (), "b": ("a",), "c": ("a", "b")})
    {'a': (), 'b': ('a',), 'c': ('b',)}
    """

    @cache
    def below(name: str) -> frozenset[str]:
        direct = [topic for topic in rests.get(name, ()) if topic in rests]
        return frozenset(direct).union(*map(below, direct))

    found = {}
    for name, direct in rests.items():
        # What lies below one of the direct ones is said already by the line to that one.
        far = frozenset[str]().union(*(below(topic) for topic in direct if topic in rests))
        found[name] = tuple(
            dict.fromkeys(topic for topic in direct if topic in rests and topic not in far)
        )
    return found


def depths(rests: Rests) -> dict[str, int]:
    """Return how deep each topic rests on others: 0 where it rests on none.

    >>> depths({"a": (), "b": ("a",), "c": ("a", "b")})
    {'a': 0, 'b': 1, 'c': 2}
    """

    @cache
    def depth(name: str) -> int:
        return max((1 + depth(topic) for topic in rests[name] if topic in rests), default=0)

    return {name: depth(name) for name in rests}


def topic_places(
    rests: Rests, columns: Mapping[str, int], heads: Sequence[str] = ()
) -> TopicPlaces:
    """Return the layout of topics whose columns are given.

    In its lane and column a topic stands near what it rests on, so that lines are short, and
    below what it rests on of the same column.

    >>> found = topic_places({"ratio.a": (), "ratio.b": ("ratio.a",)}, {"ratio.a": 0, "ratio.b": 1})
    >>> found.places["ratio.b"], found.edges
    (Place(column=1, row=0), (('ratio.a', 'ratio.b'),))
    """
    direct = without_detours(rests)
    cells: dict[tuple[str, int], list[str]] = defaultdict(list)
    for name in sorted(rests):
        cells[_strand(name), columns[name]].append(name)
    lanes: list[Lane] = []
    first = 0
    for strand in _lane_order(map(_strand, rests)):
        rows = max(len(names) for (lane, _), names in cells.items() if lane == strand)
        lanes.append(Lane(strand, first, rows))
        first += rows
    starts = {lane.strand: lane.first for lane in lanes}
    places: dict[str, Place] = {}
    # Column by column: most of what a topic rests on has its row by then.
    for (strand, column), names in sorted(cells.items(), key=lambda cell: (cell[0][1], cell[0][0])):
        wished = {name: _wish(direct[name], places, starts[strand]) for name in names}
        inside = depths(
            {name: [topic for topic in rests[name] if topic in names] for name in names}
        )
        for row, name in enumerate(
            # The name last, so that the same topics make the same map.
            sorted(names, key=lambda name: (inside[name], wished[name], name))
        ):
            places[name] = Place(column, starts[strand] + row)
    edges = tuple((topic, name) for name in sorted(direct) for topic in direct[name])
    return TopicPlaces(places, tuple(lanes), tuple(heads), edges)


def _strand(name: str) -> str:
    return name.partition(".")[0]


def _lane_order(strands: Iterable[str]) -> list[str]:
    rank = {strand: place for place, strand in enumerate(STRANDS)}
    return sorted(set(strands), key=lambda strand: (rank.get(strand, len(rank)), strand))


def _wish(below: Sequence[str], places: Mapping[str, Place], otherwise: int) -> float:
    """Return the middle row of what a topic rests on and that has its place."""
    rows = [places[topic].row for topic in below if topic in places]
    return sum(rows) / len(rows) if rows else otherwise
