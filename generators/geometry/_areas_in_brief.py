"""Short questions about areas of parallelograms, trapeziums and triangles, in words."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry import _areas as a
from generators.geometry._area_drafts import (
    TWO,
    area_in,
    keep_wide,
    shortened,
)
from generators.geometry._areas import length, unit_of
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _parallelogram(topic: Topic, tier: Tier, b: int, h: int) -> Draft:
    unit = unit_of(b + h)
    p, q, key = length(b, unit), length(h, unit), area_in(b * h, unit)
    return told(
        "A parallelogram has a base of {p} and a height of {q}. What is its area?",
        t.times(p, q),
        key,
        "quantity",
        [("Multiply the base by the height.", t.equals(t.times(p, q), key))],
        [(a.HALVED, Fraction(b * h, 2)), (a.ADDED, b + h)],
        ("parallelogram in brief", b, h),
        p=p,
        q=q,
    )


def _other_height(topic: Topic, tier: Tier, b: int, h: int, c: int) -> Draft:
    unit = unit_of(b + h)
    p, q, r = length(b, unit), length(h, unit), length(c, unit)
    key, area = length(Fraction(b * h, c), unit), area_in(b * h, unit)
    return told(
        "A parallelogram has sides {p} and {r}. The height on {p} is {q}. Find the other height.",
        t.divide(t.times(p, q), r),
        key,
        "quantity",
        [
            ("Find the area.", t.equals(t.times(p, q), area)),
            ("Divide by the other side.", t.equals(t.divide(area, r), key)),
        ],
        [
            (a.SAME_DIFFERENCE, h + b - c),
            (a.HALVED, shortened(Fraction(b * h, 2 * c))),
            (a.AREA_FOR_HEIGHT, b * h),
        ],
        ("other height", b, h, c),
        p=p,
        q=q,
        r=r,
    )


def _trapezium(topic: Topic, tier: Tier, top: int, bottom: int, high: int) -> Draft:
    unit = unit_of(top + bottom + high)
    p, q, h = (length(n, unit) for n in (top, bottom, high))
    both, key = length(top + bottom, unit), area_in(Fraction((top + bottom) * high, 2), unit)
    product = area_in((top + bottom) * high, unit)
    return told(
        "A trapezium has parallel sides of {p} and {q}. Its height is {h}. What is its area?",
        t.divide(t.times(t.Bracket(t.add(p, q)), h), TWO),
        key,
        "quantity",
        [
            ("Add the parallel sides.", t.equals(t.add(p, q), both)),
            ("Multiply by the height.", t.equals(t.times(both, h), product)),
            ("Halve.", t.equals(t.divide(product, TWO), key)),
        ],
        [
            (a.NOT_HALVED_SUM, (top + bottom) * high),
            (a.ONE_PARALLEL_SIDE, top * high),
            (a.ALL_MULTIPLIED, top * bottom * high),
        ],
        ("trapezium in brief", *sorted((top, bottom)), high),
        (2,),
        p=p,
        q=q,
        h=h,
    )


def _trapezium_height(topic: Topic, tier: Tier, top: int, bottom: int, high: int) -> Draft:
    unit = unit_of(top + bottom + high)
    p, q, key = (length(n, unit) for n in (top, bottom, high))
    area, twice = area_in(Fraction((top + bottom) * high, 2), unit), (top + bottom) * high
    both = length(top + bottom, unit)
    return told(
        "A trapezium of area {s} has parallel sides of {p} and {q}. What is its height?",
        t.divide(t.times(TWO, area), t.Bracket(t.add(p, q))),
        key,
        "quantity",
        [
            ("Double the area.", t.equals(t.times(TWO, area), area_in(twice, unit))),
            ("Add the parallel sides.", t.equals(t.add(p, q), both)),
            ("Divide.", t.equals(t.divide(area_in(twice, unit), both), key)),
        ],
        [
            (a.NOT_DOUBLED, Fraction(high, 2)),
            (a.SUBTRACTED, Fraction(twice, 2) - top - bottom),
        ],
        ("trapezium height", *sorted((top, bottom)), high),
        (2,),
        s=area,
        p=p,
        q=q,
    )


def _trapezium_side(topic: Topic, tier: Tier, top: int, bottom: int, high: int) -> Draft:
    unit = unit_of(top + bottom + high)
    p, key, h = (length(n, unit) for n in (top, bottom, high))
    area, twice = area_in(Fraction((top + bottom) * high, 2), unit), (top + bottom) * high
    both = length(top + bottom, unit)
    return told(
        "A trapezium of area {s} and height {h} has a parallel side of {p}. Find the other.",
        t.sub(t.divide(t.times(TWO, area), h), p),
        key,
        "quantity",
        [
            ("Double the area.", t.equals(t.times(TWO, area), area_in(twice, unit))),
            ("Divide by the height.", t.equals(t.divide(area_in(twice, unit), h), both)),
            ("Take away the side that is known.", t.equals(t.sub(both, p), key)),
        ],
        [
            (a.NOT_DOUBLED, shortened(Fraction(top + bottom, 2) - top)),
            (a.OTHER_SIDE_KEPT, top + bottom),
            (a.ONE_PARALLEL_SIDE, shortened(Fraction(twice, 2 * top))),
        ],
        ("trapezium side", top, bottom, high),
        (2,),
        s=area,
        h=h,
        p=p,
    )


def _triangle(topic: Topic, tier: Tier, b: int, h: int) -> Draft:
    unit = unit_of(b + h)
    p, q, key = length(b, unit), length(h, unit), area_in(Fraction(b * h, 2), unit)
    product = area_in(b * h, unit)
    return told(
        "A triangle has a base of {p} and a height of {q}. What is its area?",
        t.divide(t.times(p, q), TWO),
        key,
        "quantity",
        [
            ("Multiply the base by the height.", t.equals(t.times(p, q), product)),
            ("A triangle is half of that.", t.equals(t.divide(product, TWO), key)),
        ],
        [(a.NOT_HALVED, b * h), (a.ADDED, b + h)],
        ("triangle in brief", b, h),
        (2,),
        p=p,
        q=q,
    )


def _times_as_high(topic: Topic, tier: Tier, b: int, n: int) -> Draft:
    unit = unit_of(b + n)
    p, count, high = length(b, unit), t.Int(n), length(b * n, unit)
    key, product = area_in(Fraction(b * b * n, 2), unit), area_in(b * b * n, unit)
    return told(
        "A triangle is {n} times as high as its base is long. Its base is {p}. What is its area?",
        t.divide(t.times(p, t.Bracket(t.times(count, p))), TWO),
        key,
        "quantity",
        [
            ("Find the height.", t.equals(t.times(count, p), high)),
            ("Multiply the base by the height.", t.equals(t.times(p, high), product)),
            ("A triangle is half of that.", t.equals(t.divide(product, TWO), key)),
        ],
        [(a.NOT_HALVED, b * b * n), (a.ADDED, b + b * n)],
        ("times as high", b, n),
        (2,),
        p=p,
        n=count,
    )


def _keep_trapezium(top: int, bottom: int, high: int) -> bool:
    return top < bottom and (top + bottom) * high % 2 == 0 and high not in (2, top, bottom)


_THREE = {"top": range(3, 11, 2), "bottom": range(5, 17, 2), "high": range(3, 12)}

PARALLELOGRAMS = {
    Tier.SUPPORT: (
        Brief(_parallelogram, lambda b, h: keep_wide(b, h), {"b": range(6, 21), "h": range(4, 14)}),
    ),
    Tier.CHALLENGE: (
        Brief(
            _other_height,
            lambda b, h, c: h < c != b and 5 * b * h % c == 0 and h + b != c and b * h < c * b,
            {"b": range(6, 21, 2), "h": range(3, 13), "c": range(5, 21)},
        ),
    ),
}

TRAPEZIUMS = {
    Tier.SUPPORT: (Brief(_trapezium, _keep_trapezium, _THREE),),
    Tier.CORE: (
        Brief(
            _trapezium_height,
            lambda top, bottom, high: (
                _keep_trapezium(top, bottom, high) and (top + bottom) * (high - 2) > 2
            ),
            {"top": range(4, 13, 2), "bottom": range(6, 19, 3), "high": range(3, 13)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _trapezium_side,
            lambda top, bottom, high: _keep_trapezium(top, bottom, high) and bottom != 2 * top,
            {"top": range(4, 13, 2), "bottom": range(6, 19, 3), "high": range(3, 13)},
        ),
    ),
}

TRIANGLES = {
    Tier.SUPPORT: (
        Brief(
            _triangle,
            lambda b, h: b * h % 2 == 0 and b != h and b * h > 2 * (b + h),
            {"b": range(5, 21), "h": range(4, 14)},
        ),
    ),
    Tier.CORE: (
        Brief(_times_as_high, lambda b, n: b * n % 2 == 0, {"b": range(5, 23), "n": (2, 3, 4, 5)}),
    ),
}
