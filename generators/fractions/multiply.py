"""Multiplying fractions, whole numbers and mixed numbers."""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators.fractions._answers import answer_form, finish
from itembank.items import kinds
from itembank.items.forms.form_rules import simplest_node
from itembank.items.item import Draft, Find, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

BOTH_PARTS = Misconception(
    "fractions.multiply-both-parts",
    "multiplies the numerator and the denominator by the whole number",
    "What is 1/4 of a cake, taken 2 times? Is it still 1/4?",
)
ADD_WHOLE = Misconception(
    "fractions.multiply-adds-whole",
    "adds the whole number to the numerator",
    "3 × 1/5 means 1/5 + 1/5 + 1/5. How many fifths is that?",
)
FLIP = Misconception(
    "fractions.multiply-flips",
    "multiplies by the reciprocal of the second fraction, as for dividing",
    "Is half of a half more or less than a half? What does your method give?",
)
ADD_DENOMINATORS = Misconception(
    "fractions.multiply-adds-denominators",
    "multiplies the numerators but adds the denominators",
    "Cut half a cake into 3 equal pieces. What fraction of the whole cake is each piece?",
)
APART = Misconception(
    "fractions.multiply-wholes-and-parts",
    "multiplies the whole numbers, multiplies the fraction parts, and adds the two",
    "Draw a square with sides of 1 1/2. What is its area by your method? Count the pieces.",
)
WHOLES_ONLY = Misconception(
    "fractions.multiply-whole-part-only",
    "multiplies the whole-number part only and keeps the fraction part as it was",
    "What is 1 1/2 + 1 1/2? What does your method give for 1 1/2 × 2?",
)
FRACTIONS_ONLY = Misconception(
    "fractions.multiply-fraction-part-only",
    "multiplies the fraction part only and keeps the whole-number part as it was",
    "What is half of 4 1/2? What does your method give for 4 1/2 × 1/2?",
)
TOO_SMALL = Misconception(
    "fractions.multiply-converts-by-adding",
    "adds the whole number to the numerator when changing to an improper fraction",
    "How many halves are there in 3 wholes? So how many halves are there in 3 1/2?",
)


def _support(kind: int, b: int, a: int, d: int, c: int) -> bool:
    """Keep whole × fraction (kind 0; c is the whole) and fraction × fraction, nothing to cancel."""
    if a >= b or gcd(a, b) != 1:
        return False
    if kind == 0:
        # 2 × 2 = 2 + 2, so adding would give the right answer.
        return d == 2 and c > 1 and gcd(c, b) == 1 and not (a == 2 and c == 2) and a + c != b
    if c >= d or gcd(c, d) != 1 or gcd(a, d) != 1 or gcd(c, b) != 1:
        return False
    # The two wrong methods must not give the same answer.
    return (a, b) < (c, d) and c * c * b != d * (b + d)


def _core(kind: int, b: int, a: int, d: int, c: int) -> bool:
    """Keep products of two fractions that can be cancelled, one of them improper if kind is 1."""
    if gcd(a, b) != 1 or gcd(c, d) != 1 or (a >= b) != (kind == 1) or c >= d:
        return False
    if kind == 0 and (a, b) > (c, d):
        return False
    return gcd(a, d) * gcd(c, b) > 1 and a * c != b * d and c * c * b != d * (b + d)


def _challenge(kind: int, b: int, a: int, d: int, c: int, w: int, v: int) -> bool:
    """Keep mixed × fraction (kind 0), mixed × whole (1) and mixed × mixed (2)."""
    if a >= b or gcd(a, b) != 1:
        return False
    if kind == 1:
        return d == 2 and c == 1 and v > 1
    if c >= d or gcd(c, d) != 1:
        return False
    top = (w * b + a) * (c if kind == 0 else v * d + c)
    if gcd(top, b * d) == 1 or top % (b * d) == 0:
        return False
    if kind == 0:
        return v == 1
    return (w, a, b) < (v, c, d)


def _gone_wrong(
    kind: int, b: int, a: int, d: int, c: int, w: int = 0, v: int = 0
) -> tuple[kinds.WrongSolution, ...]:
    """Return how products of fractions are written wrongly, as in the first two tiers."""
    wrong, A, B, C, D = kinds.WrongSolution, *map(t.Int, (a, b, c, d))
    flipped = t.times(t.frac(a, b), t.frac(d, c))
    return (
        wrong(ADD_DENOMINATORS, (t.Frac(t.times(A, C), t.add(B, D)), t.frac(a * c, b + d))),
        wrong(FLIP, (flipped, t.frac(a * d, b * c))),
    )


def _gone_wrong_support(
    kind: int, b: int, a: int, d: int, c: int
) -> tuple[kinds.WrongSolution, ...]:
    if kind:
        return _gone_wrong(kind, b, a, d, c)
    wrong, A, B, C = kinds.WrongSolution, *map(t.Int, (a, b, c))
    both = t.Frac(t.times(C, A), t.times(C, B))
    return (
        wrong(BOTH_PARTS, (both, t.frac(c * a, c * b))),
        wrong(ADD_WHOLE, (t.Frac(t.add(C, A), B), t.frac(a + c, b))),
    )


