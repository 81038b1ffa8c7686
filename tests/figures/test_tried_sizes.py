"""The sizes that a figure is tried at: whether there is room is told without the least size."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.figures.figure import Figure, fault
from itembank.figures.kinds.labels.near_marks import Near
from itembank.figures.kinds.labels.placed_labels import Sheet
from itembank.figures.kinds.labels.tried_sizes import homeless_in_all, least_sheet
from itembank.figures.kinds.plane.angles import Angles
from itembank.figures.kinds.plane.circle import Circle
from itembank.figures.kinds.plane.polygon import Height, Polygon
from itembank.figures.kinds.plane.two_triangles import TwoTriangles
from itembank.notation import tree as t
from itembank.notation.parse import parse

Tried = list[tuple[bool, bool]]


def _laid_out(tried: Tried, looked: list[int]) -> Callable[[int], Sheet]:
    """Return how a figure of two labels is laid out: which of them has room at each size."""

    def made(size: int) -> Sheet:
        looked.append(size)
        sheet = Sheet(())
        for name, has_room in zip("AB", tried[size], strict=True):
            places: list[Near] = [(2.0 * ord(name), float(size))] if has_room else []
            sheet.put(name, places, "name")
        return sheet

    return made


@given(st.lists(st.tuples(st.booleans(), st.booleans()), min_size=1, max_size=5))
def test_the_labels_without_a_place_are_those_that_the_drawing_leaves_out(tried: Tried) -> None:
    made, sizes = _laid_out(tried, []), range(len(tried))
    assert homeless_in_all(made, sizes, object()) == least_sheet(made, sizes).homeless


@given(st.lists(st.tuples(st.booleans(), st.booleans()), min_size=1, max_size=5))
def test_a_figure_is_drawn_at_the_first_size_with_room(tried: Tried) -> None:
    looked: list[int] = []
    sheet = least_sheet(_laid_out(tried, looked), range(len(tried)))
    assert looked == [*range(len(looked))]
    fits = [all(size) for size in tried]
    assert not any(fits[: len(looked) - 1])
    assert sheet.crowded != fits[len(looked) - 1]
    assert not sheet.crowded or len(looked) == len(tried)


def test_a_largest_size_with_room_is_the_only_one_looked_at() -> None:
    looked: list[int] = []
    tried = [(True, False)] * 4 + [(True, True)]
    assert homeless_in_all(_laid_out(tried, looked), range(5), object()) == []
    assert looked == [4]


LONG = "1234567890123456789012345678901234567890x cm"
WIDE = "(1234567890123456789012345678901234567890x + 1)°"
SPOTS = {
    "triangle": ((0, 0), (6, 0), (0, 6)),
    "narrow": ((0, 0), (60, 0), (60, 1)),
    "flat": ((0, 0), (24, 0), (12, 9)),
}


def _polygon(
    spots: str,
    sides: dict[str, str] | None = None,
    angles: dict[str, str] | None = None,
    height: str = "",
    names: str = "",
) -> Polygon:
    return Polygon(
        tuple((t.Int(x), t.Int(y)) for x, y in SPOTS[spots]),
        names,
        bool(names),
        tuple((side, parse(label)) for side, label in (sides or {}).items()),
        tuple((corner, parse(label)) for corner, label in (angles or {}).items()),
        height=Height("C", "AB", parse(height)) if height else None,
        accurate=False,
    )


def _pair(label: str) -> TwoTriangles:
    return TwoTriangles(
        _polygon("triangle", {"AB": "7 cm"}, names="ABC"),
        _polygon("triangle", {"PQ": label}, names="PQR"),
    )


def _angles(size: int, label: str) -> Angles:
    return Angles("point", (size, 180, 180 - size), ((1, parse(label)), (2, parse(label))))


ROOM: dict[str, tuple[Figure, Figure]] = {
    "an angle": (
        _polygon("triangle", angles={"A": "x", "B": "y", "C": "z"}),
        _polygon("triangle", angles={"A": WIDE, "B": "y", "C": "z"}),
    ),
    "a narrow angle": (
        _polygon("triangle", angles={"A": "(12x + 6)°"}),
        _polygon("narrow", angles={"A": "(12x + 6)°"}),
    ),
    "a height": (_polygon("flat", height="x cm"), _polygon("flat", height=LONG)),
    "a label at a point": (_angles(15, "x"), _angles(15, "(1234567x + 1)°")),
    "a narrow angle at a point": (_angles(60, "(12x + 1)°"), _angles(15, "(12x + 1)°")),
    "a circle": (Circle(radius=parse("5 cm")), Circle(radius=parse("1.00000000000000000001 cm"))),
    "a sector": (Circle(radius=parse("5 cm"), sector=90), Circle(radius=parse("5 cm"), sector=20)),
    "two triangles": (_pair("8 cm"), _pair("1.0000000000000000000000000001 cm")),
}


@pytest.mark.parametrize("which", ROOM)
def test_that_one_figure_has_room_says_nothing_of_a_larger_label_or_of_other_lines(
    which: str,
) -> None:
    roomy, crowded = ROOM[which]
    assert fault(roomy) == ""
    assert "no room" in fault(crowded)
    assert fault(roomy) == ""
