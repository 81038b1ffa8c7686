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
from generators.geometry._calculator import (
    FIGURES,
    NEAREST,
    PI,
    PLACE,
    PLACES,
    Accuracy,
    amount,
    of_pi,
)
from itembank.figures.kinds.circle import Circle
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_PI = t.Sym("π")
_RULE = "The circumference is π times the diameter."
IN_PI = " Leave your answer in terms of π."
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
# What is so many metres round, at the most.
_PLACES = (
    (20, ("pond", "flower bed", "tent", "sandpit")),
    (90, ("lawn", "roundabout", "garden", "stage")),
    (400, ("lake", "park", "field", "race track")),
)
_SLICES = (40, 45, 60, 72, 80, 90, 108, 120, 135, 150, 210, 240, 270)


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
    degrees = _SLICES[k % len(_SLICES)]
    return k < len(_SLICES) and 3 <= n <= 36 and n * degrees % 180 == 0 and n != 2


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

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._drawn(*values)
        kind, *rest = values
        if tier is Tier.CORE:
            return self._from(*rest) if kind == "back" else self._rounded(_ACCURACY[kind], *rest)
        make = {"back": self._back, "wheel": self._wheel, "half": self._half, "arc": self._arc}
        return make[kind](*rest)

    def _drawn(self, across: bool, n: int, unit: str) -> Draft:
        given = amount(n, unit)
        figure = Circle(diameter=given) if across else Circle(radius=given)
        diameter = n if across else 2 * n
        key = of_pi(diameter, unit)
        text = (by_turns(_FIND, n) + IN_PI,)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "simplified",
            (*_twice(across, given, diameter, unit), _exact(diameter, unit, key)),
            slips(*_mix_ups(across, n, unit)),
            ("drawn", across, n, unit),
            constants=(2,),
            figure=figure,
        )

    def _rounded(self, accuracy: Accuracy, across: bool, tenths: int, unit: str) -> Draft:
        size = Fraction(tenths, 10)
        given = amount(size, unit)
        diameter = size if across else 2 * size
        target = t.times(_PI, given) if across else t.times(t.Int(2), _PI, given)
        wrong: list[tuple[Any, Fraction]] = [
            (m.DIAMETER_AS_RADIUS, 2 * PI * size) if across else (m.RADIUS_AS_DIAMETER, PI * size),
        ]
        area = accuracy.node(PI * (diameter / 2) ** 2, f"{unit}^2")
        return Draft(
            prompt(
                f"A circular {_thing(tenths, unit)} has a {_named(across)} of {{n}}. "
                f"Work out its circumference. {accuracy.said(unit)}",
                n=given,
            ),
            Round(target, accuracy.detail, accuracy.amount),
            accuracy.node(PI * diameter, unit),
            "rounded",
            (
                *_twice(across, given, diameter, unit),
                Step(_RULE, t.times(_PI, amount(diameter, unit))),
                *accuracy.steps(PI * diameter, unit),
            ),
            slips(
                *((mistake, accuracy.node(value, unit)) for mistake, value in wrong),
                (m.AREA_FOR_LENGTH, area),
            ),
            ("rounded", accuracy, across, tenths, unit),
            constants=(2,),
        )

    def _from(self, across: bool, tenths: int, unit: str) -> Draft:
        count = tenths // 10
        given = of_pi(count, unit)
        diameter = amount(count, unit)
        key = diameter if across else amount(Fraction(count, 2), unit)
        target = t.divide(given, _PI) if across else t.divide(given, t.Bracket(_times_two()))
        steps = [
            Step("Divide by π to find the diameter.", t.equals(t.divide(given, _PI), diameter))
        ]
        if not across:
            half = t.equals(t.divide(diameter, t.Int(2)), key)
            steps.append(Step("The radius is half of the diameter.", half))
        return Draft(
            prompt(
                f"The circumference of a circle is {{n}}. Work out its {_named(across)}.", n=given
            ),
            Find(target),
            key,
            "quantity",
            tuple(steps),
            slips(
                (m.HALF_FOR_WHOLE, amount(Fraction(count, 2), unit) if across else None),
                (m.STOPS_AT_DIAMETER, None if across else diameter),
                (m.HALVED_TWICE, None if across else amount(Fraction(count, 4), unit)),
                (m.DOUBLED_BACK, amount(2 * count, unit)),
            ),
            ("from", across, count, unit),
            constants=(2,),
        )

    def _back(self, n: int, across: int) -> Draft:
        given, value = amount(n, "m"), Fraction(n) / PI / (1 if across else 2)
        place = by_turns(next(kinds for most, kinds in _PLACES if n <= most), n)
        target = t.divide(given, _PI) if across else t.divide(given, t.Bracket(_times_two()))
        steps = [
            Step("The circumference is π times the diameter, so divide by π.", t.divide(given, _PI))
        ]
        if not across:
            halved = t.divide(t.Bracket(t.divide(given, _PI)), t.Int(2))
            steps = [
                *steps[:0],
                Step("Divide by π, and halve the diameter to find the radius.", halved),
            ]
        return Draft(
            prompt(
                f"The distance all the way round a circular {place} is {{n}}. "
                f"Work out its {_named(bool(across))}. {PLACE.said('m')}",
                n=given,
            ),
            Round(target, "places", 1),
            PLACE.node(value, "m"),
            "rounded",
            (*steps, *PLACE.steps(value, "m")),
            slips(
                (m.MULTIPLIED_BACK, PLACE.node(n * PI, "m")),
                (m.STOPS_AT_DIAMETER, None if across else PLACE.node(2 * value, "m")),
                (m.HALF_FOR_WHOLE, PLACE.node(value / 2, "m") if across else None),
            ),
            ("back", n, across),
            constants=(2,),
        )

    def _wheel(self, n: int, fives: int) -> Draft:
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
            Round(t.times(_PI, given, t.Int(turns)), "nearest", 1),
            NEAREST.node(value, "m"),
            "rounded",
            (
                Step("Write the diameter in metres.", t.equals(given, in_metres)),
                Step(
                    f"One turn is as long as the circumference. Multiply by {turns} turns.",
                    t.times(_PI, in_metres, t.Int(turns)),
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

    def _half(self, n: int, _: int) -> Draft:
        given, value = amount(n, "cm"), PI * n / 2 + n
        curve = t.times(t.frac(1, 2), _PI, given)
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

    def _arc(self, n: int, slice_: int) -> Draft:
        degrees = _SLICES[slice_]
        given = amount(n, "cm")
        figure = Circle(radius=given, sector=degrees)
        whole, part = of_pi(2 * n, "cm"), Fraction(degrees, 360)
        key = of_pi(2 * n * part, "cm")
        text = (by_turns(_ARC, n + slice_) + IN_PI,)
        fraction = t.Frac(t.Int(degrees), t.Int(360))
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "simplified",
            (
                Step(
                    "Find the circumference of the whole circle.",
                    t.equals(t.times(t.Int(2), _PI, given), whole),
                ),
                Step(
                    f"The sector is {degrees} of the 360 degrees of a whole turn: take that part.",
                    t.equals(t.times(fraction, whole), key),
                ),
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


_HALVES = ("A window", "A rug", "A flower bed", "A table top", "A stage block")
_ARC = ("Work out the length of the arc.", "Find the arc length of the sector.")


def _named(across: bool) -> str:
    return "diameter" if across else "radius"


def _times_two() -> t.Node:
    return t.times(t.Int(2), _PI)


def _twice(across: bool, given: t.Node, diameter: Fraction | int, unit: str) -> tuple[Step, ...]:
    if across:
        return ()
    doubled = t.equals(t.times(t.Int(2), given), amount(diameter, unit))
    return (Step("The diameter is twice the radius.", doubled),)


def _exact(diameter: Fraction | int, unit: str, key: t.Node) -> Step:
    return Step(_RULE, t.equals(t.times(_PI, amount(diameter, unit)), key))


def _mix_ups(across: bool, n: int, unit: str) -> list[tuple[Any, t.Node]]:
    """Return the wrong answers to an exact question."""
    square = Fraction(n, 2) ** 2 if across else Fraction(n) ** 2
    area = (m.AREA_FOR_LENGTH, of_pi(square, f"{unit}^2"))
    if across:
        return [(m.DIAMETER_AS_RADIUS, of_pi(2 * n, unit)), area]
    return [(m.RADIUS_AS_DIAMETER, of_pi(n, unit)), area]
