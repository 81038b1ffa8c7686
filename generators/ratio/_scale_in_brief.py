"""Short questions about plans: a length in reality, a length on the plan, and a scale 1 : n."""

from __future__ import annotations

from fractions import Fraction

from generators.ratio._scale_mistakes import (
    ADDS,
    CM_AS_M,
    DIVIDES,
    M_AS_CM,
    MULTIPLIES,
    THOUSAND,
)
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _of(number: Fraction | int, unit: str) -> t.Quantity:
    return t.Quantity(decimal_node(number), unit)


def _short(number: Fraction) -> Fraction | None:
    return number if (10 * number).denominator == 1 else None


def _real(topic: Topic, tier: Tier, each: int, long: int) -> Draft:
    single, unit, drawn = _of(1, "cm"), _of(each, "m"), _of(long, "cm")
    key, count = _of(each * long, "m"), t.Int(long)
    return told(
        "On a plan {a} stands for {b}. What real length does {c} stand for?",
        t.times(t.divide(drawn, single), unit),
        key,
        "quantity",
        [(f"It is {long} times as long.", t.equals(t.times(count, unit), key))],
        [(ADDS, each + long), (DIVIDES, _short(Fraction(long, each)))],
        ("real in brief", each, long),
        a=single,
        b=unit,
        c=drawn,
    )


def _on_plan(topic: Topic, tier: Tier, each: int, halves: int) -> Draft:
    long = Fraction(halves, 2)
    single, unit, real = _of(1, "cm"), _of(each, "m"), _of(each * long, "m")
    key, count = _of(long, "cm"), decimal_node(long)
    return told(
        "On a plan {a} stands for {b}. How long on the plan is a path of {c}?",
        t.times(t.divide(real, unit), single),
        key,
        "quantity",
        [
            ("Find how many times the length goes in.", t.equals(t.divide(real, unit), count)),
            ("So many centimetres.", t.equals(t.times(count, single), key)),
        ],
        [(MULTIPLIES, each * each * long), (ADDS, abs(each * long - each))],
        ("on plan in brief", each, halves),
        a=single,
        b=unit,
        c=real,
    )


def _by_ratio(topic: Topic, tier: Tier, scale: int, halves: int) -> Draft:
    long = Fraction(halves, 2)
    drawn, ratio = _of(long, "cm"), t.ratio(t.Int(1), t.Int(scale))
    real, key = _of(scale * long, "cm"), _of(scale * long / 100, "m")
    return told(
        "A plan has the scale {r}. How many metres does {c} on the plan stand for?",
        t.times(t.Int(scale), drawn),
        key,
        "quantity",
        [
            (f"Multiply by {scale}.", t.equals(t.times(t.Int(scale), drawn), real)),
            ("There are 100 cm in a metre.", t.equals(real, key)),
        ],
        [
            (CM_AS_M, scale * long),
            (THOUSAND, scale * long / 1000 if (scale * long).denominator == 1 else None),
            (ADDS, (scale + long) / 100),
        ],
        ("by ratio in brief", scale, halves),
        r=ratio,
        c=drawn,
    )


def _to_plan(topic: Topic, tier: Tier, scale: int, halves: int) -> Draft:
    long = Fraction(halves, 2)
    real, small = _of(scale * long / 100, "m"), _of(scale * long, "cm")
    ratio, key = t.ratio(t.Int(1), t.Int(scale)), _of(long, "cm")
    return told(
        "A plan has the scale {r}. How many centimetres on the plan are {c} in reality?",
        t.divide(real, t.Int(scale)),
        key,
        "quantity",
        [
            ("Write the length in centimetres.", t.equals(real, small)),
            (f"Divide by {scale}.", t.equals(t.divide(small, t.Int(scale)), key)),
        ],
        [
            (M_AS_CM, long / 100),
            (MULTIPLIES, scale * long * scale),
            (THOUSAND, 10 * long),
        ],
        ("to plan in brief", scale, halves),
        r=ratio,
        c=real,
    )


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _real,
            lambda each, long: (
                each != long and (10 * long % each == 0) and each + long != each * long
            ),
            {"each": (2, 4, 5, 10, 20, 50), "long": range(3, 26)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _on_plan,
            lambda each, halves: halves not in (2, 4),
            {"each": (2, 3, 4, 5, 6, 8, 10, 20), "halves": range(5, 36)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _by_ratio,
            None,
            {"scale": (20, 40, 50, 200, 250, 300, 400, 500), "halves": range(6, 17)},
        ),
        Brief(
            _to_plan,
            lambda scale, halves: halves != 2,
            {"scale": (20, 50, 200, 300, 400, 500), "halves": range(5, 17)},
        ),
    ),
}
"""The short questions of each tier."""
