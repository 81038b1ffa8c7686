"""Areas of parallelograms: base and height, with a slanted side, and a missing length.

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
from generators.geometry._areas_in_brief import PARALLELOGRAMS
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
_ARROWS = (("AB", "DC"), ("AD", "BC"))


def _figure(
    base: int, lean: int, high: int, unit: str, slant: int = 0, scale: Fraction = Fraction(1)
) -> Polygon:
    """Return a parallelogram with its height, and with its slanted side where that is given."""
    sides = [("AB", length(scale * base, unit))]
    if slant:
        sides.append(("BC", length(scale * slant, unit)))
    return Polygon(
        at((0, 0), (base, 0), (base + lean, high), (lean, high)),
        sides=tuple(sides),
        parallel=_ARROWS,
        height=Height("D", "AB", length(scale * high, unit)),
    )


def _support(kind: int, b: int, h: int) -> bool:
    return h <= b <= 3 * h and b * h != 2 * (b + h) and kind == 0


def _core(kind: int, b: int, h: int) -> bool:
    if kind > 1:  # a missing height or base
        return b != h and h >= 3 and (b + 2 * h) % 7 == kind - 2
    if h >= len(_TRIPLES) or h == 6:
        return False
    lean, high, slant = _TRIPLES[h]
    # Lengths of halves, since whole ones are for support, and no area in quarters.
    halves = (b % 2 or slant % 2) and b * high % 2 == 0
    return bool(halves) and lean + 2 <= b <= 3 * high and b not in (high, slant)


def _challenge(kind: int, b: int, h: int) -> bool:
    if kind == 1:  # the perimeter is asked for, from the area
        return h < len(_TRIPLES) and b not in _TRIPLES[h] and b > 5
    # The height on the longer side is given, the one on the shorter side is asked for.
    side = _shorter(b, h)
    return kind == 0 and h >= 3 and side > 0


def _shorter(b: int, h: int) -> int:
    """Return a shorter side on which the other height is a whole number, 0 if there is none."""
    for side in range(b - 1, h, -1):
        if b * h % side == 0 and b * h // side not in (b, h, side):
            return side
    return 0


@register
class AreaOfParallelograms(Topic):
    """Base times height."""

    id = "geometry.area-of-parallelograms"
    title = "Area of parallelograms"
    statements = ("geometry.formulae",)
    misconceptions = (
        *(a.HALVED, a.SLANT_USED, a.PERIMETER_FOR_AREA, a.ADDED, a.SUBTRACTED),
        *(
            a.TWO_SIDES,
            a.AREA_FOR_PERIMETER,
            a.DOUBLED,
            a.HEIGHT_FOR_SIDE,
            a.AREA_FOR_HEIGHT,
            a.SAME_DIFFERENCE,
        ),
    )
    prerequisites = ("geometry.area-of-rectangles",)
    spaces = {
        Tier.SUPPORT: Space(_support, kind=(0, 1), b=range(5, 25), h=range(3, 16)),
        Tier.CORE: Space(_core, kind=range(4), b=range(5, 25), h=range(16)),
        Tier.CHALLENGE: Space(_challenge, kind=(0, 1), b=range(6, 33), h=range(16)),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.area-of-parallelograms",
        kinds.working_goes_wrong(
            {a.HALVED: (e.halved,), a.DOUBLED: (e.doubled,), a.TWO_SIDES: (e.first_half,)}
        ),
    )
    spare = "few parallelograms have whole sides and a whole height"
    spaces = with_brief(spaces, PARALLELOGRAMS)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, b, h = values
        if tier is Tier.SUPPORT:
            return _drawn(kind, b, h)
        if tier is Tier.CORE:
            return _slanted(kind, b, h) if kind < 2 else _missing(kind - 2, b, h)
        return (_two_heights, _round)[kind](b, h)


def _drawn(kind: int, b: int, h: int) -> Draft:
    unit = by_turns(("cm", "m"), b + h)
    lean = 1 + (b + 2 * h) % 3 + h // 4
    key = length(b * h, f"{unit}^2")
    product = t.times(length(b, unit), length(h, unit))
    return shape_question(
        _figure(b, lean, h, unit),
        asked("area", "parallelogram", b),
        key,
        [Step("Multiply the base by the height.", t.equals(product, key))],
        [
            (a.HALVED, None if b * h % 2 else b * h // 2),
            (a.ADDED, b + h),
            (a.PERIMETER_FOR_AREA, 2 * (b + h)),
        ],
        (b, h),
    )


def _slanted(kind: int, b: int, h: int) -> Draft:
    """Return the area (0) or the perimeter (1) of one with base, height and slanted side."""
    scale = Fraction(1, 2)
    _, high, slant = (scale * n for n in _TRIPLES[h])
    wide = scale * b
    unit = by_turns(("cm", "m"), b + h)
    figure = _figure(b, _TRIPLES[h][0], _TRIPLES[h][1], unit, _TRIPLES[h][2], scale)
    base, side = length(wide, unit), length(slant, unit)
    if kind == 0:
        key = length(wide * high, f"{unit}^2")
        product = t.times(base, length(high, unit))
        return shape_question(
            figure,
            asked("area", "parallelogram", b),
            key,
            [
                Step(
                    "Multiply the base by the height, which is at a right angle to it.",
                    t.equals(product, key),
                )
            ],
            [
                (a.SLANT_USED, wide * slant),
                (a.HALVED, wide * high / 2),
                (a.PERIMETER_FOR_AREA, 2 * (wide + slant)),
            ],
            ("area", b, h),
        )
    key = length(2 * (wide + slant), unit)
    return shape_question(
        figure,
        asked("perimeter", "parallelogram", b),
        key,
        [
            Step(
                "Opposite sides are equal. Add all four sides.",
                t.equals(t.add(base, side, base, side), key),
            ),
        ],
        [
            (a.TWO_SIDES, wide + slant),
            (a.AREA_FOR_PERIMETER, wide * high),
            (a.HEIGHT_FOR_SIDE, 2 * (wide + high)),
        ],
        ("perimeter", b, h),
    )


def _missing(kind: int, b: int, h: int) -> Draft:
    unit = by_turns(("cm", "m"), b + h)
    area, side, key = length(b * h, f"{unit}^2"), length(b, unit), length(h, unit)
    first, other = ("base", "height") if kind == 0 else ("height", "base")
    target = t.divide(area, side)
    return said_question(
        f"A parallelogram has an area of {{area}} and a {first} of {{side}}. Work out its {other}.",
        target,
        key,
        [
            Step(
                f"Base times height is the area. Divide to find the {other}.", t.equals(target, key)
            )
        ],
        [(a.SUBTRACTED, b * h - b), (a.DOUBLED, 2 * h), (a.HALVED, whole(h, 2))],
        ("missing", first, b, h),
        area=area,
        side=side,
    )


def _two_heights(b: int, h: int) -> Draft:
    unit = by_turns(("cm", "m"), b + h)
    side = _shorter(b, h)
    first, second, height = length(b, unit), length(side, unit), length(h, unit)
    area, key = length(b * h, f"{unit}^2"), length(b * h // side, unit)
    return said_question(
        "The sides of a parallelogram are {p} and {q} long. The height on the side of {p} is {h}. "
        "Work out the height on the side of {q}.",
        t.divide(t.Bracket(t.times(first, height)), second),
        key,
        [
            Step("Find the area.", t.equals(t.times(first, height), area)),
            Step(
                "The other side times its height is the same area. Divide.",
                t.equals(t.divide(area, second), key),
            ),
        ],
        [
            (a.SUBTRACTED, b * h - side),
            (a.AREA_FOR_HEIGHT, b * h),
            (a.SAME_DIFFERENCE, h + b - side),
        ],
        ("heights", b, h),
        p=first,
        q=second,
        h=height,
    )


def _round(b: int, h: int) -> Draft:
    _, high, slant = _TRIPLES[h]
    unit = by_turns(("cm", "m"), b + h)
    area, height, side = length(b * high, f"{unit}^2"), length(high, unit), length(slant, unit)
    base, key = length(b, unit), length(2 * (b + slant), unit)
    found = t.divide(area, height)
    return said_question(
        "A parallelogram has an area of {area} and a height of {height}. "
        "Each of its slanted sides is {side} long. Work out its perimeter.",
        t.times(t.Int(2), t.Bracket(t.add(found, side))),
        key,
        [
            Step("Divide the area by the height to find the base.", t.equals(found, base)),
            Step("Add all four sides.", t.equals(t.add(base, side, base, side), key)),
        ],
        [
            (a.TWO_SIDES, b + slant),
            (a.HEIGHT_FOR_SIDE, 2 * (b + high)),
            (a.SUBTRACTED, 2 * (b * high - high + slant)),
        ],
        ("round", b, h),
        (2,),
        area=area,
        height=height,
        side=side,
    )
