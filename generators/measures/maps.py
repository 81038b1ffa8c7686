"""Map scales: from the map to the ground and back, along a way with a turn, and areas.

England's programme of study for key stage 3 (2013) asks pupils to "use scale factors, scale
diagrams and maps" (from memory). The scales are those of printed walking and road maps.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._in_figures import in_figures
from generators._turns import by_turns
from generators.measures._map_mistakes import (
    ADDS,
    DIVIDES,
    ONE_PART,
    SCALE_ONCE,
    SQUARE_AS_LENGTH,
    THOUSAND,
    THOUSAND_IN_KM,
)
from generators.measures._scales_on_cards import with_cards
from generators.ratio._parts import amount, whole_ratio
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_X = t.Sym("x")
_NEAR = ("villages", "farms", "bus stops", "bridges", "stations", "lakes", "churches", "schools")
_FAR = ("towns", "stations", "harbours", "lighthouses")
_LAND = ("wood", "lake", "nature reserve", "moor", "island")
_SCALES = (10_000, 20_000, 25_000, 40_000, 50_000, 100_000, 200_000, 250_000)
_KM = 100_000
"""Centimetres in a kilometre."""


def _ends(value: Fraction, places: int) -> bool:
    whole: Fraction = value * 10**places
    return whole.denominator == 1


def _places(far: Fraction, turn: int) -> str:
    """Return two things that may be so many kilometres apart."""
    return by_turns(_NEAR if far <= 12 else _FAR, turn)


def _support(kilometres: int, halves: int) -> bool:
    return (halves - 2) * (kilometres - 1) != 2


def _core(scale: int, halves: int, back: int) -> bool:
    far = Fraction(halves * scale, 2 * _KM)
    return Fraction(1, 2) <= far <= 40 and _ends(far, 2) and far != Fraction(halves, 2)


def _challenge(kind: int, scale: int, first: int, second: int) -> bool:
    if kind == 0:
        far = Fraction((first + second) * scale, 2 * _KM)
        chosen = (first + 2 * second + scale // 10_000) % 3 == 0
        return chosen and first != second and _ends(far, 1) and 1 <= far <= 15
    each = Fraction(scale, _KM)
    area = first * each * each
    return second == 3 and _ends(area, 2) and Fraction(1, 4) <= area <= 40 and each != 1


@register
class Maps(Topic):
    """1 cm for some kilometres; then 1 : n both ways; then a way in two parts, and areas."""

    id = "measures.maps"
    title = "Maps"
    statements = ("ratio.scale",)
    prerequisites = ("ratio.scale",)
    misconceptions = (
        ADDS,
        DIVIDES,
        THOUSAND_IN_KM,
        THOUSAND,
        ONE_PART,
        SCALE_ONCE,
        SQUARE_AS_LENGTH,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_answers(
            Space(_support, kilometres=(2, 4, 5, 10, 20, 25), halves=range(3, 33))
        ),
        Tier.CORE: kinds.with_answers(
            Space(_core, scale=_SCALES, halves=range(3, 31), back=(0, 1))
        ),
        Tier.CHALLENGE: kinds.with_answers(
            Space(_challenge, kind=range(2), scale=_SCALES, first=range(3, 25), second=range(3, 18))
        ),
    }
    spaces = with_cards(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _stands(*values)
        if tier is Tier.CORE:
            return _distance(*values)
        kind, *rest = values
        return _area(*rest[:2]) if kind else _way(*rest)


def _stands(kilometres: int, halves: int) -> Draft:
    length = Fraction(halves, 2)
    on_map, each = amount(length, "cm"), amount(kilometres, "km")
    unit, key = amount(1, "cm"), amount(length * kilometres, "km")
    places = _places(length * kilometres, halves + kilometres)
    return Draft(
        prompt(
            f"On a map, {{u}} stands for {{e}}. Two {places} are {{n}} apart on the map. "
            "How far apart are they really, in kilometres?",
            u=unit,
            e=each,
            n=on_map,
        ),
        Find(_X, (t.equals(t.Ratio((unit, on_map)), t.Ratio((each, _X))),)),
        key,
        "quantity",
        (
            Step(
                "Each centimetre stands for the same distance, so multiply.",
                t.equals(t.times(_count(length), each), key),
            ),
        ),
        slips((ADDS, amount(length + kilometres, "km")), (DIVIDES, _quotient(length, kilometres))),
        ("stands", kilometres, halves),
    )


def _count(length: Fraction) -> t.Node:
    """Return how many centimetres a distance on a map has, as a number."""
    from itembank.items.forms.form_rules import decimal_node

    return decimal_node(length)


def _quotient(length: Fraction, kilometres: int) -> t.Node | None:
    found = length / kilometres
    return amount(found, "km") if _ends(found, 3) else None


def _distance(scale: int, halves: int, back: int) -> Draft:
    length = Fraction(halves, 2)
    on_map, shown = amount(length, "cm"), whole_ratio(1, scale)
    far = length * scale / _KM
    places = _places(far, halves + scale // 5000)
    real, real_cm = amount(far, "km"), amount(length * scale, "cm")
    if back:
        return Draft(
            prompt(
                f"A map has the scale {{r}}. Two {places} are really {{n}} apart. "
                "How far apart are they on the map, in centimetres?",
                r=shown,
                n=real,
            ),
            Find(_X, (t.equals(t.Ratio((_X, real)), shown),)),
            on_map,
            "quantity",
            (
                Step("Change kilometres to centimetres.", t.equals(real, real_cm)),
                Step(
                    f"Distances on the map are {in_figures(scale)} times smaller, so divide.",
                    t.equals(t.divide(real_cm, t.Int(scale)), on_map),
                ),
            ),
            slips(
                (THOUSAND, amount(length * 10, "cm")), (THOUSAND_IN_KM, amount(length / 100, "cm"))
            ),
            ("distance", scale, halves, back),
        )
    return Draft(
        prompt(
            f"A map has the scale {{r}}. Two {places} are {{n}} apart on the map. "
            "How far apart are they really, in kilometres?",
            r=shown,
            n=on_map,
        ),
        Find(_X, (t.equals(t.Ratio((on_map, _X)), shown),)),
        real,
        "quantity",
        (
            Step(
                f"Real distances are {in_figures(scale)} times larger, so multiply.",
                t.equals(t.times(t.Int(scale), on_map), real_cm),
            ),
            Step("Change centimetres to kilometres.", t.equals(real_cm, real)),
        ),
        slips((THOUSAND, amount(far / 10, "km")), (THOUSAND_IN_KM, amount(far * 100, "km"))),
        ("distance", scale, halves, back),
    )


def _way(scale: int, first: int, second: int) -> Draft:
    a, b = Fraction(first, 2), Fraction(second, 2)
    before, after, both = (amount(value, "cm") for value in (a, b, a + b))
    real_cm, far = amount((a + b) * scale, "cm"), (a + b) * scale / _KM
    key, shown = amount(far, "km"), whole_ratio(1, scale)
    start, middle = by_turns(
        (("depot", "garden"), ("station", "pool"), ("farm", "market"), ("harbour", "church")),
        first + second,
    )
    return Draft(
        prompt(
            f"A map has the scale {{r}}. On the map a road goes {{a}} from the {start} to the "
            f"{middle}, and {{b}} further to the school. How long is the road really, in "
            "kilometres?",
            r=shown,
            a=before,
            b=after,
        ),
        Find(_X, (t.equals(t.Ratio((t.add(before, after), _X)), shown),)),
        key,
        "quantity",
        (
            Step("Add the parts on the map.", t.equals(t.add(before, after), both)),
            Step(
                f"Real distances are {in_figures(scale)} times larger, so multiply.",
                t.equals(t.times(t.Int(scale), both), real_cm),
            ),
            Step("Change centimetres to kilometres.", t.equals(real_cm, key)),
        ),
        slips((ONE_PART, amount(b * scale / _KM, "km")), (THOUSAND, amount(far / 10, "km"))),
        ("way", scale, first, second),
    )


def _area(scale: int, size: int) -> Draft:
    each = Fraction(scale, _KM)
    on_map, shown = amount(size, "cm^2"), whole_ratio(1, scale)
    side, square = amount(each, "km"), amount(each * each, "km^2")
    key = amount(size * each * each, "km^2")
    land = by_turns(_LAND, size + scale // 5000)
    return Draft(
        prompt(
            f"A map has the scale {{r}}. A {land} has an area of {{n}} on the map. What is its "
            "real area, in square kilometres?".replace("A island", "An island"),
            r=shown,
            n=on_map,
        ),
        Find(t.times(on_map, t.Int(scale), t.Int(scale))),
        key,
        "quantity",
        (
            Step(
                "How far is 1 cm on the map really?",
                t.equals(t.times(t.Int(scale), amount(1, "cm")), side),
            ),
            Step(
                "How large is a square of 1 cm by 1 cm really?",
                t.equals(t.times(side, side), square),
            ),
            Step("There are so many of these.", t.equals(t.times(t.Int(size), square), key)),
        ),
        slips(
            (SCALE_ONCE, amount(size * each, "km^2")),
            (SQUARE_AS_LENGTH, amount(size * each * scale, "km^2")),
        ),
        ("area", scale, size),
    )
