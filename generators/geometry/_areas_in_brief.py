"""Short questions about areas and lengths that are told in words, so that no figure is needed."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry import _areas as a
from generators.geometry._areas import length, unit_of
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

TWO = t.Int(2)


def _short(number: Fraction) -> Fraction | None:
    """Return a number of at most one decimal place, and None for another."""
    return number if (10 * number).denominator == 1 else None


def _area(size: Fraction | int, unit: str) -> t.Node:
    return length(size, f"{unit}^2")


def _rectangle(topic: Topic, tier: Tier, w: int, h: int) -> Draft:
    unit = unit_of(w + h)
    p, q, key = length(w, unit), length(h, unit), _area(w * h, unit)
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
    key, half = _area(w * h, unit), length(w + h, unit)
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


def _parallelogram(topic: Topic, tier: Tier, b: int, h: int) -> Draft:
    unit = unit_of(b + h)
    p, q, key = length(b, unit), length(h, unit), _area(b * h, unit)
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
    key, area = length(Fraction(b * h, c), unit), _area(b * h, unit)
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
            (a.HALVED, _short(Fraction(b * h, 2 * c))),
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
    both, key = length(top + bottom, unit), _area(Fraction((top + bottom) * high, 2), unit)
    product = _area((top + bottom) * high, unit)
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
    area, twice = _area(Fraction((top + bottom) * high, 2), unit), (top + bottom) * high
    both = length(top + bottom, unit)
    return told(
        "A trapezium of area {s} has parallel sides of {p} and {q}. What is its height?",
        t.divide(t.times(TWO, area), t.Bracket(t.add(p, q))),
        key,
        "quantity",
        [
            ("Double the area.", t.equals(t.times(TWO, area), _area(twice, unit))),
            ("Add the parallel sides.", t.equals(t.add(p, q), both)),
            ("Divide.", t.equals(t.divide(_area(twice, unit), both), key)),
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
    area, twice = _area(Fraction((top + bottom) * high, 2), unit), (top + bottom) * high
    both = length(top + bottom, unit)
    return told(
        "A trapezium of area {s} and height {h} has a parallel side of {p}. Find the other.",
        t.sub(t.divide(t.times(TWO, area), h), p),
        key,
        "quantity",
        [
            ("Double the area.", t.equals(t.times(TWO, area), _area(twice, unit))),
            ("Divide by the height.", t.equals(t.divide(_area(twice, unit), h), both)),
            ("Take away the side that is known.", t.equals(t.sub(both, p), key)),
        ],
        [
            (a.NOT_DOUBLED, _short(Fraction(top + bottom, 2) - top)),
            (a.OTHER_SIDE_KEPT, top + bottom),
            (a.ONE_PARALLEL_SIDE, _short(Fraction(twice, 2 * top))),
        ],
        ("trapezium side", top, bottom, high),
        (2,),
        s=area,
        h=h,
        p=p,
    )


def _triangle(topic: Topic, tier: Tier, b: int, h: int) -> Draft:
    unit = unit_of(b + h)
    p, q, key = length(b, unit), length(h, unit), _area(Fraction(b * h, 2), unit)
    product = _area(b * h, unit)
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
    key, product = _area(Fraction(b * b * n, 2), unit), _area(b * b * n, unit)
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


def _cut_out(topic: Topic, tier: Tier, w: int, h: int, s: int) -> Draft:
    unit = unit_of(w + h + s)
    p, q, c = (length(n, unit) for n in (w, h, s))
    full, gone, key = (_area(n, unit) for n in (w * h, s * s, w * h - s * s))
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
    large, small = _area((w + 2 * s) * (h + 2 * s), "m"), _area(w * h, "m")
    key = _area((w + 2 * s) * (h + 2 * s) - w * h, "m")
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
    first, second, key = (_area(n, unit) for n in (w * h, u * v, w * h + u * v))
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
            (a.TWO_SIDES, _short(Fraction(w + h, 4))),
            (a.AREA_FOR_PERIMETER, _short(Fraction(w * h, 4))),
        ],
        ("as far as square", w, h),
        (2, 4),
        p=p,
        q=q,
    )


def _keep_wide(w: int, h: int) -> bool:
    return h < w < 4 * h and w * h not in (w + h, 2 * (w + h))


def _keep_trapezium(top: int, bottom: int, high: int) -> bool:
    return top < bottom and (top + bottom) * high % 2 == 0 and high not in (2, top, bottom)


_SIDES = {"w": range(6, 21), "h": range(4, 14)}
_THREE = {"top": range(3, 11, 2), "bottom": range(5, 17, 2), "high": range(3, 12)}

RECTANGLES = {
    Tier.SUPPORT: (Brief(_rectangle, _keep_wide, _SIDES),),
    Tier.CHALLENGE: (Brief(_rectangle_from_edge, lambda w, h: _keep_wide(w, h) and w > 2, _SIDES),),
}
PARALLELOGRAMS = {
    Tier.SUPPORT: (
        Brief(
            _parallelogram, lambda b, h: _keep_wide(b, h), {"b": range(6, 21), "h": range(4, 14)}
        ),
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
    Tier.SUPPORT: (Brief(_around, _keep_wide, _SIDES),),
    Tier.CORE: (Brief(_width_from_edge, _keep_wide, {**_SIDES, "w": range(6, 27)}),),
    Tier.CHALLENGE: (
        Brief(_as_far_as_square, lambda w, h: h < w, {"w": range(6, 21), "h": range(4, 14)}),
    ),
}
