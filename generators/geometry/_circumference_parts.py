"""Longer than one edge, or shorter: turns of a wheel, round half a disc, and arcs."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _circle_mistakes as m
from generators.geometry._calculator import NEAREST, PI, PLACE, amount, of_pi
from generators.geometry._circle_steps import IN_PI, PI_SIGN, TWO, part_of_turn
from itembank.figures.kinds.plane.circle import Circle
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Round, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

SLICES = (40, 45, 60, 72, 80, 90, 108, 120, 135, 150, 210, 240, 270)
_HALVES = ("A window", "A rug", "A flower bed", "A table top", "A stage block")
_ARC = ("Work out the length of the arc.", "Find the arc length of the sector.")


def turns_of_a_wheel(n: int, fives: int) -> Draft:
    """Return the question how far a wheel n cm across goes in 5 × `fives` turns."""
    turns = 5 * fives
    given, value = amount(n, "cm"), PI * n * turns / 100
    in_metres = amount(Fraction(n, 100), "m")
    return Draft(
        prompt(
            "A bike wheel has a diameter of {n}. How far does the bike go when the wheel turns "
            f"{{k}} times? {NEAREST.said('m')}",
            n=given,
            k=t.Int(turns),
        ),
        Round(t.times(PI_SIGN, given, t.Int(turns)), "nearest", 1),
        NEAREST.node(value, "m"),
        "rounded",
        (
            Step("Write the diameter in metres.", t.equals(given, in_metres)),
            Step(
                f"One turn is as long as the circumference. Multiply by {turns} turns.",
                t.times(PI_SIGN, in_metres, t.Int(turns)),
            ),
            *NEAREST.steps(value, "m"),
        ),
        slips(
            (m.DIAMETER_AS_RADIUS, NEAREST.node(2 * value, "m")),
            (m.RADIUS_AS_DIAMETER, NEAREST.node(value / 2, "m")),
            (m.ONE_TURN, NEAREST.node(value / turns, "m")),
        ),
        ("wheel", n, turns),
    )


def round_half_a_disc(n: int, _: int) -> Draft:
    """Return the question for the perimeter of a semicircle, n cm across."""
    given, value = amount(n, "cm"), PI * n / 2 + n
    curve = t.times(t.frac(1, 2), PI_SIGN, given)
    return Draft(
        prompt(
            f"{by_turns(_HALVES, n)} is a semicircle. Its straight edge is {{n}} long. "
            f"Work out its perimeter. {PLACE.said('cm')}",
            n=given,
        ),
        Round(t.add(curve, given), "places", 1),
        PLACE.node(value, "cm"),
        "rounded",
        (
            Step(
                "The curve is half of π times the diameter. Add the straight edge.",
                t.add(curve, given),
            ),
            *PLACE.steps(value, "cm"),
        ),
        slips(
            (m.EDGE_LEFT_OUT, PLACE.node(PI * n / 2, "cm")),
            (m.WHOLE_CIRCLE, PLACE.node(PI * n + n, "cm")),
            (m.DIAMETER_AS_RADIUS, PLACE.node(PI * n + 2 * n, "cm")),
        ),
        ("half", n),
        constants=(1, 2),
    )


def exact_arc(n: int, slice_: int) -> Draft:
    """Return the question for the length of an arc, in terms of π."""
    degrees = SLICES[slice_]
    given = amount(n, "cm")
    figure = Circle(radius=given, sector=degrees)
    whole, part = of_pi(2 * n, "cm"), Fraction(degrees, 360)
    key = of_pi(2 * n * part, "cm")
    text = (by_turns(_ARC, n + slice_) + IN_PI,)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "simplified",
        (
            Step(
                "Find the circumference of the whole circle.",
                t.equals(t.times(TWO, PI_SIGN, given), whole),
            ),
            part_of_turn(degrees, whole, key),
        ),
        slips(
            (m.RADIUS_AS_DIAMETER, of_pi(n * part, "cm")),
            (m.WHOLE_CIRCLE, whole),
            (m.AREA_FOR_LENGTH, of_pi(n * n * part, "cm^2")),
        ),
        ("arc", n, degrees),
        constants=(2, 360),
        figure=figure,
    )
