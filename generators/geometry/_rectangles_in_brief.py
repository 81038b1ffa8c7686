"""Short questions about rectangles and shapes made of them, in words: areas and perimeters."""

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


def _rectangle(topic: Topic, tier: Tier, w: int, h: int) -> Draft:
    unit = unit_of(w + h)
    p, q, key = length(w, unit), length(h, unit), area_in(w * h, unit)
    return told(
        "A rectangle is {p} long and {q} wide. What is its area?",
        t.times(p, q),
        key,
        "quantity",
        [("Multiply the length by the width.", t.equals(t.times(p, q), key))],
        [(a.PERIMETER_FOR_AREA, 2 * (w + h)), (a.ADDED, w + h)],
        ("rectangle in brief", w, h),
        p=p,
        q=q,
    )


def _rectangle_from_edge(topic: Topic, tier: Tier, w: int, h: int) -> Draft:
    unit = unit_of(w + h)
    around, p, q = length(2 * (w + h), unit), length(w, unit), length(h, unit)
    key, half = area_in(w * h, unit), length(w + h, unit)
    return told(
        "A rectangle has a perimeter of {r} and a length of {p}. What is its area?",
        t.times(p, t.Bracket(t.sub(t.divide(around, TWO), p))),
        key,
        "quantity",
        [
            ("Length and width are half the perimeter.", t.equals(t.divide(around, TWO), half)),
            ("Find the width.", t.equals(t.sub(half, p), q)),
            ("Multiply the length by the width.", t.equals(t.times(p, q), key)),
        ],
        [
            (a.ONE_SIDE_TAKEN, w * (w + 2 * h)),
            (a.NOT_SHARED, w * 2 * h),
            (a.AREA_AS_PERIMETER, w * 2 * (w + h)),
        ],
        ("rectangle from edge", w, h),
        (2,),
        r=around,
        p=p,
    )


def _cut_out(topic: Topic, tier: Tier, w: int, h: int, s: int) -> Draft:
    unit = unit_of(w + h + s)
    p, q, c = (length(n, unit) for n in (w, h, s))
    full, gone, key = (area_in(n, unit) for n in (w * h, s * s, w * h - s * s))
    return told(
        "A square of side {c} is cut out of a rectangle {p} by {q}. What area is left?",
        t.sub(t.times(p, q), t.times(c, c)),
        key,
        "quantity",
        [
            ("Find the area of the rectangle.", t.equals(t.times(p, q), full)),
            ("Find the area of the square.", t.equals(t.times(c, c), gone)),
            ("Subtract.", t.equals(t.sub(full, gone), key)),
        ],
        [(a.WHOLE_RECTANGLE, w * h), (a.PIECE_ADDED, w * h + s * s), (a.ONE_PART, s * s)],
        ("cut out", w, h, s),
        c=c,
        p=p,
        q=q,
    )


def _path(topic: Topic, tier: Tier, w: int, h: int, s: int) -> Draft:
    p, q, c = (length(n, "m") for n in (w, h, s))
    long, wide = length(w + 2 * s, "m"), length(h + 2 * s, "m")
    large, small = area_in((w + 2 * s) * (h + 2 * s), "m"), area_in(w * h, "m")
    key = area_in((w + 2 * s) * (h + 2 * s) - w * h, "m")
    twice = t.times(TWO, c)
    return told(
        "A path {c} wide goes all round a lawn {p} by {q}. What is the area of the path?",
        t.sub(
            t.times(t.Bracket(t.add(p, twice)), t.Bracket(t.add(q, twice))),
            t.times(p, q),
        ),
        key,
        "quantity",
        [
            ("Find how long it is with the path.", t.equals(t.add(p, twice), long)),
            ("Find how wide it is with the path.", t.equals(t.add(q, twice), wide)),
            ("Find the area with the path.", t.equals(t.times(long, wide), large)),
            ("Find the area of the lawn.", t.equals(t.times(p, q), small)),
            ("Subtract.", t.equals(t.sub(large, small), key)),
        ],
        [
            (a.ONE_EDGE, (w + s) * (h + s) - w * h),
            (a.WHOLE_RECTANGLE, (w + 2 * s) * (h + 2 * s)),
        ],
        ("path", w, h, s),
        (2,),
        c=c,
        p=p,
        q=q,
    )


