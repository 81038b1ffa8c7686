"""Fractions between two others: many answers are right, and the key is one of them."""

from __future__ import annotations

from fractions import Fraction
from math import gcd, lcm
from typing import Any

from generators.fractions._misconceptions import KEEP_NUMERATORS
from itembank.items import kinds
from itembank.items.item import Draft, Give, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

ADDED = Misconception(
    "fractions.between-added",
    "adds the two numbers, and does not halve",
    "Is your number less than the larger of the two? Where does it stand on a number line?",
)
APART = Misconception(
    "fractions.between-apart",
    "gives how far apart the two numbers are",
    "Is your number more than the smaller of the two? Where does it stand on a number line?",
)
X = t.Sym("x")


def _support(n: int, p: int, q: int) -> bool:
    """Keep pairs over one denominator with a numerator between; the difference is not between."""
    return 2 <= q - p <= p and q < n


def _tops(b: int, a: int, d: int, c: int) -> tuple[int, int, int]:
    bottom = lcm(b, d)
    return a * (bottom // b), c * (bottom // d), bottom


def _unlike(b: int, a: int, d: int, c: int) -> bool:
    return a < b != d > c and gcd(a, b) == 1 == gcd(c, d) and lcm(b, d) <= 60


def _core(b: int, a: int, d: int, c: int) -> bool:
    """Keep pairs with numerators between over a common denominator; the difference is not."""
    if not _unlike(b, a, d, c):
        return False
    p, q, _ = _tops(b, a, d, c)
    return 2 <= q - p <= p


def _challenge(w: int, b: int, a: int, d: int, c: int) -> bool:
    """Keep mixed numbers with no numerator between over the lowest common denominator."""
    if not _unlike(b, a, d, c):
        return False
    p, q, bottom = _tops(b, a, d, c)
    # 2p + 1 over the double is the key, and with no factor in common it is in lowest terms.
    return q - p == 1 and gcd(2 * p + 1, bottom) == 1


@register
class Between(Topic):
    """A number between two fractions or mixed numbers."""

    id = "fractions.between"
    title = "Finding a fraction between two others"
    statements = ("number.ordering",)
    misconceptions = (ADDED, APART, KEEP_NUMERATORS)
    prerequisites = ("fractions.equivalent", "fractions.order")
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, n=range(5, 17), p=range(1, 16), q=range(3, 16))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(_core, b=range(2, 16), a=range(1, 12), d=range(2, 16), c=range(1, 12))
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                w=range(1, 5),
                b=range(2, 13),
                a=range(1, 12),
                d=range(2, 13),
                c=range(1, 12),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            n, p, q = values
            return self._like(n, p, q)
        if tier is Tier.CORE:
            return self._over(*values)
        return self._halfway(*values)

    def _like(self, n: int, p: int, q: int) -> Draft:
        key = t.frac((p + q) // 2, n)
        low, high = t.frac(p, n), t.frac(q, n)
        steps = (
            Step(
                f"The denominators are the same, so look for a numerator between {p} and {q}.",
                _chain(low, key, high),
            ),
        )
        return self._draft(low, high, key, "fraction", steps, (("like", n, p, q)))

    def _over(self, b: int, a: int, d: int, c: int) -> Draft:
        p, q, bottom = _tops(b, a, d, c)
        low, high, key = t.frac(a, b), t.frac(c, d), t.frac((p + q) // 2, bottom)
        kept = Fraction(a + c, 2 * bottom) if (a + c) % 2 == 0 and (a + c) // 2 <= p else None
        return self._draft(
            low,
            high,
            key,
            "fraction",
            (
                *_over(((low, p), (high, q)), bottom),
                Step(
                    f"Look for a numerator between {p} and {q}.",
                    _chain(t.frac(p, bottom), key, t.frac(q, bottom)),
                ),
            ),
            ("over", *sorted(((a, b), (c, d)))),
            kept,
        )

    def _halfway(self, w: int, b: int, a: int, d: int, c: int) -> Draft:
        p, q, bottom = _tops(b, a, d, c)
        low, high = t.Mixed(w, a, b), t.Mixed(w, c, d)
        key = t.Mixed(w, 2 * p + 1, 2 * bottom)
        twice = 2 * bottom
        steps = (
            Step(
                f"Write both over {bottom}: no whole number stands between {p} and {q}.",
                _chain(t.Mixed(w, p, bottom), t.Mixed(w, q, bottom)),
            ),
            Step(
                f"So double the denominator to {twice}, and the numerators with it.",
                _chain(t.Mixed(w, 2 * p, twice), t.Mixed(w, 2 * q, twice)),
            ),
            Step(
                f"Look for a numerator between {2 * p} and {2 * q}.",
                _chain(t.Mixed(w, 2 * p, twice), key, t.Mixed(w, 2 * q, twice)),
            ),
        )
        return self._draft(low, high, key, "value", steps, ("halfway", w, (a, b), (c, d)))

    def _draft(
        self,
        low: t.Node,
        high: t.Node,
        key: t.Node,
        form: str,
        steps: tuple[Step, ...],
        twin: tuple[object, ...],
        kept: Fraction | None = None,
    ) -> Draft:
        small, large = _worth(low), _worth(high)
        wrong = slips((ADDED, small + large), (APART, large - small), (KEEP_NUMERATORS, kept))
        what = "fraction" if form == "fraction" else "number"
        return Draft(
            prompt(f"Write a {what} between {{low}} and {{high}}.", low=low, high=high),
            Give((X,), (t.Relation(low, (("<", X), ("<", high))),)),
            key,
            form,
            steps,
            wrong,
            twin,
        )


def _over(fractions: tuple[tuple[t.Node, int], ...], bottom: int) -> tuple[Step, ...]:
    """Return a line for each fraction that is not over the common denominator yet."""
    return tuple(
        Step(f"Write {said} over {bottom}.", t.equals(node, t.frac(top, bottom)))
        for said, (node, top) in zip(
            ("the first fraction", "the second fraction"), fractions, strict=True
        )
        if node != t.frac(top, bottom)
    )


def _chain(*numbers: t.Node) -> t.Relation:
    first, *rest = numbers
    return t.Relation(first, tuple(("<", node) for node in rest))


def _worth(node: t.Node) -> Fraction:
    match node:
        case t.Mixed(whole, top, bottom):
            return whole + Fraction(top, bottom)
        case t.Frac(t.Int(top), t.Int(bottom)):
            return Fraction(top, bottom)
    raise ValueError(f"{node} is no fraction")
