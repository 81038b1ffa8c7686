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
from generators.geometry._calculator import FIGURES, PI, PLACE, Accuracy, amount, of_pi, root_of
from itembank.figures.kinds.circle import Circle
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Find, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_PI, _TWO = t.Sym("π"), t.Int(2)
_RULE = "The area is π times the square of the radius."
_IN_PI = " Leave your answer in terms of π."
_FIND = ("Work out the area of the {}.", "Find the area of the {}.", "What is the area of the {}?")
_SMALL = ("biscuit", "jar lid", "badge", "coaster")
_MIDDLE = ("plate", "clock face", "tray", "mirror")
_LARGE = ("pond", "flower bed", "lawn", "rug")
_PARTS = {"semicircle": 180, "quarter circle": 90}
_SLICES = (40, 45, 60, 72, 80, 108, 120, 135, 150, 210, 240, 270)
_RINGS = (("pond", "path"), ("lawn", "path"), ("flower bed", "path"), ("stage", "carpet"))
_CARDS = ("square of card", "square of felt", "square of paper", "square metal plate")


def _support(across: bool, n: int, unit: str) -> bool:
    # With a radius of 2, doubling and squaring give the same.
    if across:
        return n % 2 == 0 and 6 <= n <= 60
    return 3 <= n <= 46 and n != 8  # half of 8, squared, is twice 8


