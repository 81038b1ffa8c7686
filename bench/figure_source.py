"""Drawings as typst source: the same strokes, areas and labels at the same places."""

from __future__ import annotations

from collections.abc import Sequence

from typst_source import maths

from itembank.figures.drawing import (
    WEIGHTS,
    Arc,
    Area,
    Drawing,
    Mark,
    Point,
    Stroke,
    Text,
    text_box,
)
from itembank.figures.svg import arc_ends

TONES = {"none": "none", "paper": "white", "ink": "black"}
TEXT = "Atkinson Hyperlegible"


def source(drawings: Sequence[tuple[Drawing, str]], size: float) -> str:
    """Return the source of a document with a figure a page; each comes with its words."""
    lines = [
        '#set document(title: "Figures", date: none)',
        f'#set text(font: "{TEXT}", size: {size}pt, lang: "en", region: "GB")',
        '#set page(paper: "a4", margin: 45pt)',
    ]
    for made, said in drawings:
        parts = "\n".join(_mark(mark, made, size) for mark in made.marks)
        wide, high = float(made.width) * size, float(made.height) * size
        words = said.replace("\\", "\\\\").replace('"', '\\"')
        lines.append(
            f'#figure(alt: "{words}", box(width: {wide:.2f}pt, height: {high:.2f}pt)[{parts}])\n'
            "#pagebreak(weak: true)"
        )
    return "\n".join(lines)


def _at(point: Point, made: Drawing, size: float) -> tuple[float, float]:
    return float(point.x - made.left) * size, float(made.top - point.y) * size


def _mark(mark: Mark, made: Drawing, size: float) -> str:
    if isinstance(mark, Text):
        box = text_box(mark)
        x, y = _at(Point(box.left, box.top), made, size)
        inner = mark.content if isinstance(mark.content, str) else f"${maths(mark.content)}$"
        said = f"#{_string(inner)}" if isinstance(mark.content, str) else inner
        strong = f"*{said}*" if mark.bold and isinstance(mark.content, str) else said
        wide = float(box.right - box.left) * size
        return f"#place(dx: {x:.2f}pt, dy: {y:.2f}pt, box(width: {wide:.2f}pt)[{strong}])"
    line = f"{float(WEIGHTS[mark.weight]) * size:.2f}pt + black"
    if isinstance(mark, Arc):
        if mark.whole:
            r = float(mark.radius) * size
            x, y = _at(mark.centre, made, size)
            return (
                f"#place(dx: {x - r:.2f}pt, dy: {y - r:.2f}pt, "
                f"circle(radius: {r:.2f}pt, stroke: {line}))"
            )
        a, b, _ = arc_ends(mark)
        points = [_at(p, made, size) for p in (a, b)]
        (x0, y0), (x1, y1) = points
        return (
            f"#place(curve(stroke: {line}, curve.move(({x0:.2f}pt, {y0:.2f}pt)), "
            f"curve.quad(none, ({x1:.2f}pt, {y1:.2f}pt))))"
        )
    corners = ", ".join(
        f"({x:.2f}pt, {y:.2f}pt)" for x, y in (_at(p, made, size) for p in mark.points)
    )
    if isinstance(mark, Area):
        fill = TONES.get(mark.fill, "gray")
        return (
            f"#place(polygon(fill: {fill}, stroke: {line if mark.outline else 'none'}, {corners}))"
        )
    assert isinstance(mark, Stroke)
    first, *rest = [f"({x:.2f}pt, {y:.2f}pt)" for x, y in (_at(p, made, size) for p in mark.points)]
    steps = ", ".join(f"curve.line({point})" for point in rest)
    return f"#place(curve(stroke: {line}, curve.move({first}), {steps}))"


def _string(text: str) -> str:
    quoted = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{quoted}"'
