"""Percentage topics against values published elsewhere.

The examples are those of *Prealgebra 2e* (OpenStax, 2020, Creative Commons Attribution), section
6.2, *Solve General Applications of Percent*, as questions and answers only, from memory.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from generators.percentages._amounts import part_steps
from itembank.notation import parse
from itembank.notation import tree as t
from itembank.notation.value import exact


@pytest.mark.parametrize(
    ("tenths", "whole", "part"),
    [(350, 90, "31.5"), (1250, 28, "35"), (450, 80, "36"), (65, 18, "1.17"), (85, 56, "4.76")],
)
def test_openstax_percentages_of_amounts(tenths: int, whole: int, part: str) -> None:
    # 85 tenths of a per cent: a sales tax of 8.5% on $56 is $4.76, from memory too.
    last = part_steps(tenths, 100 * whole, "")[-1].maths
    assert isinstance(last, t.Relation)
    assert last.rest[-1][1] == parse(part)
    assert exact(last.first) == Fraction(part)