def _two_rectangles(topic: Topic, tier: Tier, w: int, h: int, u: int, v: int) -> Draft:
    unit = unit_of(w + h + u + v)
    p, q, r, s = (length(n, unit) for n in (w, h, u, v))
    first, second, key = (area_in(n, unit) for n in (w * h, u * v, w * h + u * v))
    return told(
        "A shape is made of rectangles {p} by {q} and {r} by {s}. What is its area?",
        t.add(t.times(p, q), t.times(r, s)),
        key,
        "quantity",
        [
            ("Find the area of one part.", t.equals(t.times(p, q), first)),
            ("Find the area of the other.", t.equals(t.times(r, s), second)),
            ("Add.", t.equals(t.add(first, second), key)),
        ],
        [(a.ONE_PART, w * h), (a.PERIMETER_FOR_AREA, 2 * (w + h + u + v))],
        ("two rectangles", *sorted(((w, h), (u, v)))),
        p=p,
        q=q,
        r=r,
        s=s,
    )


def _around(topic: Topic, tier: Tier, w: int, h: int) -> Draft:
    unit = unit_of(w + h)
    p, q, both, key = (length(n, unit) for n in (w, h, w + h, 2 * (w + h)))
    return told(
        "A rectangle is {p} long and {q} wide. What is its perimeter?",
        t.times(TWO, t.Bracket(t.add(p, q))),
        key,
        "quantity",
        [
            ("Add the length and the width.", t.equals(t.add(p, q), both)),
            ("There are two of each: double.", t.equals(t.times(TWO, both), key)),
        ],
        [(a.TWO_SIDES, w + h), (a.AREA_FOR_PERIMETER, w * h)],
        ("around in brief", w, h),
        (2,),
        p=p,
        q=q,
    )


def _width_from_edge(topic: Topic, tier: Tier, w: int, h: int) -> Draft:
    unit = unit_of(w + h)
    around, p, half, key = (length(n, unit) for n in (2 * (w + h), w, w + h, h))
    return told(
        "A rectangle has a perimeter of {r} and a length of {p}. What is its width?",
        t.sub(t.divide(around, TWO), p),
        key,
        "quantity",
        [
            ("Length and width are half the perimeter.", t.equals(t.divide(around, TWO), half)),
            ("Take the length away.", t.equals(t.sub(half, p), key)),
        ],
        [(a.ONE_SIDE_TAKEN, w + 2 * h), (a.NOT_SHARED, 2 * h)],
        ("width from edge", w, h),
        (2,),
        r=around,
        p=p,
    )


def _as_far_as_square(topic: Topic, tier: Tier, w: int, h: int) -> Draft:
    unit = unit_of(w + h)
    p, q, both, around = (length(n, unit) for n in (w, h, w + h, 2 * (w + h)))
    key = length(Fraction(w + h, 2), unit)
    return told(
        "A square has the same perimeter as a rectangle {p} by {q}. How long is its side?",
        t.divide(t.times(TWO, t.Bracket(t.add(p, q))), t.Int(4)),
        key,
        "quantity",
        [
            ("Add the length and the width.", t.equals(t.add(p, q), both)),
            ("Double it for the perimeter.", t.equals(t.times(TWO, both), around)),
            ("A square has 4 equal sides.", t.equals(t.divide(around, t.Int(4)), key)),
        ],
        [
            (a.NOT_SHARED, 2 * (w + h)),
            (a.TWO_SIDES, shortened(Fraction(w + h, 4))),
            (a.AREA_FOR_PERIMETER, shortened(Fraction(w * h, 4))),
        ],
        ("as far as square", w, h),
        (2, 4),
        p=p,
        q=q,
    )


_SIDES = {"w": range(6, 21), "h": range(4, 14)}

RECTANGLES = {
    Tier.SUPPORT: (Brief(_rectangle, keep_wide, _SIDES),),
    Tier.CHALLENGE: (Brief(_rectangle_from_edge, lambda w, h: keep_wide(w, h) and w > 2, _SIDES),),
}

COMPOUND = {
    Tier.SUPPORT: (
        Brief(
            _cut_out,
            lambda w, h, s: s + 1 < h < w and w * h != 2 * s * s,
            {"w": range(7, 17), "h": range(5, 11, 2), "s": (2, 3, 4)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _two_rectangles,
            lambda w, h, u, v: v < u < w and w * h + u * v != 2 * (w + h + u + v) != w * h,
            {"w": (7, 8, 9, 12), "h": (3, 4, 5), "u": (5, 6, 10, 11), "v": (2, 3, 4)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _path,
            lambda w, h, s: h < w,
            {
                "w": (25, 26, 27, 28, 30, 32, 33, 35, 36, 40),
                "h": (9, 13, 16, 17, 19),
                "s": (1, 2, 3),
            },
        ),
    ),
}

PERIMETERS = {
    Tier.SUPPORT: (Brief(_around, keep_wide, _SIDES),),
    Tier.CORE: (Brief(_width_from_edge, keep_wide, {**_SIDES, "w": range(6, 27)}),),
    Tier.CHALLENGE: (
        Brief(_as_far_as_square, lambda w, h: h < w, {"w": range(6, 21), "h": range(4, 14)}),
    ),
}
