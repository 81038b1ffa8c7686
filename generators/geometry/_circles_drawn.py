"""Rounded lengths and areas of circles and sectors that are drawn with their radius or diameter."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction

from generators._turns import by_turns
from generators.geometry import _circle_mistakes as m
from generators.geometry._calculator import FIGURES, PI, PLACE, Accuracy, amount, of_pi
from generators.geometry._circle_steps import (
    PI_SIGN,
    TWO,
    circle_with,
    disc,
    doubled,
    halved,
    part_of_turn,
)
from itembank.figures.kinds.plane.circle import Circle
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, RoundReading, Step, Tier
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

_FIND = ("Work out the {}.", "Find the {}.", "Calculate the {}.")
_ACCURACY = {"place": PLACE, "figures": FIGURES}
_Slip = tuple[Misconception, Fraction]
SLICES = (50, 65, 75, 100, 110, 130, 140, 160, 200, 220, 250, 260)
"""Angles of sectors whose part of a turn is no easy fraction."""


def circles(kind: str, across: bool, tenths: int, unit: str) -> bool:
    """Tell which circles are drawn: a radius or a diameter of so many tenths, in cm or m."""
    size = tenths <= 99 if unit == "m" else tenths <= 240
    return size and tenths not in (20, 40, 80) and (tenths + len(kind) + across) % 5 == 2


def sectors(kind: str, degrees: int, n: int) -> bool:
    """Tell which sectors are drawn: of so many degrees and with a radius of n cm."""
    return n not in (2, 4) and (n + degrees // 5) % 2 == len(kind) % 2


def with_rounded(
    spaces: Mapping[Tier, Space], whole: Callable[..., Draft], part: Callable[..., Draft]
) -> dict[Tier, Space]:
    """Return a topic's spaces with rounded circles after its core, sectors after its challenge."""
    core = spaces[Tier.CORE].also(
        whole,
        circles,
        kind=("place", "figures"),
        across=(False, True),
        tenths=(*range(21, 100), *range(100, 241, 10)),
        unit=("cm", "m"),
    )
    challenge = spaces[Tier.CHALLENGE].also(
        part, sectors, kind=("place", "figures"), degrees=SLICES, n=range(3, 19)
    )
    return {**spaces, Tier.CORE: core, Tier.CHALLENGE: challenge}


def circumference(
    topic: Topic, tier: Tier, kind: str, across: bool, tenths: int, unit: str
) -> Draft:
    """Return the question for the circumference of a circle, rounded."""
    size = Fraction(tenths, 10)
    given = amount(size, unit)
    diameter = size if across else 2 * size
    wide = amount(diameter, unit)
    other = m.DIAMETER_AS_RADIUS if across else m.RADIUS_AS_DIAMETER
    return _rounded(
        circle_with(across, given),
        "circumference of the circle",
        _ACCURACY[kind],
        PI * diameter,
        unit,
        (
            *doubled(across, given, diameter, unit),
            Step("The circumference is π times the diameter.", t.times(PI_SIGN, wide)),
        ),
        ((other, PI * (2 * size if across else size)),),
        ("drawn circumference", kind, across, tenths, unit),
        (m.AREA_FOR_LENGTH, PI * diameter**2 / 4),
    )


def area(topic: Topic, tier: Tier, kind: str, across: bool, tenths: int, unit: str) -> Draft:
    """Return the question for the area of a circle, rounded."""
    size = Fraction(tenths, 10)
    given = amount(size, unit)
    radius = size / 2 if across else size
    inside = amount(radius, unit)
    value = PI * radius**2
    other = (m.DIAMETER_AS_RADIUS, 4 * value) if across else (m.RADIUS_AS_DIAMETER, value / 4)
    return _rounded(
        circle_with(across, given),
        "area of the circle",
        _ACCURACY[kind],
        value,
        f"{unit}^2",
        (
            *halved(across, given, radius, unit),
            Step("The area is π times the square of the radius.", disc(inside)),
        ),
        (other, (m.DOUBLED, 2 * PI * radius), (m.PI_SQUARED, PI * value)),
        ("drawn area", kind, across, tenths, unit),
    )


def sector_area(topic: Topic, tier: Tier, kind: str, degrees: int, n: int) -> Draft:
    """Return the question for the area of a sector, rounded."""
    given, part = amount(n, "cm"), Fraction(degrees, 360)
    whole = of_pi(n * n, "cm^2")
    value = PI * n * n * part
    return _rounded(
        Circle(radius=given, sector=degrees),
        "area of the sector",
        _ACCURACY[kind],
        value,
        "cm^2",
        (
            Step("Find the area of the whole circle.", t.equals(disc(given), whole)),
            part_of_turn(degrees, whole),
        ),
        (
            (m.WHOLE_CIRCLE, PI * n * n),
            (m.DOUBLED, 2 * PI * n * part),
            (m.RADIUS_AS_DIAMETER, value / 4),
        ),
        ("drawn sector", kind, degrees, n),
    )


def arc(topic: Topic, tier: Tier, kind: str, degrees: int, n: int) -> Draft:
    """Return the question for the length of an arc, rounded."""
    given, part = amount(n, "cm"), Fraction(degrees, 360)
    whole, value = of_pi(2 * n, "cm"), 2 * PI * n * part
    return _rounded(
        Circle(radius=given, sector=degrees),
        "length of the arc",
        _ACCURACY[kind],
        value,
        "cm",
        (
            Step(
                "Find the circumference of the whole circle.",
                t.equals(t.times(TWO, PI_SIGN, given), whole),
            ),
            part_of_turn(degrees, whole),
        ),
        ((m.WHOLE_CIRCLE, 2 * PI * n), (m.RADIUS_AS_DIAMETER, value / 2)),
        ("drawn arc", kind, degrees, n),
        (m.AREA_FOR_LENGTH, PI * n * n * part),
    )


def _rounded(
    figure: Circle,
    thing: str,
    accuracy: Accuracy,
    value: Fraction,
    unit: str,
    steps: tuple[Step, ...],
    wrong: tuple[_Slip, ...],
    twin: tuple[object, ...],
    squared: _Slip | None = None,
) -> Draft:
    """Return a question whose answer is rounded; `squared` is a wrong answer in square units."""
    turn = sum(part for part in twin if isinstance(part, int))
    text = (f"{by_turns(_FIND, turn).format(thing)} {accuracy.said(unit)}",)
    given: list[Wrong] = [(mistake, accuracy.node(value, unit)) for mistake, value in wrong]
    if squared is not None:
        given.append((squared[0], accuracy.node(squared[1], f"{unit}^2")))
    return Draft(
        text,
        RoundReading(of_figure(figure, text), accuracy.detail, accuracy.amount),
        accuracy.node(value, unit),
        "rounded",
        (*steps, *accuracy.steps(value, unit)),
        slips(*given),
        twin,
        constants=(2, 360),
        figure=figure,
    )