def _core(kind: str, across: bool, tenths: int, more: str | int) -> bool:
    if kind == "sector":  # of so many degrees: one step more, as half a circle is
        return (tenths // 10) ** 2 * int(more) % 360 == 0
    unit = more
    if kind in _PARTS:
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
            kind=("place", "figures", *_PARTS, "back"),
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

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._drawn(*values)
        kind, *rest = values
        if tier is Tier.CORE:
            across, tenths, more = rest
            if kind == "back":
                return self._from(tenths // 10, ("radius", "diameter")[across])
            if kind == "sector" or kind in _PARTS:
                return self._part(kind, _PARTS.get(kind, more), tenths // 10)
            return self._rounded(PLACE if kind == "place" else FIGURES, *rest)
        n, k = rest
        if kind == "around":
            return self._from(n, "circumference")
        return {"back": self._back, "ring": self._ring, "cut": self._cut}[kind](n, k)

    def _drawn(self, across: bool, n: int, unit: str) -> Draft:
        given, square = amount(n, unit), f"{unit}^2"
        figure = Circle(diameter=given) if across else Circle(radius=given)
        radius = n // 2 if across else n
        key = of_pi(radius**2, square)
        text = (by_turns(_FIND, n).format("circle") + _IN_PI,)
        other = of_pi(n * n, square) if across else of_pi(Fraction(n * n, 4), square)
        return Draft(
            text,
            of_figure(figure, text),
            key,
            "simplified",
            (
                *_halved(across, given, radius, unit),
                Step(_RULE, t.equals(_area(amount(radius, unit)), key)),
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
        things = _LARGE if unit == "m" else _SMALL if tenths < 100 else _MIDDLE
        inside = t.Frac(given, _TWO) if across else given
        other = (m.DIAMETER_AS_RADIUS, 4 * value) if across else (m.RADIUS_AS_DIAMETER, value / 4)
        wrong = (other, (m.DOUBLED, 2 * PI * radius), (m.PI_SQUARED, PI * value))
        return Draft(
            prompt(
                f"A circular {by_turns(things, tenths)} has a "
                f"{'diameter' if across else 'radius'} of {{n}}. "
                f"Work out its area. {accuracy.said(square)}",
                n=given,
            ),
            Round(_area(inside), accuracy.detail, accuracy.amount),
            accuracy.node(value, square),
            "rounded",
            (
                *_halved(across, given, radius, unit),
                Step(_RULE, _area(amount(radius, unit))),
                *accuracy.steps(value, square),
            ),
            slips(*((mistake, accuracy.node(each, square)) for mistake, each in wrong)),
            ("rounded", accuracy, across, tenths, unit),
            constants=(2,),
        )

    def _part(self, name: str, degrees: int, n: int) -> Draft:
        given = amount(n, "cm")
        figure = Circle(radius=given, sector=degrees)
        part = Fraction(degrees, 360)
        whole, key = of_pi(n * n, "cm^2"), of_pi(n * n * part, "cm^2")
        text = (by_turns(_FIND, n + degrees).format(name) + _IN_PI,)
        if name == "sector":
            fraction = t.Frac(t.Int(degrees), t.Int(360))
            taken = Step(
                f"The sector is {degrees} of the 360 degrees of a whole turn: take that part.",
                t.equals(t.times(fraction, whole), key),
            )
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
                Step("Find the area of the whole circle.", t.equals(_area(given), whole)),
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

    def _from(self, n: int, wanted: str) -> Draft:
        given, square, radius = of_pi(n * n, "cm^2"), amount(n * n, "cm^2"), amount(n, "cm")
        root: t.Node = t.Root(t.divide(given, _PI))
        steps = [
            Step(
                "Divide by π to find the square of the radius.",
                t.equals(t.divide(given, _PI), square),
            ),
            Step("The radius is its square root.", t.equals(t.Root(square), radius)),
        ]
        target, key, times, ending = root, radius, 1, ""
        if wanted == "diameter":
            target, key, times = t.times(_TWO, root), amount(2 * n, "cm"), 2
            steps.append(Step("Double it for the diameter.", t.equals(t.times(_TWO, radius), key)))
        if wanted == "circumference":
            target, key, times = t.times(_TWO, _PI, root), of_pi(2 * n, "cm"), 2
            ending = _IN_PI
            steps.append(
                Step(
                    "The circumference is twice π times the radius.",
                    t.equals(t.times(_TWO, _PI, radius), key),
                )
            )
        made = of_pi if wanted == "circumference" else amount
        return Draft(
            prompt(f"The area of a circle is {{n}}. Work out its {wanted}.{ending}", n=given),
            Find(target),
            key,
            "simplified" if ending else "quantity",
            tuple(steps),
            slips(
                (m.HALVES_FOR_ROOT, made(Fraction(times * n * n, 2), "cm")),
                (m.NO_ROOT, made(times * n * n, "cm")),
            ),
            ("from", n, wanted),
            constants=(2,),
        )

    def _back(self, n: int, across: int) -> Draft:
        given, square = amount(n, "m^2"), t.divide(amount(n, "m^2"), _PI)
        times = 2 if across else 1
        root: t.Node = t.Root(square)
        squared = Fraction(n) / PI
        value = times * root_of(squared)
        target = t.times(_TWO, root) if across else root
        return Draft(
            prompt(
                f"The area of a circular {by_turns(_LARGE, n)} is {{n}}. "
                f"Work out its {'diameter' if across else 'radius'}. {PLACE.said('m')}",
                n=given,
            ),
            Round(target, "places", 1),
            PLACE.node(value, "m"),
            "rounded",
            (
                Step(
                    "Divide by π to find the square of the radius. The radius is its square root."
                    + " Double it for the diameter." * across,
                    target,
                ),
                *PLACE.steps(value, "m"),
            ),
            slips(
                (m.HALVES_FOR_ROOT, PLACE.node(times * squared / 2, "m")),
                (m.NO_ROOT, PLACE.node(times * squared, "m")),
                (m.STOPS_AT_RADIUS, PLACE.node(value / 2, "m") if across else None),
            ),
            ("back", n, across),
            constants=(2,),
        )

    def _ring(self, n: int, k: int) -> Draft:
        inner, wide = amount(n, "m"), amount(k, "m")
        outer = amount(n + k, "m")
        value = PI * ((n + k) ** 2 - n * n)
        middle, ring = by_turns(_RINGS, n + k)
        wider = t.Bracket(t.add(inner, wide))
        difference = t.sub(_area(wider), _area(inner))
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
                Step(
                    "Subtract the inner area from the outer one.", t.sub(_area(outer), _area(inner))
                ),
                *PLACE.steps(value, "m^2"),
            ),
            slips(
                (m.RING_BY_WIDTH, PLACE.node(PI * k * k, "m^2")),
                (m.RING_LARGE_ONLY, PLACE.node(PI * (n + k) ** 2, "m^2")),
            ),
            ("ring", n, k),
            constants=(2,),
        )

    def _cut(self, n: int, _: int) -> Draft:
        side = amount(n, "cm")
        square, circle = amount(n * n, "cm^2"), _area(t.Frac(side, _TWO))
        half = amount(Fraction(n, 2), "cm")
        value = n * n - PI * n * n / 4
        return Draft(
            prompt(
                f"A {by_turns(_CARDS, n)} has sides of {{n}}. The largest circle that fits is "
                f"cut out of it. What area is left? {PLACE.said('cm^2')}",
                n=side,
            ),
            Round(t.sub(t.Power(t.Bracket(side), _TWO), circle), "places", 1),
            PLACE.node(value, "cm^2"),
            "rounded",
            (
                Step("Find the area of the square.", t.equals(t.times(side, side), square)),
                Step("The radius is half of the side.", t.equals(t.divide(side, _TWO), half)),
                Step("Subtract the area of the circle.", t.sub(square, _area(half))),
                *PLACE.steps(value, "cm^2"),
            ),
            slips(
                (m.CUT_ONLY, PLACE.node(PI * n * n / 4, "cm^2")),
                (m.DOUBLED, PLACE.node(n * n - PI * n, "cm^2") if n > 4 else None),
            ),
            ("cut", n),
            constants=(2,),
        )


def _area(radius: t.Node) -> t.Node:
    """Return π × (5 cm)²."""
    return t.times(_PI, t.Power(t.Bracket(radius), _TWO))


def _halved(across: bool, given: t.Node, radius: Fraction | int, unit: str) -> tuple[Step, ...]:
    if not across:
        return ()
    half = t.equals(t.divide(given, _TWO), amount(radius, unit))
    return (Step("The radius is half of the diameter.", half),)
