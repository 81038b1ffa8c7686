"""Whoever goes by keys sees where they are: the ring has contrast on every ground it stands on.

At least 3 to 1 beside the colour next to it (WCAG 2.2, 1.4.11).
"""

import re
from pathlib import Path

import pytest

import itembank.desk

STATIC = Path(itembank.desk.__file__).parent / "static"
DESK, BOARD = ((STATIC / f"{name}.css").read_text("utf-8") for name in ("desk", "board"))


def light(colour):
    """Return the relative luminance of a colour such as #123b4a or #fff (WCAG 2.2)."""
    digits = colour.lstrip("#")
    digits = "".join(2 * digit for digit in digits) if len(digits) == 3 else digits
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(first, second):
    low, high = sorted((light(first), light(second)))
    return (high + 0.05) / (low + 0.05)


def ring(css, selector):
    rule = re.search(rf"^\s*{re.escape(selector)} {{([^}}]*)}}", css, re.MULTILINE)[1]
    return re.search(r"outline(?:-color)?:[^;#]*(#\w+)", rule)[1]


def ground(css, name, selector=":root"):
    rule = re.search(rf"^\s*{re.escape(selector)} {{([^}}]*)}}", css, re.MULTILINE)[1]
    return re.search(rf"--{name}: (#\w+)", rule)[1]


@pytest.mark.parametrize(
    ("colour", "on"),
    [
        (ring(DESK, ":focus-visible"), ground(DESK, "paper")),
        (ring(DESK, ":focus-visible"), ground(DESK, "sheet")),
        (ring(DESK, ".top :focus-visible"), ground(DESK, "deep")),
        (ring(BOARD, ".controls :focus-visible"), ground(BOARD, "paper")),
        (ring(BOARD, ".dark .controls :focus-visible"), ground(BOARD, "paper", ":root.dark")),
    ],
)
def test_the_ring_is_seen_on_its_ground(colour, on):
    assert contrast(colour, on) >= 3


def test_contrast_is_that_of_the_definition():
    assert contrast("#fff", "#000000") == pytest.approx(21)
    assert contrast("#777777", "#fff") == pytest.approx(4.48, abs=0.005)
