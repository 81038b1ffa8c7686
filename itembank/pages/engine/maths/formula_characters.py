"""Sets the characters of a formula side by side: numbers, letters and words, and signs that grow.

Each run is set once for the whole process and shared by every formula that holds it.
"""

from __future__ import annotations

from functools import lru_cache

from itembank.pages.engine.faces.maths_metrics import metrics
from itembank.pages.engine.maths.formula_parts import Ink, Part


@lru_cache(maxsize=2048)
def set_characters(kind: str, string: str, written: str, size: float, apart: bool) -> Part:
    """Set characters side by side, each of which says what is written in its place.

    `apart`: one that leans back is kept off the last one.
    """
    face = metrics()
    part = Part(kind, size)
    unit, x = size / face.units, 0.0
    low, high = 9999.0, -9999.0
    end = 0.0
    for n, (character, says) in enumerate(zip(string, written, strict=True)):
        shape = face.shape(face.number(character))
        left = shape.left * unit
        # An italic f reaches back over the sign before it.
        if apart and left < 0:
            x -= left
        part.holds.append((x, 0.0, Ink(shape, size, says)))
        part.last = shape
        if n == 0:
            part.left, part.first = left, shape
        end = x + max(shape.right * unit, shape.advance * unit)
        x += shape.advance * unit
        low, high = min(low, shape.low * unit), max(high, shape.high * unit)
    part.reach(part.left, end if apart else x, low, high)
    return part


@lru_cache(maxsize=2048)
def set_sign(
    string: str,
    size: float,
    before: float,
    after: float | None,
    reach: tuple[float, float] | None,
    counts: bool,
) -> Part:
    """Set a sign with room before and after it, as tall as it must `reach`.

    `after` is None where a sign's own ink is its end, as in a script. `counts` says whether it
    counts in how high its row is.
    """
    face = metrics()
    part = Part("mo", size)
    unit = size / face.units
    x, right = before, 0.0
    low, high = 999.0, -999.0
    for n, character in enumerate(string):
        shape = plain = face.shape(face.number(character))
        if reach is not None:
            shape = face.about(shape.number, reach[0] / unit, reach[1] / unit)
        part.holds.append((x, 0.0, Ink(shape, size, character)))
        right = max(right, x + shape.right * unit)
        x += shape.advance * unit
        if counts:
            low, high = min(low, shape.low * unit), max(high, shape.high * unit)
        if n == 0:
            part.first, part.left = shape, plain.left * unit
        part.last = shape
    if after is not None:
        right = max(right, x + after)
    part.reach(part.left, right, low, high)
    return part
