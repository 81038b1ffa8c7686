"""Geometry against classical values: tables, theorems and problems of old mathematics."""

from __future__ import annotations

import pytest

from itembank.figures.figure import Reading, read
from itembank.figures.kinds.grid.coordinate_grid import CoordinateGrid, GridShape
from itembank.figures.kinds.plane.angles import Angles
from itembank.figures.kinds.plane.polygon import Height, Polygon
from itembank.figures.kinds.symmetry.cut_polygon import CutPolygon
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.proof.measured.measure import disagreement, measured

# Interior angles of regular polygons: a table in any handbook (from memory). They follow from
# Euclid, Elements I.32: n angles make 2n − 4 right angles.
INTERIOR = {5: 108, 6: 120, 8: 135, 9: 140, 10: 144, 12: 150, 15: 156, 18: 160, 20: 162, 36: 170}


def items(name: str, tier: Tier) -> list[Item]:
    return list(find_topic(name).walk(tier))


def test_regular_polygons_have_the_angles_of_the_table() -> None:
    by_twin = {item.twin[1:]: item for item in items("geometry.polygon-angles", Tier.CORE)}
    back = {item.twin[1:]: item for item in items("geometry.polygon-angles", Tier.CHALLENGE)}
    for sides, interior in INTERIOR.items():
        assert line(by_twin["interior", sides].key) == f"{interior}°"
        assert line(by_twin["sides", sides].key) == str(sides)
        if sides != 6:
            assert line(back["from interior", sides].key) == str(sides)


def spots(*pairs: tuple[int, int]) -> tuple[tuple[t.Node, t.Node], ...]:
    return tuple((t.num(x), t.num(y)) for x, y in pairs)


@pytest.mark.parametrize(
    ("figure", "area"),
    [
        # Rhind papyrus, problem 51: a triangle of 10 khet and 4 khet has 20 setat (from memory).
        (
            Polygon(
                spots((0, 0), (10, 0), (0, 4)),
                sides=(("AB", t.Int(10)), ("CA", t.Int(4))),
                right="A",
            ),
            "20",
        ),
        # Problem 52: a trapezium of 6 and 4 khet, and 20 across, has 100 setat (from memory).
        (
            Polygon(
                spots((0, 0), (20, 0), (20, 4), (0, 6)),
                sides=(("BC", t.Int(4)), ("DA", t.Int(6)), ("AB", t.Int(20))),
                right="AB",
                parallel=(("BC", "AD"),),
            ),
            "100",
        ),
        # Euclid, Elements I.41 with I.47: the parallelogram on the same base is twice a triangle.
        (
            Polygon(
                spots((0, 0), (14, 0), (19, 12), (5, 12)),
                sides=(("AB", t.Int(14)), ("BC", t.Int(13))),
                parallel=(("AB", "DC"), ("AD", "BC")),
                height=Height("D", "AB", t.Int(12)),
            ),
            "168",
        ),
    ],
)
def test_areas_of_old_problems(figure: Polygon, area: str) -> None:
    assert line(read(figure, Reading("area"))) == area
    assert disagreement(figure) == ""


def test_euclid_on_lines_and_triangles() -> None:
    """Elements I.13 (on a line), I.15 (opposite), I.29 (parallels), I.5 and I.32 (isosceles)."""
    for size in (30, 65, 110):
        given = parse(f"{size}°")
        for figure, found in (
            (Angles("line", (size, 180 - size), ((1, given), (2, t.Sym("x")))), 180 - size),
            (Angles("crossing", (size,), ((1, given), (3, t.Sym("x")))), size),
            (
                Angles("parallel", (size,), ((4, parse(f"{180 - size}°")), (6, t.Sym("x")))),
                180 - size,
            ),
            (Angles("parallel", (size,), ((3, given), (6, t.Sym("x")))), 180 - size),
        ):
            assert line(read(figure, Reading("angle", ("x",)))) == f"{found}°"


def test_a_regular_polygon_has_as_many_lines_and_turns_as_sides() -> None:
    """The dihedral group of n corners has n reflections and n turns (any book on groups)."""
    for sides in range(3, 11):
        for what in ("lines of symmetry", "order of rotation"):
            assert read(CutPolygon(sides), Reading(what)) == t.Int(sides)
            assert measured(CutPolygon(sides), Reading(what)) == t.Int(sides)


# Lines and order of the special quadrilaterals: the table of any school book (common practice,
# no source).
QUADRILATERALS = {
    "square": (((0, 0), (3, 0), (3, 3), (0, 3)), 4, 4),
    "rectangle": (((0, 0), (4, 0), (4, 2), (0, 2)), 2, 2),
    "rhombus": (((0, 0), (2, 1), (4, 0), (2, -1)), 2, 2),
    "parallelogram": (((0, 0), (4, 0), (5, 2), (1, 2)), 0, 2),
    "kite": (((0, 0), (1, 2), (0, 3), (-1, 2)), 1, 1),
    "isosceles trapezium": (((0, 0), (4, 0), (3, 2), (1, 2)), 1, 1),
    "trapezium": (((0, 0), (4, 0), (2, 3), (0, 3)), 0, 1),
}


@pytest.mark.parametrize("name", list(QUADRILATERALS))
def test_quadrilaterals_have_the_symmetry_of_the_table(name: str) -> None:
    corners, lines, order = QUADRILATERALS[name]
    grid = CoordinateGrid(-3, 6, -3, 5, shapes=(GridShape(spots(*corners), "P"),))
    for what, count in (("lines of symmetry", lines), ("order of rotation", order)):
        assert read(grid, Reading(what, ("P",))) == t.Int(count)
        assert measured(grid, Reading(what, ("P",))) == t.Int(count)


def test_of_the_shapes_of_six_squares_eleven_are_nets_of_a_cube() -> None:
    """35 hexominoes and 11 nets (Golomb, Polyominoes, 1965; Gardner's columns; from memory)."""
    from generators.geometry._nets import cube_nets, hexominoes, rects
    from itembank.figures.kinds.solid.net import Net

    assert (len(hexominoes()), len(cube_nets())) == (35, 11)
    for ways in cube_nets():
        figure = Net((rects(ways[0]),), unit="cm")
        assert line(measured(figure, Reading("volume"))) == "1 cm^3"
        assert line(measured(figure, Reading("surface area"))) == "6 cm^2"
