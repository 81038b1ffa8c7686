"""What is read off a line of best fit: estimates, outliers, and points below it."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from generators.statistics._scatter_clouds import Cloud, Half, Story, article, unit_after
from generators.statistics._scatter_mistakes import (
    ALL_POINTS,
    COUNTS_SQUARES,
    HIGHEST,
    NEAREST_POINT,
    ONE_TOO_MANY,
    OTHER_WAY,
    SWAPPED,
)
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Misconception, Step
from itembank.notation import tree as t


class Asked(NamedTuple):
    """What is asked about a scatter graph, its answer, working and likely mistakes."""

    text: str
    number: Fraction | None
    key: t.Node
    form: str
    steps: list[Step]
    wrongs: list[tuple[Misconception, t.Node | None]]


def value_across(told: Story, half: Half | Fraction) -> Fraction:
    """Return what so many half squares along the axis across are worth."""
    return Fraction(half * told.x_step) / 2


def value_up(told: Story, half: Half | Fraction) -> Fraction:
    """Return what so many half squares up the other axis are worth."""
    return Fraction(half * told.y_step) / 2


def estimate(told: Story, cloud: Cloud, number: int) -> Asked | None:
    """Ask what the line says for a value along at which no point stands."""
    taken = {x for x, _ in cloud.points}
    free = [x for x in range(4, 22, 2) if x not in taken]
    if not free:
        return None
    x = free[number % len(free)]
    high = cloud.line(x)
    near = min(cloud.points, key=lambda point: (abs(point[0] - x), point))
    key = decimal_node(value_up(told, high))
    return Asked(
        f"Use the line of best fit to estimate the {told.up}, in {unit_after(told.y_unit)}, of a "
        f"{told.thing} with "
        f"{article(told.along)} {told.along} of {{n}} {told.x_unit}.",
        value_across(told, x),
        key,
        "value",
        [
            Step(
                f"Go up from {said(value_across(told, x))} on the axis for {told.along} "
                "to the line."
            ),
            Step(f"From there go across to the axis for {told.up}.", key),
        ],
        [
            (NEAREST_POINT, decimal_node(value_up(told, near[1]))),
            (COUNTS_SQUARES, decimal_node(Fraction(high, 2))),
        ],
    )


def estimate_back(told: Story, cloud: Cloud, number: int) -> Asked | None:
    """Ask at which value along the line has a height, in halves of squares."""
    y = 5 + number % 8
    x = (Fraction(y) - cloud.start) * 2 * cloud.way
    if not 2 <= x <= 22 or any(point[1] == y for point in cloud.points):
        return None
    near = min(cloud.points, key=lambda point: (abs(point[1] - y), point))
    key = decimal_node(value_across(told, x))
    return Asked(
        f"Use the line of best fit to estimate the {told.along}, in {unit_after(told.x_unit)}, of "
        f"a {told.thing} with {article(told.up)} {told.up} of {{n}} {told.y_unit}.",
        value_up(told, y),
        key,
        "value",
        [
            Step(f"{said(value_up(told, y))} {told.y_unit} stands on the upright axis."),
            Step("Go across from it to the line of best fit."),
            Step(f"From there go down to the axis for {told.along}.", key),
        ],
        [
            (NEAREST_POINT, decimal_node(value_across(told, near[0]))),
            (COUNTS_SQUARES, decimal_node(x / 2)),
        ],
    )


def outlier(told: Story, cloud: Cloud, number: int) -> Asked | None:
    """Return the question which point does not follow the others, or None."""
    gaps = sorted((abs(y - cloud.line(x)), (x, y)) for x, y in cloud.points)
    if gaps[-1][0] <= 2 * gaps[-2][0]:
        return None
    x, y = gaps[-1][1]
    top = max(cloud.points, key=lambda point: (point[1], point[0]))

    def pair(a: Fraction, b: Fraction) -> t.Node:
        return t.pair(decimal_node(a), decimal_node(b))

    key = pair(value_across(told, x), value_up(told, y))
    return Asked(
        "Write down the coordinates of the outlier.",
        None,
        key,
        "point",
        [
            Step("Look for the point that is far from the line of best fit."),
            Step("Read how far along it is, then how far up.", key),
        ],
        [
            (SWAPPED, pair(value_up(told, y), value_across(told, x))),
            (COUNTS_SQUARES, pair(Fraction(x, 2), Fraction(y, 2))),
            (
                HIGHEST,
                pair(value_across(told, top[0]), value_up(told, top[1])) if top != (x, y) else None,
            ),
        ],
    )


def points_below(told: Story, cloud: Cloud, number: int) -> Asked | None:
    """Return the question how many points lie below the line, or None."""
    above = number % 2 == 0
    gaps = [y - cloud.line(x) for x, y in cloud.points]
    over, under = sum(gap > 0 for gap in gaps), sum(gap < 0 for gap in gaps)
    if over == under:
        return None
    key, other = (over, under) if above else (under, over)
    return Asked(
        f"How many points lie {'above' if above else 'below'} the line of best fit?",
        None,
        t.Int(key),
        "integer",
        [
            Step(
                f"Count the points {'above' if above else 'below'} the line, not those on it.",
                t.Int(key),
            )
        ],
        [
            (OTHER_WAY, t.Int(other)),
            (ALL_POINTS, t.Int(len(gaps))),
            (ONE_TOO_MANY, t.Int(len(gaps) - other) if len(gaps) - other != key else None),
        ],
    )


def said(value: Fraction) -> str:
    """Return a number as it stands among words."""
    return str(float(value)).removesuffix(".0")
