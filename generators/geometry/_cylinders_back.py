"""From the volume of a cylinder back to its height, its radius or its diameter."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry import _solid_mistakes as m
from generators.geometry._calculator import amount, of_pi
from generators.geometry._circle_steps import PI_SIGN, TWO, across_named, disc
from itembank.items.item import Draft, Find, Step, prompt
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def back_to_height(_: bool, tenths: int, h: int) -> Draft:
    """Return the question back to the height, in centimetres."""
    n = tenths // 10
    volume, radius, key = of_pi(n * n * h, "cm^3"), amount(n, "cm"), amount(h, "cm")
    end = of_pi(n * n, "cm^2")
    return Draft(
        prompt(
            "A cylinder has a volume of {v} and a radius of {n}. Work out its height.",
            v=volume,
            n=radius,
        ),
        Find(t.divide(volume, t.Bracket(disc(radius)))),
        key,
        "quantity",
        (
            Step("Find the area of the circle.", t.equals(disc(radius), end)),
            Step("Divide the volume by it.", t.equals(t.divide(volume, end), key)),
        ),
        slips(
            (m.DIVIDED_BY_RADIUS, amount(n * h, "cm")),
            (m.RADIUS_DOUBLED, amount(Fraction(n * h, 2), "cm")),
        ),
        ("height", n, h),
        constants=(2,),
    )


def back_to_radius(_: bool, tenths: int, h: int) -> Draft:
    """Return the question back to the radius, a whole number of centimetres."""
    return _across_from_volume(tenths // 10, h, across=False)


def back_to_diameter(a: int, _: int, h: int, __: int) -> Draft:
    """Return the question back to the diameter, twice `a` centimetres."""
    return _across_from_volume(a, h, across=True)


def _across_from_volume(a: int, h: int, *, across: bool) -> Draft:
    """Return the question back to a radius of a, or to the diameter."""
    volume, high = of_pi(a * a * h, "cm^3"), amount(h, "cm")
    square, radius = amount(a * a, "cm^2"), amount(a, "cm")
    end = of_pi(a * a, "cm^2")
    root: t.Node = t.Root(t.divide(volume, t.Bracket(t.times(PI_SIGN, high))))
    key = amount(2 * a, "cm") if across else radius
    doubled = Step("Double it for the diameter.", t.equals(t.times(TWO, radius), key))
    times = 2 if across else 1
    return Draft(
        prompt(
            "A cylinder has a volume of {v} and a height of {h}. "
            f"Work out its {across_named(across)}.",
            v=volume,
            h=high,
        ),
        Find(t.times(TWO, root) if across else root),
        key,
        "quantity",
        (
            Step(
                "Divide by the height to find the area of the circle.",
                t.equals(t.divide(volume, high), end),
            ),
            Step(
                "Divide by π to find the square of the radius.",
                t.equals(t.divide(end, PI_SIGN), square),
            ),
            Step("The radius is its square root.", t.equals(t.Root(square), radius)),
            *((doubled,) if across else ()),
        ),
        slips(
            (m.NO_ROOT_TAKEN, amount(times * a * a, "cm")),
            (m.THIRD_OR_HALF_FOR_ROOT, amount(Fraction(times * a * a, 2), "cm")),
        ),
        ("radius", a, h, across),
        constants=(2,),
    )
