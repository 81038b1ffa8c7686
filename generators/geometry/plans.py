"""Plans and elevations of solids made of cubes: counting cubes, and what is seen from two sides.

England's programme of study for key stage 3 (2013) asks pupils to use the properties of solids "to
solve problems in 3-D" (from memory). A plan with the height of each tower is enough to settle
what an elevation shows; drawing one is left to a person.
"""

from __future__ import annotations

from typing import Any

from generators._scatter import unlike
from generators.geometry._plan_mistakes import (
    ADDED,
    ALL_CUBES,
    COUNTS_SQUARES,
    FRONT_ROW,
    ONE_LAYER,
    ONLY_FIRST,
    OTHER_SIDE,
    SEEN_FROM_FRONT,
    WHOLE_CUBOID,
    WHOLE_SOLID,
)
from generators.geometry._plans_told import with_told
from itembank.figures.figure import fault
from itembank.figures.kinds.solid.cube_plan import CubePlan
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

CUBES, FRONT, SIDE, FILL, MORE = "cubes", "front", "side", "fill", "more"
_SHAPES = ((2, 2), (2, 3), (3, 2), (3, 3))
"""Rows and columns."""

Rows = tuple[tuple[int, ...], ...]


def _plan(shape: int, seed: int) -> Rows:
    rows, columns = _SHAPES[shape]
    numbers = unlike(seed * len(_SHAPES) + shape, rows * columns, 0, 4)
    return tuple(numbers[at * columns : (at + 1) * columns] for at in range(rows))


def _front(rows: Rows) -> list[int]:
    return [max(column) for column in zip(*rows, strict=True)]


def _side(rows: Rows) -> list[int]:
    """Return the highest of each row, from the front to the back."""
    return [max(row) for row in reversed(rows)]


def _worked(ask: str, rows: Rows) -> tuple[int, list[Wrong]]:
    """Return the answer, and those of likely mistakes."""
    cells = [height for row in rows for height in row]
    front, side = sum(_front(rows)), sum(_side(rows))
    if ask == CUBES:
        wrongs: list[Wrong] = [
            (COUNTS_SQUARES, sum(height > 0 for height in cells)),
            (FRONT_ROW, sum(rows[-1])),
        ]
        return sum(cells), wrongs
    if ask == FRONT:
        return front, [(ALL_CUBES, sum(cells)), (FRONT_ROW, sum(rows[-1])), (OTHER_SIDE, side)]
    if ask == SIDE:
        return side, [(ALL_CUBES, sum(cells)), (OTHER_SIDE, front)]
    if ask == FILL:
        whole, layer = len(cells) * max(cells), len(cells)
        return whole - sum(cells), [
            (WHOLE_CUBOID, whole),
            (ONE_LAYER, whole - layer - sum(cells)),
            (ALL_CUBES, sum(cells)),
        ]
    return abs(front - side), [(ADDED, front + side), (ONLY_FIRST, max(front, side))]


def _kept(ask: str, shape: int, seed: int) -> bool:
    rows = _plan(shape, seed)
    if fault(CubePlan(rows)) or sum(height == 0 for row in rows for height in row) > 1:
        return False
    key, wrongs = _worked(ask, rows)
    found = {wrong for _, wrong in wrongs if isinstance(wrong, int) and wrong > 0} - {key}
    return key > 1 and len(found) > 1 and max(map(max, rows)) > 2


@register
class Plans(Topic):
    """All cubes of a plan; squares of an elevation; filling up to a cuboid, two elevations."""

    id = "geometry.plans"
    title = "Plans and elevations of solids made of cubes"
    statements = ("geometry.solids",)
    prerequisites = ("geometry.volume-of-cuboids",)
    misconceptions = (
        *(COUNTS_SQUARES, FRONT_ROW, ALL_CUBES, OTHER_SIDE, WHOLE_CUBOID, ONE_LAYER, ADDED),
        *(ONLY_FIRST, SEEN_FROM_FRONT, WHOLE_SOLID),
    )
    spaces = {
        Tier.SUPPORT: Space(_kept, ask=(CUBES,), shape=range(3), seed=range(1, 260)),
        Tier.CORE: Space(_kept, ask=(FRONT, SIDE), shape=range(1, 4), seed=range(1, 120)),
        Tier.CHALLENGE: Space(_kept, ask=(FILL, MORE), shape=range(1, 4), seed=range(1, 150)),
    }
    spaces = with_told(kinds.with_statements(spaces))

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, shape, seed = values
        rows = _plan(shape, seed)
        figure = CubePlan(rows)
        key, wrongs = _worked(ask, rows)
        large, small = "front", "side"
        if sum(_front(rows)) < sum(_side(rows)):
            large, small = small, large
        question = {
            CUBES: "How many cubes are there altogether?",
            FRONT: "How many squares does the front elevation have?",
            SIDE: "How many squares does the side elevation have?",
            FILL: "What is the least number of cubes that have to be added to make a cuboid?",
            MORE: f"How many more squares does the {large} elevation have than the {small} "
            "elevation?",
        }[ask]
        text = prompt(f"The plan shows how many cubes stand on each square. {question}")
        kept = [(m, wrong) for m, wrong in wrongs if isinstance(wrong, int) and wrong > 0]
        return Draft(
            text,
            of_figure(figure, text),
            t.Int(key),
            "integer",
            tuple(_steps(ask, rows)),
            slips(*kept, key=t.Int(key)),
            (ask, *rows),
            figure=figure,
        )


def _sum(numbers: list[int]) -> t.Node:
    kept = [t.Int(number) for number in numbers if number]
    total = t.Int(sum(numbers))
    return t.equals(t.add(*kept), total) if len(kept) > 1 else total


def _steps(ask: str, rows: Rows) -> list[Step]:
    cells = [height for row in rows for height in row]
    front = Step("From the front: the highest of each column.", _sum(_front(rows)))
    side = Step("From the side: the highest of each row.", _sum(_side(rows)))
    if ask == CUBES:
        return [Step("Add the numbers on all squares.", _sum(cells))]
    if ask in (FRONT, SIDE):
        told = _front(rows) if ask == FRONT else _side(rows)
        listed = ", ".join(map(str, told))
        from_where = (
            "the front: the highest of each column"
            if ask == FRONT
            else ("the side: the highest of each row")
        )
        return [Step(f"Look from {from_where}. That is {listed}."), Step("Add.", _sum(told))]
    if ask == MORE:
        low, high = sorted((sum(_front(rows)), sum(_side(rows))))
        line = t.equals(t.sub(t.Int(high), t.Int(low)), t.Int(high - low))
        return [front, side, Step("Subtract.", line)]
    deep, wide, tall = len(rows), len(rows[0]), max(cells)
    whole = deep * wide * tall
    left = t.equals(t.sub(t.Int(whole), t.Int(sum(cells))), t.Int(whole - sum(cells)))
    return [
        Step("Add the cubes that are there.", _sum(cells)),
        Step(
            "The cuboid is as high as the highest tower.",
            t.equals(t.times(t.Int(deep), t.Int(wide), t.Int(tall)), t.Int(whole)),
        ),
        Step("Subtract.", left),
    ]
