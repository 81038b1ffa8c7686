"""Scale factors of areas: the square of that of the lengths, forwards, backwards, on plans.

England's programme of study for key stage 3 (2013) asks pupils to "use scale factors, scale
diagrams and maps" (from memory); that areas go by the square is named at key stage 4 ("compare
lengths, areas and volumes using ratio notation [and] scale factors", from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import gcd
from typing import Any

from generators._in_figures import in_figures
from generators._turns import by_turns
from generators.geometry import _similar_mistakes as m
from generators.geometry._calculator import amount
from generators.geometry._enlarged_told import with_areas
from itembank.items import kinds
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_TWO = t.Int(2)
_SHAPES = ("triangle", "rectangle", "pentagon", "parallelogram", "trapezium", "kite")
_SEVERAL = ("triangles", "rectangles", "pentagons", "parallelograms", "kites")
# What may have so many square metres at the most.
_ROOMS = (
    (25, ("shed", "kitchen", "store room")),
    (90, ("classroom", "library", "garage")),
    (400, ("hall", "garden", "playground")),
)
_HALVES = tuple(Fraction(n, 2) for n in (3, 5, 7, 9))
_PAIRS = tuple((p, q) for p in range(2, 8) for q in range(p + 1, 11) if gcd(p, q) == 1)
_SCALES = (50, 100, 200, 250, 400, 500)


def _support(k: int, area: int, unit: str) -> bool:
    # With a factor of 2, doubling and squaring give the same.
    return area != 2 * k and (area + k) % 2 == 0 and (unit == "cm" or area < 30)


def _core(kind: str, a: int, b: int) -> bool:
    if kind == "back":  # from two areas to the scale factor of the lengths
        return 3 <= a <= 10 and b <= 30 and a * a * b <= 1500
    # so many square centimetres on a plan, to square metres
    if a >= len(_SCALES) or _SCALES[a] == 100:
        return False
    real = Fraction(b * _SCALES[a] ** 2, 10_000)
    return kind == "plan" and 4 <= real <= 400 and b >= 2


def _challenge(kind: str, factor: int, a: int, b: int) -> bool:
    if kind == "side":  # areas by a pair of squares times b; the side of the smaller is a pieces
        p, q = _PAIRS[factor]
        by_area = Fraction(q * q * a, p)
        wrong = {q * a, by_area, by_area / 2, p * a + (q * q - p * p) * b}
        short = (10 * by_area).denominator == 1 and len(wrong) == 4
        return short and b <= 5 and q * q * b <= 500 and (factor + a + b) % 2 == 0
    if factor >= len(_HALVES) or kind != "sides":
        return False
    f = _HALVES[factor]
    wrong = {b * f * f, b * f, 2 * b * f, b + a * f - a}
    return a % 2 == 0 and b % 4 == 0 and a != b and len(wrong) == 4


@register
class ScaleFactorsArea(Topic):
    """An enlarged area; from lengths, and back to the factor; to a side, and areas on plans."""

    id = "geometry.scale-factors-area"
    title = "Scale factors of areas"
    statements = ("ratio.scale", "geometry.similarity")
    prerequisites = ("geometry.similarity",)
    misconceptions = (
        m.NOT_SQUARED,
        m.FACTOR_DOUBLED,
        m.NOT_ROOTED,
        m.HALVED_FOR_ROOT,
        m.HUNDRED_ONLY,
        m.AREA_DIFFERENCE,
        m.RATIO_OF_AREAS,
    )
    spaces = {
        Tier.SUPPORT: Space(_support, k=range(3, 11), area=range(3, 51), unit=("cm", "m")),
        Tier.CORE: Space(_core, kind=("back", "plan"), a=range(11), b=range(3, 61)),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("side", "sides"),
            factor=range(len(_PAIRS)),
            a=range(1, 13),
            b=range(1, 61),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "geometry.scale-factors-area",
        kinds.working_goes_wrong(
            {m.FACTOR_DOUBLED: (e.everywhere(e.doubled_for_squared),), m.NOT_ROOTED: (e.cut_short,)}
        ),
    )
    spaces = with_areas(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._enlarged(*values)
        kind, *rest = values
        make: dict[str, Callable[..., Draft]] = {
            "sides": self._sides,
            "back": self._back,
            "side": self._side,
            "plan": self._plan,
        }
        return make[kind](*rest)

    def _enlarged(self, k: int, area: int, unit: str) -> Draft:
        square = f"{unit}^2"
        given, key, factor = amount(area, square), amount(area * k * k, square), t.Int(k)
        squared = t.Power(factor, _TWO)
        return Draft(
            prompt(
                f"A {by_turns(_SHAPES, area + k)} has an area of {{a}}. It is enlarged by a scale "
                "factor of {k}. What is the area of the enlargement?",
                a=given,
                k=factor,
            ),
            Find(t.times(given, squared)),
            key,
            "quantity",
            (
                Step(
                    "Length and width both grow: square the scale factor.",
                    t.equals(squared, t.Int(k * k)),
                ),
                Step("Multiply the area by it.", t.equals(t.times(t.Int(k * k), given), key)),
            ),
            slips(
                (m.NOT_SQUARED, amount(area * k, square)),
                (m.FACTOR_DOUBLED, amount(area * 2 * k, square)),
            ),
            ("enlarged", k, area, unit),
            constants=(2,),
        )

    def _sides(self, factor: int, a: int, b: int) -> Draft:
        f = _HALVES[factor]
        small, large = amount(a, "cm"), amount(a * f, "cm")
        area, key = amount(b, "cm^2"), amount(b * f * f, "cm^2")
        k, squared = decimal_node(f), decimal_node(f * f)
        shape = by_turns(_SHAPES, a + b + factor)
        return Draft(
            prompt(
                f"One side of a {shape} is {{a}} long, and its area is {{c}}. "
                f"In a similar {shape}, that side is {{b}} long. "
                "Work out the area of the second one.",
                a=small,
                c=area,
                b=large,
            ),
            Find(t.times(area, t.Power(t.Bracket(t.divide(large, small)), _TWO))),
            key,
            "quantity",
            (
                Step("Find the scale factor of the lengths.", t.equals(t.divide(large, small), k)),
                Step("Square it for the areas.", t.equals(t.Power(k, _TWO), squared)),
                Step("Multiply the area by it.", t.equals(t.times(squared, area), key)),
            ),
            slips(
                (m.NOT_SQUARED, amount(b * f, "cm^2")),
                (m.FACTOR_DOUBLED, amount(2 * b * f, "cm^2")),
                (m.AREA_DIFFERENCE, amount(b + a * f - a, "cm^2")),
            ),
            ("sides", factor, a, b),
            constants=(2,),
        )

    def _back(self, k: int, b: int) -> Draft:
        small, large = amount(b, "cm^2"), amount(b * k * k, "cm^2")
        squared, key = t.Int(k * k), t.Int(k)
        shape = by_turns(_SHAPES, b + k)
        return Draft(
            prompt(
                f"A {shape} with an area of {{a}} is enlarged. The enlargement has an area of "
                "{b}. What is the scale factor of the enlargement?",
                a=small,
                b=large,
            ),
            Find(t.Root(t.divide(large, small))),
            key,
            "integer",
            (
                Step(
                    "Find how many times as large the area is.",
                    t.equals(t.divide(large, small), squared),
                ),
                Step("That is the square of the scale factor.", t.equals(t.Root(squared), key)),
            ),
            slips(
                (m.NOT_ROOTED, squared),
                (m.HALVED_FOR_ROOT, decimal_node(Fraction(k * k, 2))),
            ),
            ("back", k, b),
        )

    def _side(self, pair: int, c: int, b: int) -> Draft:
        p, q = _PAIRS[pair]
        areas = amount(p * p * b, "cm^2"), amount(q * q * b, "cm^2")
        side, key = amount(p * c, "cm"), amount(q * c, "cm")
        ratio = t.Frac(areas[1], areas[0])
        squared = t.frac(q * q, p * p)
        by_area = Fraction(q * q * c, p)
        return Draft(
            prompt(
                f"Two similar {by_turns(_SEVERAL, pair + b + c)} have areas of {{a}} and {{b}}. "
                "A side of the smaller one is {c} long. How long is that side of the larger one?",
                a=areas[0],
                b=areas[1],
                c=side,
            ),
            Find(t.times(side, t.Root(ratio))),
            key,
            "quantity",
            (
                Step("Divide the areas to find their scale factor.", t.equals(ratio, squared)),
                Step("Lengths go by its square root.", t.equals(t.Root(squared), t.frac(q, p))),
                Step("Multiply the side by it.", t.equals(t.times(t.frac(q, p), side), key)),
            ),
            slips(
                (m.RATIO_OF_AREAS, amount(by_area, "cm")),
                (m.HALVED_FOR_ROOT, amount(by_area / 2, "cm")),
                (m.AREA_DIFFERENCE, amount(p * c + (q * q - p * p) * b, "cm")),
            ),
            ("side", pair, b, c),
        )

    def _plan(self, scale: int, b: int) -> Draft:
        n = _SCALES[scale]
        drawn, shown = amount(b, "cm^2"), t.Ratio((t.Int(1), t.Int(n)))
        square = amount(b * n * n, "cm^2")
        key = amount(Fraction(b * n * n, 10_000), "m^2")
        factor = t.Int(n)
        squared = t.Power(factor, _TWO)
        metres = Fraction(b * n * n, 10_000)
        room = by_turns(next(kinds for most, kinds in _ROOMS if metres <= most), b + scale)
        return Draft(
            prompt(
                f"A plan has the scale {{r}}. On the plan, a {room} has an area of "
                "{a}. What is its real area, in square metres?",
                r=shown,
                a=drawn,
            ),
            Find(t.times(drawn, squared)),
            key,
            "quantity",
            (
                Step(
                    f"Lengths are multiplied by {n}, so areas by its square.",
                    t.equals(t.times(drawn, squared), square),
                ),
                Step(
                    f"A square metre is {in_figures(10_000)} square centimetres.",
                    t.equals(square, key),
                ),
            ),
            slips(
                (m.NOT_SQUARED, amount(Fraction(b * n, 10_000), "m^2")),
                (m.HUNDRED_ONLY, amount(Fraction(b * n * n, 100), "m^2")),
            ),
            ("plan", n, b),
            constants=(2,),
        )
