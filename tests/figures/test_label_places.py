"""Labels of drawn angles: what is left out of the places to try is nothing that could be taken."""

import math
from fractions import Fraction

from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.figures.drawing import Arc, Area, Point, Text
from itembank.figures.kinds.labels.near_marks import Curve, near, track_of, unit
from itembank.figures.kinds.labels.placed_labels import Sheet
from itembank.figures.kinds.labels.tried_places import between
from itembank.figures.kinds.plane.polygon_scaled import Scaled
from itembank.figures.kinds.plane.polygon_shape import Shape
from itembank.notation.parse import parse

LABEL = st.sampled_from(["x", "35 °", "128 °", "(4x + 20) °", "2x"]).map(parse)
LONG = st.integers(3, 14)


def along(degrees, far):
    turn = math.radians(degrees)
    return (round(1000 * far * math.cos(turn)), round(1000 * far * math.sin(turn)))


@given(st.integers(0, 359), st.integers(16, 150), LONG, LONG, LABEL, st.sampled_from([1.0, 1.2]))
def test_a_label_stands_where_all_places_tried_in_turn_would_put_it(
    way, size, first, last, label, much
):
    a, b, c = (
        (Fraction(x, 1000), Fraction(y, 1000))
        for x, y in ((0, 0), along(way, first), along(way + size, last))
    )
    outline = Area((Point(*a), Point(*b), Point(*c)))
    at, ends = near(a), (near(b), near(c))
    rays = (unit(at, ends[0]), unit(at, ends[1]))
    arc = Arc(Point(*a), Fraction(7, 10), Point(*b), Point(*c), weight="thin")

    def placed(places):
        sheet = Sheet([outline, arc])
        sheet.put(label, places, "label")
        return [mark.at for mark in sheet.marks if isinstance(mark, Text)]

    quick = between(
        label,
        at,
        rays,
        0.7,
        4.0,
        2.4,
        long=(math.dist(at, ends[0]), math.dist(at, ends[1])),
        others=ends,
        much=much,
    )
    every = (
        place
        for place in between(label, at, rays, 0.7, 4.0, 2.4)
        if all(much * math.dist(place, at) <= math.dist(place, end) for end in ends)
    )
    assert placed(quick) == placed(every)


@given(
    st.integers(0, 359),
    st.integers(1, 360),
    st.floats(-3, 3),
    st.floats(-3, 3),
    st.floats(0.05, 1.5),
)
def test_a_box_that_is_told_to_be_clear_of_an_arc_holds_none_of_it(start, sweep, x, y, half):
    ends = [(math.cos(math.radians(d)), math.sin(math.radians(d))) for d in (start, start + sweep)]
    arc = Curve((0.0, 0.0), 2.0, (ends[0], ends[1]), "thin", lambda: None)
    box = (x - half, y - half, x + half, y + half)
    near_by = half + arc.far
    held = any(abs(px - x) < near_by and abs(py - y) < near_by for px, py in arc.points)
    assert arc.meets(box) or not held


NUMBER = st.one_of(st.integers(-50, 50), st.fractions(-9, 9, max_denominator=7))
PLACES = st.lists(st.tuples(NUMBER, NUMBER), min_size=3, max_size=6, unique=True)


@given(PLACES, st.sampled_from([(9, 4), (13, 8)]))
def test_ordinary_numbers_of_a_scaled_polygon_are_the_nearest_to_the_exact_ones(corners, room):
    xs, ys = zip(*corners, strict=True)
    assume(max(xs) > min(xs) and max(ys) > min(ys))
    letters = "ABCDEF"[: len(corners)]
    placed = Scaled(Shape(letters, tuple(corners)), *room)
    scale = min(Fraction(room[0]) / (max(xs) - min(xs)), Fraction(room[1]) / (max(ys) - min(ys)))
    for letter, (x, y) in zip(letters, corners, strict=True):
        exact = ((x - min(xs)) * scale, (y - min(ys)) * scale)
        assert placed.spot(letter) == exact
        assert placed.at[letter] == (float(exact[0]), float(exact[1]))


def test_a_mark_is_drawn_as_it_was_given():
    outline = Area((Point(0, 0), Point(4, 0), Point(0, Fraction(1, 3))), "polygon")
    assert track_of(outline).made() == outline
    assert Sheet([outline]).marks == [outline]
