"""A band's sign for web pages: the same outline as on slides and sheets, as SVG."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from itembank.pages.engine.faces.fonts import CAP_HEIGHT
from itembank.pages.engine.page.page import Point
from itembank.pages.engine.page.signs import letter_size, outline
from itembank.planning.bands.band_signs import ShapeName

SIDE = 100
_LINE = 6


def sign_svg(shape: ShapeName, letter: str, colour: str) -> str:
    """Return the sign of a band: its shape with its letter inside.

    It says nothing to a screen reader, since the band's name stands beside it.

    >>> sign_svg("ring", "S", "#CC79A7").startswith('<svg class="sign"')
    True
    """
    drawn = outline(shape)
    x, y = drawn.middle
    size = letter_size(shape, letter) * SIDE
    return (
        f'<svg class="sign" viewBox="-4 -4 {SIDE + 8} {SIDE + 8}" aria-hidden="true">'
        f'<path d="{_path(drawn.frame)}" fill="{escape(colour)}" stroke="#1b2530" '
        f'stroke-width="{_LINE}" stroke-linejoin="round"/>'
        f'<path d="{_path(drawn.plate)}" fill="#fff"/>'
        f'<text x="{_number(x * SIDE)}" y="{_number((1 - y) * SIDE + CAP_HEIGHT * size / 2)}" '
        f'text-anchor="middle" font-size="{_number(size)}" font-weight="700" fill="#1b2530">'
        f"{escape(letter)}</text></svg>"
    )


def _path(corners: Sequence[Point]) -> str:
    # Pages count from below, screens from above.
    points = [f"{_number(x * SIDE)} {_number((1 - y) * SIDE)}" for x, y in corners]
    return f"M{' L'.join(points)}Z"


def _number(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
