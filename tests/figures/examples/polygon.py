"""Polygons at random: triangles of whole sides, right-angled, isosceles, composite, trapeziums."""

from __future__ import annotations

import math
import random
from fractions import Fraction

from itembank.figures.kinds.plane.polygon import Height, Polygon
from itembank.notation import tree as t
from itembank.notation.parse import parse

TRIPLES = ((3, 4, 5), (5, 12, 13), (8, 15, 17), (20, 21, 29))


def corners(*pairs: tuple[int, int]) -> tuple[tuple[t.Node, t.Node], ...]:
    """Return corners at whole numbers."""
    return tuple((t.num(x), t.num(y)) for x, y in pairs)


def cm(n: int) -> t.Node:
    """Return a length."""
    return t.Quantity(t.Int(n), "cm")


def example(chance: random.Random) -> Polygon:
    """Return a polygon, sound or not."""
    makers = (
        right_angled,
        by_root_or_sine,
        with_height,
        isosceles,
        ell,
        rectangle,
        trapezium,
        angled,
    )
    return chance.choice(makers)(chance)


def right_angled(chance: random.Random) -> Polygon:
    a, b, c = chance.choice(TRIPLES)
    k = chance.randrange(1, 4)
    sides = (("AB", cm(k * a)), ("BC", cm(k * c)), ("CA", cm(k * b)))
    kept = sides if chance.random() < 0.6 else (sides[0], sides[2])
    mirror = chance.choice((1, -1))
    return Polygon(
        corners((0, 0), (a * mirror, 0), (0, b)),
        lettered=chance.random() < 0.5,
        sides=kept,
        right="A",
    )


def by_root_or_sine(chance: random.Random) -> Polygon:
    """Return a right-angled triangle of which two lengths, or one and an angle, are given."""
    degrees = chance.randrange(30, 61)
    turned = math.radians(degrees)
    slope = chance.randrange(5, 21)
    legs = [Fraction(f(turned) * slope).limit_denominator(1000) for f in (math.cos, math.sin)]
    spots = ((t.Int(0), t.Int(0)), (t.frac(*legs[0].as_integer_ratio()), t.Int(0)))
    given = ("B", t.Quantity(t.Int(degrees), "°"))
    lettered = chance.random() < 0.5
    wanted = () if lettered else (("AC", t.Sym("x")),)
    figure = Polygon(
        (*spots, (t.Int(0), t.frac(*legs[1].as_integer_ratio()))),
        lettered=lettered,
        sides=(("BC", cm(slope)), *wanted),
        angles=(given,),
        right="A",
    )
    if chance.random() < 0.5:
        return figure
    a, b = chance.randrange(4, 12), chance.randrange(4, 12)
    return Polygon(
        corners((0, 0), (a, 0), (0, b)),
        lettered=lettered,
        sides=(("AB", cm(a)), ("CA", cm(b)), *((("BC", t.Sym("x")),) if not lettered else ())),
        right="A",
    )


def with_height(chance: random.Random) -> Polygon:
    base, high, at = chance.randrange(4, 15), chance.randrange(3, 9), chance.randrange(-3, 17)
    return Polygon(
        corners((0, 0), (base, 0), (at, high)),
        sides=(("AB", cm(base)),),
        height=Height("C", "AB", cm(high)),
        lettered=chance.random() < 0.5,
    )


def isosceles(chance: random.Random) -> Polygon:
    top = 2 * chance.randrange(15, 80)
    base = (180 - top) // 2
    wide, high = (6, 7) if top < 60 else (6, 4) if top < 90 else (8, 3)
    label = chance.choice((parse("x"), parse("x°"), parse("2x"), t.Quantity(t.Int(base), "°")))
    given = t.Quantity(t.Int(top), "°")
    return Polygon(
        corners((0, 0), (wide, 0), (wide // 2, high)),
        names=chance.choice(("", "PQR")),
        lettered=chance.random() < 0.5,
        angles=(("C", given), ("A", label)),
        equal=(("AC", "BC"),),
        accurate=False,
    )


def ell(chance: random.Random) -> Polygon:
    a, b = chance.randrange(6, 14), chance.randrange(5, 9)
    c, d = chance.randrange(2, a - 2), chance.randrange(2, b - 1)
    spots = ((0, 0), (a, 0), (a, d), (c, d), (c, b), (0, b))
    sides = (("AB", cm(a)), ("BC", cm(d)), ("DE", cm(b - d)), ("EF", cm(c)))
    more = chance.random() < 0.4
    return Polygon(
        corners(*spots),
        sides=(*sides, ("FA", cm(b))) if more else sides,
        right="ABCEF",
        lettered=chance.random() < 0.5,
    )


def rectangle(chance: random.Random) -> Polygon:
    a, b = chance.randrange(4, 15), chance.randrange(2, 8)
    return Polygon(
        corners((0, 0), (a, 0), (a, b), (0, b)),
        sides=(("AB", cm(a)), ("BC", cm(b))),
        right="ABCD",
        lettered=chance.random() < 0.5,
    )


def trapezium(chance: random.Random) -> Polygon:
    a, c, high = chance.randrange(8, 15), chance.randrange(3, 8), chance.randrange(3, 7)
    at = chance.randrange(0, 4)
    return Polygon(
        corners((0, 0), (a, 0), (at + c, high), (at, high)),
        sides=(("AB", cm(a)), ("CD", cm(c))),
        parallel=(("AB", "CD"),),
        height=Height("D", "AB", cm(high)) if at else None,
        lettered=chance.random() < 0.5,
    )


def angled(chance: random.Random) -> Polygon:
    """Return a parallelogram or quadrilateral with an angle to find."""
    given = chance.randrange(50, 75)
    label = chance.choice((parse("y"), parse("3x°"), parse("(2x+10)°")))
    lean = chance.randrange(2, 5)
    return Polygon(
        corners((0, 0), (10, 0), (10 + lean, 6), (lean, 6)),
        angles=(("A", t.Quantity(t.Int(given), "°")), ("B", label)),
        parallel=(("AB", "DC"), ("AD", "BC")),
        lettered=True,
        accurate=False,
    )
