"""A band's sign on a web page: the same outline as on slides and sheets, as SVG."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from markupsafe import Markup, escape

SIDE = 100
_LINE = 6


def sign(band: Mapping[str, Any]) -> Markup:
    """Return the sign of a band as a pack stores it: its shape with its letter inside.

    It says nothing to a screen reader, since the band's name stands beside it.

    >>> "<svg" in sign({"shape": "ring", "letter": "S", "colour": "#CC79A7"})
    True
    """
    from itembank.pages.engine.signs import outline  # it loads all that draws pages

    drawn = outline(band["shape"])
    x, y = drawn.middle
    size = drawn.height * SIDE / 0.668  # the height of this face's capitals in its em
    parts = [
        f'<svg class="sign" viewBox="-4 -4 {SIDE + 8} {SIDE + 8}" aria-hidden="true">',
        f'<path d="{_path(drawn.frame)}" fill="{escape(band["colour"])}" stroke="#1b2530" '
        f'stroke-width="{_LINE}" stroke-linejoin="round"/>',
        f'<path d="{_path(drawn.plate)}" fill="#fff"/>',
        f'<text x="{_number(x * SIDE)}" y="{_number((1 - y) * SIDE + drawn.height * SIDE / 2)}" '
        f'text-anchor="middle" font-size="{_number(size)}" font-weight="700" fill="#1b2530">'
        f"{escape(band['letter'])}</text></svg>",
    ]
    return Markup("".join(parts))


def _path(corners: Sequence[tuple[float, float]]) -> str:
    # Pages count from below, screens from above.
    points = [f"{_number(x * SIDE)} {_number((1 - y) * SIDE)}" for x, y in corners]
    return f"M{' L'.join(points)}Z"


def _number(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
