"""Volumes of cylinders that are drawn with their height and their radius or diameter."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _solid_mistakes as m
from generators.geometry._calculator import FIGURES, PI, PLACE, amount, of_pi
from itembank.figures.kinds.solid.cylinder import MOST_RATIO, Cylinder
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, RoundReading, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_PI, _TWO = t.Sym("π"), t.Int(2)
_FIND = (
    "Work out the volume of the cylinder.",
    "Find the volume of the cylinder.",
    "Calculate the volume of the cylinder.",
)
_IN_PI = " Leave your answer in terms of π."
ACCURACY = {"place": PLACE, "figures": FIGURES}
"""How a question says how far its answer is rounded."""


def with_drawn(spaces: Mapping[Tier, Space]) -> dict[Tier, Space]:
    """Return a topic's spaces with drawn cylinders after its support and after its core."""
    support = spaces[Tier.SUPPORT].also(
        exact, _exact, across=(False, True), n=range(3, 25), h=range(3, 31), unit=("cm", "m", "mm")
    )
    core = spaces[Tier.CORE].also(
        rounded,
        _rounded,
        kind=("place", "figures"),
        across=(False, True),
        tenths=(*range(21, 100), *range(100, 200, 10)),
        h=range(3, 31),
        unit=("cm", "m"),
    )
    return {**spaces, Tier.SUPPORT: support, Tier.CORE: core}


def shapely(wide: Fraction, h: int) -> bool:
    """Tell whether a cylinder of this width and height is drawn neither flat nor thin."""
    return max(wide, Fraction(h)) * 2 <= (MOST_RATIO + 1) * min(wide, Fraction(h))


def _exact(across: bool, n: int, h: int, unit: str) -> bool:
    radius = Fraction(n, 2) if across else Fraction(n)
    if radius.denominator > 1 or not 3 <= radius <= 12 or h in (radius, 4, 2 * radius):
        return False
    sized = unit != "m" or (radius <= 6 and h <= 12)
    return sized and shapely(2 * radius, h) and (n + h + len(unit) + across) % 3 == 0


def _rounded(kind: str, across: bool, tenths: int, h: int, unit: str) -> bool:
    size = Fraction(tenths, 10)
    wide = size if across else 2 * size
    if unit == "m" and (wide > 9 or h > 12):
        return False
    plain = tenths not in (20, 40, 80) and h not in (size, 2 * size)
    return plain and shapely(wide, h) and (tenths + h + len(kind) + across) % 5 == 2


def exact(topic: Topic, tier: Tier, across: bool, n: int, h: int, unit: str) -> Draft:
    """Return the question for a volume in terms of π."""
    given, high, cube = amount(n, unit), amount(h, unit), f"{unit}^3"
    radius = n // 2 if across else n
    key, end = of_pi(radius**2 * h, cube), of_pi(radius**2, f"{unit}^2")
    figure = drawn(across, given, high)
    text = (by_turns(_FIND, n + h) + _IN_PI,)
    wrong = 4 * radius**2 * h if across else Fraction(radius**2 * h, 4)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "simplified",
        (
            *_halved(across, given, radius, unit),
            Step(
                "The area of the circle is π times the square of the radius.",
                t.equals(t.times(_PI, _square(amount(radius, unit))), end),
            ),
            Step("Multiply by the height.", t.equals(t.times(end, high), key)),
        ),
        slips(
            (m.CYLINDER_ACROSS if across else m.CYLINDER_HALF, of_pi(wrong, cube)),
            (m.RADIUS_DOUBLED, of_pi(2 * radius * h, cube)),
            (m.HEIGHT_SQUARED, of_pi(radius * h * h, cube)),
        ),
        ("drawn", across, n, h, unit),
        constants=(2,),
        figure=figure,
    )


def rounded(
    topic: Topic, tier: Tier, kind: str, across: bool, tenths: int, h: int, unit: str
) -> Draft:
    """Return the question for a volume that is rounded."""
    size, accuracy, cube = Fraction(tenths, 10), ACCURACY[kind], f"{unit}^3"
    given, high = amount(size, unit), amount(h, unit)
    radius = size / 2 if across else size
    value = PI * radius**2 * h
    figure = drawn(across, given, high)
    text = (f"{by_turns(_FIND, tenths + h)} {accuracy.said(cube)}",)
    other = (m.CYLINDER_ACROSS, 4 * value) if across else (m.CYLINDER_HALF, value / 4)
    wrong = (other, (m.RADIUS_DOUBLED, 2 * PI * radius * h), (m.NO_PI, radius**2 * h))
    return Draft(
        text,
        RoundReading(of_figure(figure, text), accuracy.detail, accuracy.amount),
        accuracy.node(value, cube),
        "rounded",
        (
            *_halved(across, given, radius, unit),
            Step(
                "The volume is π times the square of the radius, times the height.",
                t.times(_PI, _square(amount(radius, unit)), high),
            ),
            *accuracy.steps(value, cube),
        ),
        slips(*((mistake, accuracy.node(value, cube)) for mistake, value in wrong)),
        ("drawn", kind, across, tenths, h, unit),
        constants=(2,),
        figure=figure,
    )


def drawn(across: bool, given: t.Node, high: t.Node) -> Cylinder:
    """Return a cylinder drawn with its height and its diameter, or else its radius."""
    return Cylinder(high, diameter=given) if across else Cylinder(high, radius=given)


def _square(radius: t.Node) -> t.Node:
    return t.Power(t.Bracket(radius), _TWO)


def _halved(across: bool, given: t.Node, radius: Fraction | int, unit: str) -> tuple[Step, ...]:
    if not across:
        return ()
    half = t.equals(t.divide(given, _TWO), amount(radius, unit))
    return (Step("The radius is half of the diameter.", half),)
