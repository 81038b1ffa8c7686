"""Sequence topics against values published elsewhere.

Examples of *College Algebra 2e* (OpenStax, 2021, Creative Commons Attribution), chapter 9, as
questions and answers only, from memory.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from generators.sequences.nth_term import _rule
from itembank.items.forms.form_rules import number_node
from itembank.notation import line


@pytest.mark.parametrize(
    ("terms", "rule"),
    [((2, 12, 22, 32, 42), "10n - 8"), ((50, 47, 44, 41, 38), "53 - 3n"), ((8, 15, 22), "7n + 1")],
)
def test_openstax_arithmetic_sequences(terms: tuple[int, ...], rule: str) -> None:
    step = Fraction(terms[1] - terms[0])
    assert line(_rule(step, terms[0] - step, number_node)) == rule
