"""A figure's drawing as SVG, for web pages and as a file to look at.

Strokes and labels take the colour of the text around them, so that one picture suits a light and a
dark page; tones are patterns of that colour. The picture is as wide as its ems of the text around
it. Labels that are more than plain signs are MathML, set by the browser as everywhere on a page.
There is no style and no script in it (the pages forbid both).

>>> from itembank.figures.kinds.number.shaded_shape import ShadedShape
>>> picture = svg(ShadedShape("rectangle", 1, 2, (0,)))
>>> picture.startswith('<svg xmlns="http://www.w3.org/2000/svg" role="img"')
True
"""

from __future__ import annotations

import math
from fractions import Fraction
from hashlib import blake2b
from html import escape

from itembank.figures.drawing import (
    ARROW_LONG,
    ARROW_WIDE,
    WEIGHTS,
    Arc,
    Area,
    Drawing,
    Exact,
    Mark,
    Point,
    Stroke,
    Text,
    text_box,
)
from itembank.figures.figure import Figure, drawn, words
from itembank.figures.label_room import DOWN
from itembank.notation.mathml import mathml

EM = 20
"""Units of the picture to an em, so that numbers in the file are short."""

FAINT = 0.65
"""How opaque faint lines are, so that they suit a light page and a dark one: 3 : 1 on both."""
MARGIN = Fraction(1, 10)
_PATTERNS = {
    "shade": (
        4,
        '<rect width="4" height="4" fill="currentColor" fill-opacity="0.18"/>'
        '<path d="M-1 5L5 -1M-1 1L1 -1M3 5L5 3" stroke="currentColor" stroke-width="0.9"/>',
    ),
    "dots": (5, '<circle cx="2.5" cy="2.5" r="0.9" fill="currentColor"/>'),
    "cross": (6, '<path d="M0 0L6 6M6 0L0 6" stroke="currentColor" stroke-width="0.7"/>'),
    "bars": (5, '<path d="M0 2.5H5" stroke="currentColor" stroke-width="0.9"/>'),
}


def svg(figure: Figure, title: bool = True) -> str:
    """Return a figure as one ``svg`` element; with `title` its words are its label."""
    return svg_of_drawing(drawn(figure), words(figure) if title else "")


def svg_of_drawing(made: Drawing, label: str) -> str:
    """Return any drawing as one ``svg`` element; without a label it is decoration."""
    said = escape(label, quote=True)
    named = f'role="img" aria-label="{said}"' if label else 'aria-hidden="true"'
    # Pictures that stand on one page may not share the names of their patterns.
    return _svg(made, named, "f" + blake2b(repr(made).encode(), digest_size=4).hexdigest())


def _svg(made: Drawing, named: str, prefix: str) -> str:
    place = _Place(made)
    used = {mark.fill for mark in made.marks if isinstance(mark, Area | Arc)} & {*_PATTERNS}
    patterns = "".join(
        f'<pattern id="{prefix}-{fill}" width="{_PATTERNS[fill][0]}" height="{_PATTERNS[fill][0]}" '
        f'patternUnits="userSpaceOnUse">{_PATTERNS[fill][1]}</pattern>'
        for fill in sorted(used)
    )
    defs = f"<defs>{patterns}</defs>" if patterns else ""
    body = "".join(_mark(mark, place, prefix) for mark in made.marks)
    wide, high = place.width, place.height
    # On the element itself a size of letters would be that of its ems, whatever stands around it.
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" {named} class="figure" '
        f'width="{_n(wide / EM)}em" height="{_n(high / EM)}em" '
        f'viewBox="0 0 {_n(wide)} {_n(high)}" '
        f'stroke-linejoin="round" stroke-linecap="round">{defs}<g font-size="{EM}">{body}</g></svg>'
    )


class _Place:
    """From ems, y up, to units of the picture, y down."""

    def __init__(self, made: Drawing) -> None:
        self.left, self.top = made.left - MARGIN, made.top + MARGIN
        self.width = float((made.width + 2 * MARGIN) * EM)
        self.height = float((made.height + 2 * MARGIN) * EM)

    def x(self, x: Exact) -> str:
        return _n(float((x - self.left) * EM))

    def y(self, y: Exact) -> str:
        return _n(float((self.top - y) * EM))

    def at(self, point: Point) -> str:
        return f"{self.x(point.x)} {self.y(point.y)}"


