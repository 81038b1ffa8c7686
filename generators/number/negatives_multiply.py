"""Multiplying and dividing negative numbers: two, then powers and longer calculations.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the four operations …
applied to integers …, all both positive and negative" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators.number import _signs as m
from generators.number._multiplying_wrong_lines import gone_wrong
from generators.number._negatives_multiplied import (
    Kind,
    answers_of,
    challenge_fits,
    core_fits,
    support_fits,
)
from generators.number._writing import inside, worked
from itembank.items import kinds
from itembank.items.asks import TwoNumbers
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t

SIGNS = "Two negative numbers multiply to a positive one."
ONE_NEGATIVE = "One negative number and one positive multiply to a negative one."


@register
class NegativesMultiply(Topic):
    """Products and quotients of two; then squares and three factors; then longer ones."""

    id = "number.negatives-multiply"
    title = "Multiplying and dividing negative numbers"
    statements = ("number.operations",)
    prerequisites = ("number.negatives-add",)
    misconceptions = (
        m.LOSES_SIGN,
        m.ADDS_INSTEAD,
        m.READS_AS_TAKE,
        m.KEEPS_MINUS,
        m.SQUARE_NEGATIVE,
        m.DOUBLES,
        m.LEFT_TO_RIGHT,
        m.ALL_CANCEL,
        m.ADDS_SIZES,
        m.SIGNS_SWAPPED,
        m.NOT_UNDONE,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(support_fits, kind=tuple(Kind)[:4], a=range(2, 13), b=range(2, 13))
            ),
            gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    core_fits, kind=tuple(Kind)[4:9], a=range(2, 13), b=range(2, 13), c=range(2, 10)
                ),
                only=lambda kind, *_: kind != 8,
            ),
            gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    challenge_fits,
                    kind=tuple(Kind)[9:],
                    a=range(2, 13),
                    b=range(2, 13),
                    c=range(2, 19),
                ),
                only=lambda kind, *_: kind < 11,
            ),
            gone_wrong,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c = (*values, 0)[:4]
        twin = (int(kind), a, b, c)
        if kind == Kind.TWO_NUMBERS:
            return _two_numbers(a, b, twin)
        key, wrong = answers_of(kind, a, b, c)
        if kind in (Kind.BOX, Kind.LONG_BOX):
            return _box(kind, a, b, c, key, wrong, twin)
        asked, lines = _calculation(kind, a, b, c)
        *between, (last, _) = lines
        return Draft(
            prompt("Work out {e}.", e=asked),
            Find(asked),
            t.num(key),
            "integer",
            worked(asked, *between, (last, t.num(key))),
            slips(*wrong),
            twin,
        )


def _calculation(kind: int, a: int, b: int, c: int) -> tuple[t.Node, list[tuple[str, t.Node]]]:
    """Return the calculation as printed, and its working; the last line is the answer."""
    end = t.Int(0)
    match kind:
        case Kind.NEGATIVE_FIRST:
            return t.times(t.num(-a), t.Int(b)), [(ONE_NEGATIVE, end)]
        case Kind.NEGATIVE_SECOND:
            return t.times(t.Int(a), inside(-b)), [(ONE_NEGATIVE, end)]
        case Kind.BOTH:
            return t.times(t.num(-a), inside(-b)), [(SIGNS, end)]
        case Kind.DIVIDE:
            say = "A negative number divided by a positive one is negative."
            return t.divide(t.num(-a * b), t.Int(b)), [(say, end)]
        case Kind.DIVIDE_BOTH:
            say = "A negative number divided by a negative one is positive."
            return t.divide(t.num(-a * b), inside(-b)), [(say, end)]
        case Kind.SQUARE:
            return t.add(t.Power(inside(-a), t.Int(2)), t.Int(b)), [
                (
                    "Square first: write the number out twice.",
                    t.add(t.times(t.num(-a), inside(-a)), t.Int(b)),
                ),
                (SIGNS, t.add(t.Int(a * a), t.Int(b))),
                ("Then add.", end),
            ]
        case Kind.THREE:
            return t.times(t.num(-a), t.Int(b), inside(-c)), [
                (ONE_NEGATIVE, t.times(t.num(-a * b), inside(-c))),
                (SIGNS, end),
            ]
        case Kind.MIXED:
            return t.sub(t.Int(a), t.times(t.Int(b), inside(-c))), [
                (
                    "Multiply first.",
                    t.sub(t.Int(a), inside(-b * c)),
                ),
                ("Subtracting a negative number is adding.", t.add(t.Int(a), t.Int(b * c))),
                ("Then add.", end),
            ]
        case Kind.POWERS:
            cube, square = t.Power(inside(-a), t.Int(3)), t.Power(inside(-b), t.Int(2))
            return t.sub(cube, square), [
                (
                    "Three negative factors multiply to a negative number.",
                    t.sub(t.num(-(a**3)), square),
                ),
                (
                    "Two negative factors multiply to a positive number.",
                    t.sub(t.num(-(a**3)), t.Int(b * b)),
                ),
                ("Then subtract.", end),
            ]
    # (−ac + bc)/(−c) × (−2): its numerator is negative.
    top = t.add(t.num(-a * c), t.Int(b * c))
    return t.times(t.Frac(top, t.num(-c)), inside(-2)), [
        ("Work out the numerator.", t.times(t.Frac(t.num((b - a) * c), t.num(-c)), inside(-2))),
        (
            "A negative number divided by a negative one is positive.",
            t.times(t.Int(a - b), inside(-2)),
        ),
        (ONE_NEGATIVE, end),
    ]


def _box(
    kind: int,
    a: int,
    b: int,
    c: int,
    key: int,
    wrong: tuple[Wrong, ...],
    twin: tuple[object, ...],
) -> Draft:
    box = t.Blank()
    steps: tuple[Step, ...]
    if kind == Kind.BOX:
        asked = t.equals(t.times(box, inside(-a)), t.num(-a * b))
        steps = (
            Step(f"Divide both sides by −{a}.", t.equals(box, t.divide(t.num(-a * b), inside(-a)))),
            Step(
                "A negative number divided by a negative one is positive.",
                t.equals(box, t.num(key)),
            ),
        )
    else:
        product = t.times(t.num(-a), box)
        asked = t.equals(t.add(product, t.Int(b)), t.num(-c))
        steps = (
            Step(f"Subtract {b} from both sides.", t.equals(product, t.num(-b - c))),
            Step(f"Divide both sides by −{a}.", t.equals(box, t.divide(t.num(-b - c), inside(-a)))),
            Step(
                "A negative number divided by a negative one is positive.",
                t.equals(box, t.num(key)),
            ),
        )
    text = prompt("Find the number that goes in the box: {e}.", e=asked)
    return Draft(text, Find(box, (asked,)), t.num(key), "integer", steps, slips(*wrong), twin)


def _two_numbers(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return: find a and −b from their sum and their product."""
    total, product = t.num(a - b), t.num(-a * b)
    key = t.Listing((t.Int(a), t.num(-b)))
    text = prompt("Write two numbers whose sum is {s} and product is {p}.", s=total, p=product)
    steps = (
        Step(
            "The product is negative, so one number is negative and the other is not.",
            t.equals(t.times(t.Int(a), inside(-b)), product),
        ),
        Step("Check their sum.", t.equals(t.add(t.Int(a), inside(-b)), total)),
        Step("So these are the two numbers.", key),
    )
    wrong = slips(
        (m.SIGNS_SWAPPED, t.Listing((t.num(-a), t.Int(b)))),
        (m.LOSES_SIGN, t.Listing((t.Int(a), t.Int(b)))),
    )
    return Draft(text, TwoNumbers(total, product), key, "amounts", steps, wrong, twin)
