"""Sequence topics against values published elsewhere.

Examples of *College Algebra 2e* (OpenStax, 2021, Creative Commons Attribution), chapter 9, as
questions and answers only, from memory.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from generators.sequences._geometric_numbers import terms_of
from generators.sequences._rule_written import rule as _rule
from generators.sequences._sums_of_two_before import terms_from
from generators.sequences.special import _triangle
from itembank.items.forms.form_rules import number_node
from itembank.notation import line


@pytest.mark.parametrize(
    ("terms", "rule"),
    [((2, 12, 22, 32, 42), "10n - 8"), ((50, 47, 44, 41, 38), "53 - 3n"), ((8, 15, 22), "7n + 1")],
)
def test_openstax_arithmetic_sequences(terms: tuple[int, ...], rule: str) -> None:
    step = Fraction(terms[1] - terms[0])
    assert line(_rule(step, terms[0] - step, number_node)) == rule


def test_openstax_geometric_sequences() -> None:
    # 6, 9, 13.5, 20.25 has the ratio 1.5; the first terms for 5 and −2.
    assert terms_of(6, Fraction(3, 2)) == [6, 9, Fraction(27, 2), Fraction(81, 4)]
    assert terms_of(5, -2) == [5, -10, 20, -40]


def test_fibonacci_and_triangular_numbers() -> None:
    # Sequences A000045 and A000217 of the On-Line Encyclopedia of Integer Sequences, from memory.
    assert terms_from(1, 1, 12) == [1, 1, 2, 3, 5, 8, 13, 21, 34, 55, 89, 144]
    assert [_triangle(n) for n in range(1, 11)] == [1, 3, 6, 10, 15, 21, 28, 36, 45, 55]
