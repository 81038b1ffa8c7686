"""What questions on congruent triangles share: their words, their pairs, and how one is put."""

from __future__ import annotations

from generators.geometry._angles import deg
from generators.geometry._congruent_drawn import Pair, Sizes, Spots, spots
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Step
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

ALL = frozenset((0, 1, 2))
WORDS = {
    "SSS": "three sides are equal",
    "SAS": "two sides and the angle between them are equal",
    "ASA": "two angles and a side across from equal angles are equal",
    "RHS": "the right angle, the hypotenuse and another side are equal",
}
CONGRUENT = "The triangles are congruent."
IN_CM = "The lengths are in centimetres."


def others(corner: int) -> tuple[int, int]:
    first, second = sorted(ALL - {corner})
    return first, second


def place_of(*numbers: int) -> int:
    """Return how a pair is lettered and turned, another way for most questions."""
    return sum(number * factor for number, factor in zip(numbers, (7, 11, 13, 17), strict=False))


def twice(sizes: Sizes) -> tuple[Spots, Spots]:
    return spots(sizes), spots(sizes)


def third_angle_line(sizes: Sizes, first: int, second: int, third: int) -> t.Node:
    a, b, c = (deg(sizes.angles[k]) for k in (first, second, third))
    return t.equals(t.sub(deg(180), a, b), c)


def draft(
    made: Pair,
    text: tuple[str | t.Node, ...],
    key: t.Node,
    form: str,
    steps: tuple[Step, ...],
    wrongs: list[Wrong],
    twin: tuple[object, ...],
    constants: tuple[int, ...] = (),
) -> Draft:
    return Draft(
        text,
        of_figure(made.figure, text),
        key,
        form,
        steps,
        slips(*wrongs, key=key),
        twin,
        figure=made.figure,
        constants=constants,
    )
