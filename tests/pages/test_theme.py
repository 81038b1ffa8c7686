"""Contrast of every pair of colours that meet on a page."""

from __future__ import annotations

import pytest

from itembank.pages import theme
from itembank.pages.theme import contrast, text_on

# Okabe and Ito, "Color Universal Design", 2008: the eight colours of their palette.
OKABE_ITO = [
    "#000000",
    "#E69F00",
    "#56B4E9",
    "#009E73",
    "#F0E442",
    "#0072B2",
    "#D55E00",
    "#CC79A7",
]


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        ("#FFFFFF", "#000000", 21.0),
        # WCAG 2.2 understanding 1.4.3: #767676 on white is just above 4.5, #777777 below.
        ("#767676", "#FFFFFF", 4.54),
        ("#777777", "#FFFFFF", 4.48),
    ],
)
def test_contrast_formula(one, other, ratio):
    assert contrast(one, other) == pytest.approx(ratio, abs=0.005)
    assert contrast(other, one) == contrast(one, other)


@pytest.mark.parametrize("paper", theme.PAPERS)
def test_text_on_every_paper(paper):
    ground = theme.PAPERS[paper]
    assert contrast(theme.INK, ground) >= 7
    assert contrast(theme.ACCENT, ground) >= 7
    assert contrast(theme.QUIET, ground) >= 4.5


@pytest.mark.parametrize("colour", OKABE_ITO)
def test_signs(colour):
    """The outline or the fill stands out on every paper, the letter on the fill."""
    assert contrast(text_on(colour), colour) >= 4.5
    for ground in theme.PAPERS.values():
        assert max(contrast(theme.INK, ground), contrast(colour, ground)) >= 3
