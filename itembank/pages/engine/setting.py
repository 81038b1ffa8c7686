"""Sets MathML with ziamath and keeps the result as plain numbers, free of any drawing library.

ziamath measures in pixels of a text size; everything here is divided by that size, so a
layout is in *ems* with the y axis pointing up, and one layout serves every size.

Three things in ziamath are replaced while a formula is set here, and put back after it, by values
that say the same thing (each was found with a profiler; together they make a layout about five
times faster):

* a node's style is copied through ``dataclasses.asdict``; a plain copy gives the same style;
* a row sets all its children twice, to learn how far brackets must stretch; rows without a
  stretching operator need it once;
* an em is worked out as 13.33 pixels for a 10-pixel font. An em is the text size (CSS
  Values 4, section 6.1.1), so spaces come out as MathML Core gives them.

Importing this module imports ziamath; use :mod:`itembank.pages.engine.formula`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from typing import Any
from xml.etree import ElementTree

from ziamath import operators, zmath
from ziamath.config import config
from ziamath.drawable import Box, HLine, VLine
from ziamath.drawable import Glyph as Drawn
from ziamath.mathfont import MathFont
from ziamath.nodes import mfrac, mnode
from ziamath.nodes.mnode import Mnode
from ziamath.nodes.mrow import Mrow
from ziamath.styles import MathStyle, MathVariant, parse_style

from itembank.pages.engine.fonts import MATHS
from itembank.pages.engine.formula_layout import Formula, Glyph

REFERENCE = 1000.0
"""Size at which every formula is set, in units that make an em 1000."""

SIDE = 0.03
"""Blank room kept left and right of a formula's ink, in ems."""

_STYLED = {"style", "mathcolor", "mathbackground", "mathsize", "displaystyle", "display"}
_NAMED_SPACES = {
    name: eighteenths / 18
    for eighteenths, name in enumerate(
        (
            "veryverythinmathspace",
            "verythinmathspace",
            "thinmathspace",
            "mediummathspace",
            "thickmathspace",
            "verythickmathspace",
            "veryverythickmathspace",
        ),
        start=1,
    )
}
_STRETCHING = re.compile(r"[()\[\]{}|‖⌊⌋⌈⌉⟨⟩/∣]")


def _style(element: Any, parent: Any = None) -> Any:
    """Return what ziamath's `parse_style` returns, without the deep copy where it is plain."""
    attributes = element.attrib
    if parent is None or not _STYLED.isdisjoint(attributes):
        return parse_style(element, parent)
    old = parent.mathvariant
    variant = attributes.get("mathvariant", "")
    if variant:
        return parse_style(element, parent)
    level = attributes.get("scriptlevel")
    return MathStyle(
        MathVariant(old.style, old.italic, old.bold, old.normal),
        parent.displaystyle,
        parent.mathcolor,
        parent.mathbackground,
        parent.mathsize,
        parent.scriptlevel if level is None else int(level),
    )


@lru_cache(maxsize=512)
def _ems(length: str) -> float | None:
    """Return a MathML length in ems, or None where it is not one that depends on the font."""
    sign = 1
    if length.startswith("negative"):
        length, sign = length.removeprefix("negative"), -1
    if length in _NAMED_SPACES:
        return sign * _NAMED_SPACES[length]
    if length in ("", "0"):
        return 0.0
    if length.endswith("em"):
        try:
            return float(length[:-2])
        except ValueError:
            return None
    return None


def _size_px(self: Any, size: str, fontsize: float | None = None) -> float:
    """Return a MathML length in pixels."""
    ems = _ems(size)
    if ems is None:
        return float(_ziamath_size_px(self, size, fontsize))
    return ems * (self.glyphsize if fontsize is None else fontsize)


class _Row(Mrow, tag="mrow"):
    """A row that sets its children once unless a bracket must stretch to them."""

    def _get_height_nostretch(self, line: Any, **kwargs: Any) -> tuple[float, float]:
        for child in line:
            if child.tag in ("mo", "mfenced") and _STRETCHING.search(child.text or "("):
                low, high = super()._get_height_nostretch(line, **kwargs)
                return float(low), float(high)
        return 0.0, 0.0


@lru_cache(maxsize=256)
def _operator(name: str, form: str) -> dict[str, str]:
    return dict(_ziamath_operator(name, form))


@lru_cache(maxsize=1)
def _font() -> Any:
    """Return the mathematics face, of one family with the text."""
    return MathFont(MATHS, basesize=REFERENCE)


