"""Contrast of every pair of colours that meet on a page."""

from __future__ import annotations

import re
from itertools import combinations
from typing import get_args

import numpy as np
import pypdfium2
import pytest
from scipy import ndimage

from itembank.packs.data.convert import pack_band
from itembank.pages.engine.faces.fonts import CAP_HEIGHT, face
from itembank.pages.engine.page import theme
from itembank.pages.engine.page.page import Document
from itembank.pages.engine.page.sign_svg import SIDE, sign_svg
from itembank.pages.engine.page.signs import outline, sign
from itembank.pages.engine.page.theme import contrast
from itembank.planning.bands.band_signs import ShapeName
from itembank.planning.bands.bands import default_scheme
from tests.depth import left

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
    assert contrast(theme.WRITING, ground) >= 3
    assert contrast(theme.RULE, ground) >= 3
    assert contrast(theme.GRID, ground) >= 3


@pytest.mark.parametrize("colour", OKABE_ITO)
def test_signs(colour):
    """The outline or the fill stands out on every paper, the letter on its white plate."""
    assert contrast(theme.INK, theme.WHITE) >= 7
    for ground in theme.PAPERS.values():
        assert max(contrast(theme.INK, ground), contrast(colour, ground)) >= 3


@pytest.mark.parametrize("band", default_scheme(5).signs, ids=lambda sign: sign.name)
def test_the_usual_colours_stand_out_from_white(band):
    """WCAG 2.2, 1.4.11: 3 : 1 for graphics, here for the fill alone."""
    assert contrast(band.colour, theme.WHITE) >= 3


def copied(band, dots):
    """Return a sign `dots` high as a copier prints it: which dots are black, and no grey."""
    document = Document("Sign")
    sign(document.page((dots + 4, dots + 4)), band, 2, 2, dots)
    page = pypdfium2.PdfDocument(document.finish())[0]
    return np.asarray(page.render(scale=1, grayscale=True).to_numpy()).squeeze() < 128


def differing(one, other):
    """Return how many dots differ, at best, when one sign is laid over the other."""
    shifts = [(i, j) for i in (-1, 0, 1) for j in (-1, 0, 1)]
    return min(int(np.sum(one ^ np.roll(other, shift, (0, 1)))) for shift in shifts)


@pytest.mark.parametrize("dots", [12, 17])
@pytest.mark.parametrize("colours", ["their own", "all alike"])
def test_small_signs_are_told_apart_in_black_and_white(samples, dots, colours):
    """At 12 dots, and at 6 mm with 72 dots an inch, by their shapes: the letters are all one."""
    every = [pack_band(band) for band in default_scheme(5).bands(10)]
    alike = {"letter": "S"} | ({"colour": "#000000"} if colours == "all alike" else {})
    drawn = [copied(band.model_copy(update=alike), dots) for band in every]
    for (a, one), (b, other) in combinations(enumerate(drawn), 2):
        share = differing(one, other) / max(int(one.sum()), int(other.sum()))
        assert share >= 0.4, (every[a].shape, every[b].shape, share)


@pytest.mark.parametrize("shape", get_args(ShapeName))
@pytest.mark.parametrize("letter", ["R", left("M"), "W", left("Q")])
def test_a_letter_stands_free_on_the_plate_of_its_sign(samples, shape, letter):
    """In black and white the dark dots of a sign are two pieces: its frame and its letter."""
    bands = samples.PACKS["plain"].bands
    band = bands[0].model_copy(update={"shape": shape, "letter": letter, "colour": "#000000"})
    document = Document("Sign")
    sign(document.page((100, 100)), band, 10, 10, 80)
    page = pypdfium2.PdfDocument(document.finish())[0]
    dark = np.asarray(page.render(scale=2, grayscale=True).to_numpy()).squeeze() < 128
    _, pieces = ndimage.label(dark, np.ones((3, 3)))  # dots that meet at a corner, too
    assert pieces == 2


@pytest.mark.parametrize("shape", get_args(ShapeName))
@pytest.mark.parametrize("letter", ["R", "W", "WW"])
def test_letters_are_no_wider_on_a_screen_than_on_paper(shape, letter):
    size = float(re.search(r'font-size="([^"]*)"', sign_svg(shape, letter, "#000000"))[1]) / SIDE
    assert size * face(True).width(letter) <= outline(shape).height + 0.01
    assert size * CAP_HEIGHT <= outline(shape).height + 0.01
