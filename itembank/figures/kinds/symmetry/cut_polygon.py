"""A regular polygon cut from its middle to its corners, some of the triangles shaded."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.circle_points import on_circle
from itembank.figures.drawing import Area, Drawing, Mark, Point, drawing
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Said,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.symmetry.symmetry_asked import LINES, ORDER, PATTERN
from itembank.figures.kinds.symmetry.symmetry_found import of_turn
from itembank.notation import tree as t
from itembank.text.in_words import counted

NAMES = {
    3: "equilateral triangle",
    4: "square",
    5: "regular pentagon",
    6: "regular hexagon",
    7: "regular heptagon",
    8: "regular octagon",
    9: "regular nonagon",
    10: "regular decagon",
}
"""What a regular polygon is called, by its sides (the usual English names)."""
_RADIUS = Fraction(9, 5)


@dataclass(frozen=True, slots=True)
class CutPolygon(Figure):
    """A regular polygon, cut into as many triangles as it has sides where some are `shaded`.

    Its corners, and the triangles, are counted from 0, clockwise from the top; triangle 0 comes
    after corner 0. Without any it is not cut at all.

    >>> CutPolygon(6, (0, 2, 4)).sides
    6
    """

    sides: int
    shaded: tuple[int, ...] = ()


def _fault(figure: CutPolygon) -> str:
    if figure.sides not in NAMES:
        return f"it may have {min(NAMES)} to {max(NAMES)} sides"
    if any(not 0 <= part < figure.sides for part in figure.shaded):
        return f"its triangles are counted from 0 to {figure.sides - 1}"
    if len({*figure.shaded}) != len(figure.shaded):
        return "a triangle is shaded twice"
    return ""


def _drawing(figure: CutPolygon) -> Drawing:
    middle = Point(_RADIUS, _RADIUS)
    # A square stands on its side, as it does in books.
    start = Fraction(1, 8) if figure.sides == 4 else Fraction(0)
    rim = tuple(
        on_circle(middle, _RADIUS, start + Fraction(k, figure.sides)) for k in range(figure.sides)
    )
    marks: list[Mark] = []
    if not figure.shaded:
        return drawing([Area(rim, "outline", "none")])
    for part in range(figure.sides):
        corners = (middle, rim[part], rim[(part + 1) % figure.sides])
        dark = part in figure.shaded
        marks.append(Area(corners, "shaded" if dark else "part", "shade" if dark else "none"))
    return drawing(marks)


def _words(figure: CutPolygon) -> str:
    name = NAMES[figure.sides]
    article = "An" if name[0] in "aeiou" else "A"
    if not figure.shaded:
        return f"{article} {name} is drawn."
    first = f"{article} {name} is cut from its middle to its corners into equal triangles."
    dark = [str(part + 1) for part in sorted(figure.shaded)]
    if len(dark) == figure.sides:
        return f"{first} All of the {figure.sides} triangles are shaded."
    round_it = f"Counted clockwise, {counted(len(dark), 'triangle')} of {figure.sides}"
    if len(dark) == 1:
        return f"{first} {round_it} is shaded: number {dark[0]}."
    return f"{first} {round_it} are shaded: numbers {', '.join(dark[:-1])} and {dark[-1]}."


def _read(figure: CutPolygon, reading: Reading) -> t.Node:
    if figure.sides == 6 and _one_or_two(figure.shaded):
        # An equilateral triangle or a rhombus, which alone has more lines than the hexagon.
        raise FigureError("what is shaded has more lines of symmetry than the whole")
    found = of_turn([part in figure.shaded for part in range(figure.sides)])
    if reading == Reading("lines of symmetry"):
        return t.Int(found.lines)
    if reading == Reading("order of rotation"):
        return t.Int(found.order)
    raise not_shown(reading)


def _readings(figure: CutPolygon) -> tuple[Reading, ...]:
    if figure.sides == 6 and _one_or_two(figure.shaded):
        return ()
    return (Reading("lines of symmetry"), Reading("order of rotation"))


def _one_or_two(shaded: tuple[int, ...]) -> bool:
    """Tell whether one triangle of a hexagon is shaded, or two side by side."""
    return len(shaded) == 1 or (len(shaded) == 2 and (shaded[0] - shaded[1]) % 6 in (1, 5))


_CALLED = rf"(?:the|this) (?P<name>{'|'.join(NAMES.values())})"


def _of_name(name: str) -> Said:
    """Return what a wording asks of a polygon that is not cut, which it calls by its name."""

    def asks(figure: CutPolygon, found: re.Match[str]) -> Asked:
        called = found["name"].casefold()
        if figure.shaded or NAMES[figure.sides] != called:
            raise FigureError(f"what it shows is no {called} without shading")
        return Asked(t.Sym("r"), (("r", Reading(name)),))

    return asks


def _of_pattern(name: str) -> Said:
    def asks(figure: CutPolygon, found: re.Match[str]) -> Asked:
        if not figure.shaded:
            raise FigureError("what it shows is no pattern")
        return Asked(t.Sym("r"), (("r", Reading(name)),))

    return asks


CUT_POLYGON = register_figure(
    FigureKind(
        "cut polygon",
        CutPolygon,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: (),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(rf"{LINES} {PATTERN} have", _of_pattern("lines of symmetry")),
            Wording(rf"(?:{ORDER}) {PATTERN}(?: have)?", _of_pattern("order of rotation")),
            Wording(rf"{LINES} {_CALLED} have", _of_name("lines of symmetry")),
            Wording(rf"(?:{ORDER}) {_CALLED}(?: have)?", _of_name("order of rotation")),
        ),
    )
)
