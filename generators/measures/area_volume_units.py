"""Units of area and of volume, litres among them.

Key stage 3, ratio (England, 2013): "change freely between related standard units (for example time,
length, area, volume/capacity, mass)" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._in_figures import in_figures
from generators._turns import by_turns
from generators.measures._areas_on_cards import with_cards
from generators.measures._unit_mistakes import (
    ADDS_EDGES,
    LINEAR,
    NO_LITRES,
    NOT_CHANGED,
    SQUARED,
    TEN_TIMES,
    WRONG_WAY,
)
from generators.ratio._parts import amount, unit_name
from generators.ratio._rates import apart, written, wrong_amounts
from generators.ratio._units_mistakes import BY_NUMBER, BY_UNIT
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t
from itembank.notation.units import unit_known

# Smaller unit, larger unit, how many, the number of lengths, another mistake's number.
_AREAS = (
    ("mm^2", "cm^2", 100, 10, 1000),
    ("cm^2", "m^2", 10_000, 100, 1000),
    ("m^2", "km^2", 1_000_000, 1000, 10_000),
    ("m^2", "ha", 10_000, 100, 1000),
)
_VOLUMES = (
    ("mm^3", "cm^3", 1000, 10, 100),
    ("cm^3", "m^3", 1_000_000, 100, 10_000),
    ("cm^3", "l", 1000, 100, 10_000),
    ("l", "m^3", 1000, 100, 10_000),
    ("ml", "l", 1000, 100, 10_000),
)
_TENTHS = (2, 3, 4, 5, 6, 7, 8, 12, 14, 15, 16, 18, 24, 25, 27, 30, 32, 35, 36, 40, 42, 45, 48, 50)
_TENTHS_MORE = (54, 55, 56, 60, 64, 65, 70, 72, 75, 80, 85, 90, 95)
_VESSELS = ("fish tank", "flower box", "water trough", "planter", "storage box")
_FLOORS = ("kitchen", "changing room", "workshop", "hall", "library")
_X = t.Sym("x")


def _wrong(
    down: bool, size: int, lengths: int, other: int, tenths: int
) -> tuple[Fraction | None, ...]:
    """Return what LINEAR, WRONG_WAY and another wrong factor give."""
    if down:
        return (
            Fraction(lengths * tenths, 10),
            written(tenths, 10 * size, 4),
            Fraction(other * tenths, 10),
        )
    return (
        written(size * tenths, 10 * lengths, 4),
        Fraction(size * size * tenths, 10),
        written(size * tenths, 10 * other, 4),
    )


def _key(down: bool, size: int, tenths: int) -> Fraction:
    return Fraction(size * tenths, 10) if down else Fraction(tenths, 10)


def _support(kind: str, pair: int, tenths: int) -> bool:
    """Keep areas that change to the smaller unit, or to the larger one."""
    return apart(
        _key(kind == "down", _AREAS[pair][2], tenths),
        *_wrong(kind == "down", *_AREAS[pair][2:], tenths),
    )


def _core(kind: str, pair: int, tenths: int) -> bool:
    """Keep volumes, and sums of two areas in two units."""
    if kind == "sum":
        if pair >= len(_AREAS) - 1:
            return False
        size, lengths = _AREAS[pair][2:4]
        more = _more(size, tenths)
        key = Fraction(size * tenths, 10) + more
        return tenths % 10 != 0 and apart(
            key, Fraction(lengths * tenths, 10) + more, Fraction(tenths, 10) + more
        )
    return apart(
        _key(kind == "down", _VOLUMES[pair][2], tenths),
        *_wrong(kind == "down", *_VOLUMES[pair][2:], tenths),
    )


def _more(size: int, tenths: int) -> int:
    return size // 20 * (3 + tenths % 11)


def _challenge(kind: str, a: int, b: int, c: int) -> bool:
    """Keep boxes whose volume is in litres, and floors that tiles cover."""
    if kind == "litres":
        if not a > b >= c or a * b * c % 100:
            return False
        key = Fraction(a * b * c, 1000)
        return 1 <= key <= 200 and apart(key, *_litres_wrong(a, b, c))
    # A floor of a tenths of a square metre, tiles of b by c centimetres.
    tiles = Fraction(1000 * a, b * c)
    return (
        b >= c
        and tiles.denominator == 1
        and 20 <= tiles <= 2000
        and apart(tiles, *_tiles_wrong(a, b, c))
    )


def _litres_wrong(a: int, b: int, c: int) -> tuple[Fraction | None, ...]:
    """Return what NO_LITRES, LINEAR and ADDS_EDGES give."""
    return Fraction(a * b * c), written(a * b * c, 100), Fraction(a + b + c)


def _tiles_wrong(a: int, b: int, c: int) -> tuple[Fraction | None, ...]:
    """Return what LINEAR and NOT_CHANGED give."""
    return written(10 * a, b * c, 4), written(b * c * 10, a, 4), written(100 * a, b * c, 4)


@register
class AreaVolumeUnits(Topic):
    """Units of area; of volume, and sums; boxes in litres and floors in tiles."""

    id = "measures.area-volume-units"
    title = "Converting units of area and volume"
    statements = ("ratio.units", "number.units")
    misconceptions = (
        *(LINEAR, WRONG_WAY, SQUARED, TEN_TIMES, NO_LITRES, ADDS_EDGES, NOT_CHANGED),
        *(BY_NUMBER, BY_UNIT),
    )
    prerequisites = ("ratio.convert-units",)
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(
                _support,
                kind=("down", "up"),
                pair=range(len(_AREAS)),
                tenths=_TENTHS + _TENTHS_MORE,
            ),
            lambda kind, pair, *_: (kind, pair),
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(
                _core,
                kind=("down", "up"),
                pair=range(len(_VOLUMES)),
                tenths=_TENTHS + _TENTHS_MORE,
            ).then(_core, kind=("sum",), pair=range(3), tenths=range(11, 100)),
            lambda kind, pair, *_: (kind, pair),
        ),
        Tier.CHALLENGE: kinds.with_answers(
            Space(
                _challenge,
                kind=("litres",),
                a=(20, 25, 30, 35, 40, 45, 50, 60, 70, 75, 80, 90, 100, 120),
                b=(10, 12, 15, 16, 18, 20, 24, 25, 30, 35, 40, 45, 50),
                c=(8, 10, 12, 15, 18, 20, 25, 30, 35, 40),
            ).then(
                _challenge,
                kind=("tiles",),
                a=range(20, 400, 4),
                b=(10, 15, 20, 25, 30, 40, 50, 60),
                c=(10, 15, 20, 25, 30, 40),
            )
        ),
    }
    spaces = with_cards(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, *more = values
        if tier is Tier.CHALLENGE:
            return self._litres(*more) if kind == "litres" else self._tiles(*more)
        if kind == "sum":
            return self._sum(*more)
        return self._change(kind, _AREAS if tier is Tier.SUPPORT else _VOLUMES, *more)

    def _change(
        self, kind: str, table: tuple[tuple[str, str, int, int, int], ...], pair: int, tenths: int
    ) -> Draft:
        small, large, size, lengths, other = table[pair]
        down = kind == "down"
        few, many = amount(Fraction(tenths, 10), large), amount(Fraction(size * tenths, 10), small)
        given, key, unit = (few, many, small) if down else (many, few, large)
        fact = t.equals(amount(1, large), amount(size, small))
        third = SQUARED if table is _VOLUMES else TEN_TIMES
        return Draft(
            prompt(f"Change {{n}} to {unit_name(unit)}.", n=given),
            Find(given),
            key,
            "quantity",
            (
                Step(f"Start from 1 {unit_known(large).singular}.", fact),
                Step(
                    f"{'Multiply' if down else 'Divide'} by {in_figures(size)}.",
                    t.equals(given, key),
                ),
            ),
            wrong_amounts(
                unit,
                _key(down, size, tenths),
                (LINEAR, WRONG_WAY, third),
                _wrong(down, size, lengths, other, tenths),
            ),
            (table is _AREAS, kind, pair, tenths),
        )

    def _sum(self, pair: int, tenths: int) -> Draft:
        small, large, size, lengths, _ = _AREAS[pair]
        more, changed = _more(size, tenths), Fraction(size * tenths, 10)
        first, second = amount(Fraction(tenths, 10), large), amount(more, small)
        asked = t.add(first, second)
        return Draft(
            prompt(f"Work out {{e}}. Give your answer in {unit_name(small)}.", e=asked),
            Find(asked),
            amount(changed + more, small),
            "quantity",
            (
                Step(
                    f"Start from 1 {unit_known(large).singular}.",
                    t.equals(amount(1, large), amount(size, small)),
                ),
                Step(f"Multiply by {in_figures(size)}.", t.equals(first, amount(changed, small))),
                Step(
                    "Add.",
                    t.equals(t.add(amount(changed, small), second), amount(changed + more, small)),
                ),
            ),
            wrong_amounts(
                small,
                changed + more,
                (LINEAR, NOT_CHANGED),
                (Fraction(lengths * tenths, 10) + more, Fraction(tenths, 10) + more),
            ),
            ("sum", pair, tenths),
        )

    def _litres(self, a: int, b: int, c: int) -> Draft:
        edges = [amount(edge, "cm") for edge in (a, b, c)]
        volume, key = amount(a * b * c, "cm^3"), Fraction(a * b * c, 1000)
        name = by_turns(_VESSELS, (a + b + c) // 5)
        return Draft(
            prompt(
                f"A {name} is a cuboid. Inside it measures {{a}} by {{b}} by {{c}}. How many "
                "litres does it hold?",
                a=edges[0],
                b=edges[1],
                c=edges[2],
            ),
            Find(_X, (t.equals(_X, t.times(*edges)),)),
            amount(key, "l"),
            "quantity",
            (
                Step("Multiply to find the volume.", t.equals(t.times(*edges), volume)),
                Step(
                    "A litre is 1000 cubic centimetres, so divide by 1000.",
                    t.equals(volume, amount(key, "l")),
                ),
            ),
            wrong_amounts("l", key, (NO_LITRES, LINEAR, ADDS_EDGES), _litres_wrong(a, b, c)),
            ("litres", a, b, c),
        )

    def _tiles(self, a: int, b: int, c: int) -> Draft:
        floor, edges = amount(Fraction(a, 10), "m^2"), (amount(b, "cm"), amount(c, "cm"))
        tile, in_small = amount(b * c, "cm^2"), amount(1000 * a, "cm^2")
        tiles = Fraction(1000 * a, b * c)
        name = by_turns(_FLOORS, a + (b + c) // 5)
        return Draft(
            prompt(
                f"The floor of a {name} has an area of {{f}}. How many tiles of {{b}} by {{c}} "
                "cover it, without gaps?",
                f=floor,
                b=edges[0],
                c=edges[1],
            ),
            Find(_X, (t.equals(_X, t.divide(floor, t.Bracket(t.times(*edges)))),)),
            amount(tiles, ""),
            "integer",
            (
                Step("Find the area of one tile.", t.equals(t.times(*edges), tile)),
                Step("Write the area of the floor in the same unit.", t.equals(floor, in_small)),
                Step("Divide.", t.equals(t.divide(in_small, tile), amount(tiles, ""))),
            ),
            wrong_amounts("", tiles, (LINEAR, NOT_CHANGED, TEN_TIMES), _tiles_wrong(a, b, c)),
            ("tiles", a, b, c),
        )