def _n(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _fill(fill: str, prefix: str) -> str:
    if fill in ("none", "ink"):
        return "none" if fill == "none" else "currentColor"
    return "white" if fill == "paper" else f"url(#{prefix}-{fill})"


def _paper(fill: str) -> str:
    """Return the class of what has the colour of the paper, which a dark page gives another."""
    return ' class="figure-paper"' if fill == "paper" else ""


def _mark(mark: Mark, place: _Place, prefix: str) -> str:
    if isinstance(mark, Text):
        return _text(mark, place)
    width = _n(float(WEIGHTS[mark.weight]) * EM)
    pale = f' stroke-opacity="{FAINT}"' if mark.weight == "faint" else ""
    if isinstance(mark, Stroke):
        path = "M" + "L".join(place.at(point) for point in mark.points)
        dash = ' stroke-dasharray="5 4"' if mark.dashed else ""
        heads = "".join(
            f'<path d="M{"L".join(place.at(p) for p in head)}Z" fill="currentColor"/>'
            for head in arrow_heads(mark)
        )
        return (
            f'<path d="{path}" fill="none" stroke="currentColor" stroke-width="{width}"'
            f"{pale}{dash}/>"
            f"{heads}"
        )
    fill = _fill(mark.fill, prefix)
    stroke = f'stroke="currentColor" stroke-width="{width}"{pale}'
    if isinstance(mark, Area):
        path = "M" + "L".join(place.at(point) for point in mark.points) + "Z"
        outline = stroke if mark.outline else ""
        return f'<path d="{path}" fill="{fill}"{_paper(mark.fill)} {outline}/>'
    radius = _n(float(mark.radius) * EM)
    if mark.whole:
        x, y = place.x(mark.centre.x), place.y(mark.centre.y)
        return f'<circle cx="{x}" cy="{y}" r="{radius}" fill="{fill}"{_paper(mark.fill)} {stroke}/>'
    a, b, sweep = arc_ends(mark)
    curve = f"{place.at(a)}A{radius} {radius} 0 {int(sweep > 180)} 0 {place.at(b)}"
    path = f"M{place.at(mark.centre)}L{curve}Z" if mark.sector else f"M{curve}"
    return f'<path d="{path}" fill="{fill}"{_paper(mark.fill)} {stroke}/>'


def arc_ends(arc: Arc) -> tuple[Point, Point, float]:
    """Return where an arc begins and ends, and how many degrees it turns through."""
    r = float(arc.radius)
    angles = [
        math.atan2(float(p.y - arc.centre.y), float(p.x - arc.centre.x))
        for p in (arc.start, arc.end)
    ]
    a, b = (
        Point(
            arc.centre.x + Fraction(math.cos(angle) * r),
            arc.centre.y + Fraction(math.sin(angle) * r),
        )
        for angle in angles
    )
    sweep = math.degrees(angles[1] - angles[0]) % 360
    return a, b, sweep if sweep > 1e-9 else 360.0


def arrow_heads(stroke: Stroke) -> list[tuple[Point, Point, Point]]:
    """Return the corners of each head that a stroke has, the tip first."""
    ends = {"": [], "end": [stroke.points[-2:]], "both": [stroke.points[-2:], stroke.points[1::-1]]}
    wide = float(WEIGHTS[stroke.weight])
    out = []
    for start, tip in ends[stroke.arrow]:
        dx, dy = float(tip.x - start.x), float(tip.y - start.y)
        length = math.hypot(dx, dy) or 1.0
        ux, uy = dx / length, dy / length
        back_x, back_y = (
            float(tip.x) - ux * wide * ARROW_LONG,
            float(tip.y) - uy * wide * ARROW_LONG,
        )
        side = wide * ARROW_WIDE * 0.8
        out.append(
            (
                tip,
                Point(Fraction(back_x - uy * side), Fraction(back_y + ux * side)),
                Point(Fraction(back_x + uy * side), Fraction(back_y - ux * side)),
            )
        )
    return out


def _text(label: Text, place: _Place) -> str:
    box = text_box(label)
    weight = ' font-weight="bold"' if label.bold else ""
    patch = ""
    if label.paper:
        patch = (
            f'<rect x="{place.x(box.left)}" y="{place.y(box.top)}" '
            f'width="{_n(float(box.right - box.left) * EM)}" '
            f'height="{_n(float(box.top - box.bottom) * EM)}" class="figure-paper" fill="white"/>'
        )
    anchor, x = {
        "left": ("start", box.left),
        "centre": ("middle", (box.left + box.right) / 2),
        "right": ("end", box.right),
    }[label.across]
    if isinstance(label.content, str):
        # The box of a label reaches below its line as far as letters do.
        base = place.y(box.bottom + DOWN)
        return (
            f'{patch}<text x="{place.x(x)}" y="{base}" text-anchor="{anchor}"{weight} '
            f'fill="currentColor">{escape(label.content)}</text>'
        )
    wide, high = float(box.right - box.left) * EM, float(box.top - box.bottom) * EM
    return (
        f'{patch}<foreignObject x="{place.x(box.left)}" y="{place.y(box.top)}" '
        f'width="{_n(wide)}" height="{_n(high)}" overflow="visible">'
        f'<div xmlns="http://www.w3.org/1999/xhtml" class="figure-label {label.across}">'
        f"{mathml(label.content)}</div></foreignObject>"
    )
