"""What every question on circles is written with: signs, words, and the steps they all take."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry._calculator import amount
from itembank.figures.kinds.plane.circle import Circle
from itembank.items.item import Step
from itembank.notation import tree as t

PI_SIGN, TWO = t.Sym("π"), t.Int(2)
IN_PI = " Leave your answer in terms of π."


def across_named(across: bool) -> str:
    """Return what a question calls the length that it gives or asks for."""
    return "diameter" if across else "radius"


def circle_with(across: bool, given: t.Node) -> Circle:
    """Return a circle drawn with its diameter, or else with its radius."""
    return Circle(diameter=given) if across else Circle(radius=given)


def radius_of(across: bool, given: t.Node) -> t.Node:
    """Return the radius as it is worked out from what is given: half of a diameter."""
    return t.Frac(given, TWO) if across else given


def disc(radius: t.Node) -> t.Node:
    """Return the area of a circle as it is worked out.

    >>> from itembank.notation.line import line
    >>> line(disc(amount(5, "cm")))
    'π × (5 cm)^2'
    """
    return t.times(PI_SIGN, t.Power(t.Bracket(radius), TWO))


def halved(across: bool, given: t.Node, radius: Fraction | int, unit: str) -> tuple[Step, ...]:
    """Return the step from a diameter to the radius; none where the radius is given."""
    if not across:
        return ()
    half = t.equals(t.divide(given, TWO), amount(radius, unit))
    return (Step("The radius is half of the diameter.", half),)


def doubled(across: bool, given: t.Node, diameter: Fraction | int, unit: str) -> tuple[Step, ...]:
    """Return the step from a radius to the diameter; none where the diameter is given."""
    if across:
        return ()
    whole = t.equals(t.times(TWO, given), amount(diameter, unit))
    return (Step("The diameter is twice the radius.", whole),)


def part_of_turn(degrees: int, whole: t.Node, key: t.Node | None = None) -> Step:
    """Return the step from a whole circle to a sector, with what it comes to where that is said."""
    part = t.times(t.Frac(t.Int(degrees), t.Int(360)), whole)
    return Step(
        f"The sector is {degrees} of the 360 degrees of a whole turn: take that part.",
        part if key is None else t.equals(part, key),
    )
