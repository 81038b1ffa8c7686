"""The sign of a band: a shape with its letter inside, known without its colour."""

from __future__ import annotations

import math

from itembank.packs.model import Band, ShapeName

from .fonts import CAP_HEIGHT, face, plain
from .page import Page, Point
from .theme import INK, WHITE

_LETTER = {
    "triangle": (0.3, 0.31),
    "circle": (0.5, 0.44),
    "square": (0.5, 0.5),
    "diamond": (0.5, 0.32),
    "pentagon": (0.46, 0.4),
}
"""Per shape: where the middle of the letter is, from the bottom, and how tall it is, both as
shares of the sign's size."""
_MIDDLE = {"triangle": 0.34, "pentagon": 0.47}
"""Height of a shape's centroid where it is not halfway up."""
INSIDE = 0.74
"""The white plate behind the letter, against its shape: on a grey print of a coloured shape
the letter would be dark on grey."""


def outline(shape: ShapeName) -> list[Point]:
    """Return the corners of a shape within the unit square; none for a circle.

    >>> outline("square")[0]
    (0.06, 0.06)
    """
    match shape:
        case "triangle":
            return [(0.0, 0.02), (1.0, 0.02), (0.5, 0.98)]
        case "square":
            return [(0.06, 0.06), (0.94, 0.06), (0.94, 0.94), (0.06, 0.94)]
        case "diamond":
            return [(0.5, 0.0), (1.0, 0.5), (0.5, 1.0), (0.0, 0.5)]
        case "pentagon":
            turns = (math.pi / 2 + k * 2 * math.pi / 5 for k in range(5))
            return [(0.5 + 0.52 * math.cos(t), 0.47 + 0.52 * math.sin(t)) for t in turns]
    return []


def describe(band: Band) -> str:
    """Return what the sign looks like, in words.

    >>> # "orange triangle with the letter R"
    """
    return f"{band.colour_name} {band.shape} with the letter {band.letter}"


def sign(page: Page, band: Band, x: float, y: float, size: float) -> None:
    """Draw a band's sign in the square of side `size` whose bottom left corner is (x, y)."""
    line = max(1.2, size * 0.04)
    centre_x, centre_y = x + size / 2, y + _MIDDLE.get(band.shape, 0.5) * size
    corners = [(x + px * size, y + py * size) for px, py in outline(band.shape)]
    inner = [
        (centre_x + INSIDE * (px - centre_x), centre_y + INSIDE * (py - centre_y))
        for px, py in corners
    ]
    with page.figure(describe(band), (x, y, x + size, y + size)):
        if corners:
            page.polygon(corners, fill=band.colour, stroke=INK, line=line)
            page.polygon(inner, fill=WHITE)
        else:
            radius = 0.48 * size
            page.circle(centre_x, centre_y, radius, fill=band.colour, stroke=INK, line=line)
            page.circle(centre_x, centre_y, INSIDE * radius, fill=WHITE)
        middle_y, height = _LETTER[band.shape]
        letter = plain(band.letter)
        most = height * size / face(True).width(letter)
        text_size = min(height * size / CAP_HEIGHT, most)
        baseline = y + middle_y * size - CAP_HEIGHT * text_size / 2
        page.text(
            x + size / 2,
            baseline,
            letter,
            text_size,
            bold=True,
            align="centre",
        )


def interval(band: Band) -> str:
    """Return the band's scores as printed, with an en dash.

    >>> # "5–6", or "8" where the band holds one score
    """
    if band.lowest == band.highest:
        return str(band.lowest)
    return f"{band.lowest}–{band.highest}"
