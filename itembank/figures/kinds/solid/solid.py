"""A solid with flat faces, its hidden edges dashed: a prism, a pyramid, or two of them together."""

from __future__ import annotations

import re
from typing import Literal

from itembank.data_class import dataclass
from itembank.figures.drawing import Drawing, Mark, Point, Stroke, drawing
from itembank.figures.figure import (
    Asked,
    Figure,
    FigureError,
    FigureKind,
    Reading,
    Wording,
    not_shown,
    register_figure,
)
from itembank.figures.kinds.solid.solid_model import LYING, STANDING, model, runs_together
from itembank.notation import tree as t
from itembank.text.in_words import counted
from itembank.text.whole_number import whole_number

LOWEST, HIGHEST = 30, 100
OF_SIDES = {
    **{3: "triangular", 4: "square", 5: "pentagonal", 6: "hexagonal"},
    **{7: "heptagonal", 8: "octagonal"},
}
PARTS = ("faces", "edges", "vertices")


@dataclass(frozen=True, slots=True)
class Solid(Figure):
    """What the solid is, and how many sides its base has.

    A *tower* is a pyramid on a prism, a *double pyramid* two pyramids base to base. `height` is in
    tenths of an em, where the base is ten ems across; a prism that is `lying` shows an end.

    >>> Solid("prism", 6).height
    45
    """

    shape: Literal["prism", "pyramid", "tower", "double pyramid"]
    sides: int
    height: int = 45
    lying: bool = False


def _fault(figure: Solid) -> str:
    if figure.sides not in STANDING:
        return f"its base has {min(STANDING)} to {max(STANDING)} sides"
    if not LOWEST <= figure.height <= HIGHEST:
        return f"it is {LOWEST} to {HIGHEST} tenths of an em high"
    if figure.lying and (figure.shape != "prism" or figure.sides not in LYING):
        return "only a prism lies, on an end of 3, 4, 5, 6 or 8 sides"
    if runs_together(model(figure.shape, figure.sides, figure.height, figure.lying)):
        return "some of its corners would look like one: give it another height"
    return ""


def _drawing(figure: Solid) -> Drawing:
    solid = model(figure.shape, figure.sides, figure.height, figure.lying)
    spots, seen = [Point(*spot) for spot in solid.spots], solid.seen
    marks: list[Mark] = []
    for (a, b), faces in solid.edges.items():
        shown = any(seen[face] for face in faces)
        role, weight = ("edge", "normal") if shown else ("hidden edge", "thin")
        marks.append(Stroke((spots[a], spots[b]), role, weight, not shown))  # type: ignore[arg-type]
    return drawing(marks)


def _words(figure: Solid) -> str:
    base = f"a base with {counted(figure.sides, 'side')}"
    if figure.shape == "prism":
        return f"A prism has {counted(figure.sides, 'side')} round each of its two equal ends."
    if figure.shape == "pyramid":
        return f"A pyramid has {base}."
    if figure.shape == "tower":
        return (
            f"A pyramid stands on the top of a prism and covers it. Each has {base}. "
            "Together they are one solid."
        )
    return (
        f"Two equal pyramids are joined base to base. Each has {base}. Together they are one solid."
    )


def _count(figure: Solid, part: str) -> int:
    """Return how many faces, edges or vertices there are, by the sides of the base."""
    n = figure.sides
    return {
        "prism": {"faces": n + 2, "edges": 3 * n, "vertices": 2 * n},
        "pyramid": {"faces": n + 1, "edges": 2 * n, "vertices": n + 1},
        "tower": {"faces": 2 * n + 1, "edges": 4 * n, "vertices": 2 * n + 1},
        "double pyramid": {"faces": 2 * n, "edges": 3 * n, "vertices": n + 2},
    }[figure.shape][part]


def _sided(figure: Solid, sides: int) -> int:
    """Return how many faces have so many sides."""
    n = figure.sides
    bases = {"prism": 2, "pyramid": 1, "tower": 1}.get(figure.shape, 0) * (n == sides)
    walls = n * (figure.shape in ("prism", "tower")) * (sides == 4)
    slopes = {"pyramid": n, "tower": n, "double pyramid": 2 * n}.get(figure.shape, 0)
    return bases + walls + slopes * (sides == 3)


def name_of(figure: Solid) -> str:
    """Return what a prism or a pyramid is called, ``""`` for other solids.

    >>> name_of(Solid("prism", 4)), name_of(Solid("pyramid", 4)), name_of(Solid("prism", 5))
    ('cuboid', 'square-based pyramid', 'pentagonal prism')
    """
    if figure.shape not in ("prism", "pyramid"):
        return ""
    if figure.sides == 4:
        return "cuboid" if figure.shape == "prism" else "square-based pyramid"
    if figure.sides == 3 and figure.shape == "pyramid":
        return "tetrahedron"
    return f"{OF_SIDES[figure.sides]} {figure.shape}"


