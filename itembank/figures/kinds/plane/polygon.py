"""A polygon: corners, sides and angles with their labels, marks, a height; composite shapes too."""

from __future__ import annotations

import re
from fractions import Fraction

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, drawing
from itembank.figures.figure import (
    NOT_ACCURATE,
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
    relations_on,
)
from itembank.figures.kinds.plane.polygon_area import area_of, sign_of
from itembank.figures.kinds.plane.polygon_drawn import polygon_sheet
from itembank.figures.kinds.plane.polygon_facts import (
    facts_of,
    length_unit,
    units_of,
)
from itembank.figures.kinds.plane.polygon_faults import polygon_fault
from itembank.figures.kinds.plane.polygon_named import BY_CORNERS, SHAPES, is_called
from itembank.figures.kinds.plane.polygon_shape import shape_of
from itembank.figures.kinds.plane.right_triangles import angle_found, letter_at, side_found
from itembank.figures.kinds.unknown_asked import FIND, LETTER, letter_asked
from itembank.figures.written_as import in_unit
from itembank.notation import tree as t
from itembank.notation.units import UNITS
from itembank.notation.words import words as said


@dataclass(frozen=True, slots=True)
class Height:
    """A dashed line from a corner at a right angle to a side, or to the side made longer."""

    corner: str
    side: str
    label: t.Node | None = None


@dataclass(frozen=True, slots=True)
class Polygon(Figure):
    """A shape by its corners in order round it, lettered A, B, C … or by `names`.

    The letters are printed with `lettered`. A side is called by two letters, an angle by its
    corner. `right` names the corners with a mark of a right angle; each group of `equal` sides has
    dashes, the first group one, the second two; each group of `parallel` sides has arrowheads.

    >>> corners = ((t.Int(0), t.Int(0)), (t.Int(14), t.Int(0)), (t.Int(5), t.Int(12)))
    >>> Polygon(corners, sides=(("AB", t.Int(14)),)).accurate
    True
    """

    corners: tuple[tuple[t.Node, t.Node], ...]
    names: str = ""
    lettered: bool = False
    sides: tuple[tuple[str, t.Node], ...] = ()
    angles: tuple[tuple[str, t.Node], ...] = ()
    right: str = ""
    equal: tuple[tuple[str, ...], ...] = ()
    parallel: tuple[tuple[str, ...], ...] = ()
    height: Height | None = None
    accurate: bool = True


def _drawing(figure: Polygon) -> Drawing:
    return drawing(polygon_sheet(figure).marks)


_NAMES = {count: name for name, count in BY_CORNERS.items()}


def _words(figure: Polygon) -> str:
    shape = shape_of(figure)
    count = len(shape.letters)
    name = _NAMES.get(count, f"shape with {count} sides")
    corners = f"{', '.join(shape.letters[:-1])} and {shape.letters[-1]}"
    lead = f"{'An' if name == 'octagon' else 'A'} {name}"
    # Letters that are not printed serve only to tell its sides apart here.
    has = " has the corners " if figure.lettered else ": call its corners "
    out = [f"{lead}{has}{corners}."]
    if facts_of(figure).rectilinear:
        ways = {(1, 0): "right", (-1, 0): "left", (0, 1): "up", (0, -1): "down"}
        steps = [
            f"{ways[sign_of(x), sign_of(y)]} to {side[1]}"
            for side in shape.sides
            for x, y in [shape.way(side)]
        ]
        out.append("Its sides meet at right angles.")
        out.append(f"From {shape.letters[0]} they go {', '.join(steps)}.")
    else:
        out += [f"The angle at {corner} is a right angle." for corner in figure.right]
    out += [f"Side {side} is {said(label)}." for side, label in figure.sides]
    out += [f"The angle at {corner} is {said(label)}." for corner, label in figure.angles]
    for group in figure.equal:
        out.append(f"The sides {_and(group)} are marked as equal.")
    for group in figure.parallel:
        out.append(f"The sides {_and(group)} are marked as parallel.")
    if figure.height is not None:
        label = "" if figure.height.label is None else f" It is {said(figure.height.label)}."
        out.append(
            f"A dashed line goes from {figure.height.corner} to side {figure.height.side}, at a "
            f"right angle to it.{label}"
        )
    if not figure.accurate:
        out.append(f"{NOT_ACCURATE}.")
    return " ".join(out)


def _and(group: tuple[str, ...]) -> str:
    return f"{', '.join(group[:-1])} and {group[-1]}"


