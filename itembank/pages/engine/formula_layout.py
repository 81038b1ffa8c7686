"""The layout of one formula as plain numbers, in ems: it can be pickled, scaled and drawn."""

from __future__ import annotations

from typing import NamedTuple


class Formula(NamedTuple):
    """One formula set at size 1, from its left edge on the baseline, y pointing up.

    `glyphs` holds (glyph number, x, y, scale of the font's units); `rules` holds bars as
    (left, bottom, width, height).
    """

    width: float
    ascent: float
    descent: float
    glyphs: tuple[tuple[int, float, float, float], ...]
    rules: tuple[tuple[float, float, float, float], ...]


class Batch(NamedTuple):
    """Layouts by their MathML, with the outline of every glyph they use."""

    formulas: dict[str, Formula]
    outlines: dict[int, str]
