"""Right-angled triangles by sine, cosine and tangent: sides, angles, stories.

England's programme of study for key stage 3 (2013) asks pupils to "use [...] trigonometric ratios
in similar triangles to solve problems involving right-angled triangles" (from memory).
"""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry._calculator import PLACE, amount, root_of
from generators.geometry._right_drawn import in_picture
from generators.geometry._trigonometry_mistakes import (
    DIVIDED,
    EYES_FORGOTTEN,
    HALF_ONLY,
    MULTIPLIED,
    NOT_CUT,
    OTHER_ANGLE,
    OTHER_RATIO,
    RATIO_GIVEN,
    SINE_TAKEN,
    TANGENT_TAKEN,
    UPSIDE_DOWN,
)
from itembank.items import kinds
from itembank.items.item import Draft, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_ANGLES = tuple(n for n in range(18, 73) if n not in (30, 45, 60))
# Which side is asked for, which one is given, and the ratio of the two.
_SIDES = {
    "sin": ("opposite", "hypotenuse"),
    "cos": ("adjacent", "hypotenuse"),
    "tan": ("opposite", "adjacent"),
}
_NAMES = tuple(_SIDES)
_PLACES = {"opposite": "upright", "adjacent": "level", "hypotenuse": "slope"}
"""Where a side of a triangle stands that is drawn with its angle at the foot of its slope."""
_DRAWN = tuple(n for n in _ANGLES if 27 <= n <= 62)
_UP = ("tree", "flagpole", "church tower", "mast")


def _ratio(name: str, degrees: Fraction | int) -> Fraction:
    turn = math.radians(float(degrees))
    return Fraction({"sin": math.sin, "cos": math.cos, "tan": math.tan}[name](turn))


def _angle(name: str, ratio: Fraction) -> Fraction:
    undo = {"sin": math.asin, "cos": math.acos, "tan": math.atan}[name]
    return Fraction(math.degrees(undo(float(ratio))))


def _tenths(*values: Fraction) -> int:
    """Return how many different values there are, each to one decimal place."""
    return len({round(10 * value) for value in values})


def _support(name: str, degrees: int, side: int) -> bool:
    found = [side * _ratio(each, degrees) for each in _NAMES]
    apart = _tenths(*found, side / _ratio(name, degrees)) == 4
    return apart and (degrees + side) % 4 == 0


def _core(kind: str, name: str, a: int, b: int) -> bool:
    if kind == "side":  # an angle of a degrees, and a side of b
        if a not in _ANGLES or not 4 <= b <= 20 or (a + b) % 4:
            return False
        found = {b / _ratio(name, a), b * _ratio(name, a), b / _ratio(_swapped(name), a)}
        return _tenths(*found) == 3
    # two sides: a over b; of the tangent every other one, so that there are as many of each
    if name == "tan" and (a + b) % 4 != 1:
        return False
    if not (2 <= a <= 19 and 4 <= b <= 20 and a != b and (a + b) % 2) or (name != "tan" and a >= b):
        return False
    angle = _angle(name, Fraction(a, b))
    tangent = 0 if name == "tan" else _angle("tan", Fraction(a, b))
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
        return fits and 2 * rise != 1 and _tenths(_angle("sin", rise), _angle("tan", rise)) == 2
    # an isosceles triangle with equal sides of b and an angle of 2a between them
    return (
        kind == "base"
        and 20 <= a <= 55
        and a in _ANGLES
        and 5 <= b <= 20
        and c == 14
        and a % 3 == b % 3
    )


def _swapped(name: str) -> str:
    return {"sin": "cos", "cos": "sin", "tan": "sin"}[name]


