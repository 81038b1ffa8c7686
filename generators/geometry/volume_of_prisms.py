"""The volume of prisms: the area of the cross-section times the length, and back.

England's programme of study for key stage 3 (2013) asks pupils to "derive and apply formulae to
calculate and solve problems involving: [...] volume of cuboids (including cubes) and other prisms
(including cylinders)" (from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry import _solid_mistakes as m
from generators.geometry._calculator import amount
from generators.geometry._prisms_in_brief import BRIEF
from itembank.figures.kinds.solid.prism import Prism
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_FIND = ("Work out the volume of the {}.", "Find the volume of the {}.")
_RULE = "The volume is the area of the cross-section times the length."
_TWO, _HALF = t.Int(2), t.frac(1, 2)
_TROUGHS = ("water trough", "planter", "feeding trough", "flower box")


def _support(w: int, h: int, length: int, unit: str) -> bool:
    """Keep prisms that lie low, so that their figure does."""
    if unit == "m" and max(w, length) > 9:
        return False
    fits = h <= w <= 3 * h and length <= 2 * w and w * h % 2 == 0
    half = w * h // 2
    return fits and len({half * length, 2 * half * length, half, w + h + length}) == 4


def _core(kind: str, a: int, b: int, c: int) -> bool:
    if kind == "area":  # tenths of an area times a length
        return c == 2 and a % 10 != 0 and 21 <= a <= 99 and 3 <= b <= 15 and (a + b) % 21 == 0
    if kind == "length":  # back from a volume
        return c == 2 and 6 <= a <= 60 and 4 <= b <= 25 and a != b and (a + b) % 24 == 0
    return (
        3 <= a <= 12
        and 3 <= b <= 12
        and 5 <= c <= 20
        and a * b % 2 == 0
        and (a + b + c) % 2 == 0
        and a < b
    )


def _challenge(kind: str, a: int, b: int, h: int, k: int) -> bool:
    if kind == "trapezium":
        sized = a < b <= 9 and a <= 6 and h <= 6 and k >= 8
        return sized and (a + b) * h % 2 == 0 and (a + b + h + k) % 3 == 0
    # the height of the triangle, back from the volume
    apart = len({a, h, 2 * h, a * h}) == 4
    return b == 5 and a * h % 2 == 0 and apart and k >= 8 and (a + h + k) % 4 == 0


@register
class VolumeOfPrisms(Topic):
    """A triangular prism drawn; cross-section times length in words, and back; a trapezium."""

    id = "geometry.volume-of-prisms"
    title = "Volume of prisms"
    statements = ("geometry.formulae",)
    prerequisites = ("geometry.volume-of-cuboids",)
    misconceptions = (
        m.NOT_HALVED,
        m.EDGES_ADDED,
        m.ONE_FACE,
        m.HALVED_TOO,
        m.MULTIPLIED_AGAIN,
        m.SUBTRACTED_BACK,
        m.SQUARE_OF_AREA,
        m.TRAPEZIUM_NOT_HALVED,
        m.ONE_SIDE_ONLY,
        m.NOT_DOUBLED,
        m.DIVIDED_ONCE,
        m.LITRE_AS_HUNDRED,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, w=range(3, 13), h=range(3, 9), length=range(3, 16), unit=("cm", "m")
        ),
        Tier.CORE: Space(
            _core,
            kind=("area", "length", "triangle"),
            a=range(3, 100),
            b=range(3, 26),
            c=range(2, 21),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("trapezium", "height"),
            a=range(3, 13),
            b=range(5, 16),
            h=range(3, 13),
            k=range(8, 21),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.volume-of-prisms",
        kinds.working_goes_wrong(
            {m.NOT_DOUBLED: (e.everywhere(e.left_out),), m.NOT_HALVED: (e.everywhere(e.left_out),)}
        ),
    )
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._drawn(*values)
        kind, *rest = values
        make: dict[str, Callable[..., Draft]] = {
            "area": self._area,
            "length": self._length,
            "triangle": self._triangle,
            "trapezium": self._trapezium,
            "height": self._height,
        }
        return make[kind](*rest)

    def _drawn(self, w: int, h: int, length: int, unit: str) -> Draft:
        wide, high, long = (amount(size, unit) for size in (w, h, length))
        half, cube = w * h // 2, f"{unit}^3"
        text = (by_turns(_FIND, w + h + length).format(by_turns(("prism", "triangular prism"), w)),)
        figure = Prism("triangle", wide, high, long)
        end, key = amount(half, f"{unit}^2"), amount(half * length, cube)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "quantity",
            (
                Step(
                    "Find the area of the triangle: half of base times height.",
                    t.equals(t.times(_HALF, wide, high), end),
                ),
                Step("Multiply by the length of the prism.", t.equals(t.times(end, long), key)),
            ),
            slips(
                (m.NOT_HALVED, amount(2 * half * length, cube)),
                (m.ONE_FACE, amount(half, cube)),
                (m.EDGES_ADDED, amount(w + h + length, cube)),
            ),
            ("drawn", w, h, length, unit),
            constants=(1, 2),
            figure=figure,
        )

    def _area(self, a: int, b: int, _: int) -> Draft:
        size = Fraction(a, 10)
        end, long, key = amount(size, "cm^2"), amount(b, "cm"), amount(size * b, "cm^3")
        return Draft(
            prompt(
                "The cross-section of a prism has an area of {n}. The prism is {k} long. "
                "Work out its volume.",
                n=end,
                k=long,
            ),
            Find(t.times(end, long)),
            key,
            "quantity",
            (Step(_RULE, t.equals(t.times(end, long), key)),),
            slips(
                (m.HALVED_TOO, amount(size * b / 2, "cm^3")),
                (m.SQUARE_OF_AREA, amount(size * b * b, "cm^3")),
                (m.EDGES_ADDED, amount(size + b, "cm^3")),
            ),
            ("area", a, b),
        )

    def _length(self, a: int, b: int, _: int) -> Draft:
        volume, end, key = amount(a * b, "cm^3"), amount(a, "cm^2"), amount(b, "cm")
        return Draft(
            prompt(
                "A prism has a volume of {v}. The area of its cross-section is {n}. "
                "How long is the prism?",
                v=volume,
                n=end,
            ),
            Find(t.divide(volume, end)),
            key,
            "quantity",
            (
                Step(
                    "The volume is the area of the cross-section times the length, so divide.",
                    t.equals(t.divide(volume, end), key),
                ),
            ),
            slips(
                (m.SUBTRACTED_BACK, amount(a * b - a, "cm")),
                (m.MULTIPLIED_AGAIN, amount(a * b * a, "cm")),
            ),
            ("length", a, b),
        )

    def _triangle(self, a: int, b: int, c: int) -> Draft:
        base, high, long = (amount(size, "cm") for size in (a, b, c))
        half = a * b // 2
        end, key = amount(half, "cm^2"), amount(half * c, "cm^3")
        return Draft(
            prompt(
                "The cross-section of a prism is a triangle with a base of {n} and a height of "
                "{k}. The prism is {c} long. Work out its volume.",
                n=base,
                k=high,
                c=long,
            ),
            Find(t.times(_HALF, base, high, long)),
            key,
            "quantity",
            (
                Step(
                    "Find the area of the triangle: half of base times height.",
                    t.equals(t.times(_HALF, base, high), end),
                ),
                Step(_RULE, t.equals(t.times(end, long), key)),
            ),
            slips(
                (m.NOT_HALVED, amount(2 * half * c, "cm^3")),
                (m.EDGES_ADDED, amount(a + b + c, "cm^3")),
                (m.ONE_FACE, amount(half, "cm^3")),
            ),
            ("triangle", *sorted((a, b)), c),
            constants=(1, 2),
        )

    def _trapezium(self, a: int, b: int, h: int, k: int) -> Draft:
        sides = [amount(10 * size, "cm") for size in (a, b)]
        high, long = amount(10 * h, "cm"), amount(10 * k, "cm")
        end = (a + b) * h // 2
        area, volume = amount(100 * end, "cm^2"), amount(1000 * end * k, "cm^3")
        key = amount(end * k, "l")
        trough = by_turns(_TROUGHS, a + b + k)
        summed = t.Bracket(t.add(*sides))
        return Draft(
            prompt(
                f"The cross-section of a {trough} is a trapezium. "
                f"Its parallel sides are {{a}} and "
                f"{{b}} long, and {{h}} apart. The {trough} is {{k}} long. "
                "How many litres does it hold?",
                a=sides[0],
                b=sides[1],
                h=high,
                k=long,
            ),
            Find(t.times(_HALF, summed, high, long)),
            key,
            "quantity",
            (
                Step(
                    "Area of a trapezium: half of the sum of the parallel sides, times the height.",
                    t.equals(t.times(_HALF, summed, high), area),
                ),
                Step(_RULE, t.equals(t.times(area, long), volume)),
                Step("A litre is 1000 cubic centimetres.", t.equals(volume, key)),
            ),
            slips(
                (m.TRAPEZIUM_NOT_HALVED, amount(2 * end * k, "l")),
                (m.ONE_SIDE_ONLY, amount(b * h * k, "l")),
                (m.LITRE_AS_HUNDRED, amount(10 * end * k, "l")),
            ),
            ("trapezium", a, b, h, k),
            constants=(1, 2),
        )

    def _height(self, a: int, _: int, h: int, k: int) -> Draft:
        half = a * h // 2
        volume, base, long = amount(half * k, "cm^3"), amount(a, "cm"), amount(k, "cm")
        end, double, key = amount(half, "cm^2"), amount(2 * half, "cm^2"), amount(h, "cm")
        return Draft(
            prompt(
                "A triangular prism has a volume of {v} and is {k} long. The base of the triangle "
                "is {n}. Work out the height of the triangle.",
                v=volume,
                k=long,
                n=base,
            ),
            Find(t.divide(t.Bracket(t.times(_TWO, volume)), t.Bracket(t.times(base, long)))),
            key,
            "quantity",
            (
                Step(
                    "Divide by the length to find the area of the triangle.",
                    t.equals(t.divide(volume, long), end),
                ),
                Step(
                    "That is half of base times height, so double it.",
                    t.equals(t.times(_TWO, end), double),
                ),
                Step("Divide by the base.", t.equals(t.divide(double, base), key)),
            ),
            slips(
                (m.NOT_DOUBLED, amount(Fraction(h, 2), "cm")),
                (m.DIVIDED_ONCE, amount(half, "cm")),
            ),
            ("height", a, h, k),
            constants=(1, 2),
        )
