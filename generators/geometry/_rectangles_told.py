"""Rectangles and boxes in few words: perimeters, what is left of an area, surfaces."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _areas as a
from generators.geometry import _solid_mistakes as m
from generators.geometry._areas import length, said_question
from itembank.items.item import Draft, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _sides(p: int, q: int) -> bool:
    apart = p > q and len({2 * (p + q), p + q, p * q}) == 3
    return apart and (p + 2 * q) % 3 == 0


def _back(p: int, q: int) -> bool:
    around = 2 * (p + q)
    return p != q and len({q, around - p, around - 2 * p}) == 3 and (p + q) % 3 == 0


def _square(p: int, q: int) -> bool:
    """Keep rectangles whose perimeter is that of a square with a whole side."""
    return p - q > 1 and (p + q) % 2 == 0 and len({(p + q) // 2, p * q, p + q}) == 3


def _hole(p: int, q: int, c: int, d: int) -> bool:
    inside = c < p - 1 and d < q - 1 and c != d and p != q
    return inside and (p + q + c + 2 * d) % 5 == 0


def _house(s: int, h: int) -> bool:
    total = s * s + Fraction(s * h, 2)
    return total.denominator == 1 and len({total, s * s + s * h, Fraction(s * s)}) == 3


def _path(p: int, q: int, w: int) -> bool:
    key = (p + 2 * w) * (q + 2 * w) - p * q
    wrong = {key, (p + w) * (q + w) - p * q, (p + 2 * w) * (q + 2 * w)}
    return p > q and len(wrong) == 3 and (p + q + w) % 3 == 0


def _box(p: int, q: int, r: int) -> bool:
    half = p * q + p * r + q * r
    apart = p > q > 1 and len({p, q, r}) > 1
    return apart and len({2 * half, half, p * q * r}) == 3 and (p + 2 * q + r) % 5 == 0


def _open(p: int, q: int, r: int) -> bool:
    half = p * q + p * r + q * r
    right = 2 * half - p * q
    return p > q and len({right, 2 * half, half, p * q * r}) == 4 and (p + 2 * q + r) % 5 == 0


def _around(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the perimeter of a rectangle."""
    first, second, key = length(p, "cm"), length(q, "cm"), length(2 * (p + q), "cm")
    return said_question(
        by_turns(
            (
                "A rectangle is {p} long and {q} wide. What is its perimeter?",
                "What is the perimeter of a rectangle that is {p} by {q}?",
            ),
            p,
        ),
        t.times(t.Int(2), t.Bracket(t.add(first, second))),
        key,
        [Step("Add all four sides.", t.equals(t.add(first, second, first, second), key))],
        [(a.TWO_SIDES, p + q), (a.AREA_FOR_PERIMETER, p * q)],
        ("told around", p, q),
        (2,),
        p=first,
        q=second,
    )


