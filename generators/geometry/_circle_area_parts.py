"""Less than a whole circle, or what is left beside one: sectors, rings, and what is cut out."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _circle_mistakes as m
from generators.geometry._calculator import PI, PLACE, amount, of_pi
from generators.geometry._circle_steps import IN_PI, TWO, disc, part_of_turn
from itembank.figures.kinds.plane.circle import Circle
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Round, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

FIND = ("Work out the area of the {}.", "Find the area of the {}.", "What is the area of the {}?")
PARTS = {"semicircle": 180, "quarter circle": 90}
_RINGS = (("pond", "path"), ("lawn", "path"), ("flower bed", "path"), ("stage", "carpet"))
_CARDS = ("square of card", "square of felt", "square of paper", "square metal plate")


def part_of_circle(name: str, degrees: int, n: int) -> Draft:
    """Return the question for the area of a sector of so many degrees, in terms of π."""
    given = amount(n, "cm")
    figure = Circle(radius=given, sector=degrees)
    part = Fraction(degrees, 360)
    whole, key = of_pi(n * n, "cm^2"), of_pi(n * n * part, "cm^2")
    text = (by_turns(FIND, n + degrees).format(name) + IN_PI,)
    if name == "sector":
        taken = part_of_turn(degrees, whole, key)
    else:
        parts = 360 // degrees
        word = "half" if parts == 2 else "a quarter"
        taken = Step(f"Take {word} of it.", t.equals(t.divide(whole, t.Int(parts)), key))
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "simplified",
        (
            Step("Find the area of the whole circle.", t.equals(disc(given), whole)),
            taken,
        ),
        slips(
            (m.WHOLE_CIRCLE, whole),
            (m.DOUBLED, of_pi(2 * n * part, "cm^2")),
            (m.RADIUS_AS_DIAMETER, of_pi(n * n * part / 4, "cm^2")),
        ),
        ("part", degrees, n),
        constants=(2, 4, 360),
        figure=figure,
    )


def ring_around(n: int, k: int) -> Draft:
    """Return the question for the area of a ring k wide around a circle."""
    inner, wide = amount(n, "m"), amount(k, "m")
    outer = amount(n + k, "m")
    value = PI * ((n + k) ** 2 - n * n)
    middle, ring = by_turns(_RINGS, n + k)
    wider = t.Bracket(t.add(inner, wide))
    difference = t.sub(disc(wider), disc(inner))
    return Draft(
        prompt(
            f"A circular {middle} has a radius of {{n}}. A {ring} {{k}} wide goes all the way "
            f"round it. Work out the area of the {ring}. {PLACE.said('m^2')}",
            n=inner,
            k=wide,
        ),
        Round(difference, "places", 1),
        PLACE.node(value, "m^2"),
        "rounded",
        (
            Step("Find the radius of the outer circle.", t.equals(t.add(inner, wide), outer)),
            Step("Subtract the inner area from the outer one.", t.sub(disc(outer), disc(inner))),
            *PLACE.steps(value, "m^2"),
        ),
        slips(
            (m.RING_BY_WIDTH, PLACE.node(PI * k * k, "m^2")),
            (m.RING_LARGE_ONLY, PLACE.node(PI * (n + k) ** 2, "m^2")),
        ),
        ("ring", n, k),
        constants=(2,),
    )


def circle_cut_out(n: int, _: int) -> Draft:
    """Return the question for what is left of a square with a circle cut out."""
    side = amount(n, "cm")
    square, circle = amount(n * n, "cm^2"), disc(t.Frac(side, TWO))
    half = amount(Fraction(n, 2), "cm")
    value = n * n - PI * n * n / 4
    return Draft(
        prompt(
            f"A {by_turns(_CARDS, n)} has sides of {{n}}. The largest circle that fits is "
            f"cut out of it. What area is left? {PLACE.said('cm^2')}",
            n=side,
        ),
        Round(t.sub(t.Power(t.Bracket(side), TWO), circle), "places", 1),
        PLACE.node(value, "cm^2"),
        "rounded",
        (
            Step("Find the area of the square.", t.equals(t.times(side, side), square)),
            Step("The radius is half of the side.", t.equals(t.divide(side, TWO), half)),
            Step("Subtract the area of the circle.", t.sub(square, disc(half))),
            *PLACE.steps(value, "cm^2"),
        ),
        slips(
            (m.CUT_ONLY, PLACE.node(PI * n * n / 4, "cm^2")),
            (m.DOUBLED, PLACE.node(n * n - PI * n, "cm^2") if n > 4 else None),
        ),
        ("cut", n),
        constants=(2,),
    )
