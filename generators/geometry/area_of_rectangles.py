"""Rectangles: area and perimeter, a missing side, and stories of plots and floors.

England's programme of study for key stage 3 (2013) asks pupils to "calculate and solve problems
involving perimeters of 2-D shapes" and to use formulae for areas (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._corners import at
from generators._turns import by_turns
from generators.geometry import _areas as a
from generators.geometry._areas import asked, length, said_question, shape_question, whole
from generators.geometry._rectangle_stories import cost_of_plot, tiles_of_floor, two_units
from generators.geometry._rectangles_in_brief import RECTANGLES
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def rectangle(wide: int, high: int, unit: str, tenths: bool = False) -> Polygon:
    """Return a rectangle with two sides labelled; `tenths` makes its lengths tenths of a unit."""
    scale = 10 if tenths else 1
    return Polygon(
        at((0, 0), (wide, 0), (wide, high), (0, high)),
        sides=(
            ("AB", length(Fraction(wide, scale), unit)),
            ("BC", length(Fraction(high, scale), unit)),
        ),
        right="ABCD",
    )


def _support(kind: int, w: int, h: int) -> bool:
    return h < w <= 3 * h and 2 * (w + h) != w * h and (w + h) % 3 != kind


def _core(kind: int, w: int, h: int) -> bool:
    if kind == 3:  # decimals
        return h < w <= 3 * h and w % 2 == 1 and (w * h) % 3 == 0
    if kind == 2:  # a square
        return w == 4 and 3 <= h <= 15 and h not in (4,)
    return h < w <= 4 * h and (w + h) % 3 == kind and w * h != 2 * (w + h)


def _challenge(kind: int, w: int, h: int) -> bool:
    if kind == 3:  # tiles
        return w % 2 == 0 and h % 2 == 0 and h < w and (w + h) % 4 == 2
    if kind == 4:  # metres and centimetres
        return h < w and w % 2 == 1 and w % 5 != 0
    return h < w <= 4 * h and (w + 2 * h) % 3 == kind and w * h != 2 * (w + h)


@register
class AreaOfRectangles(Topic):
    """Areas and perimeters of rectangles."""

    id = "geometry.area-of-rectangles"
    title = "Area and perimeter of rectangles"
    statements = ("geometry.perimeter-area",)
    misconceptions = (
        *(a.PERIMETER_FOR_AREA, a.AREA_FOR_PERIMETER, a.TWO_SIDES, a.SUBTRACTED),
        *(a.ONE_SIDE_TAKEN, a.NOT_SHARED, a.ADDED, a.UNIT_NOT_CHANGED, a.AREA_AS_PERIMETER),
    )
    spaces = {
        Tier.SUPPORT: Space(_support, kind=(0, 1), w=range(4, 31), h=range(3, 16)),
        Tier.CORE: Space(_core, kind=range(4), w=range(4, 29), h=range(3, 16)),
        Tier.CHALLENGE: Space(_challenge, kind=range(5), w=range(4, 25), h=range(3, 13)),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.area-of-rectangles",
        kinds.working_goes_wrong({a.NOT_SHARED: (e.cut_short,), a.TWO_SIDES: (e.first_half,)}),
    )
    spaces = with_brief(spaces, RECTANGLES)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, w, h = values
        unit = by_turns(("cm", "m"), w + h // 2)
        if tier is Tier.SUPPORT:
            return _drawn(kind, w, h, unit)
        if tier is Tier.CORE:
            return (_from_area, _from_perimeter, _square, _decimals)[kind](w, h, unit)
        return (_round_from_area, _area_from_round, cost_of_plot, tiles_of_floor, two_units)[kind](
            w, h, unit
        )


def _drawn(kind: int, w: int, h: int, unit: str) -> Draft:
    figure = rectangle(w, h, unit)
    area, around = w * h, 2 * (w + h)
    first, second = length(w, unit), length(h, unit)
    if kind == 0:
        key = length(area, f"{unit}^2")
        steps = [Step("Multiply the length by the width.", t.equals(t.times(first, second), key))]
        return shape_question(
            figure,
            asked("area", "rectangle", w),
            key,
            steps,
            [(a.PERIMETER_FOR_AREA, around), (a.ADDED, w + h)],
            ("area", w, h),
        )
    key = length(around, unit)
    steps = [
        Step("Add all four sides.", t.equals(t.add(first, second, first, second), key)),
    ]
    return shape_question(
        figure,
        asked("perimeter", "rectangle", w),
        key,
        steps,
        [(a.AREA_FOR_PERIMETER, area), (a.TWO_SIDES, w + h)],
        ("perimeter", w, h),
    )


def _from_area(w: int, h: int, unit: str) -> Draft:
    area, side = length(w * h, f"{unit}^2"), length(w, unit)
    target = t.divide(area, side)
    key = length(h, unit)
    return said_question(
        "A rectangle has an area of {area} and a length of {side}. Work out its width.",
        target,
        key,
        [Step("Length times width is the area. Divide to find the width.", t.equals(target, key))],
        [
            (a.SUBTRACTED, w * h - w),
            (a.AREA_AS_PERIMETER, Fraction(w * h - 2 * w, 2)),
        ],
        ("from area", w, h),
        area=area,
        side=side,
    )


def _from_perimeter(w: int, h: int, unit: str) -> Draft:
    around, side = length(2 * (w + h), unit), length(w, unit)
    both = t.sub(around, t.times(t.Int(2), side))
    target = t.divide(t.Bracket(both), t.Int(2))
    key = length(h, unit)
    return said_question(
        "A rectangle has a perimeter of {around} and a length of {side}. Work out its width.",
        target,
        key,
        [
            Step("Take the two lengths away.", t.equals(both, length(2 * h, unit))),
            Step(
                "Share what is left between the two widths.",
                t.equals(t.divide(length(2 * h, unit), t.Int(2)), key),
            ),
        ],
        [
            (a.ONE_SIDE_TAKEN, w + 2 * h),
            (a.NOT_SHARED, 2 * h),
            (a.SUBTRACTED, whole(2 * (w + h), w)),
        ],
        ("from perimeter", w, h),
        (2,),
        around=around,
        side=side,
    )


def _square(w: int, h: int, unit: str) -> Draft:
    around = length(4 * h, unit)
    side = t.divide(around, t.Int(4))
    key = length(h * h, f"{unit}^2")
    plain = length(h, unit)
    return said_question(
        "The perimeter of a square is {around}. Work out the area of the square.",
        t.times(t.Bracket(side), t.Bracket(side)),
        key,
        [
            Step("A square has four equal sides. Find one of them.", t.equals(side, plain)),
            Step("Multiply the side by itself.", t.equals(t.times(plain, plain), key)),
        ],
        [(a.NOT_SHARED, 16 * h * h), (a.ADDED, 2 * h), (a.PERIMETER_FOR_AREA, 4 * h)],
        ("square", h),
        (4,),
        around=around,
    )


def _decimals(w: int, h: int, unit: str) -> Draft:
    figure = rectangle(w * 5, h * 10, unit, tenths=True)
    size = Fraction(w, 2)
    first, second = length(size, unit), length(h, unit)
    key = length(size * h, f"{unit}^2")
    return shape_question(
        figure,
        asked("area", "rectangle", w),
        key,
        [Step("Multiply the length by the width.", t.equals(t.times(first, second), key))],
        [(a.PERIMETER_FOR_AREA, 2 * (size + h)), (a.ADDED, size + h)],
        ("decimals", w, h),
    )


def _round_from_area(w: int, h: int, unit: str) -> Draft:
    area, side = length(w * h, f"{unit}^2"), length(w, unit)
    other = t.divide(area, side)
    key = length(2 * (w + h), unit)
    plain = length(h, unit)
    return said_question(
        "A rectangle has an area of {area}. One side is {side} long. "
        "Work out the perimeter of the rectangle.",
        t.times(t.Int(2), t.Bracket(t.add(side, other))),
        key,
        [
            Step("Divide the area by the side to find the other side.", t.equals(other, plain)),
            Step("Add all four sides.", t.equals(t.add(side, plain, side, plain), key)),
        ],
        [(a.TWO_SIDES, w + h), (a.AREA_FOR_PERIMETER, w * w * h), (a.SUBTRACTED, 2 * w * h)],
        ("round from area", w, h),
        (2,),
        area=area,
        side=side,
    )


def _area_from_round(w: int, h: int, unit: str) -> Draft:
    around, side = length(2 * (w + h), unit), length(w, unit)
    both = t.sub(around, t.times(t.Int(2), side))
    other = t.divide(t.Bracket(both), t.Int(2))
    key, plain = length(w * h, f"{unit}^2"), length(h, unit)
    return said_question(
        "A rectangle has a perimeter of {around}. One side is {side} long. "
        "Work out the area of the rectangle.",
        t.times(side, t.Bracket(other)),
        key,
        [
            Step("Take the two sides of that length away.", t.equals(both, length(2 * h, unit))),
            Step(
                "Share what is left between the other two.",
                t.equals(t.divide(length(2 * h, unit), t.Int(2)), plain),
            ),
            Step("Multiply the two sides.", t.equals(t.times(side, plain), key)),
        ],
        [
            (a.ONE_SIDE_TAKEN, w * (w + 2 * h)),
            (a.NOT_SHARED, w * 2 * h),
            (a.SUBTRACTED, 2 * (w + h) * w),
        ],
        ("area from round", w, h),
        (2,),
        around=around,
        side=side,
    )
