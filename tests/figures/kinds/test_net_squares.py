"""How long the squares of a net are is measured alike, in whatever order its lines are met."""

from __future__ import annotations

import math
from fractions import Fraction

import sympy
from hypothesis import given
from hypothesis import strategies as st

from itembank.figures.figure import Reading, kind_of
from itembank.proof.measured.measure import disagreement
from itembank.proof.measured.solid.net_measured import _largest_step
from tests.figures.every_figure import examples


def test_no_net_is_measured_by_squares_of_another_size() -> None:
    """The lengths are a set, and sympy's `gcd_list` of 2, 3 and 1/2 stops at 1."""
    boxes = [
        figure
        for figure in examples("net", 300, 31)
        if Reading("volume") in kind_of(figure).readings(figure)
    ]
    assert len(boxes) > 50
    for figure in boxes:
        assert disagreement(figure) == ""


@given(st.lists(st.fractions(Fraction(1, 12), 20, max_denominator=12), min_size=1, max_size=6))
def test_the_largest_step_goes_into_each_length_and_no_larger_one_does(
    lengths: list[Fraction],
) -> None:
    step = Fraction(str(_largest_step([sympy.Rational(str(length)) for length in lengths])))
    counts = [length / step for length in lengths]
    assert all(count.denominator == 1 for count in counts)
    assert math.gcd(*(count.numerator for count in counts)) == 1