def _gone_wrong_mixed(
    kind: int, b: int, a: int, d: int, c: int, w: int, v: int
) -> tuple[kinds.WrongSolution, ...]:
    wrong, first = kinds.WrongSolution, t.frac(a, b)
    parts, W = t.times(first, t.frac(c, d)), t.Int(w)
    if kind == 0:
        end = simplest_node(w + Fraction(a * c, b * d))
        return (wrong(FRACTIONS_ONLY, (t.add(W, parts), end)),)
    wholes = t.times(W, t.Int(v))
    if kind == 1:
        lines = (t.add(wholes, first), t.Mixed(w * v, a, b))
        return (wrong(WHOLES_ONLY, lines),)
    end = simplest_node(w * v + Fraction(a * c, b * d))
    return (wrong(APART, (t.add(wholes, parts), end)),)


@register
class Multiply(Topic):
    """Products: with a whole number, of two fractions, of mixed numbers."""

    id = "fractions.multiply"
    title = "Multiplying fractions"
    statements = ("number.operations",)
    misconceptions = (
        BOTH_PARTS,
        ADD_WHOLE,
        FLIP,
        ADD_DENOMINATORS,
        APART,
        WHOLES_ONLY,
        FRACTIONS_ONLY,
        TOO_SMALL,
    )
    prerequisites = ("fractions.lowest-terms", "fractions.improper-mixed")
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    _support,
                    kind=(0, 1),
                    b=range(2, 10),
                    a=range(1, 7),
                    d=range(2, 9),
                    c=range(1, 8),
                )
            ),
            _gone_wrong_support,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    _core,
                    kind=(0, 1),
                    b=range(2, 11),
                    a=range(1, 11),
                    d=(3, 4, 5, 6, 8, 9),
                    c=range(1, 6),
                )
            ),
            _gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    _challenge,
                    kind=range(3),
                    b=(2, 3, 4, 5),
                    a=range(1, 5),
                    d=(2, 3, 4, 5),
                    c=(1, 2, 3),
                    w=(1, 2, 3),
                    v=(1, 2, 4),
                )
            ),
            _gone_wrong_mixed,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.CHALLENGE:
            kind, b, a, d, c, w, v = values
            right = ((0, c, d), (v, 0, 1), (v, c, d))[kind]
            return _draft((w, a, b), right)
        kind, b, a, d, c = values
        if tier is Tier.SUPPORT and kind == 0:
            return _draft((0, a, b), (c, 0, 1))
        return _draft((0, a, b), (0, c, d))


Number = tuple[int, int, int]
"""Wholes, numerator and denominator; 0 wholes for a fraction, numerator 0 for a whole number."""


def written(number: Number) -> t.Node:
    """Return a number as it is printed: mixed, a fraction or a whole number.

    >>> written((2, 0, 1)), written((2, 1, 3))
    (Int(n=2), Mixed(whole=2, num=1, den=3))
    """
    whole, top, bottom = number
    if not top:
        return t.Int(whole)
    return t.Mixed(whole, top, bottom) if whole else t.frac(top, bottom)


def improper(number: Number) -> tuple[int, int]:
    """Return the numerator and denominator of a number as one fraction.

    >>> improper((2, 1, 3)), improper((4, 0, 1))
    ((7, 3), (4, 1))
    """
    whole, top, bottom = number
    return whole * bottom + top, bottom


def _draft(left: Number, right: Number) -> Draft:
    (a, b), (c, d) = improper(left), improper(right)
    # A whole number stands first in half of the questions.
    pair = (right, left) if right[1] == 0 and (a + b + c) % 2 else (left, right)
    asked = t.times(*(written(number) for number in pair))
    fractions = t.times(*(t.frac(*improper(number)) for number in pair))
    (p, q), (r, s) = (improper(number) for number in pair)
    steps: list[Step] = []
    if fractions != asked:
        word = "whole number over 1" if not left[0] else "numbers as improper fractions"
        steps.append(Step(f"Write the {word}.", t.equals(asked, fractions)))
    across = t.Frac(t.times(t.Int(p), t.Int(r)), t.times(t.Int(q), t.Int(s)))
    multiply = t.equals(fractions, across, t.frac(p * r, q * s))
    steps.append(Step("Multiply the numerators, and multiply the denominators.", multiply))
    value = Fraction(a * c, b * d)
    wrong = slips(*_mistakes(left, right))
    wanted, form = answer_form(value)
    text = prompt("Work out {e}." + wanted, e=asked)
    key = simplest_node(value)
    twin = tuple(sorted((left, right)))
    return Draft(text, Find(asked), key, form, (*steps, *finish(p * r, q * s)), wrong, twin)


def _mistakes(left: Number, right: Number) -> list[tuple[Misconception, Fraction]]:
    (w, a, b), (v, c, d) = left, right
    (p, q), (r, s) = improper(left), improper(right)
    if not w and not c:
        return [(BOTH_PARTS, Fraction(a, b)), (ADD_WHOLE, Fraction(a + v, b))]
    if not w:
        return [(ADD_DENOMINATORS, Fraction(p * r, q + s)), (FLIP, Fraction(p * s, q * r))]
    if not c:
        # Only the wholes are multiplied, or the improper fraction has too small a numerator.
        return [(WHOLES_ONLY, w * v + Fraction(a, b)), (TOO_SMALL, Fraction((w + a) * v, b))]
    if not v:
        return [
            (FRACTIONS_ONLY, w + Fraction(a * c, b * d)),
            (TOO_SMALL, Fraction((w + a) * c, b * d)),
        ]
    return [
        (APART, w * v + Fraction(a * c, b * d)),
        (TOO_SMALL, Fraction((w + a) * (v + c), b * d)),
    ]