def _width(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the width of a rectangle from its perimeter and its length."""
    around, first, key = length(2 * (p + q), "cm"), length(p, "cm"), length(q, "cm")
    rest = t.sub(around, t.times(t.Int(2), first))
    left = length(2 * q, "cm")
    return said_question(
        by_turns(
            (
                "A rectangle has a perimeter of {a}. It is {p} long. How wide is it?",
                "A rectangle is {p} long, and its perimeter is {a}. What is its width?",
            ),
            p,
        ),
        t.divide(t.Bracket(rest), t.Int(2)),
        key,
        [
            Step("Two of the sides are known: take both away.", t.equals(rest, left)),
            Step("Share the rest between the other two.", t.equals(t.divide(left, t.Int(2)), key)),
        ],
        [(a.ONE_SIDE_TAKEN, 2 * (p + q) - p), (a.NOT_SHARED, 2 * q)],
        ("told width", p, q),
        (2,),
        a=around,
        p=first,
    )


def _side_of_square(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the side of a square that has the perimeter of a rectangle."""
    first, second = length(p, "cm"), length(q, "cm")
    around, key = length(2 * (p + q), "cm"), length((p + q) // 2, "cm")
    total = t.times(t.Int(2), t.Bracket(t.add(first, second)))
    return said_question(
        by_turns(
            (
                "A square has the same perimeter as a rectangle of {p} by {q}. "
                "How long is its side?",
                "A rectangle is {p} by {q}. A square has the same perimeter. What is its side?",
            ),
            p,
        ),
        t.divide(total, t.Int(4)),
        key,
        [
            Step("Find the perimeter.", t.equals(total, around)),
            Step("Share it among the four sides.", t.equals(t.divide(around, t.Int(4)), key)),
        ],
        [(a.NOT_SHARED, 2 * (p + q)), (a.TWO_SIDES, p + q)],
        ("told square", p, q),
        (2, 4),
        p=first,
        q=second,
    )


def _left(topic: Topic, tier: Tier, p: int, q: int, c: int, d: int) -> Draft:
    """Return what is left of a rectangle without a smaller one."""
    sides = [length(v, "cm") for v in (p, q, c, d)]
    whole, piece = t.times(*sides[:2]), t.times(*sides[2:])
    areas = [length(v, "cm^2") for v in (p * q, c * d, p * q - c * d)]
    return said_question(
        by_turns(
            (
                "A piece of {c} by {d} is cut from a rectangle of {p} by {q}. What area is left?",
                "A card of {p} by {q} has a hole of {c} by {d}. What is the area of the card?",
            ),
            p + q,
        ),
        t.sub(whole, piece),
        areas[2],
        [
            Step("Find the area of the whole.", t.equals(whole, areas[0])),
            Step("Find the area that is gone.", t.equals(piece, areas[1])),
            Step("Subtract.", t.equals(t.sub(areas[0], areas[1]), areas[2])),
        ],
        [(a.WHOLE_RECTANGLE, p * q), (a.PIECE_ADDED, p * q + c * d)],
        ("told hole", p, q, c, d),
        p=sides[0],
        q=sides[1],
        c=sides[2],
        d=sides[3],
    )


def _roofed(topic: Topic, tier: Tier, s: int, h: int) -> Draft:
    """Return the area of a square and a triangle on one of its sides."""
    side, high = length(s, "cm"), length(h, "cm")
    square, both = t.times(side, side), t.times(side, high)
    half = t.divide(both, t.Int(2))
    total = s * s + s * h // 2
    areas = [length(v, "cm^2") for v in (s * s, s * h // 2, total)]
    return said_question(
        by_turns(
            (
                "A triangle {h} high stands on a square of side {s}. What is their total area?",
                "On a square of side {s} stands a triangle {h} high. What is the whole area?",
            ),
            s,
        ),
        t.add(square, half),
        areas[2],
        [
            Step("Find the area of the square.", t.equals(square, areas[0])),
            Step("The triangle has the side as its base.", t.equals(half, areas[1])),
            Step("Add.", t.equals(t.add(areas[0], areas[1]), areas[2])),
        ],
        [(a.NOT_HALVED, s * s + s * h), (a.ONE_PART, s * s)],
        ("told roof", s, h),
        (2,),
        s=side,
        h=high,
    )


def _round(topic: Topic, tier: Tier, p: int, q: int, w: int) -> Draft:
    """Return the area of a path round a lawn."""
    sides = [length(v, "m") for v in (p, q, w)]
    long, wide = p + 2 * w, q + 2 * w
    outer = t.times(length(long, "m"), length(wide, "m"))
    areas = [length(v, "m^2") for v in (long * wide, p * q, long * wide - p * q)]
    double = t.times(t.Int(2), sides[2])
    target = t.sub(
        t.times(t.Bracket(t.add(sides[0], double)), t.Bracket(t.add(sides[1], double))),
        t.times(sides[0], sides[1]),
    )
    return said_question(
        by_turns(
            (
                "A lawn is {p} by {q}. A path {w} wide goes all round it. What is the path's area?",
                "A {p} by {q} pool has a {w} wide edge all round it. What is the area of the edge?",
            ),
            p + q,
        ),
        target,
        areas[2],
        [
            Step(
                f"With the strip on both sides it is {long} m by {wide} m.",
                t.equals(outer, areas[0]),
            ),
            Step("Find the area inside.", t.equals(t.times(sides[0], sides[1]), areas[1])),
            Step("Subtract.", t.equals(t.sub(areas[0], areas[1]), areas[2])),
        ],
        [
            (a.ONE_EDGE, (p + w) * (q + w) - p * q),
            (a.WHOLE_RECTANGLE, long * wide),
        ],
        ("told path", p, q, w),
        (2,),
        p=sides[0],
        q=sides[1],
        w=sides[2],
    )


def _surface(topic: Topic, tier: Tier, p: int, q: int, r: int) -> Draft:
    """Return the surface area of a cuboid, or at the core of an open box."""
    lidless = tier is not Tier.SUPPORT
    edges = [length(v, "cm") for v in (p, q, r)]
    pairs = [t.times(edges[n], edges[k]) for n, k in ((0, 1), (0, 2), (1, 2))]
    sizes = (p * q, p * r, q * r)
    half = sum(sizes)
    doubled = t.times(t.Int(2), t.Bracket(t.add(*pairs)))
    if not lidless:
        key = length(2 * half, "cm^2")
        steps = [
            Step(
                "Find the three different faces and add.",
                t.equals(t.add(*pairs), length(half, "cm^2")),
            ),
            Step("Each is there twice.", t.equals(t.times(t.Int(2), length(half, "cm^2")), key)),
        ]
        return said_question(
            by_turns(
                (
                    "A cuboid is {p} by {q} by {r}. What is its surface area?",
                    "What is the surface area of a box that is {p} by {q} by {r}?",
                ),
                p + q,
            ),
            doubled,
            key,
            steps,
            [(m.OPPOSITE_FORGOTTEN, half), (m.VOLUME_FOR_SURFACE, p * q * r)],
            ("told cuboid", p, q, r),
            (2,),
            p=edges[0],
            q=edges[1],
            r=edges[2],
        )
    key = length(2 * half - p * q, "cm^2")
    all_six, base = length(2 * half, "cm^2"), length(p * q, "cm^2")
    return said_question(
        "An open box is {p} long, {q} wide and {r} high. What is the area of its five faces?",
        t.sub(doubled, pairs[0]),
        key,
        [
            Step("With a lid there are two of each face.", t.equals(doubled, all_six)),
            Step("The lid is as large as the base.", t.equals(pairs[0], base)),
            Step("Take the lid away.", t.equals(t.sub(all_six, base), key)),
        ],
        [(m.LID_COUNTED, 2 * half), (m.OPPOSITE_FORGOTTEN, half)],
        ("told open", p, q, r),
        (2,),
        p=edges[0],
        q=edges[1],
        r=edges[2],
    )


def with_perimeters(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of perimeters with rectangles told in few words at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(_around, _sides, p=range(3, 28), q=range(2, 15)),
        Tier.CORE: spaces[Tier.CORE].also(_width, _back, p=range(4, 25), q=range(3, 20)),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _side_of_square, _square, p=range(5, 27), q=range(2, 18)
        ),
    }


def with_areas(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of compound areas with shapes told in few words at their ends."""
    return {
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            _left, _hole, p=range(5, 13), q=range(4, 11), c=range(2, 6), d=range(2, 6)
        ),
        Tier.CORE: spaces[Tier.CORE].also(_roofed, _house, s=range(3, 17), h=range(2, 14)),
        Tier.CHALLENGE: spaces[Tier.CHALLENGE].also(
            _round, _path, p=range(5, 19), q=range(3, 15), w=range(1, 4)
        ),
    }


def with_surfaces(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of surfaces with boxes told in few words at their ends."""
    edges = {"p": range(3, 13), "q": range(2, 9), "r": range(2, 10)}
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(_surface, _box, **edges),
        Tier.CORE: spaces[Tier.CORE].also(_surface, _open, **edges),
    }
