"""One amount as a percentage of another: its working, and wrong answers in per cents."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators.percentages._amounts import per_cent
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Misconception, Slip, Step
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def tenths_of(top: int, bottom: int) -> int | None:
    """Return top/bottom in tenths of a per cent, or None where there is more to it, or nothing.

    >>> tenths_of(1, 8), tenths_of(1, 3)
    (125, None)
    """
    value, rest = divmod(1000 * top, bottom)
    return None if rest or value <= 0 else value


def percentage_steps(part: int, whole: int) -> tuple[Step, ...]:
    """Return the working of a part of a whole as a percentage: cancelled, over 100, per cent.

    >>> [step.say for step in percentage_steps(21, 35)]
    ['Write it as a fraction and simplify.', 'Write that out of 100.', 'Out of 100 means per cent.']
    """
    value = Fraction(part, whole)
    key = per_cent(int(1000 * value))
    steps = []
    asked = t.frac(part, whole)
    if 100 % whole and whole % 100:
        common = gcd(part, whole)
        asked = t.frac(part // common, whole // common)
        if common > 1:
            say = "Write it as a fraction and simplify."
            steps.append(Step(say, t.equals(t.frac(part, whole), asked)))
    if (100 * value).denominator > 1:
        decimal = decimal_node(value)
        steps.append(Step("Divide to write it as a decimal.", t.equals(asked, decimal)))
        return (*steps, Step("Multiply by 100 for per cents.", t.equals(decimal, key)))
    over = t.frac(int(100 * value), 100)
    if asked != over:
        say = "Write that out of 100." if steps else "Write it as a fraction out of 100."
        steps.append(Step(say, t.equals(asked, over)))
    return (*steps, Step("Out of 100 means per cent.", t.equals(over, key)))


def wrong_percentages(
    mistakes: tuple[Misconception, ...], found: tuple[int | None, ...], key: int
) -> tuple[Slip, ...]:
    """Return the wrong answers, given in tenths of a per cent, that are not the key."""
    pairs = (
        (mistake, None if tenths is None else per_cent(tenths))
        for mistake, tenths in zip(mistakes, found, strict=True)
    )
    return slips(*pairs, key=per_cent(key))
