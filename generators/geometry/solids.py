"""Solids: how many faces, edges and vertices they have, and what they are called.

England's programme of study for key stage 3 (2013) asks pupils to "use the properties of faces,
surfaces, edges and vertices of cubes, cuboids, prisms, cylinders, pyramids, cones and spheres to
solve problems in 3-D" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators.geometry import _solid_shapes as s
from generators.geometry._solid_shapes import EDGES, FACES, PARTS, VERTICES
from generators.geometry._solids_counted import counted, summed
from generators.geometry._solids_together import ONE_LEFT_OUT, altogether, has_sum
from generators.geometry._solids_told import with_told
from itembank.figures.kinds.solid.solid import Solid, name_of
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

COUNT, NAME, SIDED, MORE = "count", "name", "sided", "more"

_SIMPLE = (("prism", False), ("prism", True), ("pyramid", False))
_JOINED = (("tower", False), ("double pyramid", False))
_MORE = ((EDGES, FACES), (EDGES, VERTICES), (FACES, VERTICES))
_HEIGHTS = range(35, 85, 5)

_Wrong = tuple[Misconception, int | None]


def _solid(what: tuple[str, bool], sides: int, height: int) -> Solid:
    return Solid(what[0], sides, height, what[1])  # type: ignore[arg-type]


def _clear(what: tuple[str, bool], sides: int, height: int) -> bool:
    return s.drawable(what[0], sides, height, what[1])


def _asked(ask: str, of: Any) -> bool:
    """Tell whether a question has the detail that its sort needs, and no other."""
    return of in {COUNT: PARTS, NAME: (0, 1), SIDED: (3, 4), MORE: _MORE}[ask]


def _numbers(ask: str, of: Any, figure: Solid) -> tuple[int, list[_Wrong]]:
    """Return the answer, and those of likely mistakes."""
    shape, n = figure.shape, figure.sides
    if ask == SIDED:
        return s.sided(shape, n, of), [
            (s.ALL_FACES, s.count(shape, n, FACES)),
            (s.HIDDEN, s.seen(figure, FACES, of)),
        ]
    if ask == MORE:
        first, second = (s.count(shape, n, part) for part in of)
        return first - second, [
            (s.ADDED, first + second),
            (s.ONLY_FIRST, first),
            (s.HIDDEN, s.seen(figure, of[0]) - s.seen(figure, of[1])),
        ]
    key = s.count(shape, n, of)
    wrongs: list[_Wrong] = [(s.HIDDEN, s.seen(figure, of)), (s.INSIDE, s.doubled(shape, n, of))]
    if of != FACES:
        wrongs.append((s.MIXED_UP, s.count(shape, n, VERTICES if of == EDGES else EDGES)))
    if shape == "prism":
        wrongs.append(
            {FACES: (s.ENDS_LEFT_OUT, n), EDGES: (s.JOINS_LEFT_OUT, 2 * n)}.get(
                of, (s.HIDDEN, None)
            )
        )
    if shape == "pyramid":
        wrongs.append((s.ENDS_LEFT_OUT if of == FACES else s.TOP_LEFT_OUT, n))
    return key, wrongs


def _kept(ask: str, of: Any, what: tuple[str, bool], sides: int, height: int) -> bool:
    if not _asked(ask, of) or not _clear(what, sides, height):
        return False
    if ask == NAME:
        return len(_names(_solid(what, sides, height), of)) == 3
    if ask == SIDED and sides == of and what[0] == "prism":
        return False  # every face of a cuboid: there is nothing to tell apart
    if ask == MORE and what in _SIMPLE and height % 20 < 10:
        return False  # comparing is one of three things to do, and not the only one
    key, wrongs = _numbers(ask, of, _solid(what, sides, height))
    found = {wrong for _, wrong in wrongs if wrong not in (None, key)}
    return key > 0 and len(found) >= 2


def _names(figure: Solid, of: int) -> list[tuple[Misconception | None, str]]:
    """Return the name of a solid and two others: of the other family, and with another base."""
    other = "pyramid" if figure.shape == "prism" else "prism"
    beside = figure.sides + (1 if of else -1)
    if not 3 <= beside <= 8:
        return []
    return [
        (None, name_of(figure)),
        (s.OTHER_FAMILY, name_of(Solid(other, figure.sides))),  # type: ignore[arg-type]
        (s.OTHER_BASE, name_of(Solid(figure.shape, beside))),
    ]


@register
class Solids(Topic):
    """Prisms and pyramids counted; named and compared; a solid of two parts."""

    id = "geometry.solids"
    title = "Faces, edges and vertices"
    statements = ("geometry.solids",)
    prerequisites = ("geometry.shapes",)
    misconceptions = (
        *(s.HIDDEN, s.MIXED_UP, s.ENDS_LEFT_OUT, s.JOINS_LEFT_OUT, s.TOP_LEFT_OUT, s.INSIDE),
        *(s.ALL_FACES, s.ONLY_FIRST, s.ADDED, s.OTHER_FAMILY, s.OTHER_BASE, ONE_LEFT_OUT),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _kept, ask=(COUNT,), of=PARTS, what=_SIMPLE, sides=range(3, 7), height=_HEIGHTS
        ),
        Tier.CORE: Space(
            _kept,
            ask=(NAME, SIDED, MORE),
            of=(0, 1, 3, 4, *_MORE),
            what=_SIMPLE,
            sides=range(3, 9),
            height=range(35, 85, 10),
        ),
        Tier.CHALLENGE: Space(
            _kept,
            ask=(COUNT, MORE),
            of=(*PARTS, *_MORE),
            what=_JOINED,
            sides=range(3, 9),
            height=_HEIGHTS,
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces[Tier.CHALLENGE] = spaces[Tier.CHALLENGE].also(
        altogether,
        has_sum,
        shape=[shape for shape, _ in _JOINED],
        sides=range(3, 9),
        height=_HEIGHTS,
        of=((FACES, EDGES, VERTICES), (EDGES, VERTICES), (FACES, EDGES)),
    )
    spaces = with_told(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        ask, of, what, sides, height = values
        figure = _solid(what, sides, height)
        twin = (ask, of, what, sides, height)
        if ask == NAME:
            return _named(figure, of, twin)
        shape = what[0] if what in _SIMPLE else "solid"
        question = {
            COUNT: f"How many {of} does the {shape} have?",
            SIDED: f"How many of the faces of the {shape} "
            + ("are triangles?" if of == 3 else "have {n} sides?"),
            MORE: f"How many more {of[0]} than {of[1]} does the {shape} have?"
            if ask == MORE
            else "",
        }[ask]
        text = prompt(question, n=t.Int(4))
        key, wrongs = _numbers(ask, of, figure)
        return Draft(
            text,
            of_figure(figure, text),
            t.Int(key),
            "integer",
            tuple(_steps(ask, of, figure)),
            slips(*wrongs, key=t.Int(key)),
            twin,
            figure=figure,
        )


def _named(figure: Solid, of: int, twin: tuple[Any, ...]) -> Draft:
    names = _names(figure, of)
    a, b, c = kinds.shuffled([name for _, name in names], twin)
    text = prompt(f"Which is the name of the solid: {a}, {b} or {c}?")
    key = t.Label(name_of(figure))
    shape, n = figure.shape, figure.sides
    why = (
        f"It has two equal ends with {n} sides each."
        if shape == "prism"
        else f"Its base has {n} sides, and its other faces meet in a point."
    )
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        (Step(why), Step("So it has this name.", key)),
        slips(*((m, t.Label(name)) for m, name in names if m is not None), key=key),
        twin,
        figure=figure,
    )


def _steps(ask: str, of: Any, figure: Solid) -> list[Step]:
    shape, n = figure.shape, figure.sides
    if ask == COUNT:
        return counted(shape, n, of)
    if ask == MORE:
        first, second = (s.count(shape, n, part) for part in of)
        line = t.equals(t.sub(t.Int(first), t.Int(second)), t.Int(first - second))
        steps = [step for part in of for step in counted(shape, n, part)]
        return [*steps, Step("Subtract.", line)]
    key = s.sided(shape, n, of)
    base = key - n
    if base < 0:
        say = "Look at the two ends." if shape == "prism" else "Look at the base."
        return [Step(say, t.Int(key))]
    if base:
        return [Step("Those round the solid, and the base, which has as many sides.",
                     summed(n, base))]  # fmt: skip
    return [Step(f"The base has {n} sides, so count the faces round the solid.", t.Int(key))]
