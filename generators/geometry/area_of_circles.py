"""The area of circles, half circles, sectors and rings, and back to the radius.

England's programme of study for key stage 3 (2013) asks pupils to "calculate and solve problems
involving: perimeters of 2-D shapes (including circles), areas of circles and composite shapes"
(from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry import _circle_mistakes as m
from generators.geometry import _circles_drawn
from generators.geometry._calculator import FIGURES, PI, PLACE, Accuracy, amount, of_pi
from generators.geometry._circle_area_back import LARGE, back_exactly, back_rounded
from generators.geometry._circle_area_parts import (
    FIND,
    PARTS,
    circle_cut_out,
    part_of_circle,
    ring_around,
)
from generators.geometry._circle_steps import (
    IN_PI,
    across_named,
    circle_with,
    disc,
    halved,
    radius_of,
)
from generators.geometry._circles_on_cards import with_discs
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_RULE = "The area is π times the square of the radius."
_SMALL = ("biscuit", "jar lid", "badge", "coaster")
_MIDDLE = ("plate", "clock face", "tray", "mirror")
_SLICES = (40, 45, 60, 72, 80, 108, 120, 135, 150, 210, 240, 270)


def _support(across: bool, n: int, unit: str) -> bool:
    # With a radius of 2, doubling and squaring give the same.
    if across:
        return n % 2 == 0 and 6 <= n <= 60
    return 3 <= n <= 46 and n != 8  # half of 8, squared, is twice 8


def _core(kind: str, across: bool, tenths: int, more: str | int) -> bool:
    if kind == "sector":  # of so many degrees: one step more, as half a circle is
        return (tenths // 10) ** 2 * int(more) % 360 == 0
    unit = more
    if kind in PARTS:
        return not across and unit == "cm" and tenths % 20 == 0 and 60 <= tenths <= 300
    if kind == "back":  # from so many times π to the radius or the diameter
        return unit == "cm" and tenths % 10 == 0 and tenths != 40 and 30 <= tenths <= 200
    if (tenths > 99 and tenths % 10) or tenths % 10 == 5 or tenths == 80:
        return False
    fits = 20 < tenths <= 99 if unit == "m" else 20 < tenths <= 200
    return fits and tenths != 40 and tenths % 3 == len(kind) % 3


def _challenge(kind: str, n: int, k: int) -> bool:
    if kind == "around":  # from the area to the circumference
        return k == 0 and 3 <= n <= 30 and n != 4
    if kind == "back":  # from an area in metres to the radius or the diameter
        return k < 2 and n >= 5 and n % 2 == k and n not in (12, 13)
    if kind == "ring":  # a circle of radius n with a ring k wide
        return 1 <= k <= 4 and 2 * k <= n <= 16 and n % 2 == k % 2
    return k == 0 and 5 <= n <= 40  # a circle cut from a square with sides of n


@register
class AreaOfCircles(Topic):
    """Exact from a figure; rounded, and parts of circles; rings, and back to a radius."""

    id = "geometry.area-of-circles"
    title = "Area of circles"
    statements = ("geometry.perimeter-area",)
    prerequisites = ("geometry.circumference",)
    misconceptions = (
        m.DIAMETER_AS_RADIUS,
        m.RADIUS_AS_DIAMETER,
        m.DOUBLED,
        m.PI_SQUARED,
        m.WHOLE_CIRCLE,
        m.HALVES_FOR_ROOT,
        m.NO_ROOT,
        m.STOPS_AT_RADIUS,
        m.RING_BY_WIDTH,
        m.RING_LARGE_ONLY,
        m.CUT_ONLY,
    )
    spaces = {
        Tier.SUPPORT: Space(_support, across=(False, True), n=range(3, 61), unit=("cm", "m", "mm")),
        Tier.CORE: Space(
            _core,
            kind=("place", "figures", *PARTS, "back"),
            across=(False, True),
            tenths=(*range(21, 100), *range(100, 401, 10)),
            more=("cm", "m"),
        ).then(_core, kind=("sector",), across=(False,), tenths=range(30, 310, 10), more=_SLICES),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("around", "back", "ring", "cut"),
            n=range(3, 121),
            k=range(5),
        ),
    }
    spaces = _circles_drawn.with_rounded(
        kinds.with_statements(spaces), _circles_drawn.area, _circles_drawn.sector_area
    )
    spaces = with_discs(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._drawn(*values)
        kind, *rest = values
        if tier is Tier.CORE:
            across, tenths, more = rest
            if kind == "back":
                return back_exactly(tenths // 10, across_named(across))
            if kind == "sector" or kind in PARTS:
                return part_of_circle(kind, PARTS.get(kind, more), tenths // 10)
            return self._rounded(PLACE if kind == "place" else FIGURES, *rest)
        n, k = rest
        if kind == "around":
            return back_exactly(n, "circumference")
        return {"back": back_rounded, "ring": ring_around, "cut": circle_cut_out}[kind](n, k)

    def _drawn(self, across: bool, n: int, unit: str) -> Draft:
        given, square = amount(n, unit), f"{unit}^2"
        figure = circle_with(across, given)
        radius = n // 2 if across else n
        key = of_pi(radius**2, square)
        text = (by_turns(FIND, n).format("circle") + IN_PI,)
        other = of_pi(n * n, square) if across else of_pi(Fraction(n * n, 4), square)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "simplified",
            (
                *halved(across, given, radius, unit),
                Step(_RULE, t.equals(disc(amount(radius, unit)), key)),
            ),
            slips(
                (m.DIAMETER_AS_RADIUS if across else m.RADIUS_AS_DIAMETER, other),
                (m.DOUBLED, of_pi(2 * radius, square)),
            ),
            ("drawn", across, n, unit),
            constants=(2,),
            figure=figure,
        )

    def _rounded(self, accuracy: Accuracy, across: bool, tenths: int, unit: str) -> Draft:
        size, square = Fraction(tenths, 10), f"{unit}^2"
        given = amount(size, unit)
        radius = size / 2 if across else size
        value = PI * radius**2
        things = LARGE if unit == "m" else _SMALL if tenths < 100 else _MIDDLE
        other = (m.DIAMETER_AS_RADIUS, 4 * value) if across else (m.RADIUS_AS_DIAMETER, value / 4)
        wrong = (other, (m.DOUBLED, 2 * PI * radius), (m.PI_SQUARED, PI * value))
        return Draft(
            prompt(
                f"A circular {by_turns(things, tenths)} has a "
                f"{across_named(across)} of {{n}}. "
                f"Work out its area. {accuracy.said(square)}",
                n=given,
            ),
            Round(disc(radius_of(across, given)), accuracy.detail, accuracy.amount),
            accuracy.node(value, square),
            "rounded",
            (
                *halved(across, given, radius, unit),
                Step(_RULE, disc(amount(radius, unit))),
                *accuracy.steps(value, square),
            ),
            slips(*((mistake, accuracy.node(value, square)) for mistake, value in wrong)),
            ("rounded", accuracy, across, tenths, unit),
            constants=(2,),
        )
