"""Areas of triangles: base and height, a height outside, and a missing length.

England's programme of study for key stage 3 (2013) asks pupils to "derive and apply formulae to
calculate and solve problems involving perimeter and area of triangles, parallelograms, trapezia"
(from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._corners import at
from generators._turns import by_turns
from generators.geometry import _areas as a
from generators.geometry._areas import asked, length, said_question, shape_question, whole
from generators.geometry._areas_in_brief import TRIANGLES
from itembank.figures.kinds.plane.polygon import Height, Polygon
from itembank.items import kinds
from itembank.items.item import Draft, Step, Tier
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

# Sides at a right angle and the slanted one (Pythagorean triples), so that all lengths are whole.
_TRIPLES = (
    (3, 4, 5),
    (4, 3, 5),
    (5, 12, 13),
    (12, 5, 13),
    (8, 15, 17),
    (15, 8, 17),
    (6, 8, 10),
    (8, 6, 10),
    (9, 12, 15),
    (12, 9, 15),
    (16, 12, 20),
    (9, 40, 41),
    (20, 15, 25),
)
_PAIRS = tuple(
    (first, triple)
    for first in _TRIPLES
    for triple in _TRIPLES
    if first[1] == triple[1] and first[0] < triple[0]
)
"""Pairs with the same height: side by side they make a triangle with three whole sides."""


def _units(n: int) -> str:
    return by_turns(("cm", "m", "cm"), n)


def _support(kind: int, b: int, h: int) -> bool:
    if b * h % 2 or not 1 <= Fraction(b, h) <= 3 or b * h == 2 * (b + h):
        return False
    return 2 * b >= 3 * h and (h < 10 or b >= 2 * h) if kind else b % 2 == 0 or h % 3 != 1


def _core(kind: int, b: int, h: int) -> bool:
    if kind == 0:  # three sides and the height
        return b < len(_PAIRS) and h in (1, 2) and (b, h) != (0, 2)
    if kind == 1:  # right-angled, with its longest side
        return b < len(_TRIPLES) and gcd(*_TRIPLES[b]) == 1 and h < 7 and max(_TRIPLES[b]) * h < 60
    # a height outside
    far = h * 3 // 2
    return kind == 2 and b % 2 == 0 and 4 <= b <= 16 and 4 <= h <= 10 and far != b


def _challenge(kind: int, b: int, h: int) -> bool:
    if b * h % 2 or b == h:
        return False
    if kind == 2:  # as large as a rectangle
        return b % 2 == 0 and (b + h) % 3 != 0 and b > 4
    return (b + h) % 2 == kind


@register
class AreaOfTriangles(Topic):
    """Half of base times height."""

    id = "geometry.area-of-triangles"
    title = "Area of triangles"
    statements = ("geometry.formulae",)
    misconceptions = (
        *(a.NOT_HALVED, a.SLANT_USED, a.PERIMETER_FOR_AREA, a.ADDED, a.NOT_DOUBLED),
        *(a.SUBTRACTED, a.HALVED_TWICE),
    )
    prerequisites = ("geometry.area-of-rectangles",)
    spaces = {
        Tier.SUPPORT: Space(_support, kind=(0, 1), b=range(5, 25), h=range(3, 16)),
        Tier.CORE: Space(_core, kind=range(3), b=range(17), h=range(1, 11)),
        Tier.CHALLENGE: Space(_challenge, kind=range(3), b=range(4, 25), h=range(3, 16)),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.area-of-triangles",
        kinds.working_goes_wrong(
            {
                a.NOT_HALVED: (e.cut_short,),
                a.NOT_DOUBLED: (e.left_out, e.everywhere(e.left_out)),
                a.HALVED_TWICE: (e.everywhere(e.halved),),
            }
        ),
    )
    spare = "few triangles have whole sides and a whole height"
    spaces = with_brief(spaces, TRIANGLES)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, b, h = values
        if tier is Tier.SUPPORT:
            return _drawn(kind, b, h)
        if tier is Tier.CORE:
            return (_three_sides, _longest_side, _outside)[kind](b, h)
        return (_height, _base, _same_area)[kind](b, h)


def _steps(base: t.Node, high: t.Node, key: t.Node, product: t.Node) -> list[Step]:
    return [
        Step("Multiply the base by the height.", t.equals(t.times(base, high), product)),
        Step("A triangle is half of that.", t.equals(t.divide(product, t.Int(2)), key)),
    ]


def _drawn(kind: int, b: int, h: int) -> Draft:
    unit = _units(b + h)
    base, high = length(b, unit), length(h, unit)
    if kind == 0:  # right-angled
        corners = at((0, 0), (b, 0), (0 if h % 2 else b, h))
        upright = "CA" if h % 2 else "BC"
        figure = Polygon(corners, sides=(("AB", base), (upright, high)), right="AB"[h % 2 == 0])
    else:
        along = b * (2 + b % 3) // 6
        figure = Polygon(
            at((0, 0), (b, 0), (max(1, along), h)),
            sides=(("AB", base),),
            height=Height("C", "AB", high),
        )
    key = length(b * h // 2, f"{unit}^2")
    return shape_question(
        figure,
        asked("area", "triangle", b),
        key,
        _steps(base, high, key, length(b * h, f"{unit}^2")),
        [(a.NOT_HALVED, b * h), (a.ADDED, b + h)],
        (kind, b, h),
    )


def _three_sides(b: int, h: int) -> Draft:
    (p, high, s), (q, _, r) = (tuple(h * n for n in triple) for triple in _PAIRS[b])
    unit = _units(b + h)
    base = p + q
    left, right = (s, r), (p, q)
    figure = Polygon(
        at((0, 0), (base, 0), (right[0], high)),
        sides=(
            ("AB", length(base, unit)),
            ("BC", length(left[1], unit)),
            ("CA", length(left[0], unit)),
        ),
        height=Height("C", "AB", length(high, unit)),
    )
    area = Fraction(base * high, 2)
    key = length(area, f"{unit}^2")
    return shape_question(
        figure,
        asked("area", "triangle", b),
        key,
        _steps(length(base, unit), length(high, unit), key, length(base * high, f"{unit}^2")),
        [
            (a.NOT_HALVED, base * high),
            (a.SLANT_USED, Fraction(base * s, 2)),
            (a.PERIMETER_FOR_AREA, base + s + r),
        ],
        ("three", b, h),
    )


def _longest_side(b: int, h: int) -> Draft:
    p, q, r = (h * n for n in _TRIPLES[b])
    unit = _units(b + h)
    figure = Polygon(
        at((0, 0), (p, 0), (0, q)),
        sides=(("AB", length(p, unit)), ("BC", length(r, unit)), ("CA", length(q, unit))),
        right="A",
    )
    key = length(Fraction(p * q, 2), f"{unit}^2")
    return shape_question(
        figure,
        asked("area", "triangle", b),
        key,
        _steps(length(p, unit), length(q, unit), key, length(p * q, f"{unit}^2")),
        [
            (a.NOT_HALVED, p * q),
            (a.SLANT_USED, Fraction(p * r, 2)),
            (a.PERIMETER_FOR_AREA, p + q + r),
        ],
        ("longest", b, h),
    )


def _outside(b: int, h: int) -> Draft:
    unit = _units(b + h)
    figure = Polygon(
        at((0, 0), (b, 0), (b + h // 2 + 1, h)),
        sides=(("AB", length(b, unit)),),
        height=Height("C", "AB", length(h, unit)),
    )
    key = length(b * h // 2, f"{unit}^2")
    return shape_question(
        figure,
        asked("area", "triangle", b),
        key,
        _steps(length(b, unit), length(h, unit), key, length(b * h, f"{unit}^2")),
        [
            (a.NOT_HALVED, b * h),
            (a.ADDED, b + h),
            (a.SLANT_USED, Fraction((b + h // 2 + 1) * h, 2)),
        ],
        ("outside", b, h),
    )


def _height(b: int, h: int) -> Draft:
    return _missing(b, h, "base", "height")


def _base(b: int, h: int) -> Draft:
    return _missing(h, b, "height", "base")


def _missing(known: int, wanted: int, first: str, other: str) -> Draft:
    unit = _units(known + wanted)
    area = length(Fraction(known * wanted, 2), f"{unit}^2")
    side, key = length(known, unit), length(wanted, unit)
    doubled = t.times(t.Int(2), area)
    product = length(known * wanted, f"{unit}^2")
    return said_question(
        f"A triangle has an area of {{area}} and a {first} of {{side}}. Work out its {other}.",
        t.divide(doubled, side),
        key,
        [
            Step("Base times height is twice the area.", t.equals(doubled, product)),
            Step(f"Divide by the {first}.", t.equals(t.divide(product, side), key)),
        ],
        [
            (a.NOT_DOUBLED, Fraction(wanted, 2) if wanted % 2 == 0 else None),
            (a.SUBTRACTED, Fraction(known * wanted, 2) - known),
            (a.HALVED_TWICE, whole(wanted, 4)),
            (a.NOT_SHARED, known * wanted),
        ],
        (first, known, wanted),
        (2,),
        area=area,
        side=side,
    )


def _same_area(b: int, h: int) -> Draft:
    """Return a triangle as large as a rectangle h by b ÷ 2; its height is asked for."""
    unit = _units(b + h)
    first, second = length(b // 2, unit), length(2 * h, unit)
    base, key = length(b, unit), length(2 * h, unit)
    area = length(b * h, f"{unit}^2")
    doubled = t.times(t.Int(2), first, second)
    return said_question(
        "A triangle has the same area as a rectangle that is {p} by {q}. "
        "The base of the triangle is {base}. Work out its height.",
        t.divide(doubled, base),
        key,
        [
            Step("Find the area of the rectangle.", t.equals(t.times(first, second), area)),
            Step(
                "Base times height of the triangle is twice that.",
                t.equals(t.times(t.Int(2), area), length(2 * b * h, f"{unit}^2")),
            ),
            Step(
                "Divide by the base.", t.equals(t.divide(length(2 * b * h, f"{unit}^2"), base), key)
            ),
        ],
        [(a.NOT_DOUBLED, h), (a.SUBTRACTED, b * h - b), (a.HALVED_TWICE, whole(h, 2))],
        ("same", b, h),
        (2,),
        p=first,
        q=second,
        base=base,
    )
