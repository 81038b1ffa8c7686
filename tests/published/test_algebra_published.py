"""Algebra topics against values published elsewhere.

The examples are those of *Elementary Algebra 2e* (OpenStax, 2020, Creative Commons Attribution),
chapters 1, 6 and 7, as questions and answers only, from memory.
"""

from __future__ import annotations

import pytest

from generators.algebra._writing import collected, expression, multiplied
from itembank.notation import line


def test_openstax_like_terms() -> None:
    # 2x² + 3x + 7 + x² + 4x + 5, and 3x² + 7x + 9 + 7x² + 9x + 8.
    first = [(2, "xx"), (3, "x"), (7, ""), (1, "xx"), (4, "x"), (5, "")]
    second = [(3, "xx"), (7, "x"), (9, ""), (7, "xx"), (9, "x"), (8, "")]
    assert line(expression(*collected(first))) == "3x^2 + 7x + 12"
    assert line(expression(*collected(second))) == "10x^2 + 16x + 17"


@pytest.mark.parametrize(
    ("near", "far", "product"),
    [
        ([(1, "x"), (5, "")], [(1, "x"), (9, "")], "x^2 + 14x + 45"),
        ([(1, "x"), (5, "")], [(1, "x"), (-4, "")], "x^2 + x - 20"),
        ([(4, "y"), (3, "")], [(2, "y"), (-5, "")], "8y^2 - 14y - 15"),
        ([(3, "c"), (-2, "d")], [(1, "c"), (-1, "d")], "3c^2 - 5cd + 2d^2"),
        ([(1, "x"), (5, "")], [(1, "x"), (5, "")], "x^2 + 10x + 25"),
    ],
)
def test_openstax_products_of_binomials(near: object, far: object, product: str) -> None:
    assert line(expression(*collected(multiplied(near, far)))) == product  # type: ignore[arg-type]
