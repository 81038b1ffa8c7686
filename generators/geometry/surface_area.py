"""The surface area of cuboids, cubes and triangular prisms: from edges, nets, back to an edge.

England's programme of study for key stage 3 (2013) asks pupils to "use the properties of faces,
surfaces, edges and vertices of cubes, cuboids, prisms [...] to solve problems in 3-D" (from
memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from generators._in_figures import in_figures
from generators._turns import by_turns
from generators.geometry import _solid_mistakes as m
from generators.geometry._boxes_told import with_surfaces
from generators.geometry._calculator import amount
from generators.geometry._surface_back import cube_from_surface, volume_from_surface
from generators.geometry._surface_steps import (
    HALF,
    TWO,
    cube_steps,
    steps_face_by_face,
    steps_in_short,
)
from generators.geometry.volume_of_cuboids import lying
from itembank.figures.kinds.solid.prism import Prism
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_FIND = ("Work out the surface area of the {}.", "Find the total surface area of the {}.")
_TRIPLES = ((4, 3, 5), (8, 6, 10), (12, 5, 13), (12, 9, 15), (15, 8, 17), (16, 12, 20))
_BOXES = ("storage box", "crate", "flower box", "toy box")


def _faces(a: int, b: int, c: int) -> tuple[int, ...]:
    half = a * b + b * c + c * a
    return 2 * half, half, a * b * c, 6 * a * b, 6 * b * c


def _support(a: int, b: int, c: int, unit: str) -> bool:
    if (unit == "m" and c > 9) or (unit == "mm" and a < 5):
        return False
    if a == b == c:
        return a not in (4, 6)  # four faces of 4 by 4, and 6 × 6 × 6, are no news
    return a < b < c and c <= 6 * a and len({*_faces(a, b, c)}) == 5


def _core(kind: str, a: int, b: int, c: int) -> bool:
    if kind == "prism":  # a triple, and a length
        if a >= len(_TRIPLES) or b != 2:
            return False
        w, h, slope = _TRIPLES[a]
        total = w * h + (w + h + slope) * c
        others = {2 * w * h + (w + h + slope) * c, w * h + (w + h) * c, w * h * c // 2}
        return c <= 2 * w and len(others | {total}) == 4
    apart = len({*_faces(a, b, c)}) == 5
    return kind == "net" and 2 <= a < b < c <= 15 and apart and (a + b + c) % 2 == 0


def _challenge(kind: str, a: int, b: int, c: int) -> bool:
    if kind == "cube":  # from the surface to the volume or the edge
        return b in (2, 3) and c == 3 and a not in (2, 6)
    if kind == "open":
        return 3 <= a < b and a <= c + 1 <= 2 * a + 1
    # a square base of a, and a height of c, back from the surface
    return b == 2 and a != c and 3 <= a <= 12 and c >= 3 and 2 * a != c


@register
class SurfaceArea(Topic):
    """Cuboids drawn; triangular prisms and nets in words; open boxes, and back to an edge."""

    id = "geometry.surface-area"
    title = "Surface area"
    statements = ("geometry.solids",)
    prerequisites = ("geometry.volume-of-cuboids",)
    misconceptions = (
        m.OPPOSITE_FORGOTTEN,
        m.VOLUME_FOR_SURFACE,
        m.FOUR_FACES,
        m.SLOPE_FORGOTTEN,
        m.NOT_HALVED,
        m.LID_COUNTED,
        m.HUNDRED_FOR_SQUARE,
        m.STOPS_AT_FACE,
        m.STOPS_AT_EDGE,
        m.ONE_BASE,
        m.TWO_SIDES,
        m.HALF_OF_FACE,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, a=range(2, 11), b=range(2, 13), c=range(2, 13), unit=("cm", "m", "mm")
        ),
        Tier.CORE: Space(_core, kind=("prism", "net"), a=range(15), b=range(2, 15), c=range(3, 21)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("cube", "open", "height"),
            a=range(2, 13),
            b=range(2, 10),
            c=range(3, 13),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.surface-area",
        kinds.working_goes_wrong(
            {
                m.OPPOSITE_FORGOTTEN: (
                    e.left_out,
                    e.cut_short,
                ),
                m.SLOPE_FORGOTTEN: (e.everywhere(e.left_out),),
            }
        ),
    )
    spaces = with_surfaces(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._drawn(*values)
        kind, *rest = values
        make: dict[str, Callable[..., Draft]] = {
            "prism": self._prism,
            "net": self._net,
            "cube": cube_from_surface,
            "open": self._open,
            "height": volume_from_surface,
        }
        return make[kind](*rest)

    def _drawn(self, a: int, b: int, c: int, unit: str) -> Draft:
        sizes = lying(a, b, c)
        edges = [amount(size, unit) for size in sizes]
        square, half = f"{unit}^2", a * b + b * c + c * a
        key = amount(2 * half, square)
        cube = a == b == c
        text = (by_turns(_FIND, a + b + c).format("cube" if cube else "cuboid"),)
        steps = (
            cube_steps(edges[0], amount(a * a, square), key)
            if cube
            else steps_in_short(edges, amount(half, square), key)
        )
        return Draft(
            text,
            of_figure(Prism("rectangle", *edges), text),
            key,
            "quantity",
            steps,
            slips(
                (
                    m.FOUR_FACES if cube else m.OPPOSITE_FORGOTTEN,
                    amount(4 * a * a if cube else half, square),
                ),
                (m.VOLUME_FOR_SURFACE, amount(a * b * c, square)),
            ),
            ("drawn", a, b, c, unit),
            figure=Prism("rectangle", *edges),
        )

    def _prism(self, triple: int, _: int, length: int) -> Draft:
        w, h, slope = _TRIPLES[triple]
        wide, high, side, long = (amount(size, "cm") for size in (w, h, slope, length))
        figure = Prism("triangle", wide, high, long, side)
        text = (
            by_turns(_FIND, w + length).format(by_turns(("prism", "triangular prism"), length)),
        )
        ends, around = w * h, (w + h + slope) * length
        key = amount(ends + around, "cm^2")
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "quantity",
            (
                Step(
                    "Find the area of each triangle.",
                    t.equals(t.times(HALF, wide, high), amount(Fraction(ends, 2), "cm^2")),
                ),
                Step(
                    "The three rectangles are as long as the prism.",
                    t.equals(
                        t.add(*(t.times(edge, long) for edge in (wide, high, side))),
                        amount(around, "cm^2"),
                    ),
                ),
                Step(
                    "Add two triangles and the rectangles.",
                    t.equals(
                        t.add(
                            t.times(TWO, amount(Fraction(ends, 2), "cm^2")), amount(around, "cm^2")
                        ),
                        key,
                    ),
                ),
            ),
            slips(
                (m.NOT_HALVED, amount(2 * ends + around, "cm^2")),
                (m.SLOPE_FORGOTTEN, amount(ends + (w + h) * length, "cm^2")),
                (m.VOLUME_FOR_SURFACE, amount(ends * length // 2, "cm^2")),
            ),
            ("prism", triple, length),
            constants=(1, 2),
            figure=figure,
        )

    def _net(self, a: int, b: int, c: int) -> Draft:
        first, second, third = (amount(size, "cm") for size in (a, b, c))
        half = a * b + b * c + c * a
        key = amount(2 * half, "cm^2")
        return Draft(
            prompt(
                "The net of a cuboid has two rectangles {a} by {b}, two rectangles {c} by {d} and "
                "two rectangles {e} by {f}. Work out the surface area of the cuboid.",
                a=first,
                b=second,
                c=second,
                d=third,
                e=first,
                f=third,
            ),
            Find(
                t.times(
                    TWO,
                    t.Bracket(
                        t.add(t.times(first, second), t.times(second, third), t.times(first, third))
                    ),
                )
            ),
            key,
            "quantity",
            steps_face_by_face((a, b, c), "cm", key),
            slips(
                (m.OPPOSITE_FORGOTTEN, amount(half, "cm^2")),
                (m.VOLUME_FOR_SURFACE, amount(a * b * c, "cm^2")),
            ),
            ("net", a, b, c),
            constants=(2,),
        )

    def _open(self, a: int, b: int, c: int) -> Draft:
        long, wide, high = (amount(size * 10, "cm") for size in (b, a, c))
        bottom, front, side = (100 * n for n in (a * b, 2 * b * c, 2 * a * c))
        areas = [amount(area, "cm^2") for area in (bottom, front, side)]
        total = bottom + front + side
        whole, key = amount(total, "cm^2"), amount(Fraction(total, 10_000), "m^2")
        fronts, sides = t.times(TWO, long, high), t.times(TWO, wide, high)
        return Draft(
            prompt(
                f"A {by_turns(_BOXES, a + b + c)} without a lid is {{l}} long, {{w}} wide and "
                "{h} high. How many square metres of wood are needed for its five faces?",
                l=long,
                w=wide,
                h=high,
            ),
            Find(t.add(t.times(long, wide), fronts, sides)),
            key,
            "quantity",
            (
                Step("Find the area of the bottom.", t.equals(t.times(long, wide), areas[0])),
                Step("Find the front and the back.", t.equals(fronts, areas[1])),
                Step("Find the left and the right.", t.equals(sides, areas[2])),
                Step("Add them.", t.equals(t.add(*areas), whole)),
                Step(
                    f"A square metre is {in_figures(10_000)} square centimetres.",
                    t.equals(whole, key),
                ),
            ),
            slips(
                (m.LID_COUNTED, amount(Fraction(total + bottom, 10_000), "m^2")),
                (m.OPPOSITE_FORGOTTEN, amount(Fraction(total + bottom, 20_000), "m^2")),
                (m.HUNDRED_FOR_SQUARE, amount(Fraction(total, 100), "m^2")),
            ),
            ("open", a, b, c),
            constants=(2,),
        )
