"""Right-angled triangles by sine, cosine and tangent: sides, angles, stories.

England's programme of study for key stage 3 (2013) asks pupils to "use [...] trigonometric ratios
in similar triangles to solve problems involving right-angled triangles" (from memory).
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from generators.geometry._angle_asked import angle_asked
from generators.geometry._calculator import PLACE, amount
from generators.geometry._nearest_degree import TO_NEAREST_DEGREE
from generators.geometry._ratios import (
    SIDES,
    angle_of,
    asked_side,
    asked_whole,
    known_side,
    node_or_none,
    ratio_of,
    ratio_said,
    ratio_tree,
    swapped_ratio,
)
from generators.geometry._trigonometry_drawn import drawn_angle, drawn_side
from generators.geometry._trigonometry_mistakes import (
    CUT_OFF,
    DIVIDED,
    EYES_FORGOTTEN,
    HALF_ANGLE,
    HALF_ONLY,
    MULTIPLIED,
    NOT_CUT,
    OF_RIGHT_ANGLE,
    OTHER_ANGLE,
    OTHER_INVERSE,
    OTHER_RATIO,
    RATIO_GIVEN,
    RATIO_ROUNDED,
    SINE_TAKEN,
    TANGENT_TAKEN,
    UPSIDE_DOWN,
    WHOLE_BASE,
)
from generators.geometry._trigonometry_told import base, height, ramp
from itembank.items import kinds
from itembank.items.item import Draft, Round, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_ANGLES = tuple(n for n in range(18, 73) if n not in (30, 45, 60))
_NAMES = tuple(SIDES)
_DRAWN = tuple(n for n in _ANGLES if 27 <= n <= 62)


def _tenths(*values: Fraction) -> int:
    """Return how many different values there are, each to one decimal place."""
    return len({round(10 * value) for value in values})


def _support(name: str, degrees: int, side: int) -> bool:
    found = [side * ratio_of(name, degrees) for name in _NAMES]
    apart = _tenths(*found, side / ratio_of(name, degrees)) == 4
    return apart and (degrees + side) % 4 == 0


def _core(kind: str, name: str, a: int, b: int) -> bool:
    if kind == "side":  # an angle of a degrees, and a side of b
        if a not in _ANGLES or not 4 <= b <= 20 or (a + b) % 4:
            return False
        found = {b / ratio_of(name, a), b * ratio_of(name, a), b / ratio_of(swapped_ratio(name), a)}
        return _tenths(*found) == 3
    # two sides: a over b; of the tangent every other one, so that there are as many of each
    if name == "tan" and (a + b) % 4 != 1:
        return False
    if not (2 <= a <= 19 and 4 <= b <= 20 and a != b and (a + b) % 2) or (name != "tan" and a >= b):
        return False
    angle = angle_of(name, Fraction(a, b))
    tangent = 0 if name == "tan" else angle_of("tan", Fraction(a, b))
    apart = _tenths(angle, 90 - angle, Fraction(tangent), Fraction(a, b)) == 4
    return 15 <= angle <= 75 and apart and 2 * a != b


def _challenge(kind: str, a: int, b: int, c: int) -> bool:
    if kind == "height":  # eyes at c tenths, an angle of a degrees, b metres away
        return (
            20 <= a <= 55
            and a in _ANGLES
            and 10 <= b <= 40
            and 14 <= c <= 18
            and (a + b + c) % 9 == 0
        )
    if kind == "ramp":  # rises c tenths over b metres of slope
        rise = Fraction(c, 10 * b)
        fits = a == 20 and 3 <= b <= 12 and b < c < 7 * b and c % 10 != 0 and (b + c) % 3 == 0
        return fits and 2 * rise != 1 and _tenths(angle_of("sin", rise), angle_of("tan", rise)) == 2
    # an isosceles triangle with equal sides of b and an angle of 2a between them
    return (
        kind == "base"
        and 20 <= a <= 55
        and a in _ANGLES
        and 5 <= b <= 20
        and c == 14
        and a % 3 == b % 3
    )


@register
class Trigonometry(Topic):
    """A side by multiplying; by dividing, and angles; heights, ramps, isosceles triangles."""

    id = "geometry.trigonometry"
    title = "Trigonometry in right-angled triangles"
    statements = ("geometry.right-angled",)
    prerequisites = ("geometry.similarity", "geometry.pythagoras")
    misconceptions = (
        OTHER_RATIO,
        TANGENT_TAKEN,
        SINE_TAKEN,
        MULTIPLIED,
        DIVIDED,
        OTHER_ANGLE,
        UPSIDE_DOWN,
        RATIO_GIVEN,
        EYES_FORGOTTEN,
        HALF_ONLY,
        NOT_CUT,
        CUT_OFF,
        RATIO_ROUNDED,
        HALF_ANGLE,
        WHOLE_BASE,
        OTHER_INVERSE,
        OF_RIGHT_ANGLE,
    )
    spaces = {
        Tier.SUPPORT: Space(_support, name=_NAMES, degrees=_ANGLES, side=range(4, 25)),
        Tier.CORE: Space(
            _core, kind=("side", "angle"), name=_NAMES, a=range(2, 73), b=range(4, 21)
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("height", "ramp", "base"),
            a=range(20, 56),
            b=range(3, 41),
            c=range(5, 84),
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces[Tier.SUPPORT] = spaces[Tier.SUPPORT].also(
        drawn_side,
        lambda name, degrees, side: _support(name, degrees, side) and side % 2 == degrees % 2,
        name=_NAMES,
        degrees=_DRAWN,
        side=range(4, 25),
    )
    spaces[Tier.CORE] = (
        spaces[Tier.CORE]
        .also(
            drawn_side,
            lambda name, degrees, side: _core("side", name, degrees, side),
            name=_NAMES,
            degrees=_DRAWN,
            side=range(4, 21),
        )
        .also(
            drawn_angle,
            lambda name, a, b: (
                _core("angle", name, a, b) and 24 <= angle_of(name, Fraction(a, b)) <= 66
            ),
            name=_NAMES,
            a=range(2, 20),
            b=range(4, 21),
        )
    )
    spaces = with_brief(spaces, TO_NEAREST_DEGREE)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._by_multiplying(*values)
        kind, *rest = values
        make: dict[str, Callable[..., Draft]] = {
            "side": self._by_dividing,
            "angle": angle_asked,
            "height": height,
            "ramp": ramp,
            "base": base,
        }
        return make[kind](*rest)

    def _by_multiplying(self, name: str, degrees: int, side: int) -> Draft:
        angle, given = t.Quantity(t.Int(degrees), "°"), amount(side, "cm")
        asked, known = SIDES[name]
        value = side * ratio_of(name, degrees)
        wrong = [
            (
                SINE_TAKEN if name == "tan" else OTHER_RATIO,
                side * ratio_of(swapped_ratio(name), degrees),
            ),
            (DIVIDED, side / ratio_of(name, degrees)),
            (TANGENT_TAKEN, None if name == "tan" else side * ratio_of("tan", degrees)),
        ]
        target = t.times(given, ratio_tree(name, angle))
        return Draft(
            prompt(
                f"One angle of a right-angled triangle is {{a}}. {known_side(known)} is {{s}}. "
                f"Work out the length of the side {asked_side(asked)}. {PLACE.said('cm')}",
                a=angle,
                s=given,
            ),
            Round(target, "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(f"{ratio_said(name)} Multiply by the {known} side.", target)
                if known != "hypotenuse"
                else Step(f"{ratio_said(name)} Multiply by the hypotenuse.", target),
                *PLACE.steps(value, "cm"),
            ),
            slips(*((mistake, node_or_none(value, "cm")) for mistake, value in wrong)),
            ("multiply", name, degrees, side),
        )

    def _by_dividing(self, name: str, degrees: int, side: int) -> Draft:
        angle, given = t.Quantity(t.Int(degrees), "°"), amount(side, "cm")
        known, asked = SIDES[name]
        value = side / ratio_of(name, degrees)
        target = t.divide(given, ratio_tree(name, angle))
        other = side / ratio_of(swapped_ratio(name), degrees)
        return Draft(
            prompt(
                f"One angle of a right-angled triangle is {{a}}. {known_side(known)} is {{s}}. "
                f"Work out the length of {asked_whole(asked)}. {PLACE.said('cm')}",
                a=angle,
                s=given,
            ),
            Round(target, "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(ratio_said(name)),
                Step("The side asked for stands below, so divide by the ratio.", target),
                *PLACE.steps(value, "cm"),
            ),
            slips(
                (MULTIPLIED, node_or_none(side * ratio_of(name, degrees), "cm")),
                (SINE_TAKEN if name == "tan" else OTHER_RATIO, node_or_none(other, "cm")),
            ),
            ("divide", name, degrees, side),
        )
