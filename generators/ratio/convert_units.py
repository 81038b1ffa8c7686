"""Converting between metric units, and between units of time.

Key stage 3, ratio (England, 2013): "change freely between related standard units (for example time,
length, area, volume/capacity, mass)" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators.ratio._parts import amount, unit_name
from generators.ratio._rates import written, wrong_amounts
from generators.ratio._unit_orders import in_order, odd_amount, odd_fits
from generators.ratio._unit_tables import CHAINS, NEIGHBOURS, TIMES
from generators.ratio._units_mistakes import (
    BY_NUMBER,
    BY_UNIT,
    CLOCK,
    FACTOR,
    HUNDRED,
    NOT_CHANGED,
    ONE_STEP,
    OTHER_WAY,
    WRONG_WAY,
)
from generators.ratio._units_numbers import (
    POURED,
    challenge_fits,
    core_fits,
    into_wrong,
    more_to_add,
    sum_wrong,
    support_fits,
    support_key,
    support_wrong,
    time_wrong,
)
from itembank.items import kinds
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t
from itembank.notation.units import unit_known

_SHARES = (
    2, 4, 5, 8, 10, 12, 15, 20, 25, 30, 40, 45, 60, 75, 80, 90, 120, 150, 180, 200, 240, 250, 300,
    400, 450, 600, 750, 800,
)  # fmt: skip


@register
class ConvertUnits(Topic):
    """One step; time, two steps and sums; how often one goes into another, and orders."""

    id = "ratio.convert-units"
    title = "Converting between metric units and units of time"
    statements = ("ratio.units", "number.units")
    misconceptions = (
        WRONG_WAY,
        FACTOR,
        CLOCK,
        HUNDRED,
        ONE_STEP,
        NOT_CHANGED,
        BY_NUMBER,
        BY_UNIT,
        OTHER_WAY,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(
                support_fits,
                kind=("down", "up"),
                pair=range(len(NEIGHBOURS)),
                tenths=(*range(12, 100, 4), 25, 35, 65, 75, 30, 50, 70, 90),
            ),
            lambda kind, pair, *_: (kind, pair),
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(
                core_fits,
                kind=("time down", "time up"),
                pair=range(len(TIMES)),
                tenths=(*range(11, 60), 70, 80, 90),
            )
            .then(core_fits, kind=("two steps",), pair=range(len(CHAINS)), tenths=range(3, 80, 2))
            .then(core_fits, kind=("sum",), pair=range(len(NEIGHBOURS)), tenths=range(12, 95, 3)),
            lambda kind, pair, *_: (kind, pair),
        ).also(odd_amount, odd_fits, pair=range(3), tenths=range(12, 99, 4), slip=(0, 1)),
        Tier.CHALLENGE: kinds.with_answers(
            Space(
                challenge_fits,
                kind=("goes into",),
                pair=range(len(POURED)),
                tenths=(*range(10, 120, 2), 15, 25, 35, 45, *range(120, 600, 10)),
                part=_SHARES,
            ).then(
                challenge_fits,
                kind=("order",),
                pair=range(2),
                tenths=range(4, 98, 2),
                part=range(1, 40, 6),
            ),
            only=lambda kind, *_: kind == "goes into",
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, pair, tenths, *more = values
        if kind in ("down", "up"):
            return self._one_step(kind, pair, tenths)
        if kind in ("time down", "time up"):
            return self._time(kind, pair, tenths)
        if kind == "two steps":
            return self._two_steps(pair, tenths)
        if kind == "sum":
            return self._sum(pair, tenths)
        if kind == "goes into":
            return self._goes_into(pair, tenths, more[0])
        return in_order(pair, tenths, more[0])

    def _one_step(self, kind: str, pair: int, tenths: int) -> Draft:
        small, large, size, other = NEIGHBOURS[pair]
        few, many = amount(Fraction(tenths, 10), large), amount(Fraction(size * tenths, 10), small)
        given, key, unit = (few, many, small) if kind == "down" else (many, few, large)
        verb = "multiply" if kind == "down" else "divide"
        say = f"There are {size} {unit_name(small)} in 1 {_single(large)}, so {verb} by {size}."
        return Draft(
            prompt(f"Change {{n}} to {unit_name(unit)}.", n=given),
            Find(given),
            key,
            "quantity",
            (Step(say, t.equals(given, key)),),
            wrong_amounts(
                unit,
                support_key(kind, size, tenths),
                (WRONG_WAY, FACTOR),
                support_wrong(kind, size, other, tenths),
            ),
            (kind, pair, tenths),
        )

    def _time(self, kind: str, pair: int, tenths: int) -> Draft:
        small, large, size, other = TIMES[pair]
        few, many = amount(Fraction(tenths, 10), large), amount(size * tenths // 10, small)
        down = kind == "time down"
        given, key, unit = (few, many, small) if down else (many, few, large)
        wrong = time_wrong(size, other, tenths)
        value = Fraction(size * tenths, 10) if down else Fraction(tenths, 10)
        if not down:
            count = size * tenths // 10
            wrong = (written(count, other, 2), None, Fraction(count * size))
        say = f"There are {size} {unit_name(small)} in 1 {_single(large)}, so "
        line = (
            t.times(t.Int(size), amount(Fraction(tenths, 10), ""))
            if down
            else t.divide(t.Int(size * tenths // 10), t.Int(size))
        )
        number = amount(value, "")
        return Draft(
            prompt(f"Change {{n}} to {unit_name(unit)}.", n=given),
            Find(given),
            key,
            "quantity",
            (
                Step(f"{say}{'multiply' if down else 'divide'} by {size}.", t.equals(line, number)),
                Step("Write the answer with its unit.", t.equals(given, key)),
            ),
            wrong_amounts(
                unit, value, (HUNDRED if size == 60 else FACTOR, CLOCK, WRONG_WAY), wrong
            ),
            (kind, pair, tenths),
        )

    def _two_steps(self, pair: int, tenths: int) -> Draft:
        small, between, large, first, second = CHAINS[pair]
        given, middle = amount(Fraction(tenths, 10), large), Fraction(second * tenths, 10)
        key = Fraction(first * second * tenths, 10)
        return Draft(
            prompt(f"Change {{n}} to {unit_name(small)}.", n=given),
            Find(given),
            amount(key, small),
            "quantity",
            (
                Step(
                    f"Multiply by {second} to change {unit_name(large)} to {unit_name(between)}.",
                    t.equals(given, amount(middle, between)),
                ),
                Step(
                    f"Multiply by {first} to change {unit_name(between)} to {unit_name(small)}.",
                    t.equals(amount(middle, between), amount(key, small)),
                ),
            ),
            wrong_amounts(
                small,
                key,
                (ONE_STEP, WRONG_WAY, FACTOR),
                (
                    middle,
                    written(tenths, 10 * first * second, 4),
                    written(first * tenths, 10),
                ),
            ),
            ("two steps", pair, tenths),
        )

    def _sum(self, pair: int, tenths: int) -> Draft:
        small, large, size, other = NEIGHBOURS[pair]
        first, more = amount(Fraction(tenths, 10), large), amount(more_to_add(size, tenths), small)
        changed, key = (
            Fraction(size * tenths, 10),
            Fraction(size * tenths, 10) + more_to_add(size, tenths),
        )
        asked = t.add(first, more)
        return Draft(
            prompt(f"Work out {{e}}. Give your answer in {unit_name(small)}.", e=asked),
            Find(asked),
            amount(key, small),
            "quantity",
            (
                Step(
                    f"Write the {unit_name(large)} in {unit_name(small)}.",
                    t.equals(first, amount(changed, small)),
                ),
                Step("Add.", t.equals(t.add(amount(changed, small), more), amount(key, small))),
            ),
            wrong_amounts(small, key, (NOT_CHANGED, FACTOR), sum_wrong(size, other, tenths)),
            ("sum", pair, tenths),
        )

    def _goes_into(self, pair: int, tenths: int, part: int) -> Draft:
        text, small, large, size = POURED[pair]
        whole, each, x = amount(Fraction(tenths, 10), large), amount(part, small), t.Sym("x")
        changed = amount(Fraction(size * tenths, 10), small)
        key = Fraction(size * tenths, 10 * part)
        return Draft(
            prompt(text, n=whole, m=each),
            Find(x, (t.equals(x, t.divide(whole, each)),)),
            amount(key, ""),
            "integer",
            (
                Step(
                    f"Write the {unit_name(large)} in {unit_name(small)}.",
                    t.equals(whole, changed),
                ),
                Step("Divide.", t.equals(t.divide(changed, each), amount(key, ""))),
            ),
            wrong_amounts(
                "", key, (NOT_CHANGED, FACTOR, OTHER_WAY), into_wrong(size, tenths, part)
            ),
            ("goes into", pair, tenths, part),
        )


def _single(unit: str) -> str:
    return unit_known(unit).singular
