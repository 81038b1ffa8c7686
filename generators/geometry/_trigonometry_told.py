"""Sine, cosine and tangent in a story: heights, ramps, and triangles that are cut in two."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry._calculator import PLACE, amount
from generators.geometry._ratios import angle_of, node_or_none, ratio_of, ratio_tree
from generators.geometry._trigonometry_mistakes import (
    DIVIDED,
    EYES_FORGOTTEN,
    HALF_ONLY,
    NOT_CUT,
    OTHER_ANGLE,
    OTHER_RATIO,
    SINE_TAKEN,
    TANGENT_TAKEN,
)
from itembank.items.item import Draft, Round, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_UP = ("tree", "flagpole", "church tower", "mast")


def height(degrees: int, far: int, eyes: int) -> Draft:
    """Return the question for the height of what is seen at an angle from the eyes or ground."""
    angle, away = t.Quantity(t.Int(degrees), "°"), amount(far, "m")
    high = amount(Fraction(eyes, 10), "m")
    above = far * ratio_of("tan", degrees)
    value = above + Fraction(eyes, 10)
    product = t.times(away, ratio_tree("tan", angle))
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
            Step("Multiply by the tangent, and add the height of the eyes.", t.add(product, high)),
            *PLACE.steps(value, "m"),
        ),
        slips(
            (EYES_FORGOTTEN, node_or_none(above, "m")),
            (
                SINE_TAKEN,
                node_or_none(far * ratio_of("sin", degrees) + Fraction(eyes, 10), "m"),
            ),
            (DIVIDED, node_or_none(far / ratio_of("tan", degrees) + Fraction(eyes, 10), "m")),
        ),
        ("height", degrees, far, eyes),
    )


def ramp(_: int, long: int, tenths: int) -> Draft:
    """Return the question for the angle of a ramp that rises so many tenths."""
    slope, rise = amount(long, "m"), amount(Fraction(tenths, 10), "m")
    ratio = Fraction(tenths, 10 * long)
    value = angle_of("sin", ratio)
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
            (OTHER_ANGLE, node_or_none(90 - value, "°")),
            (TANGENT_TAKEN, node_or_none(angle_of("tan", ratio), "°")),
        ),
        ("ramp", long, tenths),
    )


def base(half: int, side: int, _: int) -> Draft:
    """Return the question for the base of an isosceles triangle, which is cut in two."""
    angle, equal = t.Quantity(t.Int(2 * half), "°"), amount(side, "cm")
    each = t.Quantity(t.Int(half), "°")
    value = 2 * side * ratio_of("sin", half)
    halved = t.Quantity(t.Frac(t.Int(2 * half), t.Int(2)), "°")
    return Draft(
        prompt(
            "Two sides of an isosceles triangle are {s} long, with an angle of {a} between "
            f"them. Work out the length of the third side. {PLACE.said('cm')}",
            s=equal,
            a=angle,
        ),
        Round(t.times(t.Int(2), equal, ratio_tree("sin", halved)), "places", 1),
        PLACE.node(value, "cm"),
        "rounded",
        (
            Step(
                "Cut it into two right-angled triangles.",
                t.equals(t.divide(angle, t.Int(2)), each),
            ),
            Step(
                "Half of the third side is opposite that angle: take it twice.",
                t.times(t.Int(2), equal, ratio_tree("sin", each)),
            ),
            *PLACE.steps(value, "cm"),
        ),
        slips(
            (HALF_ONLY, node_or_none(value / 2, "cm")),
            (NOT_CUT, node_or_none(2 * side * ratio_of("sin", 2 * half), "cm")),
            (OTHER_RATIO, node_or_none(2 * side * ratio_of("cos", half), "cm")),
        ),
        ("base", half, side),
        constants=(2,),
    )
