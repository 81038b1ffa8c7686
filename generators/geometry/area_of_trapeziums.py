"""Areas of trapeziums: two parallel sides and a height, and a missing length.

England's programme of study for key stage 3 (2013) asks pupils to "derive and apply formulae to
calculate and solve problems involving perimeter and area of triangles, parallelograms, trapezia"
(from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._corners import at
from generators._turns import by_turns
from generators.geometry import _areas as a
from generators.geometry._areas import asked, length, said_question, shape_question, whole
from generators.geometry._areas_in_brief import TRAPEZIUMS
from itembank.figures.kinds.plane.polygon import Height, Polygon
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_TRIPLES = ((3, 4, 5), (4, 3, 5), (6, 8, 10), (8, 6, 10), (5, 12, 13), (9, 12, 15), (12, 9, 15))
"""How far the slanted side leans, the height, and the slanted side: all whole (Pythagoras)."""


def _support(top: int, bottom: int, high: int) -> bool:
    gap = bottom - top
    if not 2 <= gap <= 9 or not 4 * high <= 4 * bottom <= 13 * high or (top + bottom) % 2:
        return False
    return 4 * high <= 3 * bottom and high not in (top, bottom)


def _core(top: int, bottom: int, high: int) -> bool:
    if high >= len(_TRIPLES):
        return False
    lean, tall, _ = _TRIPLES[high]
    fits = bottom in (top + lean, top + 2 * lean)
    return fits and bottom <= 4 * tall and tall not in (top, bottom)


def _challenge(top: int, bottom: int, high: int) -> bool:
    apart = high not in (top, bottom) and bottom > top
    return apart and (top + bottom) * high % 2 == 0 and (2 * top + bottom + high) % 3 == 1


@register
class AreaOfTrapeziums(Topic):
    """Half of the sum of the parallel sides, times the height."""

    id = "geometry.area-of-trapeziums"
    title = "Area of trapeziums"
    statements = ("geometry.formulae",)
    misconceptions = (
        *(a.NOT_HALVED_SUM, a.ALL_MULTIPLIED, a.ONE_PARALLEL_SIDE, a.SLANT_USED),
        *(a.PERIMETER_FOR_AREA, a.NOT_DOUBLED, a.OTHER_SIDE_KEPT, a.SUBTRACTED),
    )
    prerequisites = ("geometry.area-of-parallelograms", "geometry.area-of-triangles")
    spaces = {
        Tier.SUPPORT: Space(_support, top=range(3, 15), bottom=range(5, 20), high=range(3, 11)),
        Tier.CORE: Space(_core, top=range(3, 15), bottom=range(6, 37), high=range(7)),
        Tier.CHALLENGE: Space(_challenge, top=range(3, 13), bottom=range(5, 18), high=range(3, 13)),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.area-of-trapeziums",
        kinds.working_goes_wrong(
            {
                a.NOT_HALVED_SUM: (e.cut_short,),
                a.NOT_DOUBLED: (e.everywhere(e.left_out),),
                a.OTHER_SIDE_KEPT: (e.cut_short,),
            }
        ),
    )
    spare = "few trapeziums have whole sides and a whole height"
    spaces = with_brief(spaces, TRAPEZIUMS)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        top, bottom, high = values
        if tier is Tier.SUPPORT:
            return _drawn(top, bottom, high)
        if tier is Tier.CORE:
            return _slanted(top, bottom, high)
        return (_height, _side)[(top + high) % 2](top, bottom, high)


def _steps(top: int, bottom: int, high: int, unit: str, key: t.Node) -> list[Step]:
    both = length(top + bottom, unit)
    product = length((top + bottom) * high, f"{unit}^2")
    return [
        Step(
            "Add the parallel sides.",
            t.equals(t.add(length(top, unit), length(bottom, unit)), both),
        ),
        Step("Multiply by the height.", t.equals(t.times(both, length(high, unit)), product)),
        Step("Halve it.", t.equals(t.divide(product, t.Int(2)), key)),
    ]


def _wrong(top: int, bottom: int, high: int) -> list[tuple[Any, Any]]:
    return [
        (a.NOT_HALVED_SUM, (top + bottom) * high),
        (a.ONE_PARALLEL_SIDE, bottom * high),
        (a.ALL_MULTIPLIED, top * bottom * high),
    ]


def _drawn(top: int, bottom: int, high: int) -> Draft:
    unit = by_turns(("cm", "m"), top + high)
    lean = (bottom - top) // 2 if (top + bottom + high) % 3 else bottom - top - 1
    figure = Polygon(
        at((0, 0), (bottom, 0), (lean + top, high), (lean, high)),
        sides=(("AB", length(bottom, unit)), ("CD", length(top, unit))),
        parallel=(("AB", "DC"),),
        height=Height("D", "AB", length(high, unit)),
    )
    key = length(Fraction((top + bottom) * high, 2), f"{unit}^2")
    return shape_question(
        figure,
        asked("area", "trapezium", top),
        key,
        _steps(top, bottom, high, unit, key),
        _wrong(top, bottom, high),
        (top, bottom, high),
    )


def _slanted(top: int, bottom: int, at_: int) -> Draft:
    lean, high, slant = _TRIPLES[at_]
    unit = by_turns(("cm", "m"), top + high)
    even = bottom == top + 2 * lean
    if even:
        corners = at((0, 0), (bottom, 0), (lean + top, high), (lean, high))
        figure = Polygon(
            corners,
            sides=(
                ("AB", length(bottom, unit)),
                ("CD", length(top, unit)),
                ("BC", length(slant, unit)),
                ("DA", length(slant, unit)),
            ),
            parallel=(("AB", "DC"),),
            height=Height("D", "AB", length(high, unit)),
        )
        around = bottom + top + 2 * slant
    else:
        figure = Polygon(
            at((0, 0), (bottom, 0), (top, high), (0, high)),
            sides=(
                ("AB", length(bottom, unit)),
                ("CD", length(top, unit)),
                ("BC", length(slant, unit)),
                ("DA", length(high, unit)),
            ),
            right="AD",
            parallel=(("AB", "DC"),),
        )
        around = bottom + top + slant + high
    key = length(Fraction((top + bottom) * high, 2), f"{unit}^2")
    return shape_question(
        figure,
        asked("area", "trapezium", top),
        key,
        _steps(top, bottom, high, unit, key),
        [
            (a.NOT_HALVED_SUM, (top + bottom) * high),
            (a.SLANT_USED, Fraction((top + bottom) * slant, 2)),
            (a.PERIMETER_FOR_AREA, around),
        ],
        (top, bottom, at_),
    )


def _height(top: int, bottom: int, high: int) -> Draft:
    unit = by_turns(("cm", "m"), bottom)
    area = length(Fraction((top + bottom) * high, 2), f"{unit}^2")
    first, second, key = length(top, unit), length(bottom, unit), length(high, unit)
    both, product = length(top + bottom, unit), length((top + bottom) * high, f"{unit}^2")
    doubled = t.times(t.Int(2), area)
    return said_question(
        "A trapezium has an area of {area}. Its parallel sides are {p} and {q} long. "
        "Work out its height.",
        t.divide(doubled, t.Bracket(t.add(first, second))),
        key,
        [
            Step("Add the parallel sides.", t.equals(t.add(first, second), both)),
            Step("Double the area.", t.equals(doubled, product)),
            Step("Divide to find the height.", t.equals(t.divide(product, both), key)),
        ],
        [
            (a.NOT_DOUBLED, Fraction(high, 2)),
            (a.ONE_PARALLEL_SIDE, whole((top + bottom) * high, bottom)),
            (a.SUBTRACTED, whole((top + bottom) * (high - 2), 2)),
        ],
        ("height", top, bottom, high),
        (2,),
        area=area,
        p=first,
        q=second,
    )


def _side(top: int, bottom: int, high: int) -> Draft:
    unit = by_turns(("cm", "m"), bottom)
    area = length(Fraction((top + bottom) * high, 2), f"{unit}^2")
    first, height, key = length(top, unit), length(high, unit), length(bottom, unit)
    both, product = length(top + bottom, unit), length((top + bottom) * high, f"{unit}^2")
    doubled = t.times(t.Int(2), area)
    return said_question(
        "A trapezium has an area of {area} and a height of {h}. One of its parallel sides is {p} "
        "long. Work out the length of the other parallel side.",
        t.sub(t.divide(doubled, height), first),
        key,
        [
            Step("Double the area.", t.equals(doubled, product)),
            Step(
                "Divide by the height to find the parallel sides together.",
                t.equals(t.divide(product, height), both),
            ),
            Step("Take away the side that is given.", t.equals(t.sub(both, first), key)),
        ],
        [(a.OTHER_SIDE_KEPT, top + bottom), (a.NOT_DOUBLED, Fraction(top + bottom, 2) - top)],
        ("side", top, bottom, high),
        (2,),
        area=area,
        h=height,
        p=first,
    )