class _Root:
    """What the outermost node needs of its parent."""

    mtag = "math"
    nodes: tuple[Any, ...] = ()

    def __init__(self, element: Any) -> None:
        self.font = _font()
        self.size = REFERENCE
        self.style = parse_style(element)
        self.element = element
        self.parent = self


_ziamath_size_px = Mnode.size_px
_ziamath_operator = operators.get_params
_OURS: tuple[tuple[Any, str, Any], ...] = (
    (Mnode, "size_px", _size_px),
    (mnode, "parse_style", _style),
    (mfrac, "parse_style", _style),
    (operators, "get_params", lambda name, form: dict(_operator(name, form))),
)
"""What is replaced while a formula is set: where it stands in ziamath, and what by."""


@contextmanager
def _replaced(least_script: float) -> Iterator[None]:
    ours = [*_OURS, (config, "minsizefraction", least_script)]
    theirs = [(owner, name, getattr(owner, name)) for owner, name, _ in ours]
    try:
        for owner, name, value in ours:
            setattr(owner, name, value)
        yield
    finally:
        for owner, name, value in theirs:
            setattr(owner, name, value)


def _walk(node: Any, x: float, y: float, out: list[tuple[Any, float, float]]) -> None:
    for (dx, dy), child in zip(node.nodexy, node.nodes, strict=False):
        if isinstance(child, Mnode):
            _walk(child, x + dx, y + dy, out)
        else:
            out.append((child, x + dx, y + dy))


def set_formula(mathml: str, least_script: float = 0.0) -> Formula:
    """Return the layout of `mathml`, in which no sign is smaller than this share of the text.

    Raises:
        ValueError: the text is not well-formed XML.
    """
    try:
        element = ElementTree.fromstring(mathml)
    except ElementTree.ParseError as fault:
        raise ValueError(f"this is not well-formed MathML ({fault}): {mathml}") from None
    zmath.denamespace(element)
    if "<mstyle" in mathml:
        element = zmath.apply_mstyle(element)
    # Full-size fractions: a pupil at the back must read the digits above the bar.
    element.attrib.pop("display", None)
    with _replaced(least_script):
        parent: Any = _Root(element)
        node = Mnode.fromelement(element, parent=parent)
    marks: list[tuple[Any, float, float]] = []
    _walk(node, 0.0, 0.0, marks)
    glyphs: list[Glyph] = []
    rules: list[tuple[float, float, float, float]] = []
    boxes: list[tuple[float, float, float, float]] = []
    for mark, x, y in marks:
        if getattr(mark, "phantom", False):
            continue
        if isinstance(mark, Drawn):
            if mark.glyph.operators:
                scale = mark.size / mark.glyph.font.info.layout.unitsperem
                box = mark.glyph.bbox
                glyphs.append(Glyph(mark.glyph.index, x, -y, mark.size, mark.char))
                boxes.append(
                    (
                        x + box.xmin * scale,
                        -y + box.ymin * scale,
                        x + box.xmax * scale,
                        -y + box.ymax * scale,
                    )
                )
        elif isinstance(mark, HLine):
            rules.append((x, -y - mark.lw, mark.length, mark.lw))
        elif isinstance(mark, VLine):
            rules.append((x - mark.lw / 2, -y - mark.height, mark.lw, mark.height))
        elif isinstance(mark, Box):
            rules.extend(_frame(x, -y, mark.width, mark.height, mark.lw))
        else:
            raise ValueError(f"no way to draw this part of a formula: {type(mark).__name__}")
    boxes.extend((x, y, x + w, y + h) for x, y, w, h in rules)
    return _in_ems(glyphs, rules, boxes)


def _frame(
    x: float, y: float, width: float, height: float, line: float
) -> list[tuple[float, float, float, float]]:
    """Return the four bars of an empty box."""
    return [
        (x, y, width, line),
        (x, y + height - line, width, line),
        (x, y, line, height),
        (x + width - line, y, line, height),
    ]


def _in_ems(
    glyphs: list[Glyph],
    rules: list[tuple[float, float, float, float]],
    boxes: list[tuple[float, float, float, float]],
) -> Formula:
    """Return the layout moved to start at its ink and divided by the size it was set at."""
    if not boxes:
        return Formula(0.0, 0.0, 0.0, (), ())
    left = min(box[0] for box in boxes) - SIDE * REFERENCE
    right = max(box[2] for box in boxes) + SIDE * REFERENCE
    k = 1 / REFERENCE
    return Formula(
        round((right - left) * k, 5),
        round(max(box[3] for box in boxes) * k, 5),
        round(-min(box[1] for box in boxes) * k, 5),
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
    return bool(_font().glyphindex(character))
