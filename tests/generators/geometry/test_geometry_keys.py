"""Keys of geometry, found again from the words of each figure by trying every value."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from itembank.items.item import Item
from tests.generators.geometry.geometry_reader import (
    Form,
    alike,
    form,
    items,
    letter_asked,
    listed,
    makes,
    number,
    said,
    settled,
    tried,
)


@pytest.mark.parametrize(
    ("name", "whole"),
    [("geometry.angles-on-a-line", 180), ("geometry.angles-at-a-point", 360)],
)
def test_angles_that_make_a_line_or_a_turn(name: str, whole: int) -> None:
    for item in items(name):
        forms = [each for each in listed(said(item), "in this order: ") if each is not None]
        assert number(item) == tried([forms], [whole], letter_asked(item)), item.address


def test_where_two_lines_cross() -> None:
    for item in items("geometry.vertically-opposite"):
        forms = listed(said(item), "in order round the crossing, are ")
        wanted, known = letter_asked(item), None
        if wanted == "y" and any(form and form[1] not in ("", "y") for form in forms):
            # The letter of the two opposite angles first, then the angle beside them.
            for value in range(1, 180):
                sizes = {c * value + n for c, name, n in filter(None, forms) if name != "y"}
                if len(sizes) == 1:
                    known = value, sizes.pop()
            assert known
            assert number(item) == 180 - known[1], item.address
            continue
        # The first and third angle are as large as each other, the others are what is left of 180.
        told = [(k % 2, form[0], form[2]) for k, form in enumerate(forms) if form is not None]
        assert told
        found = []
        for value in range(1, 180):
            sizes = [(second, times * value + more) for second, times, more in told]
            firsts = {180 - size if second else size for second, size in sizes}
            found += [value] if len(firsts) == 1 and 0 < firsts.pop() < 180 else []
        assert found == [number(item)], item.address


def corner_angles(item: Item) -> dict[str, Form]:
    """Return what is said of the angles of a polygon, by its corners."""
    text = said(item)
    found = {
        corner: form(phrase)
        for corner, phrase in re.findall(r"The angle at ([A-Z]) is (.*?)\.(?: |$)", text)
    }
    return {corner: each for corner, each in found.items() if each is not None}


def test_angles_of_a_triangle() -> None:
    for item in items("geometry.angles-in-triangles"):
        text, angles, wanted = said(item), corner_angles(item), letter_asked(item)
        if equal := re.search(r"sides ([A-C]{2}) and ([A-C]{2}) are marked as equal", text):
            # The angle opposite a side is at the corner that is no end of it.
            first, other = (({*"ABC"} - {*side}).pop() for side in equal.groups())
            # Every triangle with those two angles equal, in whole degrees, is tried.
            found = set()
            for size in range(1, 90):
                sizes = dict.fromkeys("ABC", 180 - 2 * size) | {first: size, other: size}
                values = fitting(angles, sizes)
                if values is not None:
                    found.add(values[wanted])
            assert found == {number(item)}, item.address
        else:
            forms = [*angles.values()]
            assert number(item) == tried([forms], [180], wanted), item.address


def fitting(angles: dict[str, Form], sizes: dict[str, int]) -> dict[str, Fraction] | None:
    """Return the letters with which labels have these sizes, None where there are none."""
    values: dict[str, Fraction] = {}
    for corner, (count, letter, more) in angles.items():
        if not letter:
            if more != sizes[corner]:
                return None
            continue
        value = Fraction(sizes[corner] - more, count)
        if values.setdefault(letter, value) != value:
            return None
    return values


def test_angles_of_a_quadrilateral() -> None:
    for item in items("geometry.angles-in-quadrilaterals"):
        text, angles = said(item), corner_angles(item)
        at = {corner: angles.get(corner, f"angle {corner}") for corner in "ABCD"}
        for corner in re.findall(r"The angle at ([A-D]) is a right angle", text):
            at[corner] = (0, "", 90)
        equations = [makes(360, *at.values())]
        pairs = re.findall(r"sides ([A-D]{2}) and ([A-D]{2}) are marked as parallel", text)
        for first, other in pairs:
            # The ends of one side next to it are turned back to the other: co-interior angles.
            for cross in ("AB", "BC", "CD", "DA"):
                if (
                    {*cross} & {*first}
                    and {*cross} & {*other}
                    and {*cross} not in ({*first}, {*other})
                ):
                    equations.append(makes(180, at[cross[0]], at[cross[1]]))
        if len(pairs) == 2:
            equations += [alike(at["A"], at["C"]), alike(at["B"], at["D"])]
        assert number(item) == settled(equations, letter_asked(item)), item.address


def test_angles_on_parallel_lines() -> None:
    for item in items("geometry.parallel-lines"):
        text = said(item)
        upper = listed(text, "round the first crossing, are ")
        lower = listed(text, "from the same direction, they are ")
        at = [each or f"angle {k}" for k, each in enumerate([*upper, *lower])]
        equations = [makes(180, at[k], at[k + 1]) for k in (0, 1, 2, 4, 5, 6)]
        equations += [alike(at[k], at[k + 4]) for k in range(4)]
        assert number(item) == settled(equations, letter_asked(item)), item.address


def test_angles_of_a_pentagon_or_a_hexagon() -> None:
    for item in items("geometry.polygon-angles"):
        if item.figure is not None:
            angles = corner_angles(item)
            forms = [*angles.values()]
            whole = {5: 540, 6: 720}[len(forms)]
            assert number(item) == tried([forms], [whole], letter_asked(item)), item.address
