"""From the surface of a cube or a cuboid back to an edge, or on to the volume."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.geometry import _solid_mistakes as m
from generators.geometry._calculator import amount
from generators.geometry._surface_steps import SIX, TWO
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def cube_from_surface(a: int, b: int, _: int) -> Draft:
    """Return the question from the surface of a cube to its volume or its edge."""
    surface, face = amount(6 * a * a, "cm^2"), amount(a * a, "cm^2")
    edge = amount(a, "cm")
    root: t.Node = t.Root(t.divide(surface, SIX))
    to_volume = b == 2
    key = amount(a**3, "cm^3") if to_volume else edge
    wanted = "its volume" if to_volume else "the length of an edge"
    steps = [
        Step("Six equal faces make the surface.", t.equals(t.divide(surface, SIX), face)),
        Step("The edge is the square root of a face.", t.equals(t.Root(face), edge)),
    ]
    if to_volume:
        steps.append(Step("Multiply three edges.", t.equals(t.times(edge, edge, edge), key)))
    wrong: tuple[Any, ...] = (
        (m.STOPS_AT_FACE, amount(a * a, "cm^3" if to_volume else "cm")),
        (m.STOPS_AT_EDGE, amount(a, "cm^3") if to_volume else None),
        (m.HALF_OF_FACE, None if to_volume or a == 2 else amount(Fraction(a * a, 2), "cm")),
    )
    return Draft(
        prompt(f"A cube has a surface area of {{v}}. Work out {wanted}.", v=surface),
        Find(t.Power(t.Bracket(root), t.Int(3)) if to_volume else root),
        key,
        "quantity",
        tuple(steps),
        slips(*wrong),
        ("cube", a, b),
        constants=(3, 6),
    )


def volume_from_surface(a: int, _: int, c: int) -> Draft:
    """Return the question from the surface over a square base to the volume."""
    base, high = amount(a, "cm"), amount(c, "cm")
    surface = amount(2 * a * a + 4 * a * c, "cm^2")
    ends, rest = amount(2 * a * a, "cm^2"), amount(4 * a * c, "cm^2")
    square = t.Power(t.Bracket(base), TWO)
    around = t.times(t.Int(4), base)
    height = t.Frac(t.sub(surface, t.times(TWO, square)), around)
    key = amount(a * a * c, "cm^3")
    return Draft(
        prompt(
            "A cuboid has a square base with sides of {n}. Its surface area is {v}. "
            "Work out its volume.",
            n=base,
            v=surface,
        ),
        Find(t.times(square, height)),
        key,
        "quantity",
        (
            Step("Find the area of the two squares.", t.equals(t.times(TWO, base, base), ends)),
            Step("The rest is four equal rectangles.", t.equals(t.sub(surface, ends), rest)),
            Step(
                "Divide by four sides of the square to find the height.",
                t.equals(t.divide(rest, t.Bracket(around)), high),
            ),
            Step("Multiply the edges.", t.equals(t.times(base, base, high), key)),
        ),
        slips(
            (m.ONE_BASE, amount(a * a * (Fraction(a, 4) + c), "cm^3")),
            (m.TWO_SIDES, amount(2 * a * a * c, "cm^3")),
            (m.STOPS_AT_EDGE, amount(c, "cm^3")),
        ),
        ("height", a, c),
        constants=(2, 4),
    )