def _drawn_side(topic: Topic, tier: Tier, name: str, degrees: int, side: int) -> Draft:
    """Return the question for a side of a triangle that is drawn with an angle and a side."""
    multiplied = tier is Tier.SUPPORT
    draft = topic.make(tier, *(() if multiplied else ("side",)), name, degrees, side)
    above, below = _SIDES[name]
    wanted, given = (above, below) if multiplied else (below, above)
    slope = {
        "opposite": side / _ratio("sin", degrees),
        "adjacent": side / _ratio("cos", degrees),
        "hypotenuse": Fraction(side),
    }[given]
    legs = slope * _ratio("cos", degrees), slope * _ratio("sin", degrees)
    labels = {_PLACES[given]: amount(side, "cm"), "foot": t.Quantity(t.Int(degrees), "°")}
    return in_picture(draft, legs, labels, _PLACES[wanted], (degrees + side) // 4 + side)


def _drawn_angle(topic: Topic, tier: Tier, name: str, a: int, b: int) -> Draft:
    """Return the question for an angle of a triangle that is drawn with two sides."""
    draft = topic.make(tier, "angle", name, a, b)
    top, bottom = _SIDES[name]
    other = root_of(Fraction(abs(b * b - a * a)))
    legs = {
        "sin": (other, Fraction(a)),
        "cos": (Fraction(a), other),
        "tan": (Fraction(b), Fraction(a)),
    }[name]
    labels = {_PLACES[top]: amount(a, "cm"), _PLACES[bottom]: amount(b, "cm")}
    return in_picture(draft, legs, labels, "foot", a + 2 * b + len(top))


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
        _drawn_side,
        lambda name, degrees, side: _support(name, degrees, side) and side % 2 == degrees % 2,
        name=_NAMES,
        degrees=_DRAWN,
        side=range(4, 25),
    )
    spaces[Tier.CORE] = (
        spaces[Tier.CORE]
        .also(
            _drawn_side,
            lambda name, degrees, side: _core("side", name, degrees, side),
            name=_NAMES,
            degrees=_DRAWN,
            side=range(4, 21),
        )
        .also(
            _drawn_angle,
            lambda name, a, b: (
                _core("angle", name, a, b) and 24 <= _angle(name, Fraction(a, b)) <= 66
            ),
            name=_NAMES,
            a=range(2, 20),
            b=range(4, 21),
        )
    )

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._by_multiplying(*values)
        kind, *rest = values
        make: dict[str, Callable[..., Draft]] = {
            "side": self._by_dividing,
            "angle": self._angle_of,
            "height": self._height,
            "ramp": self._ramp,
            "base": self._base,
        }
        return make[kind](*rest)

    def _by_multiplying(self, name: str, degrees: int, side: int) -> Draft:
        angle, given = t.Quantity(t.Int(degrees), "°"), amount(side, "cm")
        asked, known = _SIDES[name]
        value = side * _ratio(name, degrees)
        wrong = [
            (SINE_TAKEN if name == "tan" else OTHER_RATIO, side * _ratio(_swapped(name), degrees)),
            (DIVIDED, side / _ratio(name, degrees)),
            (TANGENT_TAKEN, None if name == "tan" else side * _ratio("tan", degrees)),
        ]
        target = t.times(given, _trig(name, angle))
        return Draft(
            prompt(
                f"One angle of a right-angled triangle is {{a}}. {_known(known)} is {{s}}. "
                f"Work out the length of the side {_asked(asked)}. {PLACE.said('cm')}",
                a=angle,
                s=given,
            ),
            Round(target, "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(f"{_ratio_said(name)} Multiply by the {known} side.", target)
                if known != "hypotenuse"
                else Step(f"{_ratio_said(name)} Multiply by the hypotenuse.", target),
                *PLACE.steps(value, "cm"),
            ),
            slips(*((mistake, _node(each, "cm")) for mistake, each in wrong)),
            ("multiply", name, degrees, side),
        )

    def _by_dividing(self, name: str, degrees: int, side: int) -> Draft:
        angle, given = t.Quantity(t.Int(degrees), "°"), amount(side, "cm")
        known, asked = _SIDES[name]
        value = side / _ratio(name, degrees)
        target = t.divide(given, _trig(name, angle))
        other = side / _ratio(_swapped(name), degrees)
        return Draft(
            prompt(
                f"One angle of a right-angled triangle is {{a}}. {_known(known)} is {{s}}. "
                f"Work out the length of {_asked_whole(asked)}. {PLACE.said('cm')}",
                a=angle,
                s=given,
            ),
            Round(target, "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(_ratio_said(name)),
                Step("The side asked for stands below, so divide by the ratio.", target),
                *PLACE.steps(value, "cm"),
            ),
            slips(
                (MULTIPLIED, _node(side * _ratio(name, degrees), "cm")),
                (SINE_TAKEN if name == "tan" else OTHER_RATIO, _node(other, "cm")),
            ),
            ("divide", name, degrees, side),
        )

    def _angle_of(self, name: str, a: int, b: int) -> Draft:
        above, below = amount(a, "cm"), amount(b, "cm")
        ratio = Fraction(a, b)
        value = _angle(name, ratio)
        shown = t.Frac(t.Int(a), t.Int(b))
        target = t.Trig(_named(name), shown, True)
        given = {
            "sin": "The side opposite an angle of a right-angled triangle is {a}, and the "
            "hypotenuse is {b}.",
            "cos": "The side adjacent to an angle of a right-angled triangle is {a}, and the "
            "hypotenuse is {b}.",
            "tan": "The side opposite an angle of a right-angled triangle is {a}, and the side "
            "adjacent to it is {b}.",
        }[name]
        sine = _angle("sin", ratio) if name == "tan" and a < b else None
        return Draft(
            prompt(f"{given} Work out the angle. {PLACE.said('°')}", a=above, b=below),
            Round(target, "places", 1),
            PLACE.node(value, "°"),
            "rounded",
            (
                Step(f"{_ratio_said(name)} Find the angle whose ratio that is.", target),
                *PLACE.steps(value, "°"),
            ),
            slips(
                (UPSIDE_DOWN if name == "tan" else OTHER_RATIO, _node(90 - value, "°")),
                (SINE_TAKEN, _node(sine, "°")),
                (TANGENT_TAKEN, None if name == "tan" else _node(_angle("tan", ratio), "°")),
                (RATIO_GIVEN, _node(ratio, "°")),
            ),
            ("angle", name, a, b),
        )

    def _height(self, degrees: int, far: int, eyes: int) -> Draft:
        angle, away = t.Quantity(t.Int(degrees), "°"), amount(far, "m")
        high = amount(Fraction(eyes, 10), "m")
        above = far * _ratio("tan", degrees)
        value = above + Fraction(eyes, 10)
        product = t.times(away, _trig("tan", angle))
        thing = by_turns(_UP, degrees + far + eyes)
        return Draft(
            prompt(
                f"From {{f}} away, someone sees the top of a {thing} at an angle of {{a}} above "
                f"the horizontal. Their eyes are {{e}} above level ground. "
                f"How high is the {thing}? "
                f"{PLACE.said('m')}",
                f=away,
                a=angle,
                e=high,
            ),
            Round(t.add(product, high), "places", 1),
            PLACE.node(value, "m"),
            "rounded",
            (
                Step("The height above the eyes is opposite the angle, the distance adjacent."),
                Step(
                    "Multiply by the tangent, and add the height of the eyes.", t.add(product, high)
                ),
                *PLACE.steps(value, "m"),
            ),
            slips(
                (EYES_FORGOTTEN, _node(above, "m")),
                (SINE_TAKEN, _node(far * _ratio("sin", degrees) + Fraction(eyes, 10), "m")),
                (DIVIDED, _node(far / _ratio("tan", degrees) + Fraction(eyes, 10), "m")),
            ),
            ("height", degrees, far, eyes),
        )

    def _ramp(self, _: int, long: int, tenths: int) -> Draft:
        slope, rise = amount(long, "m"), amount(Fraction(tenths, 10), "m")
        ratio = Fraction(tenths, 10 * long)
        value = _angle("sin", ratio)
        target = t.Trig("sin", t.Frac(amount(Fraction(tenths, 10), ""), t.Int(long)), True)
        thing = by_turns(("ramp", "slide", "plank"), long + tenths)
        return Draft(
            prompt(
                f"A {thing} is {{l}} long. Its top is {{r}} higher than its foot. "
                f"What angle does it make with the level ground? {PLACE.said('°')}",
                l=slope,
                r=rise,
            ),
            Round(target, "places", 1),
            PLACE.node(value, "°"),
            "rounded",
            (
                Step(f"The rise is opposite the angle, and the {thing} is the hypotenuse."),
                Step("Find the angle whose sine is their ratio.", target),
                *PLACE.steps(value, "°"),
            ),
            slips(
                (OTHER_ANGLE, _node(90 - value, "°")),
                (TANGENT_TAKEN, _node(_angle("tan", ratio), "°")),
            ),
            ("ramp", long, tenths),
        )

    def _base(self, half: int, side: int, _: int) -> Draft:
        angle, equal = t.Quantity(t.Int(2 * half), "°"), amount(side, "cm")
        each = t.Quantity(t.Int(half), "°")
        value = 2 * side * _ratio("sin", half)
        halved = t.Quantity(t.Frac(t.Int(2 * half), t.Int(2)), "°")
        return Draft(
            prompt(
                "Two sides of an isosceles triangle are {s} long, with an angle of {a} between "
                f"them. Work out the length of the third side. {PLACE.said('cm')}",
                s=equal,
                a=angle,
            ),
            Round(t.times(t.Int(2), equal, _trig("sin", halved)), "places", 1),
            PLACE.node(value, "cm"),
            "rounded",
            (
                Step(
                    "Cut it into two right-angled triangles.",
                    t.equals(t.divide(angle, t.Int(2)), each),
                ),
                Step(
                    "Half of the third side is opposite that angle: take it twice.",
                    t.times(t.Int(2), equal, _trig("sin", each)),
                ),
                *PLACE.steps(value, "cm"),
            ),
            slips(
                (HALF_ONLY, _node(value / 2, "cm")),
                (NOT_CUT, _node(2 * side * _ratio("sin", 2 * half), "cm")),
                (OTHER_RATIO, _node(2 * side * _ratio("cos", half), "cm")),
            ),
            ("base", half, side),
            constants=(2,),
        )


def _named(name: str) -> Any:
    return name


def _trig(name: str, angle: t.Node) -> t.Node:
    return t.Trig(_named(name), angle)


def _node(value: Fraction | None, unit: str) -> t.Node | None:
    return None if value is None else PLACE.node(value, unit)


def _known(side: str) -> str:
    return {
        "hypotenuse": "The hypotenuse",
        "adjacent": "The side adjacent to it",
        "opposite": "The side opposite it",
    }[side]


def _asked(side: str) -> str:
    return {"opposite": "opposite the angle", "adjacent": "adjacent to the angle"}[side]


def _asked_whole(side: str) -> str:
    return "the hypotenuse" if side == "hypotenuse" else f"the side {_asked(side)}"


def _ratio_said(name: str) -> str:
    return {
        "sin": "The sine is opposite over hypotenuse.",
        "cos": "The cosine is adjacent over hypotenuse.",
        "tan": "The tangent is opposite over adjacent.",
    }[name]
