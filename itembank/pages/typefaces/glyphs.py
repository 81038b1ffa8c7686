"""Outlines of glyphs: moved, put into another font, and a nought without its stroke."""

from __future__ import annotations

from typing import Any


def plain_nought(font: Any) -> Any:
    """Return the nought without its stroke: its outline about the counter of the letter O.

    The counter is set so far within the outline as it is in the O, so that the nought has the
    weight of the letters, whatever the weight of the face.
    """
    from fontTools.pens.ttGlyphPen import TTGlyphPen

    glyf = font["glyf"]
    outer, inner = _contours(glyf, "zero")[0], _contours(glyf, "O")[1]
    whole, letter = _contours(glyf, "zero")[0], _contours(glyf, "O")[0]
    stem = min(x for x, _, _ in inner) - min(x for x, _, _ in letter)
    left = min(x for x, _, _ in whole) + stem
    right = max(x for x, _, _ in whole) - stem
    low, high = min(x for x, _, _ in inner), max(x for x, _, _ in inner)
    scale = (right - left) / (high - low)
    counter = [(round(left + (x - low) * scale), y, on) for x, y, on in inner]
    pen = TTGlyphPen(None)
    for contour in (outer, counter):
        _draw(pen, contour)
    return pen.glyph()


Contour = list[tuple[int, int, bool]]


def _contours(glyf: Any, name: str) -> list[Contour]:
    points, ends, flags = glyf[name].getCoordinates(glyf)
    drawn = [(x, y, bool(flag & 1)) for (x, y), flag in zip(points, flags, strict=True)]
    starts = [0, *(end + 1 for end in ends)]
    return [drawn[start : end + 1] for start, end in zip(starts, ends, strict=False)]


def _draw(pen: Any, contour: Contour) -> None:
    """Draw a closed TrueType contour; points that are off it are those of quadratic curves."""
    first = next(n for n, (_, _, on) in enumerate(contour) if on)
    turned = contour[first:] + contour[:first]
    pen.moveTo(turned[0][:2])
    off: list[tuple[int, int]] = []
    for x, y, on in [*turned[1:], turned[0]]:
        if not on:
            off.append((x, y))
        elif off:
            pen.qCurveTo(*off, (x, y))
            off = []
        else:
            pen.lineTo((x, y))
    pen.closePath()


def moved(glyph: Any, glyf: Any, x: int) -> Any:
    """Return a glyph so many units further to the right."""
    from copy import deepcopy

    made = deepcopy(glyph)
    made.coordinates.translate((x, 0))
    made.recalcBounds(glyf)
    return made


def graft(font: Any, name: str, source: Any, other: str) -> None:
    """Put a glyph of another font, its parts made one outline, in the place of one of `font`."""
    from fontTools.pens.recordingPen import DecomposingRecordingPen
    from fontTools.pens.ttGlyphPen import TTGlyphPen

    glyphs = source.getGlyphSet()
    recording = DecomposingRecordingPen(glyphs)
    glyphs[other].draw(recording)
    pen = TTGlyphPen(None)
    recording.replay(pen)
    glyph = pen.glyph()
    glyph.recalcBounds(font["glyf"])
    font["glyf"][name] = glyph
    font["hmtx"][name] = (source["hmtx"][other][0], getattr(glyph, "xMin", 0))
