"""Perimeters of shapes that are drawn: equal sides with dashes, and sides without a number."""

from __future__ import annotations

from fractions import Fraction

from generators._corners import at, parallelogram_corners
from generators.geometry import _areas as a
from generators.geometry._areas import asked, length, shape_question, unit_of
from generators.geometry._rectilinear import cut, ell, tee
from itembank.figures.kinds.plane.polygon import Polygon
from itembank.items.item import Draft, Step
from itembank.notation import tree as t


def isosceles(p: int, q: int) -> Draft:
    """Return the question for the perimeter of an isosceles triangle."""
    unit = unit_of(p + q)
    figure = Polygon(
        at((0, 0), (100 * p, 0), (50 * p, round((q * q - p * p / 4) ** 0.5 * 100))),
        sides=(("AB", length(p, unit)), ("BC", length(q, unit))),
        equal=(("BC", "CA"),),
        accurate=False,
    )
    key = length(p + 2 * q, unit)
    base, side = length(p, unit), length(q, unit)
    return shape_question(
        figure,
        asked("perimeter", "triangle", p),
        key,
        [
            Step(
                "The sides with a dash are equal. Add all three sides.",
                t.equals(t.add(base, side, side), key),
            )
        ],
        [(a.SHOWN_SIDES, p + q), (a.AREA_FOR_PERIMETER, p * q)],
        ("isosceles", p, q),
    )


def parallelogram(p: int, q: int) -> Draft:
    """Return the question for the perimeter of a parallelogram."""
    unit = unit_of(p + q)
    figure = Polygon(
        parallelogram_corners(60 + p % 3 * 5, max(350, 1000 * q // p)),
        sides=(("AB", length(p, unit)), ("BC", length(q, unit))),
        equal=(("AB", "CD"), ("BC", "DA")),
        accurate=False,
    )
    return _two_pairs(figure, p, q, unit, "parallelogram")


def kite(p: int, q: int) -> Draft:
    """Return the question for the perimeter of a kite."""
    unit = unit_of(p + q)
    # Two sides q meet at the left, two sides p at the right; the width is less than twice q.
    half = Fraction(4 * q, 5)
    left, right = (
        round(100 * float(far**2 - half**2) ** 0.5) for far in (Fraction(q), Fraction(p))
    )
    up = round(100 * half)
    figure = Polygon(
        at((-left, 0), (0, -up), (right, 0), (0, up)),
        sides=(("AB", length(q, unit)), ("BC", length(p, unit))),
        equal=(("AB", "DA"), ("BC", "CD")),
        accurate=False,
    )
    return _two_pairs(figure, p, q, unit, "kite")


def _two_pairs(figure: Polygon, p: int, q: int, unit: str, name: str) -> Draft:
    first, second = length(p, unit), length(q, unit)
    key = length(2 * (p + q), unit)
    return shape_question(
        figure,
        asked("perimeter", name, p),
        key,
        [
            Step(
                "Sides with as many dashes are equal. Add all four sides.",
                t.equals(t.add(first, first, second, second), key),
            )
        ],
        [(a.SHOWN_SIDES, p + q), (a.AREA_FOR_PERIMETER, p * q)],
        (name, p, q),
    )


def ell_shape(p: int, q: int, c: int, d: int) -> Draft:
    """Return the question for the perimeter of an L of which two sides have no number."""
    unit = unit_of(p + q + c)
    figure = ell(p, q, c, d, unit, "1256", flip=(p + d) % 2 == 1)
    key = length(2 * (p + q), unit)
    across, up = p - c, q - d
    sides = [length(n, unit) for n in (p, d, across, up, c, q)]
    return shape_question(
        figure,
        asked("perimeter", "shape", p + c),
        key,
        [
            Step(
                "Find the level side that has no number.",
                t.equals(t.sub(length(p, unit), length(c, unit)), length(across, unit)),
            ),
            Step(
                "Find the upright side that has no number.",
                t.equals(t.sub(length(q, unit), length(d, unit)), length(up, unit)),
            ),
            Step("Add all six sides.", t.equals(t.add(*sides), key)),
        ],
        [
            (a.SHOWN_SIDES, p + d + c + q),
            (a.AREA_FOR_PERIMETER, p * d + c * up),
            (a.TWO_SIDES, p + q),
        ],
        ("L", p, q, c, d),
    )


def tee_shape(p: int, q: int, c: int, d: int) -> Draft:
    """Return the question for the perimeter of a T."""
    unit = unit_of(p + q + c)
    edge, up = (p - c) // 2, q - d
    figure = tee(p, q, c, d, unit, "1245")
    key = length(2 * (p + q), unit)
    sides = [length(n, unit) for n in (p, d, edge, up, c, up, edge, d)]
    return shape_question(
        figure,
        asked("perimeter", "shape", p + c),
        key,
        [
            Step(
                "The two shoulders are equal. Find one of them.",
                t.equals(
                    t.divide(t.Bracket(t.sub(length(p, unit), length(c, unit))), t.Int(2)),
                    length(edge, unit),
                ),
            ),
            Step("Add all eight sides.", t.equals(t.add(*sides), key)),
        ],
        [
            (a.SHOWN_SIDES, p + d + up + c),
            (a.AREA_FOR_PERIMETER, p * d + c * up),
            (a.TWO_SIDES, p + q),
        ],
        ("T", p, q, c, d),
    )


def shape_with_notch(p: int, q: int, c: int, d: int) -> Draft:
    """Return the question for the perimeter of a shape with a piece cut out."""
    unit = unit_of(p + q + c)
    edge, deep = (p - c) // 2, q - d
    figure = cut(p, q, c, d, unit, "1245")
    key = length(2 * (p + q + deep), unit)
    sides = [length(n, unit) for n in (p, q, edge, deep, c, deep, edge, q)]
    return shape_question(
        figure,
        asked("perimeter", "shape", p + c),
        key,
        [
            Step(
                "The two upper edges are equal. Find one of them.",
                t.equals(
                    t.divide(t.Bracket(t.sub(length(p, unit), length(c, unit))), t.Int(2)),
                    length(edge, unit),
                ),
            ),
            Step("Add all eight sides.", t.equals(t.add(*sides), key)),
        ],
        [
            (a.ROUND_RECTANGLE, 2 * (p + q)),
            (a.SHOWN_SIDES, p + q + deep + c),
            (a.AREA_FOR_PERIMETER, p * q - c * deep),
        ],
        ("cut", p, q, c, d),
    )
