"""Contrast of every pair of colours that meet on a page."""

from __future__ import annotations

from typing import get_args

import numpy as np
import pypdfium2
import pytest

from itembank.packs.model import ShapeName
from itembank.pages import theme
from itembank.pages.page import Document
from itembank.pages.signs import sign
from itembank.pages.theme import contrast

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
    """The outline or the fill stands out on every paper, the letter on its white plate."""
    assert contrast(theme.INK, theme.WHITE) >= 7
    for ground in theme.PAPERS.values():
        assert max(contrast(theme.INK, ground), contrast(colour, ground)) >= 3


@pytest.mark.parametrize("shape", get_args(ShapeName))
@pytest.mark.parametrize("letter", ["R", "M", "W", "Q"])
def test_a_letter_stands_free_on_the_plate_of_its_sign(samples, shape, letter):
    """In black and white the dark dots of a sign are two pieces: its frame and its letter."""
    bands = samples.PACKS["plain"].bands
    band = bands[0].model_copy(update={"shape": shape, "letter": letter, "colour": "#000000"})
    document = Document("Sign")
    sign(document.page((100, 100)), band, 10, 10, 80)
    page = pypdfium2.PdfDocument(document.finish())[0]
    dark = np.asarray(page.render(scale=2, grayscale=True).to_numpy()).squeeze() < 128
    left = set(zip(*map(list, np.nonzero(dark)), strict=True))
    pieces = 0
    while left:
        pieces += 1
        edge = [left.pop()]
        while edge:
            row, column = edge.pop()
            near = {(row + i, column + j) for i in (-1, 0, 1) for j in (-1, 0, 1)} & left
            left -= near
            edge.extend(near)
    assert pieces == 2
