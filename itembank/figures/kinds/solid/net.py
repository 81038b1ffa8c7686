"""Nets: rectangles on squares, edge to edge, that fold to a cube or a cuboid, or do not."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import combinations

from itembank.data_class import dataclass
from itembank.figures.drawing import (
    Area,
    Drawing,
    Mark,
    Point,
    Stroke,
    Text,
    Weight,
    drawing,
    rectangle,
)
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Said,
    Wording,
    asks_reading,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.solid.net_folding import Rect, box_of, opposite
from itembank.notation import tree as t
from itembank.notation.units import UNITS
from itembank.text.in_words import counted

MOST_PIECES, MOST_FACES = 4, 8
MOST_ACROSS, MOST_UP, LONGEST_EDGE = 24, 14, 12
_WIDE, _HIGH = Fraction(15), Fraction(6)
_APART = Fraction(3, 2)


@dataclass(frozen=True, slots=True)
class Net(Figure):
    """Pieces of paper, each of rectangular `faces`: left, bottom, width and height in squares.

    A piece has a name where there are several. `letters` stand on the faces of a single piece, in
    their order. With a `unit` the squares that are drawn have sides of 1 of it.

    >>> Net((tuple((k, 0, 1, 1) for k in range(4)),), letters="ABCD").names
    ''
    """

    pieces: tuple[tuple[tuple[int, int, int, int], ...], ...]
    names: str = ""
    letters: str = ""
    unit: str = ""


def _fault(figure: Net) -> str:
    if not 1 <= len(figure.pieces) <= MOST_PIECES:
        return f"it may have 1 to {MOST_PIECES} pieces"
    if len(figure.names) != (len(figure.pieces) if len(figure.pieces) > 1 else 0):
        return "several pieces have a letter each, and a single one has none"
    if figure.letters and (len(figure.pieces) > 1 or len(figure.letters) != len(figure.pieces[0])):
        return "letters stand on all faces of a single piece"
    for text in (figure.names, figure.letters):
        if any(not "A" <= name <= "Z" for name in text) or len({*text}) != len(text):
            return "its letters are to be single capital letters, each once"
    if figure.unit and (figure.unit not in UNITS or UNITS[figure.unit].dimension != "length"):
        return f"{figure.unit} is no unit of length"
    for piece in figure.pieces:
        if not 1 <= len(piece) <= MOST_FACES:
            return f"a piece may have 1 to {MOST_FACES} faces"
        if any(not (0 <= x <= 40 and 0 <= y <= 40) for x, y, _, _ in piece):
            return "its faces stand 0 to 40 squares from the left and from the bottom"
        if any(not (1 <= w <= LONGEST_EDGE and 1 <= h <= LONGEST_EDGE) for _, _, w, h in piece):
            return f"a face is 1 to {LONGEST_EDGE} squares wide and high"
        if any(_overlap(face, other) for face, other in combinations(piece, 2)):
            return "two faces lie on each other"
    across = sum(_size(piece)[0] for piece in figure.pieces)
    if across > MOST_ACROSS or max(_size(piece)[1] for piece in figure.pieces) > MOST_UP:
        return f"it may be {MOST_ACROSS} squares wide and {MOST_UP} high"
    return ""


def _overlap(face: Rect, other: Rect) -> bool:
    (x, y, w, h), (a, b, c, d) = face, other
    return x < a + c and a < x + w and y < b + d and b < y + h


def _size(piece: tuple[Rect, ...]) -> tuple[int, int]:
    wide = max(x + w for x, _, w, _ in piece) - min(x for x, _, _, _ in piece)
    return wide, max(y + h for _, y, _, h in piece) - min(y for _, y, _, _ in piece)


def _square(figure: Net) -> Fraction:
    """Return the side of a square in the drawing: one with a letter has room for it."""
    if figure.letters:
        return Fraction(6, 5)
    wide = sum(_size(piece)[0] for piece in figure.pieces)
    high = max(_size(piece)[1] for piece in figure.pieces)
    room = _WIDE - _APART * (len(figure.pieces) - 1)
    return min(Fraction(4, 5), room / wide, _HIGH / high)


def _drawing(figure: Net) -> Drawing:
    side = _square(figure)
    marks: list[Mark] = []
    start = Fraction(0)
    for place, piece in enumerate(figure.pieces):
        left, bottom = min(x for x, _, _, _ in piece), min(y for _, y, _, _ in piece)
        for number, (x, y, w, h) in enumerate(piece):
            a, b = start + (x - left) * side, (y - bottom) * side
            if figure.unit:
                for k in range(1, w):
                    path = (Point(a + k * side, b), Point(a + k * side, b + h * side))
                    marks.append(Stroke(path, "square line", "faint"))
                for k in range(1, h):
                    path = (Point(a, b + k * side), Point(a + w * side, b + k * side))
                    marks.append(Stroke(path, "square line", "faint"))
            corners = rectangle(a, b, a + w * side, b + h * side)
            # The folds stand out from the squares.
            weight: Weight = "heavy" if figure.unit else "normal"
            marks.append(Area(corners, f"face {place}", "none", weight))
            if figure.letters:
                middle = Point(a + w * side / 2, b + h * side / 2)
                marks.append(Text(middle, figure.letters[number], role="letter"))
        wide = _size(piece)[0] * side
        if figure.names:
            below = Point(start + wide / 2, -Fraction(1, 4))
            marks.append(Text(below, figure.names[place], up="top", role="name"))
        start += wide + _APART
    if figure.unit:
        below = Point(0, -Fraction(1, 4))
        marks.append(Text(below, _scale(figure), "left", "top", role="scale"))
    return drawing(marks)


def _scale(figure: Net) -> str:
    return f"The squares have sides of 1 {figure.unit}."


def _words(figure: Net) -> str:
    squares = all((w, h) == (1, 1) for piece in figure.pieces for _, _, w, h in piece)
    out = []
    for place, piece in enumerate(figure.pieces):
        left, bottom = min(x for x, _, _, _ in piece), min(y for _, y, _, _ in piece)
        name = f"Shape {figure.names[place]}" if figure.names else "A net"
        kind = "square" if squares else "rectangle"
        out.append(f"{name} is made of {counted(len(piece), kind)}, edge to edge.")
        for number, (x, y, w, h) in enumerate(piece):
            called = figure.letters[number] if figure.letters else f"A {kind}"
            if squares:
                column, row = x - left + 1, y - bottom + 1
                out.append(f"{called} is in column {column} from the left, row {row} from below.")
                continue
            wide, high, along, up = (counted(k, "square") for k in (w, h, x - left, y - bottom))
            out.append(
                f"{called} is {wide} wide and {high} high, {along} from the left and {up} from "
                "the bottom."
            )
    if figure.unit:
        out.append(_scale(figure))
    return " ".join(out)


def _read(figure: Net, reading: Reading) -> t.Node:
    first = figure.pieces[0]
    single = len(figure.pieces) == 1
    if reading.name == "opposite" and len(reading.of) == 1 and single:
        name = reading.of[0].upper()
        box = box_of(first)
        if len(name) == 1 and name in figure.letters and box is not None:
            found = opposite(first, figure.letters.index(name))
            if found is not None:
                return t.Label(figure.letters[found])
    if reading == Reading("net of a cube") and not single:
        boxes = [box_of(piece) for piece in figure.pieces]
        cubes = [k for k, box in enumerate(boxes) if box is not None and box[0] == box[2]]
        if len(cubes) == 1:
            return t.Label(figure.names[cubes[0]])
    if figure.unit and single and (box := box_of(first)) is not None:
        a, b, c = box
        for name, value, power in (
            ("volume", a * b * c, 3),
            ("surface area", 2 * (a * b + b * c + a * c), 2),
            ("longest edge", c, 1),
        ):
            unit = figure.unit if power == 1 else f"{figure.unit}^{power}"
            if reading == Reading(name) and unit in UNITS:
                return t.Quantity(t.Int(value), unit)
    raise not_shown(reading)


def _printed(figure: Net) -> tuple[t.Node, ...]:
    scale = (t.Quantity(t.Int(1), figure.unit),) if figure.unit else ()
    return (*scale, *(t.Label(name) for name in (*figure.names, *figure.letters)))


def _readings(figure: Net) -> tuple[Reading, ...]:
    maybe = [Reading("opposite", (name,)) for name in figure.letters]
    maybe += [Reading(name) for name in ("net of a cube", "volume", "surface area", "longest edge")]
    found = []
    for reading in maybe:
        try:
            _read(figure, reading)
        except FigureError:
            continue
        found.append(reading)
    return tuple(found)


def _which(figure: Net, found: re.Match[str]) -> Asked:
    """Return which of its pieces is asked for: all of them, each once."""
    names = re.split(", | or | and ", found["names"].casefold())
    if "".join(names).upper() != figure.names:
        raise FigureError("its shapes have other letters")
    return Asked(t.Sym("r"), (("r", Reading("net of a cube")),))


def _of_box(name: str) -> Said:
    """Return what a wording asks of the box, which it calls a cube only where it is one."""

    def asks(figure: Net, found: re.Match[str]) -> Asked:
        box, called = box_of(figure.pieces[0]), found["box"]
        if box is None or (called.casefold() == "cube") != (box[0] == box[2]):
            raise FigureError(f"what it shows is no net of a {called}")
        return Asked(t.Sym("r"), (("r", Reading(name)),))

    return asks


_WHAT = r"(?:what is|work out|find|write down)"
_BOX = r"the (?P<box>cuboid|cube)"

NET = register_figure(
    FigureKind(
        "net",
        Net,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                r"which (?:face|square) (?:is|will be) opposite (?:face |square )?(?P<name>[a-z])",
                asks_reading("opposite", "name"),
            ),
            Wording(
                r"which (?:one )?of (?:the )?shapes (?P<names>[a-z](?:, [a-z])* (?:and|or) [a-z]) "
                r"is (?:a|the) net of a cube",
                _which,
            ),
            Wording(rf"{_WHAT} the volume of {_BOX}", _of_box("volume")),
            Wording(rf"{_WHAT} the surface area of {_BOX}", _of_box("surface area")),
            Wording(
                rf"(?:how long is|{_WHAT} the length of) the longest edge of {_BOX}",
                _of_box("longest edge"),
            ),
        ),
    )
)
