"""Multiplying and dividing negative numbers: two, then powers and longer calculations.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the four operations …
applied to integers …, all both positive and negative" (from memory).
"""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction
from typing import Any

from generators.number import _signs as m
from generators.number._writing import apart, inside, worked
from itembank.items import kinds
from itembank.items.asks import TwoNumbers
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


class Kind(IntEnum):
    """What is multiplied or divided."""

    NEGATIVE_FIRST, NEGATIVE_SECOND, BOTH, DIVIDE = range(4)
    DIVIDE_BOTH, SQUARE, THREE, MIXED, BOX = range(4, 9)
    POWERS, BAR, LONG_BOX, TWO_NUMBERS = range(9, 13)


SIGNS = "Two negative numbers multiply to a positive one."
ONE_NEGATIVE = "One negative number and one positive multiply to a negative one."


def _answers(kind: int, a: int, b: int, c: int) -> tuple[int, tuple[Wrong, ...]]:
    """Return the answer, and what the mistakes come to."""
    match kind:
        case Kind.NEGATIVE_FIRST:
            return -a * b, ((m.LOSES_SIGN, a * b), (m.ADDS_INSTEAD, b - a))
        case Kind.NEGATIVE_SECOND:
            return -a * b, ((m.LOSES_SIGN, a * b), (m.READS_AS_TAKE, a - b))
        case Kind.BOTH:
            return a * b, ((m.KEEPS_MINUS, -a * b), (m.READS_AS_TAKE, -a - b))
        case Kind.DIVIDE:
            return -a, ((m.LOSES_SIGN, a), (m.ADDS_INSTEAD, -a * b - b))
        case Kind.DIVIDE_BOTH:
            return a, ((m.KEEPS_MINUS, -a), (m.ADDS_INSTEAD, -a * b + b))
        case Kind.SQUARE:
            return a * a + b, ((m.SQUARE_NEGATIVE, b - a * a), (m.DOUBLES, b - 2 * a))
        case Kind.THREE:
            return a * b * c, ((m.KEEPS_MINUS, -a * b * c), (m.READS_AS_TAKE, -a * b - c))
        case Kind.MIXED:
            return a + b * c, ((m.LOSES_SIGN, a - b * c), (m.LEFT_TO_RIGHT, -(a - b) * c))
        case Kind.BOX:
            return b, ((m.KEEPS_MINUS, -b), (m.ADDS_INSTEAD, a - a * b))
        case Kind.POWERS:
            return (
                -(a**3) - b * b,
                ((m.SQUARE_NEGATIVE, b * b - a**3), (m.DOUBLES, 2 * b - 3 * a)),
            )
        case Kind.BAR:
            # (−ac + bc)/(−c) × (−2)
            return (b - a) * 2, ((m.ALL_CANCEL, (a - b) * 2), (m.ADDS_SIZES, -(a + b) * 2))
        case Kind.LONG_BOX:
            # −a × □ + b = −c
            return (
                (b + c) // a,
                ((m.KEEPS_MINUS, -(b + c) // a), (m.NOT_UNDONE, Fraction(c - b, a))),
            )
    return a, ()


def _keep(kind: int, a: int, b: int, c: int) -> bool:
    key, wrong = _answers(kind, a, b, c)
    return apart(key, *(answer for _, answer in wrong))


def _support(kind: int, a: int, b: int) -> bool:
    """Keep products of the tables, of two different numbers."""
    return a != b and _keep(kind, a, b, 0)


def _core(kind: int, a: int, b: int, c: int) -> bool:
    """Keep quotients of two negatives, squares, three factors, and a product to be taken away."""
    match kind:
        case Kind.DIVIDE_BOTH | Kind.BOX:
            suits = c == 2 and a != b and a > 2 < b
        case Kind.SQUARE:
            suits = c == 2 and a > 2 and a != b
        case Kind.THREE:
            suits = a <= 6 and b <= 9 and c <= 6 and apart(a, b, c) and a * b * c <= 200
        case _:
            suits = apart(a, b, c) and b <= 9 and c <= 9
    return suits and _keep(kind, a, b, c)


def _challenge(kind: int, a: int, b: int, c: int) -> bool:
    """Keep powers of negatives, a fraction line, a longer box, and two numbers to be found."""
    match kind:
        case Kind.POWERS:
            suits = c == 2 and a <= 5 and b <= 12 and a != b
        case Kind.BAR:
            suits = a > b and 3 <= c <= 6 and apart(a, b, c) and a - b > 1
        case Kind.LONG_BOX:
            suits = (b + c) % a == 0 and a >= 3 and apart(a, b, c) and (b + c) // a > 2
        case _:
            # One is positive, the other negative; told apart from their sum by their product.
            return c == 2 and a != b and abs(a - b) > 1 and a > 2
    return suits and _keep(kind, a, b, c)


def _gone_wrong(kind: int, a: int, b: int, c: int = 0) -> tuple[kinds.WrongSolution, ...]:
    """Return how products and quotients of negative numbers are written wrongly."""
    wrong, A, B = kinds.WrongSolution, t.Int(a), t.Int(b)
    match kind:
        case Kind.NEGATIVE_FIRST:
            return (wrong(m.LOSES_SIGN, (t.times(A, B), t.Int(a * b))),)
        case Kind.NEGATIVE_SECOND:
            return (wrong(m.READS_AS_TAKE, (t.sub(A, B), t.num(a - b))),)
        case Kind.BOTH:
            return (
                wrong(m.READS_AS_TAKE, (t.sub(t.num(-a), B), t.num(-a - b))),
                wrong(m.KEEPS_MINUS, (t.Neg(t.Bracket(t.times(A, B))), t.num(-a * b))),
            )
        case Kind.DIVIDE:
            return (wrong(m.LOSES_SIGN, (t.divide(t.Int(a * b), B), A)),)
        case Kind.DIVIDE_BOTH:
            over = t.Neg(t.Bracket(t.divide(t.Int(a * b), B)))
            return (wrong(m.KEEPS_MINUS, (over, t.num(-a))),)
        case Kind.SQUARE:
            return (
                wrong(m.SQUARE_NEGATIVE, (t.add(t.num(-a * a), B), t.num(b - a * a))),
                wrong(m.DOUBLES, (t.add(t.num(-2 * a), B), t.num(b - 2 * a))),
            )
        case Kind.THREE:
            return (
                wrong(m.KEEPS_MINUS, (t.times(t.num(-a * b), inside(-c)), t.num(-a * b * c)), 2),
            )
        case Kind.MIXED:
            less = t.sub(A, inside(-b * c))
            return (
                wrong(m.LOSES_SIGN, (less, t.sub(A, t.Int(b * c)), t.num(a - b * c)), 2),
                wrong(m.LEFT_TO_RIGHT, (t.times(t.num(a - b), inside(-c)), t.num((b - a) * c))),
            )
        case Kind.POWERS:
            cube = t.num(-(a**3))
            lines = (t.sub(cube, inside(-b * b)), t.add(cube, t.Int(b * b)), t.num(b * b - a**3))
            double = (t.sub(t.num(-3 * a), inside(-2 * b)), t.num(2 * b - 3 * a))
            return wrong(m.SQUARE_NEGATIVE, lines), wrong(m.DOUBLES, double)
    return ()


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
                Space(_support, kind=tuple(Kind)[:4], a=range(2, 13), b=range(2, 13))
            ),
            _gone_wrong,
        ),
        Tier.CORE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(_core, kind=tuple(Kind)[4:9], a=range(2, 13), b=range(2, 13), c=range(2, 10)),
                only=lambda kind, *_: kind != 8,
            ),
            _gone_wrong,
        ),
        Tier.CHALLENGE: kinds.with_wrong_solutions(
            kinds.with_claims_and_matches(
                Space(
                    _challenge,
                    kind=tuple(Kind)[9:],
                    a=range(2, 13),
                    b=range(2, 13),
                    c=range(2, 19),
                ),
                only=lambda kind, *_: kind < 11,
            ),
            _gone_wrong,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c = (*values, 0)[:4]
        twin = (int(kind), a, b, c)
        if kind == Kind.TWO_NUMBERS:
            return _two_numbers(a, b, twin)
        key, wrong = _answers(kind, a, b, c)
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