NAMES = frozenset(
    name_of(Solid(shape, sides)) for shape in ("prism", "pyramid") for sides in STANDING
)


def _read(figure: Solid, reading: Reading) -> t.Node:
    if reading.name in PARTS and not reading.of:
        return t.Int(_count(figure, reading.name))
    sides = whole_number(reading.of[0]) if len(reading.of) == 1 else None
    if reading.name == "sided" and sides is not None:
        return t.Int(_sided(figure, sides))
    if reading.name == "called" and reading.of and name_of(figure) in reading.of:
        return t.Label(name_of(figure))
    raise not_shown(reading)


def _readings(figure: Solid) -> tuple[Reading, ...]:
    found = [*(Reading(part) for part in PARTS)]
    found += [Reading("sided", (str(sides),)) for sides in range(3, 9)]
    name = name_of(figure)
    return (*found, Reading("called", (name,))) if name else tuple(found)


_PART = r"(?P<{}>faces|edges|vertices|corners)"
_SOLID = r"(?:the|this) (?P<solid>[a-z-]+(?: [a-z-]+)?)"


def _called(figure: Solid, found: re.Match[str]) -> None:
    called = found["solid"].casefold()
    if called not in {"solid", "shape", figure.shape, name_of(figure)} - {"tower", ""}:
        raise FigureError(f"what it shows is no {called}")


def _part(found: re.Match[str], group: str) -> Reading:
    return Reading(found[group].casefold().replace("corners", "vertices"))


def _how_many(figure: Solid, found: re.Match[str]) -> Asked:
    _called(figure, found)
    return Asked(t.Sym("r"), (("r", _part(found, "part")),))


def _how_many_more(figure: Solid, found: re.Match[str]) -> Asked:
    _called(figure, found)
    first, second = _part(found, "first"), _part(found, "second")
    if _count(figure, first.name) <= _count(figure, second.name):
        raise FigureError(f"it has not more {first.name} than {second.name}")
    return Asked(t.sub(t.Sym("a"), t.Sym("b")), (("a", first), ("b", second)))


def _altogether(figure: Solid, found: re.Match[str]) -> Asked:
    _called(figure, found)
    parts = [_part(found, group) for group in ("first", "second", "third") if found[group]]
    if len({*parts}) != len(parts):
        raise FigureError("it counts something twice")
    letters = [t.Sym(letter) for letter in "abc"[: len(parts)]]
    readings = tuple((letter.name, part) for letter, part in zip(letters, parts, strict=True))
    return Asked(t.add(*letters), readings)


def _how_many_sided(figure: Solid, found: re.Match[str]) -> Asked:
    _called(figure, found)
    sides = "3" if found["number"] is None else found["number"]
    return Asked(t.Sym("r"), (("r", Reading("sided", (sides,))),))


def _name(figure: Solid, found: re.Match[str]) -> Asked:
    offered = tuple(re.split(r", | or ", found["names"].casefold()))
    if strange := [name for name in offered if name not in NAMES]:
        # Another name may fit as well: a cuboid is a prism on a rectangle too.
        raise FigureError(f"‘{strange[0]}’ is none of the names that are told apart")
    if name_of(figure) not in offered or len({*offered}) != len(offered):
        raise FigureError("one of the names is to be that of the solid")
    return Asked(t.Sym("r"), (("r", Reading("called", offered)),))


_ONE = r"[a-z]+(?:-based)?(?: [a-z]+)?"

SOLID = register_figure(
    FigureKind(
        "solid",
        Solid,
        fault=_fault,
        drawing=_drawing,
        words=_words,
        printed=lambda figure: (),
        readings=_readings,
        read=_read,
        wordings=(
            Wording(
                rf"how many more {_PART.format('first')} than {_PART.format('second')} does "
                rf"{_SOLID} have",
                _how_many_more,
            ),
            Wording(rf"how many {_PART.format('part')} does {_SOLID} have", _how_many),
            Wording(
                rf"how many {_PART.format('first')}(?:, {_PART.format('second')})? and "
                rf"{_PART.format('third')} does {_SOLID} have (?:altogether|in all|in total)",
                _altogether,
            ),
            Wording(
                rf"how many of the faces of {_SOLID} (?:are triangles|have \{{(?P<number>\d)\}} "
                r"sides)",
                _how_many_sided,
            ),
            Wording(
                r"which is the name of (?:the|this) solid: "
                rf"(?P<names>{_ONE}(?:, {_ONE})* or {_ONE})",
                _name,
            ),
        ),
    )
)
