"""The layout of one formula as plain numbers, in ems: it can be pickled, scaled and drawn."""

from __future__ import annotations

from typing import NamedTuple


class Glyph(NamedTuple):
    """A glyph of the mathematics face: its number, its place, its size and what it shows."""

    number: int
    x: float
    y: float
    scale: float
    character: str


class Formula(NamedTuple):
    """One formula set at size 1, from its left edge on the baseline, y pointing up.

    `rules` holds bars as (left, bottom, width, height).
    """

    width: float
    ascent: float
    descent: float
    glyphs: tuple[Glyph, ...]
    rules: tuple[tuple[float, float, float, float], ...]
