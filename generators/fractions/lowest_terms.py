"""Writing a fraction in its lowest terms."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from itembank.items import kinds
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

ONE_PART = Misconception(
    "fractions.cancel-one-part",
    "divides the numerator but leaves the denominator as it was",
    "Is 2/4 the same as 1/4? What must happen to the denominator when you halve the numerator?",
)
SUBTRACT = Misconception(
    "fractions.cancel-by-subtracting",
    "takes the same number away from the numerator and the denominator",
    "Taking 1 away from numerator and denominator turns 2/4 into 1/3. Are they equal?",
)
UNITS = Misconception(
    "fractions.ignore-units",
    "compares the two numbers without first using the same unit",
    "Is 30 minutes 30 times as long as 1 hour? What do both amounts need first?",
)
REVERSED = Misconception(
    "fractions.reverse-part-and-whole",
    "writes the whole over the part instead of the part over the whole",
    "Is the part more or less than the whole? So is the fraction more or less than 1?",
)

# The small unit, the large one, how many of the one make the other, and the step of the part.
SCALES = (
    ("min", "h", 60, 5),
    ("cm", "m", 100, 5),
    ("g", "kg", 1000, 50),
    ("ml", "l", 1000, 50),
    ("p", "£", 100, 5),
)
LOWEST = " Give your answer in its lowest terms."
# What the amounts are: said of the part and of the whole, one story to a scale.
STORIES = (
    "A swimming session lasts {w}. The warm-up takes {p} of it. "
    "What fraction of the session is the warm-up?" + LOWEST,
    "A garden path is {w} long. So far {p} of it is paved. "
    "What fraction of the path is paved?" + LOWEST,
    "A sack holds {w} of seed. A gardener sows {p} of it. "
    "What fraction of the seed is sown?" + LOWEST,
    "A watering can holds {w} of water. A gardener pours out {p} of it. "
    "What fraction of the water is poured out?" + LOWEST,
    "A bus ticket costs {w}. A discount takes {p} off the price. "
    "What fraction of the price is taken off?" + LOWEST,
)


def _lowest(b: int, a: int, k: int) -> bool:
    """Keep proper fractions in lowest terms, to be multiplied by k."""
    return a < b and gcd(a, b) == 1


def _improper(b: int, a: int, k: int) -> bool:
    """Keep fractions in lowest terms up to 2, so that some are improper."""
    return a < 2 * b and gcd(a, b) == 1


def _amount(scale: int, whole: int, part: int) -> bool:
    """Keep a part that is less than the whole and needs at least one division."""
    _, _, size, step = SCALES[scale]
    total, count = whole * size, part * step
    # A warm-up or a discount of more than half would be odd, and so would a session of 4 hours.
    if 2 * count > total or (size == 60 and whole > 3):
        return False
    # From 100p on a price would be in pounds.
    if SCALES[scale][0] == "p" and count >= 100:
        return False
    common = gcd(count, total)
    # The two wrong methods must not give 1, nor the same answer.
    return common > 1 and count != whole and count * count != whole * total


def _gone_wrong(b: int, a: int, k: int) -> tuple[kinds.WrongSolution, ...]:
    """Return how a fraction is cancelled wrongly."""
    top, bottom, K = t.Int(a * k), t.Int(b * k), t.Int(k)
    p = t.Int(_factors(k)[0])
    taken = t.Frac(t.sub(top, p), t.sub(bottom, p))
    return (
        kinds.WrongSolution(ONE_PART, (t.Frac(t.divide(top, K), bottom), t.frac(a, b * k))),
        kinds.WrongSolution(SUBTRACT, (taken, t.frac(a * k - p.n, b * k - p.n))),
    )


@register
class LowestTerms(Topic):
    """Fractions to cancel; at challenge, one amount as a fraction of another."""

    id = "fractions.lowest-terms"
    title = "Writing fractions in their lowest terms"
    statements = ("number.operations",)
    misconceptions = (ONE_PART, SUBTRACT, UNITS, REVERSED)
    prerequisites = ("fractions.equivalent",)
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_lowest, b=range(3, 16), a=range(2, 15), k=(2, 3, 5, 7))
            ),
            _gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_improper, b=range(3, 12), a=range(2, 20), k=(4, 6, 8, 9, 12, 15, 18, 20))
            ),
            _gone_wrong,
        ),
        Tier.CHALLENGE: Space(
            _amount, scale=range(len(SCALES)), whole=range(1, 6), part=range(1, 60)
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            return self._amounts(*values)
        b, a, k = values
        asked = t.frac(a * k, b * k)
        factors = _factors(k)
        steps, top, bottom = [], a * k, b * k
        for factor in factors:
            before, after = (top, bottom), t.frac(top // factor, bottom // factor)
            split = t.Frac(
                t.divide(t.Int(before[0]), t.Int(factor)), t.divide(t.Int(before[1]), t.Int(factor))
            )
            steps.append(
                Step(
                    f"Divide the numerator and denominator by {factor}.",
                    t.equals(t.frac(*before), split, after),
                )
            )
            top, bottom = top // factor, bottom // factor
        p = factors[0]
        wrong = slips(
            (ONE_PART, t.frac(a, b * k)),
            (SUBTRACT, t.frac(a * k - p, b * k - p)),
        )
        text = prompt("Write {f} in its lowest terms.", f=asked)
        return Draft(
            text, Find(asked), t.frac(a, b), "lowest-terms", tuple(steps), wrong, (a, b, k)
        )

    def _amounts(self, scale: int, whole: int, part: int) -> Draft:
        small, large, size, step = SCALES[scale]
        total, count = whole * size, part * step
        value = Fraction(count, total)
        part_node, whole_node, changed = (
            _with_unit(count, small),
            _with_unit(whole, large),
            _with_unit(total, small),
        )
        f = t.Sym("f")
        common = gcd(count, total)
        steps = (
            Step("Write both amounts in the same unit.", t.equals(whole_node, changed)),
            Step(
                "Write the part over the whole; the units are the same.",
                t.equals(t.divide(part_node, changed), t.frac(count, total)),
            ),
            Step(
                f"Divide the numerator and denominator by {common}.",
                t.equals(t.frac(count, total), number_node(value)),
            ),
        )
        wrong = slips(
            (UNITS, number_node(Fraction(count, whole))),
            (REVERSED, number_node(1 / value)),
        )
        return Draft(
            prompt(STORIES[scale], p=part_node, w=whole_node),
            Find(f, (t.equals(f, t.divide(part_node, whole_node)),)),
            number_node(value),
            "lowest-terms",
            steps,
            wrong,
            (scale, whole, part),
        )


def _factors(k: int) -> tuple[int, ...]:
    """Return `k` as factors of one digit, at most two of them, the smaller first.

    >>> _factors(7), _factors(12), _factors(18)
    ((7,), (2, 6), (2, 9))
    """
    if k < 4:
        return (k,)
    for p in (2, 3, 5):
        if k % p == 0 and k > p:
            return (p, k // p)
    return (k,)


def _with_unit(amount: int, unit: str) -> t.Node:
    if unit == "£":
        return t.Money(t.Int(amount))
    return t.Money(t.Int(amount), "p") if unit == "p" else t.Quantity(t.Int(amount), unit)
