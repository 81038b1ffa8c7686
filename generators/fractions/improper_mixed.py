"""Changing between improper fractions and mixed numbers."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators.fractions._answers import AS_MIXED
from itembank.items import kinds
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

SWAPPED = Misconception(
    "fractions.mixed-swapped",
    "takes the remainder as the wholes and the number of wholes as the numerator",
    "How many quarters make 1 whole? How many wholes do 9 quarters make, and what is left?",
)
OVER_NUMERATOR = Misconception(
    "fractions.mixed-over-numerator",
    "puts the remainder over the old numerator instead of the denominator",
    "9 quarters make 2 wholes and 1 piece left over. What is that piece called?",
)
ADD_WHOLE = Misconception(
    "fractions.improper-adds-whole",
    "adds the whole number to the numerator",
    "How many halves are there in 3 wholes? So how many halves are there in 3 1/2?",
)
TIMES_NUMERATOR = Misconception(
    "fractions.improper-times-numerator",
    "multiplies the whole number by the numerator and adds the denominator",
    "How many quarters are there in 2 wholes? Which part of 2 3/4 tells you that?",
)

STORIES = (
    "Each tray holds {d} seedlings. How many trays do {n} seedlings fill?",
    "One bag of compost fills {d} pots. How many bags does a gardener need for {n} pots?",
    "In training, one set is {d} lengths of the pool. How many sets do {n} lengths make?",
    "Each crate holds {d} pumpkins. How many crates do {n} pumpkins fill?",
)


def _to_mixed(w: int, d: int, n: int) -> bool:
    """Keep a proper part in lowest terms; swapped, it must give another proper mixed number."""
    # With w = n the swapped answer is the key; with w < d it is a mixed number like any other.
    return n < d and gcd(n, d) == 1 and w != n and w < d


def _to_improper(w: int, d: int, n: int) -> bool:
    """Keep a proper part in lowest terms; neither wrong method gives the right answer."""
    return n < d and gcd(n, d) == 1 and n != 1


def _cancelled(kind: int, d: int, n: int, w: int) -> bool:
    """Keep a part left over that needs cancelling; the stories fill sensible containers."""
    if n >= d or gcd(n, d) == 1 or w >= d or w == n:
        return False
    # The containers and sets of the stories hold at least six.
    return kind == 0 or d >= 6


def _gone_wrong(w: int, d: int, n: int) -> tuple[kinds.WrongSolution, ...]:
    """Return how a mixed number is changed to an improper fraction wrongly."""
    W, D, N = map(t.Int, (w, d, n))
    times = t.Frac(t.add(t.times(W, N), D), D)
    return (
        kinds.WrongSolution(ADD_WHOLE, (t.Frac(t.add(W, N), D), t.frac(w + n, d))),
        kinds.WrongSolution(TIMES_NUMERATOR, (times, t.frac(w * n + d, d))),
    )


@register
class ImproperMixed(Topic):
    """Improper to mixed, mixed to improper, then with cancelling and in stories."""

    id = "fractions.improper-mixed"
    title = "Improper fractions and mixed numbers"
    statements = ("number.operations",)
    misconceptions = (SWAPPED, OVER_NUMERATOR, ADD_WHOLE, TIMES_NUMERATOR)
    prerequisites = ("fractions.lowest-terms",)
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(_to_mixed, w=range(1, 8), d=range(3, 13), n=range(1, 12))
        ),
        Tier.CORE: kinds.with_odd_lines(
            kinds.with_claims_and_matches(
                Space(_to_improper, w=range(2, 10), d=range(3, 13), n=range(2, 12))
            ),
            _gone_wrong,
        ),
        Tier.CHALLENGE: Space(
            _cancelled, kind=range(5), d=range(4, 13), n=range(2, 12), w=range(2, 8)
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CORE:
            return self._improper(*values)
        if tier is Tier.SUPPORT:
            w, d, n = values
            return self._mixed(w, d, n, 0)
        kind, d, n, w = values
        return self._mixed(w, d, n, kind)

    def _mixed(self, w: int, d: int, n: int, kind: int) -> Draft:
        top, common = w * d + n, gcd(n, d)
        key = t.Mixed(w, n // common, d // common)
        asked = t.frac(top, d)
        wrong = slips((SWAPPED, t.Mixed(n, w, d)), (OVER_NUMERATOR, Fraction(n, top) + w))
        split = t.Frac(t.Sum(t.times(t.Int(w), t.Int(d)), (("+", t.Int(n)),)), t.Int(d))
        steps = [
            Step(
                f"See how many {d}s go into {top}: {w}, and {n} left over.",
                t.equals(asked, split),
            ),
            Step(
                f"The whole number is {w}; the remainder {n} goes over {d}.",
                t.equals(split, t.Mixed(w, n, d)),
            ),
        ]
        if common > 1:
            cancel = t.equals(t.Mixed(w, n, d), key)
            steps.append(Step(f"Divide the numerator and denominator by {common}.", cancel))
        if not kind:
            ending = " in its simplest form" if common > 1 else ""
            text = prompt("Write {f} as a mixed number" + ending + ".", f=asked)
            return Draft(text, Find(asked), key, "mixed", tuple(steps), wrong, (0, top, d))
        x = t.Sym("x")
        share = t.divide(t.Int(top), t.Int(d))
        steps.insert(0, Step("Divide, and write the answer as a fraction.", t.equals(share, asked)))
        return Draft(
            prompt(STORIES[kind - 1] + AS_MIXED, n=t.Int(top), d=t.Int(d)),
            Find(x, (t.equals(x, share),)),
            key,
            "mixed",
            tuple(steps),
            wrong,
            (kind, top, d),
        )

    def _improper(self, w: int, d: int, n: int) -> Draft:
        asked = t.Mixed(w, n, d)
        key = t.frac(w * d + n, d)
        apart = t.add(t.Int(w), t.frac(n, d))
        worked = t.add(t.Frac(t.times(t.Int(w), t.Int(d)), t.Int(d)), t.frac(n, d))
        over = t.add(t.frac(w * d, d), t.frac(n, d))
        steps = (
            Step("Write the whole number and the fraction separately.", t.equals(asked, apart)),
            Step(f"Write the whole number as a fraction over {d}.", t.equals(apart, worked, over)),
            Step("Add the numerators.", t.equals(over, key)),
        )
        wrong = slips(
            (ADD_WHOLE, _over(w + n, d)),
            (TIMES_NUMERATOR, _over(w * n + d, d)),
        )
        text = prompt("Write {m} as an improper fraction.", m=asked)
        return Draft(text, Find(asked), key, "improper", steps, wrong, (w, n, d))


def _over(top: int, bottom: int) -> t.Frac:
    return t.Frac(t.Int(top), t.Int(bottom))
