"""Lines of working with roots are held to exact algebra, not let through and not refused."""

from __future__ import annotations

import pytest

from itembank.notation import tree as t
from itembank.notation.parse import parse
from itembank.proof.exact.reckoning.truth import true


@pytest.mark.parametrize(
    ("line", "holds"),
    [
        ("√50 = 5√2", True),
        ("√50 = 2√5", False),
        ("(2 + √3)(4 - √3) = 8 - 2√3 + 4√3 - 3", True),
        ("8 - 2√3 + 4√3 - 3 = 5 - 2√3", False),
        ("6/(√3) = (6√3)/3", True),
        ("√18 + √8 = √26", False),
        ("√18 + √8 = 3√2 + 2√2 = 5√2", True),
        ("√18 + √8 = 3√2 + 2√2 = 6√2", False),
    ],
)
def test_a_line_with_roots_is_true_or_not(line: str, holds: bool) -> None:
    relation = parse(line)
    assert isinstance(relation, t.Relation)
    assert true(relation) is holds
