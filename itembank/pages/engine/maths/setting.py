"""Sets MathML in the mathematics face, as plain numbers that no drawing library is needed for.

A layout is in *ems* with the y axis pointing up, so that one serves every size.

Importing this module imports ReportLab; use :mod:`itembank.pages.engine.maths.formula`.
"""

from __future__ import annotations

from xml.etree import ElementTree

from itembank.pages.engine.faces.maths_metrics import metrics
from itembank.pages.engine.maths.formula_layout import Formula, Glyph
from itembank.pages.engine.maths.formula_parts import Rule, marks_of
from itembank.pages.engine.maths.formula_setter import REFERENCE, Place, Setter

SIDE = 0.03
"""Blank room kept left and right of a formula's ink, in ems."""
_UNSEEN = "\u2060"
"""What all but the first part of a tall sign says: it is one sign where it is copied."""


def set_formula(mathml: str, least_script: float = 0.0) -> Formula:
    """Return the layout of `mathml`, in which no sign is smaller than this share of the text.

    Raises:
        ValueError: the text is not well-formed XML, or has an element that is not set here.
    """
    try:
        element = ElementTree.fromstring(mathml)
    except ElementTree.ParseError as fault:
        raise ValueError(f"this is not well-formed MathML ({fault}): {mathml}") from None
    setter = Setter(least_script)
    glyphs: list[tuple[int, float, float, float, str]] = []
    rules: list[tuple[float, float, float, float]] = []
    boxes: list[tuple[float, float, float, float]] = []
    for mark, x, y in marks_of(setter.set(element, Place())):
        if isinstance(mark, Rule):
            rules.append((x, -y - mark.thick, mark.width, mark.thick))
            continue
        shape, size, character = mark
        unit = size / setter.face.units
        for n, (number, raised) in enumerate(shape.glyphs):
            at = -y + raised * unit
            glyphs.append((number, x, at, size, character if n == 0 else _UNSEEN))
        # A space has no ink, and takes no part in how far the formula reaches.
        if shape.glyphs:
            boxes.append(
                (
                    x + shape.left * unit,
                    -y + shape.low * unit,
                    x + shape.right * unit,
                    -y + shape.high * unit,
                )
            )
    boxes.extend((x, y, x + w, y + h) for x, y, w, h in rules)
    return _in_ems(glyphs, rules, boxes)


def _in_ems(
    glyphs: list[tuple[int, float, float, float, str]],
    rules: list[tuple[float, float, float, float]],
    boxes: list[tuple[float, float, float, float]],
) -> Formula:
    """Return the layout moved to start at its ink and divided by the size it was set at."""
    if not boxes:
        return Formula(0.0, 0.0, 0.0, (), ())
    lefts, lows, rights, highs = zip(*boxes, strict=True)
    left = min(lefts) - SIDE * REFERENCE
    right = max(rights) + SIDE * REFERENCE
    k = 1 / REFERENCE
    return Formula(
        round((right - left) * k, 5),
        round(max(highs) * k, 5),
        round(-min(lows) * k, 5),
        tuple(
            Glyph(number, round((x - left) * k, 5), round(y * k, 5), round(size * k, 5), character)
            for number, x, y, size, character in glyphs
        ),
        tuple(
            (round((x - left) * k, 5), round(y * k, 5), round(w * k, 5), round(h * k, 5))
            for x, y, w, h in rules
        ),
    )


def covers(character: str) -> bool:
    """Tell whether the mathematics font has a glyph for `character`."""
    return bool(metrics().number(character))
