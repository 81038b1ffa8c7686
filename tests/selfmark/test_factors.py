"""Factors of polynomials: the page's own arithmetic and the marker's computer algebra agree."""

import random

import pytest

from itembank.items.forms.polynomials import share_a_factor, splits
from itembank.notation.algebra import algebra
from itembank.notation.parse import parse
from itembank.selfmark.questions import tree_data
from tests.depth import left
from tests.selfmark.test_same_verdict import marker_page

IN_PAGE = (
    "window.selfmark = { mark, question };\n",
    "window.selfmark = { mark, question };\n"
    "const of = (data) => algebra(restored(data)).top;\n"
    "const told_ = (work) => { try { return work(); } catch (error) {"
    " if (error instanceof Undecided) return null; throw error; } };\n"
    "window.factors = (pairs) => pairs.map(([a, b]) =>"
    " [told_(() => splits(of(a))), told_(() => shareAFactor(of(a), of(b)))]);\n",
)


def polynomial(rng, letters):
    """Return a polynomial of two or three terms, of degree 1 or 2, without a common letter."""
    terms = []
    for _ in range(rng.choice((1, 2, 2))):
        used = [rng.choice(letters) for _ in range(rng.choice((1, 1, 2)))]
        terms.append("".join(f"{name}" for name in sorted(used)))
    text = " + ".join(f"{rng.randrange(1, 5)}{term}" for term in dict.fromkeys(terms))
    return f"({text} {rng.choice('+-')} {rng.randrange(1, 7)})"


@pytest.mark.parametrize("letters", [left("x"), "xy", left("xyz")])
def test_splitting_and_sharing_agree_with_computer_algebra(browser, letters):
    rng = random.Random(letters)
    pairs = []
    for _ in range(60):
        common = polynomial(rng, letters) if rng.random() < 0.5 else ""
        above = f"{common}{polynomial(rng, letters)}"
        below = f"{common}{polynomial(rng, letters)}"
        pairs.append((parse(above), parse(below)))
    got = marker_page(browser, IN_PAGE).evaluate(
        "(pairs) => window.factors(pairs)", [[tree_data(a), tree_data(b)] for a, b in pairs]
    )
    decided = 0
    for (above, below), (split, shared) in zip(pairs, got, strict=True):
        top, bottom = algebra(above).top, algebra(below).top
        if split is not None:
            decided += 1
            assert split is splits(top), above
        assert shared is share_a_factor(top, bottom), (above, below)
    assert decided > 15
