"""The edges of a drawing are exactly those of all its marks, however near these are to each other.

Which marks reach farthest is told in ordinary numbers; here every mark's own box is asked.
"""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from itembank.figures.drawing import Arc, Area, Point, Stroke, Text, drawing

TINY = Fraction(1, 10**18)
"""Less than ordinary numbers tell apart, beside a number as large as a drawing."""
EXACT = st.builds(
    lambda whole, part, tiny: whole + Fraction(part, 7) + tiny * TINY,
    st.integers(-6, 6),
    st.integers(0, 6),
    st.integers(-2, 2),
)
POINTS = st.builds(Point, EXACT, EXACT)
WEIGHTS = st.sampled_from(["faint", "thin", "normal", "heavy"])
STROKES = st.builds(
    Stroke,
    st.lists(POINTS, min_size=2, max_size=4).map(tuple),
    weight=WEIGHTS,
    arrow=st.sampled_from(["", "end", "both"]),
)
AREAS = st.builds(Area, st.lists(POINTS, min_size=3, max_size=4).map(tuple), weight=WEIGHTS)
ARCS = st.builds(
    lambda centre, radius, weight, sector: Arc(
        centre,
        radius,
        Point(centre.x + 1, centre.y),
        Point(centre.x, centre.y + 1),
        weight=weight,
        sector=sector,
    ),
    POINTS,
    st.sampled_from([Fraction(1, 3), 2]),
    WEIGHTS,
    st.booleans(),
)
TEXTS = st.builds(
    Text,
    POINTS,
    st.sampled_from(["8", "12 cm", "Mm"]),
    across=st.sampled_from(["left", "centre", "right"]),
    up=st.sampled_from(["bottom", "middle", "top"]),
    bold=st.booleans(),
)


@given(st.lists(st.one_of(STROKES, AREAS, ARCS, TEXTS), min_size=1, max_size=6))
def test_its_edges_are_those_of_its_marks(marks):
    whole = drawing(marks)
    each = [drawing([mark]) for mark in marks]
    assert whole.left == min(part.left for part in each)
    assert whole.bottom == min(part.bottom for part in each)
    assert whole.right == max(part.right for part in each)
    assert whole.top == max(part.top for part in each)
    assert whole.marks == tuple(marks)
