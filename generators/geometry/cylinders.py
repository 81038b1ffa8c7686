"""The volume and the surface of cylinders: exact in π, rounded, and back to a length.

England's programme of study for key stage 3 (2013) asks pupils to "derive and apply formulae to
calculate and solve problems involving: [...] volume of cuboids (including cubes) and other prisms
(including cylinders)" (from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry import _cylinder_surfaces, _cylinders_drawn
from generators.geometry import _solid_mistakes as m
from generators.geometry._calculator import FIGURES, NEAREST, PI, PLACE, Accuracy, amount, of_pi
from generators.geometry._circle_steps import (
    IN_PI,
    PI_SIGN,
    TWO,
    across_named,
    disc,
    halved,
    radius_of,
)
from generators.geometry._cylinders_back import back_to_diameter, back_to_height, back_to_radius
from itembank.items import kinds
from itembank.items.item import Draft, Find, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_RULE = "The volume is π times the square of the radius, times the height."
_SMALL = ("candle", "tin", "mug", "jar")
_LARGE = ("tank", "silo", "well", "tower")
_BUTTS = ("water butt", "barrel", "drum", "tank")
_PAIRS = (("vase", "bowl"), ("jar", "pan"), ("jug", "tub"), ("beaker", "dish"))


def _support(across: bool, n: int, h: int, unit: str) -> bool:
    radius = Fraction(n, 2) if across else Fraction(n)
    if unit == "m" and (radius > 6 or h > 12):
        return False
    sized = radius.denominator == 1 and 3 <= radius <= 10 and h != radius and h <= 4 * radius
    counts = {radius**2 * h, 2 * radius * h, radius * h * h, 4 * radius**2 * h}
    return sized and len(counts) == 4


def _core(kind: str, across: bool, tenths: int, h: int) -> bool:
    if kind == "height":  # back from so many times π to the height
        return tenths % 10 == 0 and not across and 3 <= tenths // 10 <= 9 and h * 10 != tenths
    if kind == "radius":  # … and back to the radius
        a, over = divmod(tenths, 10)
        return over == 0 and not across and a >= 3 and h not in (4, a, 2 * a) and h < 16
    # What stands on a table, or in a yard: neither flat nor thin.
    wide = tenths if across else 2 * tenths
    sized = 50 <= wide <= 95 and wide <= 20 * h <= 5 * wide
    return sized and tenths % 10 != 0 and (tenths + h + across) % 2 == 0


def _challenge(kind: str, a: int, b: int, h: int, k: int) -> bool:
    if kind == "diameter":  # back from so many times π to the diameter
        return 3 <= a <= 10 and b == 3 and h != 4 and h not in (a, 2 * a) and k == 0
    if kind == "butt":  # 10a across and 10h high, in litres
        return 3 <= a <= 9 and b == 3 and 4 <= h <= 12 and a != h and k == 0
    # from a radius of a into one of b
    depth = Fraction(a * a * h, b * b)
    fits = k == 0 and a != b and 2 * b > a and 2 * a > b and depth.denominator > 1
    digits = {depth, Fraction(a * h, b), Fraction(b * b * h, a * a), Fraction(h)}
    tie = (20 * depth) % 2 == 1  # exactly between two tenths
    return (
        fits and not tie and 2 <= depth <= 25 and len({round(10 * digit) for digit in digits}) == 4
    )


@register
class Cylinders(Topic):
    """Exact in π; rounded, back to a height or radius; to a diameter, litres, poured over.

    Drawn ones follow: volumes in support and core, surfaces in core and challenge.
    """

    id = "geometry.cylinders"
    title = "Volume and surface area of cylinders"
    statements = ("geometry.formulae",)
    prerequisites = ("geometry.area-of-circles", "geometry.volume-of-prisms")
    misconceptions = (
        m.CYLINDER_ACROSS,
        m.CYLINDER_HALF,
        m.RADIUS_DOUBLED,
        m.HEIGHT_SQUARED,
        m.NO_PI,
        m.DIVIDED_BY_RADIUS,
        m.NO_ROOT_TAKEN,
        m.THIRD_OR_HALF_FOR_ROOT,
        m.LITRE_AS_HUNDRED,
        m.RADIUS_NOT_SQUARED,
        m.SAME_DEPTH,
        m.UPSIDE_DOWN,
        *_cylinder_surfaces.MISTAKES,
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support, across=(False, True), n=range(3, 21), h=range(3, 31), unit=("cm", "m")
        ),
        Tier.CORE: Space(
            _core,
            kind=("place", "figures", "height", "radius"),
            across=(False, True),
            tenths=range(25, 96),
            h=range(4, 21),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("diameter", "butt", "poured"),
            a=range(2, 11),
            b=range(2, 10),
            h=range(4, 16),
            k=range(2),
        ),
    }
    spaces = _cylinders_drawn.with_drawn(kinds.with_statements(spaces))
    spaces = _cylinder_surfaces.with_surfaces(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._exact(*values)
        kind, *rest = values
        if kind in ("place", "figures"):
            return self._rounded(PLACE if kind == "place" else FIGURES, *rest)
        make: dict[str, Callable[..., Draft]] = {
            "height": back_to_height,
            "radius": back_to_radius,
            "diameter": back_to_diameter,
            "butt": self._butt,
            "poured": self._poured,
        }
        return make[kind](*rest)

    def _exact(self, across: bool, n: int, h: int, unit: str) -> Draft:
        given, high, cube = amount(n, unit), amount(h, unit), f"{unit}^3"
        radius = n // 2 if across else n
        key, end = of_pi(radius**2 * h, cube), of_pi(radius**2, f"{unit}^2")
        wrong = 4 * radius**2 * h if across else Fraction(radius**2 * h, 4)
        return Draft(
            prompt(
                f"A cylinder has a {across_named(across)} of {{n}} and a height of "
                f"{{h}}. Work out its volume.{IN_PI}",
                n=given,
                h=high,
            ),
            Find(_volume(radius_of(across, given), high)),
            key,
            "simplified",
            (
                *halved(across, given, radius, unit),
                Step(
                    "The area of the circle is π times the square of the radius.",
                    t.equals(disc(amount(radius, unit)), end),
                ),
                Step("Multiply by the height.", t.equals(t.times(end, high), key)),
            ),
            slips(
                (m.CYLINDER_ACROSS if across else m.CYLINDER_HALF, of_pi(wrong, cube)),
                (m.RADIUS_DOUBLED, of_pi(2 * radius * h, cube)),
                (m.HEIGHT_SQUARED, of_pi(radius * h * h, cube)),
            ),
            ("exact", across, n, h, unit),
            constants=(2,),
        )

    def _rounded(self, accuracy: Accuracy, across: bool, tenths: int, h: int) -> Draft:
        size = Fraction(tenths, 10)
        unit = "m" if (tenths + h) % 4 == 0 else "cm"
        given, high, cube = amount(size, unit), amount(h, unit), f"{unit}^3"
        radius = size / 2 if across else size
        value = PI * radius**2 * h
        thing = by_turns(_LARGE if unit == "m" else _SMALL, tenths + h)
        other = (m.CYLINDER_ACROSS, 4 * value) if across else (m.CYLINDER_HALF, value / 4)
        wrong = (other, (m.RADIUS_DOUBLED, 2 * PI * radius * h), (m.NO_PI, radius**2 * h))
        return Draft(
            prompt(
                f"A {thing} is a cylinder with a {across_named(across)} of {{n}} and "
                f"a height of {{h}}. Work out its volume. {accuracy.said(cube)}",
                n=given,
                h=high,
            ),
            Round(_volume(radius_of(across, given), high), accuracy.detail, accuracy.amount),
            accuracy.node(value, cube),
            "rounded",
            (
                *halved(across, given, radius, unit),
                Step(_RULE, _volume(amount(radius, unit), high)),
                *accuracy.steps(value, cube),
            ),
            slips(*((mistake, accuracy.node(value, cube)) for mistake, value in wrong)),
            ("rounded", accuracy, across, tenths, h),
            constants=(2,),
        )

    def _butt(self, a: int, _: int, h: int, __: int) -> Draft:
        given, high = amount(10 * a, "cm"), amount(10 * h, "cm")
        half = amount(5 * a, "cm")
        value = PI * a * a * h / 4  # in litres
        return Draft(
            prompt(
                f"A {by_turns(_BUTTS, a + h)} is a cylinder with a diameter of {{n}} and a height "
                f"of {{h}}. How many litres does it hold? {NEAREST.said('l')}",
                n=given,
                h=high,
            ),
            Round(_volume(t.Frac(given, TWO), high), "nearest", 1),
            NEAREST.node(value, "l"),
            "rounded",
            (
                *halved(True, given, 5 * a, "cm"),
                Step(_RULE, _volume(half, high)),
                Step(
                    "Use a calculator. A litre is 1000 cubic centimetres.",
                    NEAREST.steps(value, "l")[0].maths,
                ),
                NEAREST.steps(value, "l")[1],
            ),
            slips(
                (m.CYLINDER_ACROSS, NEAREST.node(4 * value, "l")),
                (m.LITRE_AS_HUNDRED, NEAREST.node(10 * value, "l")),
                (m.NO_PI, NEAREST.node(Fraction(a * a * h, 4), "l")),
            ),
            ("butt", a, h),
            constants=(2,),
        )

    def _poured(self, a: int, b: int, h: int, k: int) -> Draft:
        thing, other = by_turns(_PAIRS, a + b + h)
        first, second, high = amount(a, "cm"), amount(b, "cm"), amount(h, "cm")
        value = Fraction(a * a * h, b * b)
        volume, end = of_pi(a * a * h, "cm^3"), of_pi(b * b, "cm^2")
        target = t.divide(t.Bracket(_volume(first, high)), t.Bracket(disc(second)))
        return Draft(
            prompt(
                f"A cylindrical {thing} has a radius of {{a}}. The water in it is {{h}} deep. "
                f"All of it is poured into an empty cylindrical {other} with a radius of {{b}}. "
                f"How deep is the water now? {PLACE.said('cm')}",
                a=first,
                h=high,
                b=second,
            ),
            Round(target, "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step("Find the volume of the water.", t.equals(_volume(first, high), volume)),
                Step("Find the area of the second circle.", t.equals(disc(second), end)),
                Step("Divide the volume by that area.", t.divide(volume, end)),
                *PLACE.steps(value, "cm"),
            ),
            slips(
                (m.RADIUS_NOT_SQUARED, PLACE.node(Fraction(a * h, b), "cm")),
                (m.SAME_DEPTH, PLACE.node(Fraction(h), "cm")),
                (m.UPSIDE_DOWN, PLACE.node(Fraction(b * b * h, a * a), "cm")),
            ),
            ("poured", a, b, h),
            constants=(2,),
        )


def _volume(radius: t.Node, high: t.Node) -> t.Node:
    """Return π × (5 cm)² × 8 cm."""
    return t.times(PI_SIGN, t.Power(t.Bracket(radius), TWO), high)
