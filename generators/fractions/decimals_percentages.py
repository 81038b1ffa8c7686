"""Changing between fractions, decimals and percentages."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators.fractions._decimal_mistakes import (
    ALL_RECUR,
    BAR_AS_POINT,
    DENOMINATOR_PERCENT,
    NINES,
    NUMERATOR_AFTER_POINT,
    NUMERATOR_PERCENT,
    ONE_OVER,
    OVER_TEN,
    OVER_TEN_DECIMAL,
    SIGN_DROPPED,
    STOPS,
    TIMES_TEN,
    TOO_FEW_NOUGHTS,
    WRONG_WAY,
)
from generators.fractions._recurring import (
    LOWEST,
    bar_as_point,
    exact_percentage,
    fraction_draft,
    from_recurring,
    recurring_decimal,
    top_after_point,
)
from itembank.items import kinds
from itembank.items.forms.form_rules import decimal_node, number_node, simplest_node
from itembank.items.item import Draft, Step, Tier
from itembank.items.measures.years import RECURRING_DECIMALS, Part
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

RECURRING = (3, 6, 7, 9, 11, 12, 15, 18, 22, 30, 33)
"""Denominators whose fractions recur, with a block short enough to write."""


def _support(kind: int, h: int) -> bool:
    """Keep h hundredths: fraction to decimal (0) or percentage (1), decimal ↔ percentage (2, 3)."""
    bottom = 100 // gcd(h, 100)
    if bottom == 2:
        return False
    if kind == 0:
        # Tenths and hundredths would hide writing the top after the point.
        return bottom not in (10, 100)
    # 1/10 is 10%: taking the bottom as the percentage would be right.
    return kind != 1 or (bottom != 100 and h != 10)


def _core(kind: int, h: int) -> bool:
    """Keep hundredths that cancel (0, 1), fortieths and eighths (2, 3, 4), more than 100% (5)."""
    if kind in (2, 3, 4):
        return h < 40 and h % 2 == 1
    if gcd(h, 100) == 1 or h == 50:
        return False
    if kind == 5:
        return h > 100
    # As 0.1 or 10% the wrong methods give 1/10, which is right.
    return h < 100 and h != 10 and (kind == 0 or h % 10 != 0)


def _challenge(kind: int, a: int, b: int) -> bool:
    """Keep a/b that recurs (0 to decimal, 1 to percentage), and digits a, b that recur.

    The digits are 0.ab with both recurring (2), with the last one recurring (3), and 0.b (4).
    """
    if kind < 2:
        return b in RECURRING and 0 < a < b and gcd(a, b) == 1 and (kind == 0 or b <= 15)
    if a > 9 or b > 9 or a == b:
        return False
    if kind == 4:
        return a == 0 and 0 < b < 9
    return kind == 2 or (0 < b < 9)


def _keep_odd(kind: int, h: int) -> bool:
    """Keep hundredths that are no tenths, with a fraction of a small denominator."""
    return h % 10 != 0 and 100 // gcd(h, 100) in (4, 20, 25, 50)


def _odd(topic: Topic, tier: Tier, kind: int, h: int) -> Draft:
    """Return a fraction, a decimal and a percentage that are equal, and one that is not."""
    value = Fraction(h, 100)
    over, decimal, share = number_node(value), decimal_node(value), percent(value)
    odd: t.Node = percent(value / 10) if kind == 0 else decimal_node(value * 10)
    mistake, place = (TIMES_TEN, 2) if kind == 0 else (OVER_TEN_DECIMAL, 1)
    return kinds.odd_one_out(
        odd,
        (over, decimal, share),
        mistakes=((mistake, place),),
        steps=(
            Step("Write the fraction over 100.", t.equals(over, t.frac(h, 100))),
            Step("Write the hundredths as a decimal.", t.equals(over, decimal)),
            Step("Out of 100 means per cent.", t.equals(over, share)),
        ),
        twin=(kind, h),
    )


@register
class DecimalsPercentages(Topic):
    """Fractions, decimals and percentages: hundredths, thousandths, recurring decimals."""

    id = "fractions.decimals-percentages"
    title = "Fractions, decimals and percentages"
    statements = ("number.decimals-fractions", "number.percentages")
    misconceptions = (
        BAR_AS_POINT,
        NUMERATOR_AFTER_POINT,
        DENOMINATOR_PERCENT,
        NUMERATOR_PERCENT,
        TIMES_TEN,
        OVER_TEN_DECIMAL,
        WRONG_WAY,
        SIGN_DROPPED,
        TOO_FEW_NOUGHTS,
        OVER_TEN,
        ONE_OVER,
        STOPS,
        NINES,
        ALL_RECUR,
    )
    prerequisites = ("fractions.equivalent", "fractions.lowest-terms")
    # All of the challenge tier but exact percentages such as 66 2/3%.
    later = {Tier.CHALLENGE: (Part(RECURRING_DECIMALS, lambda kind, a, b: kind != 1),)}
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(_support, kind=range(4), h=range(1, 100))
        ).also(_odd, _keep_odd, kind=(0, 1), h=range(1, 100)),
        Tier.CORE: kinds.with_claims_and_matches(Space(_core, kind=range(6), h=range(1, 200))),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(_challenge, kind=range(5), a=range(33), b=range(34))
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            kind, h = values
            return _hundredths(kind, h)
        if tier is Tier.CORE:
            kind, h = values
            return _thousandths(kind, h) if kind in (2, 3, 4) else _to_fraction(kind, h)
        kind, a, b = values
        if kind == 0:
            return recurring_decimal(a, b)
        return exact_percentage(a, b) if kind == 1 else from_recurring(kind, a, b)


def percent(value: Fraction) -> t.Percent:
    """Return a value as a percentage, with a decimal number of per cent.

    >>> percent(Fraction(3, 8))
    Percent(of=Dec(whole='37', places='5', recurring=''))
    """
    return t.Percent(decimal_node(100 * value))


def _hundredths(kind: int, h: int) -> Draft:
    value = Fraction(h, 100)
    n, d = value.numerator, value.denominator
    decimal, share, over = decimal_node(value), percent(value), t.frac(h, 100)
    if kind < 2:
        k = 100 // d
        scaled = t.Frac(t.times(t.Int(n), t.Int(k)), t.times(t.Int(d), t.Int(k)))
        first = Step("Write it over 100.", t.equals(t.frac(n, d), scaled, over))
        if kind == 0:
            steps = [first, Step("Write the hundredths as a decimal.", t.equals(over, decimal))]
            wrong = slips(
                (BAR_AS_POINT, bar_as_point(n, d)), (NUMERATOR_AFTER_POINT, top_after_point(n))
            )
            return fraction_draft(t.frac(n, d), " as a decimal.", decimal, "decimal", steps, wrong)
        steps = [first, Step("Out of 100 means per cent.", t.equals(over, share))]
        wrong = slips(
            (DENOMINATOR_PERCENT, t.Percent(t.Int(d))), (NUMERATOR_PERCENT, t.Percent(t.Int(n)))
        )
        return fraction_draft(t.frac(n, d), " as a percentage.", share, "percentage", steps, wrong)
    if kind == 2:
        steps = [
            Step("Write it over 100.", t.equals(decimal, over)),
            Step("Out of 100 means per cent.", t.equals(over, share)),
        ]
        wrong = slips((TIMES_TEN, percent(value / 10)), (WRONG_WAY, percent(value / 10000)))
        return fraction_draft(decimal, " as a percentage.", share, "percentage", steps, wrong)
    steps = [
        Step("Per cent means out of 100.", t.equals(share, over)),
        Step("Write the hundredths as a decimal.", t.equals(over, decimal)),
    ]
    wrong = slips((OVER_TEN_DECIMAL, decimal_node(value * 10)), (SIGN_DROPPED, t.Int(h)))
    return fraction_draft(share, " as a decimal.", decimal, "decimal", steps, wrong)


def _to_fraction(kind: int, h: int) -> Draft:
    """Make a percentage (kind 0, or 5 for more than 100%) or a decimal (1) a fraction."""
    value = Fraction(h, 100)
    asked: t.Node = decimal_node(value) if kind == 1 else percent(value)
    over, key = t.frac(h, 100), number_node(value)
    say = "Write the digits as hundredths." if kind == 1 else "Per cent means out of 100."
    steps = [Step(say, t.equals(asked, over))]
    common = gcd(h, 100)
    ending, form = LOWEST, "lowest-terms"
    steps.append(Step(f"Divide the numerator and denominator by {common}.", t.equals(over, key)))
    if kind == 5:
        mixed = simplest_node(value)
        steps.append(Step("Write it as a mixed number.", t.equals(key, mixed)))
        ending, form, key = " as a mixed number in its simplest form.", "mixed", mixed
    tenths = TOO_FEW_NOUGHTS if kind == 1 else OVER_TEN
    wrong = slips((tenths, Fraction(h, 10)), (ONE_OVER, Fraction(1, h)))
    return fraction_draft(asked, ending, key, form, steps, wrong)


def _thousandths(kind: int, h: int) -> Draft:
    value = Fraction(h, 40)
    n, d = value.numerator, value.denominator
    thousandths, k = 25 * h, 1000 // d
    decimal, share, over = decimal_node(value), percent(value), t.frac(thousandths, 1000)
    if kind == 4:
        common = gcd(thousandths, 1000)
        steps = [
            Step("Write the digits as thousandths.", t.equals(decimal, over)),
            Step(
                f"Divide the numerator and denominator by {common}.", t.equals(over, t.frac(n, d))
            ),
        ]
        wrong = slips(
            (TOO_FEW_NOUGHTS, Fraction(thousandths, 100)), (ONE_OVER, Fraction(1, thousandths))
        )
        return fraction_draft(decimal, LOWEST, t.frac(n, d), "lowest-terms", steps, wrong)
    scaled = t.Frac(t.times(t.Int(n), t.Int(k)), t.times(t.Int(d), t.Int(k)))
    steps = [
        Step("Write it over 1000.", t.equals(t.frac(n, d), scaled, over)),
        Step("Write the thousandths as a decimal.", t.equals(over, decimal)),
    ]
    if kind == 2:
        wrong = slips(
            (BAR_AS_POINT, bar_as_point(n, d)), (NUMERATOR_AFTER_POINT, top_after_point(n))
        )
        return fraction_draft(t.frac(n, d), " as a decimal.", decimal, "decimal", steps, wrong)
    steps.append(Step("Multiply by 100 for the percentage.", t.equals(decimal, share)))
    wrong = slips((DENOMINATOR_PERCENT, t.Percent(t.Int(d))), (TIMES_TEN, percent(value / 10)))
    return fraction_draft(t.frac(n, d), " as a percentage.", share, "percentage", steps, wrong)