def _read(figure: Polygon, reading: Reading) -> t.Node:
    facts, shape, unit = facts_of(figure), shape_of(figure), length_unit(figure)
    value: Fraction | None = None
    made: t.Node | None = None
    if reading == Reading("area"):
        value = area_of(figure)
        unit = f"{unit}^2" if unit else ""
        if unit and unit not in UNITS:
            raise not_shown(reading)
    elif reading == Reading("perimeter"):
        value = facts.perimeter()
    elif reading.name == "unknown" and len(reading.of) == 1:
        if (at := letter_at(figure, reading.of[0])) is not None:
            made = (side_found if at[0] == "side" else angle_found)(figure, at[1])
    elif figure.lettered and len(reading.of) == 1:
        name = reading.of[0].upper()
        if reading.name == "side" and (side := shape.side(name)):
            value = facts.length(side)
            made = side_found(figure, side)
        elif reading.name == "angle" and (corner := shape.angle(name)):
            value, unit = facts.angle(corner), "°"
            made = angle_found(figure, corner)
    if value is None and made is not None:
        return made
    if value is None:
        raise not_shown(reading)
    return in_unit(value, unit)


def _readings(figure: Polygon) -> tuple[Reading, ...]:
    shape = shape_of(figure)
    maybe = [Reading("area"), Reading("perimeter")]
    if figure.lettered:
        maybe += [Reading("side", (side,)) for side in shape.sides]
        maybe += [Reading("angle", (corner,)) for corner in shape.letters]
    letters = {name for _, label in (*figure.sides, *figure.angles) for name in t.symbols(label)}
    maybe += [Reading("unknown", (letter,)) for letter in sorted(letters)]
    found = []
    for reading in maybe:
        try:
            _read(figure, reading)
        except FigureError:
            continue
        found.append(reading)
    return tuple(found)


def _printed(figure: Polygon) -> tuple[t.Node, ...]:
    names = tuple(t.Label(letter) for letter in shape_of(figure).letters) * figure.lettered
    height = figure.height.label if figure.height is not None else None
    labels = (*figure.sides, *figure.angles)
    return (*(label for _, label in labels), *((height,) if height is not None else ()), *names)


def _relations(figure: Polygon) -> tuple[t.Relation, ...]:
    return facts_of(figure).solved.relations(units_of(figure))


_SHAPE = rf"(?:the|this) (?P<shape>{SHAPES})(?: (?P<letters>[a-l]{{3,12}}))?"


def _of_it(name: str) -> Said:
    """Return what a wording asks of the shape as a whole, which it calls what it is."""

    def asks(figure: Polygon, found: re.Match[str]) -> Asked:
        called = found["shape"].casefold()
        if not is_called(shape_of(figure), called, found["letters"] or ""):
            raise FigureError(f"what it shows is no {called} {found['letters'] or ''}".rstrip())
        return Asked(t.Sym("r"), (("r", Reading(name)),))

    return asks


def _really(figure: Polygon, found: re.Match[str]) -> Asked:
    """Return the real length that a side of a plan stands for, by the scale of the plan."""
    scale = t.Int(int(found["scale"]))
    return Asked(t.times(scale, t.Sym("r")), (("r", Reading("side", (found["name"],))),))


def _letter(figure: Polygon, found: re.Match[str]) -> Asked:
    """Return the letter of a label: what sums settle, or a side or angle by a right angle."""
    asked = letter_asked(figure, found)
    assert isinstance(asked.target, t.Sym)
    unknown = Reading("unknown", (asked.target.name,))
    settled = any(asked.target.name in t.symbols(relation) for relation in relations_on(figure))
    if settled or unknown not in _readings(figure):
        return asked
    return Asked(t.Sym("r"), (("r", unknown),))


POLYGON = register_figure(
    FigureKind(
        "polygon",
        Polygon,
        fault=polygon_fault,
        bears=dict.fromkeys(("sides", "angles", "height"), (t.Quantity,)),
        drawing=_drawing,
        words=_words,
        printed=_printed,
        readings=_readings,
        read=_read,
        relations=_relations,
        wordings=(
            Wording(rf"{FIND} the area of {_SHAPE}", _of_it("area")),
            Wording(rf"{FIND} the perimeter of {_SHAPE}", _of_it("perimeter")),
            Wording(
                rf"{FIND} the length of (?:the )?(?:side )?(?P<name>[a-z]{{2}})|"
                r"how long is (?:the )?(?:side )?(?P<other>[a-z]{2})",
                lambda figure, found: asks_reading("side", "name" if found["name"] else "other")(
                    figure, found
                ),
            ),
            Wording(
                rf"{FIND} (?:the size of )?(?:the )?angle (?:at )?(?P<name>[A-Z]{{3}})",
                asks_reading("angle", "name"),
            ),
            Wording(
                r"how long is (?:the )?(?:side )?(?P<name>[a-z]{2}) really, "
                r"in (?:centi|kilo|milli)?metres, "
                r"if the scale is \{1 : (?P<scale>\d{1,7})\}",
                _really,
            ),
            Wording(LETTER.pattern, _letter),
        ),
        accurate=lambda figure: figure.accurate,
    )
)
