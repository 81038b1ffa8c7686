"""The circumference of a circle: exact in π, rounded, and back to the diameter.

England's programme of study for key stage 3 (2013) asks pupils to "calculate and solve problems
involving: perimeters of 2-D shapes (including circles)" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.geometry import _circle_mistakes as m
from generators.geometry import _circles_drawn
from generators.geometry._calculator import FIGURES, PI, PLACE, PLACES, Accuracy, amount, of_pi
from generators.geometry._circle_steps import (
    IN_PI,
    PI_SIGN,
    TWO,
    across_named,
    circle_with,
    doubled,
)
from generators.geometry._circles_on_cards import with_circumferences
from generators.geometry._circumference_back import back_from_pi, back_rounded
from generators.geometry._circumference_parts import (
    SLICES,
    exact_arc,
    round_half_a_disc,
    turns_of_a_wheel,
)
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_RULE = "The circumference is π times the diameter."
_FIND = (
    "Work out the circumference of the circle.",
    "Find the circumference of the circle.",
    "What is the circumference of the circle?",
)
# What is round and about so large: in centimetres up to 9.9, up to 40, in metres up to 9.9.
_SMALL = ("biscuit", "jar lid", "badge", "candle")
_MIDDLE = ("plate", "clock face", "plant pot", "bike wheel")
_LARGE = ("pond", "flower bed", "paddling pool", "rug")
_ACCURACY = {"place": PLACE, "places": PLACES, "figures": FIGURES}


def _thing(tenths: int, unit: str) -> str:
    kinds = _LARGE if unit == "m" else _SMALL if tenths < 100 else _MIDDLE
    return by_turns(kinds, tenths)


def _support(across: bool, n: int, unit: str) -> bool:
    # With a radius of 2, the area is as many times π as the circumference.
    if across:
        return n not in (4, 8) and (unit == "m" or n >= 6)
    return n not in (2, 4) and 2 * n < 60


def _core(kind: str, across: bool, tenths: int, unit: str) -> bool:
    if kind == "back":  # the circumference is so many times π
        return tenths % 10 == 0 and tenths >= 60 and (across or tenths % 20 == 0)
    fits = tenths <= 99 if unit == "m" else tenths <= 400
    if tenths > 99 and tenths % 10:
        return False
    return fits and tenths not in (20, 40, 80) and tenths % 10 != 5 and tenths % 3 == len(kind) % 3


def _challenge(kind: str, n: int, k: int) -> bool:
    if kind == "back":  # n metres round
        return k == n % 2
    if kind == "wheel":  # a wheel n cm across turns 5k times
        return 30 <= n <= 75 and 4 <= k <= 20 and n % 3 == 0 and n != 5 * k
    if kind == "half":  # half a disc, n cm across
        return k == n % 2 and n >= 30 and n % 2 == 0
    # an arc of a sector with radius n
    degrees = SLICES[k % len(SLICES)]
    return k < len(SLICES) and 3 <= n <= 36 and n * degrees % 180 == 0 and n != 2


@register
class Circumference(Topic):
    """Exact from a figure; rounded, and back from 18π cm; turns of a wheel, arcs, half discs."""

    id = "geometry.circumference"
    title = "Circumference of a circle"
    statements = ("geometry.perimeter-area",)
    misconceptions = (
        m.RADIUS_AS_DIAMETER,
        m.DIAMETER_AS_RADIUS,
        m.AREA_FOR_LENGTH,
        m.MULTIPLIED_BACK,
        m.STOPS_AT_DIAMETER,
        m.HALVED_TWICE,
        m.HALF_FOR_WHOLE,
        m.DOUBLED_BACK,
        m.WHOLE_CIRCLE,
        m.EDGE_LEFT_OUT,
        m.ONE_TURN,
    )
    spaces = {
        Tier.SUPPORT: Space(_support, across=(False, True), n=range(2, 50), unit=("cm", "m", "mm")),
        Tier.CORE: Space(
            _core,
            kind=("place", "places", "figures", "back"),
            across=(False, True),
            tenths=(*range(12, 100), *range(110, 401, 10)),
            unit=("cm", "m"),
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=("back", "wheel", "half", "arc"),
            n=(*range(2, 76), *range(80, 401, 5)),
            k=range(21),
        ),
    }
    spaces = _circles_drawn.with_rounded(
        kinds.with_statements(spaces), _circles_drawn.circumference, _circles_drawn.arc
    )
    spaces = with_circumferences(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._drawn(*values)
        kind, *rest = values
        if tier is Tier.CORE:
            return back_from_pi(*rest) if kind == "back" else self._rounded(_ACCURACY[kind], *rest)
        make = {
            "back": back_rounded,
            "wheel": turns_of_a_wheel,
            "half": round_half_a_disc,
            "arc": exact_arc,
        }
        return make[kind](*rest)

    def _drawn(self, across: bool, n: int, unit: str) -> Draft:
        given = amount(n, unit)
        figure = circle_with(across, given)
        diameter = n if across else 2 * n
        key = of_pi(diameter, unit)
        text = (by_turns(_FIND, n) + IN_PI,)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "simplified",
            (*doubled(across, given, diameter, unit), _exact(diameter, unit, key)),
            slips(*_mix_ups(across, n, unit)),
            ("drawn", across, n, unit),
            constants=(2,),
            figure=figure,
        )

    def _rounded(self, accuracy: Accuracy, across: bool, tenths: int, unit: str) -> Draft:
        size = Fraction(tenths, 10)
        given = amount(size, unit)
        diameter = size if across else 2 * size
        target = t.times(PI_SIGN, given) if across else t.times(TWO, PI_SIGN, given)
        wrong: list[tuple[Any, Fraction]] = [
            (m.DIAMETER_AS_RADIUS, 2 * PI * size) if across else (m.RADIUS_AS_DIAMETER, PI * size),
        ]
        area = accuracy.node(PI * (diameter / 2) ** 2, f"{unit}^2")
        return Draft(
            prompt(
                f"A circular {_thing(tenths, unit)} has a {across_named(across)} of {{n}}. "
                f"Work out its circumference. {accuracy.said(unit)}",
                n=given,
            ),
            Round(target, accuracy.detail, accuracy.amount),
            accuracy.node(PI * diameter, unit),
            "rounded",
            (
                *doubled(across, given, diameter, unit),
                Step(_RULE, t.times(PI_SIGN, amount(diameter, unit))),
                *accuracy.steps(PI * diameter, unit),
            ),
            slips(
                *((mistake, accuracy.node(value, unit)) for mistake, value in wrong),
                (m.AREA_FOR_LENGTH, area),
            ),
            ("rounded", accuracy, across, tenths, unit),
            constants=(2,),
        )


def _exact(diameter: Fraction | int, unit: str, key: t.Node) -> Step:
    return Step(_RULE, t.equals(t.times(PI_SIGN, amount(diameter, unit)), key))


def _mix_ups(across: bool, n: int, unit: str) -> list[tuple[Any, t.Node]]:
    """Return the wrong answers to an exact question."""
    square = Fraction(n, 2) ** 2 if across else Fraction(n) ** 2
    area = (m.AREA_FOR_LENGTH, of_pi(square, f"{unit}^2"))
    if across:
        return [(m.DIAMETER_AS_RADIUS, of_pi(2 * n, unit)), area]
    return [(m.RADIUS_AS_DIAMETER, of_pi(n, unit)), area]
