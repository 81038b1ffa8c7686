"""Any fraction that is equivalent to another: many answers are right."""

from __future__ import annotations

from math import gcd

from generators.fractions._equivalent_mistakes import ADD_SAME, LEAVE_OTHER, TAKE_SAME
from itembank.items.asks.equivalent import Equivalent
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t


def _fits(b: int, a: int, k: int) -> bool:
    """Keep proper fractions: in lowest terms (k = 1), or one to be cancelled or multiplied."""
    return a < b and gcd(a, b) == 1 and b * k <= 60 and (k == 1 or a > 1)


def equivalent_given(topic: Topic, tier: Tier, b: int, a: int, k: int) -> Draft:
    """Return the question for a fraction that is equivalent to one."""
    shown = t.frac(a * k, b * k)
    by = 2 + (a + b) % 2
    key = t.frac(a * by, b * by) if k == 1 else t.frac(a, b)
    changed = t.equals(shown, key)
    step = (
        Step(f"Multiply the numerator and the denominator by {by}.", changed)
        if k == 1
        else Step(f"Divide the numerator and the denominator by {k}.", changed)
    )
    wrong = (
        ((ADD_SAME, t.frac(a + by, b + by)), (LEAVE_OTHER, t.frac(a, b * by)))
        if k == 1
        else ((TAKE_SAME, t.frac(a * k - 1, b * k - 1)), (LEAVE_OTHER, t.frac(a, b * k)))
    )
    return Draft(
        prompt("Write a fraction equivalent to {f}.", f=shown),
        Equivalent(shown),
        key,
        "fraction",
        (step, Step("So this will do:", key)),
        slips(*wrong, key=key),
        ("equivalent to", a * k, b * k),
    )


def with_given(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with fractions to give at the ends of support and core."""
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            equivalent_given, _fits, b=range(2, 16), a=range(1, 15), k=(1,)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            equivalent_given, _fits, b=range(3, 13), a=range(2, 12), k=range(2, 8)
        ),
    }
