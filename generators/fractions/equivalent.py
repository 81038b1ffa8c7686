"""Equivalent fractions: filling in the missing numerator or denominator."""

from __future__ import annotations

from math import gcd
from typing import Any

from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

ADD_SAME = Misconception(
    "fractions.equivalent-by-adding",
    "adds the same number to the numerator and the denominator",
    "By adding 1 to numerator and denominator, 1/2 becomes 2/3. Are those equal? Draw them.",
)
TAKE_SAME = Misconception(
    "fractions.equivalent-by-subtracting",
    "takes the same number away from the numerator and the denominator",
    "Taking 1 away from the numerator and denominator of 2/3 gives 1/2. Are those equal?",
)
LEAVE_OTHER = Misconception(
    "fractions.equivalent-one-part",
    "changes one part of the fraction and leaves the other as it was",
    "Is 1/2 of a cake as much as 1/4 of it? If one part changes, what must happen to the other?",
)


def _scaled(b: int, a: int, k: int) -> bool:
    """Keep a proper fraction in lowest terms, multiplied up."""
    return a < b and gcd(a, b) == 1


def _two_ways(side: int, b: int, a: int, k: int) -> bool:
    """Keep fractions whose denominator is missing: multiplied up (0) or divided down (1)."""
    return a < b and gcd(a, b) == 1 and (a > 1 or side == 0)


def _through_lowest(side: int, b: int, a: int, p: int, q: int) -> bool:
    """Neither fraction is in lowest terms, and neither is a multiple of the other."""
    # Were p and q multiples of one another, one could go straight across, past lowest terms.
    if a >= b or gcd(a, b) != 1 or p % q == 0 or q % p == 0:
        return False
    # By adding, the answer must still come out as a positive whole number.
    return (a * p + (q - p) * b if side == 0 else b * p + (q - p) * a) > 0


@register
class Equivalent(Topic):
    """Fractions that are worth the same, one part of one of them missing."""

    id = "fractions.equivalent"
    title = "Equivalent fractions"
    statements = ("number.operations",)
    misconceptions = (ADD_SAME, TAKE_SAME, LEAVE_OTHER)
    spaces = {
        Tier.SUPPORT: Space(_scaled, b=range(2, 11), a=range(1, 10), k=range(2, 11)),
        Tier.CORE: Space(_two_ways, side=(0, 1), b=range(2, 13), a=range(1, 12), k=range(2, 10)),
        Tier.CHALLENGE: Space(
            _through_lowest,
            side=(0, 1),
            b=range(2, 10),
            a=range(1, 9),
            p=range(2, 8),
            q=range(2, 8),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            b, a, k = values
            missing: t.Node = t.Frac(t.Blank(), t.Int(b * k))
            known = t.frac(a, b)
            relation = t.equals(missing, known) if (a + k) % 2 else t.equals(known, missing)
            steps = _multiplied((a, b), k, "denominator", b)
            wrong = slips((ADD_SAME, a + b * k - b), (LEAVE_OTHER, a))
            return _draft(relation, a * k, steps, wrong, (a, b, k))
        if tier is Tier.CORE:
            side, b, a, k = values
            if side == 0:
                relation = t.equals(t.frac(a, b), t.Frac(t.Int(a * k), t.Blank()))
                wrong = slips((ADD_SAME, b + a * k - a), (LEAVE_OTHER, b))
                return _draft(
                    relation, b * k, _multiplied((a, b), k, "numerator", a), wrong, (0, a, b, k)
                )
            relation = t.equals(t.frac(a * k, b * k), t.Frac(t.Int(a), t.Blank()))
            wrong = slips((TAKE_SAME, b * k - (a * k - a)), (LEAVE_OTHER, b * k))
            return _draft(relation, b, _divided((a, b), k, "numerator", a), wrong, (1, a, b, k))
        side, b, a, p, q = values
        top, bottom = a * p, b * p
        cancel = Step(
            f"Divide the numerator and denominator by {p}.",
            t.equals(t.frac(top, bottom), t.frac(a, b)),
        )
        by_adding = ADD_SAME if q > p else TAKE_SAME
        if side == 0:
            relation = t.equals(t.frac(top, bottom), t.Frac(t.Blank(), t.Int(b * q)))
            steps = (cancel, *_multiplied((a, b), q, "denominator", b))
            wrong = slips((by_adding, top + b * q - bottom), (LEAVE_OTHER, top))
            return _draft(relation, a * q, steps, wrong, (0, a, b, p, q))
        relation = t.equals(t.frac(top, bottom), t.Frac(t.Int(a * q), t.Blank()))
        steps = (cancel, *_multiplied((a, b), q, "numerator", a))
        wrong = slips((by_adding, bottom + a * q - top), (LEAVE_OTHER, bottom))
        return _draft(relation, b * q, steps, wrong, (1, a, b, p, q))


def _draft(relation: Any, key: int, steps: Any, wrong: Any, twin: tuple[object, ...]) -> Draft:
    text = prompt("Which number goes in the box?  {r}", r=relation)
    return Draft(text, Find(t.Blank(), (relation,)), t.Int(key), "integer", steps, wrong, twin)


def _multiplied(pair: tuple[int, int], k: int, part: str, was: int) -> tuple[Step, ...]:
    a, b = pair
    return (
        Step(
            f"See what the {part} is multiplied by.",
            t.equals(t.times(t.Int(was), t.Int(k)), t.Int(was * k)),
        ),
        Step(
            f"Multiply the numerator and denominator by {k}.",
            t.equals(
                t.frac(a, b),
                t.Frac(t.times(t.Int(a), t.Int(k)), t.times(t.Int(b), t.Int(k))),
                t.frac(a * k, b * k),
            ),
        ),
    )


def _divided(pair: tuple[int, int], k: int, part: str, becomes: int) -> tuple[Step, ...]:
    a, b = pair
    top, bottom = t.Int(a * k), t.Int(b * k)
    return (
        Step(
            f"See what the {part} is divided by.",
            t.equals(t.divide(t.Int(becomes * k), t.Int(k)), t.Int(becomes)),
        ),
        Step(
            f"Divide the numerator and denominator by {k}.",
            t.equals(
                t.Frac(top, bottom),
                t.Frac(t.divide(top, t.Int(k)), t.divide(bottom, t.Int(k))),
                t.frac(a, b),
            ),
        ),
    )
