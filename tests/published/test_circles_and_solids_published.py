"""Circles, solids and triangles against published values (all from memory)."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest

from generators.geometry._calculator import PI
from itembank.figures.figure import Reading, read
from itembank.figures.kinds.solid.cylinder import Cylinder
from itembank.items.item import Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.sines import RATIOS
from itembank.notation.value import exact
from itembank.proof.measured.measure import measured


def test_archimedes_on_the_circumference() -> None:
    """Measurement of a Circle, 3: it is less than 3 1/7 and more than 3 10/71 diameters."""
    assert 3 + Fraction(10, 71) < PI < 3 + Fraction(1, 7)
    topic = find_topic("geometry.circumference")
    space = topic.spaces[Tier.CORE]
    for index in random.Random(3).sample(list(space.own), 60):
        kind, across, tenths, _ = space[index]
        key = topic.item(Tier.CORE, index).key
        if kind != "back":
            assert isinstance(key, t.Quantity)
            times = exact(key.amount) / Fraction(tenths, 10 if across else 5)
            # As far as two or three figures can tell.
            assert (
                3 + Fraction(10, 71) - Fraction(1, 20)
                < times
                < 3 + Fraction(1, 7) + Fraction(1, 20)
            )


@pytest.mark.parametrize(("across", "n"), [(True, 14), (True, 28), (False, 7)])
def test_archimedes_on_the_square_and_the_circle(across: bool, n: int) -> None:
    """Measurement of a Circle, 2: circle to square on its diameter is nearly as 11 to 14."""
    topic = find_topic("geometry.area-of-circles")
    place = topic.spaces[Tier.SUPPORT].place((across, n, "cm"))
    assert place is not None
    key = topic.item(Tier.SUPPORT, place).key
    assert isinstance(key, t.Quantity)
    count = exact(t.replaced(key.amount, {t.Sym("π"): t.Int(1)}))
    square = (n if across else 2 * n) ** 2
    assert abs(count * PI / square - Fraction(11, 14)) < Fraction(1, 1000)


@pytest.mark.parametrize(("w", "h", "length"), [(8, 6, 5), (10, 4, 7), (12, 8, 9)])
def test_euclid_on_half_a_box(w: int, h: int, length: int) -> None:
    """Elements XI.28: a plane through diagonals cuts a box into two equal prisms."""
    topic = find_topic("geometry.volume-of-prisms")
    place = topic.spaces[Tier.SUPPORT].place((w, h, length, "cm"))
    assert place is not None
    half = exact(topic.item(Tier.SUPPORT, place).key)
    boxes = find_topic("geometry.volume-of-cuboids")
    place = boxes.spaces[Tier.SUPPORT].place((*sorted((w, h, length)), "cm"))
    assert place is not None
    assert exact(boxes.item(Tier.SUPPORT, place).key) == 2 * half


@pytest.mark.parametrize(("radius", "height"), [(3, 6), (5, 10), (4, 8)])
def test_archimedes_on_the_cylinder_round_a_ball(radius: int, height: int) -> None:
    """On the Sphere and Cylinder I: a cylinder as high as wide holds 3/2 of the ball in it."""
    topic = find_topic("geometry.cylinders")
    place = topic.spaces[Tier.SUPPORT].place((False, radius, height, "cm"))
    assert place is not None
    key = topic.item(Tier.SUPPORT, place).key
    assert isinstance(key, t.Quantity)
    count = exact(t.replaced(key.amount, {t.Sym("π"): t.Int(1)}))
    assert count == Fraction(3, 2) * Fraction(4, 3) * radius**3


@pytest.mark.parametrize("radius", [1, 3, 12])
def test_archimedes_on_its_surface(radius: int) -> None:
    """On the Sphere and Cylinder I: its surface is 3/2 of the ball's, its curved part all of it."""
    tin = Cylinder(t.Quantity(t.Int(2 * radius), "cm"), radius=t.Quantity(t.Int(radius), "cm"))
    ball = 4 * radius**2
    for way in (read, measured):
        for name, times in (("surface area", Fraction(3, 2)), ("curved surface area", Fraction(1))):
            area = way(tin, Reading(name))
            assert isinstance(area, t.Quantity)
            assert area.unit == "cm^2"
            assert exact(t.replaced(area.amount, {t.Sym("π"): t.Int(1)})) == times * ball


def test_the_beam_of_babylon() -> None:
    """BM 85196: a beam of 30 against a wall slips down by 6; its foot is then 18 from the wall."""
    topic = find_topic("geometry.pythagoras")
    place = topic.spaces[Tier.CORE].place(("short", 0, 1, 6))  # 6 × (3, 4, 5), the side of 24 known
    assert place is not None
    item = topic.item(Tier.CORE, place)
    assert exact(item.key) == Fraction(18, 100)
    assert "24 cm" in "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


@pytest.mark.parametrize(
    ("name", "degrees", "shown"),
    [("sin", 35, "0.5736"), ("cos", 40, "0.7660"), ("tan", 28, "0.5317"), ("sin", 72, "0.9511")],
)
def test_four_figure_tables(name: str, degrees: int, shown: str) -> None:
    """Sines, cosines and tangents as four-figure tables print them."""
    low, high = RATIOS[name](Fraction(degrees), 12)
    half = Fraction(1, 20_000)
    assert Fraction(shown) - half < low <= high < Fraction(shown) + half
