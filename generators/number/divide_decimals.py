"""Dividing decimals: by whole numbers and tens, by decimals, from a known quotient, backwards.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the four operations,
including formal written methods, applied to integers, decimals …" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generators._turns import by_turns
from generators.number import _point_mistakes as m
from generators.number._division_numbers import Kind, challenge_fits, core_fits, support_fits
from generators.number._writing import decimal, work_out, worked
from itembank.items import kinds
from itembank.items.forms.form_rules import money_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted

_SHARED = (
    "friends share the cost of a bike repair equally. It costs",
    "gardeners share the price of a barrow equally. It costs",
    "swimmers share the cost of a minibus equally. It costs",
    "cooks share the price of a meal equally. It costs",
)
# A large amount, the small one that it is divided into, and their unit.
_FILLED = (
    ("A school kitchen has {a} of soup. A bowl holds {b}. How many bowls can be filled?", "l"),
    ("A bus depot has {a} of tape. Each sign needs {b}. For how many signs is that enough?", "m"),
    ("A market garden has {a} of seed. A packet holds {b}. How many packets can be filled?", "kg"),
    ("A swimming club has {a} of ribbon. Each badge needs {b}. For how many badges is that?", "m"),
)
_SHIFTS = ((1, 1), (2, 1), (2, 2), (0, 1), (1, 0), (2, 0), (0, 2), (1, 2))


@register
class DivideDecimals(Topic):
    """By whole numbers and tens; by decimals; from a known quotient, over a line, and boxes."""

    id = "number.divide-decimals"
    title = "Dividing decimals"
    statements = ("number.operations", "number.place-value")
    prerequisites = ("number.multiply-decimals",)
    misconceptions = (
        m.FORGETS_POINT,
        m.ONE_PLACE,
        m.ONE_TOO_MANY,
        m.WRONG_WAY,
        m.REMAINDER,
        m.DROPS_REMAINDER,
        m.MULTIPLIES,
        m.SAME_OPERATION,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(
                support_fits,
                kind=tuple(Kind)[:3],
                a=(*range(5, 100), *range(103, 990, 17)),
                b=range(1, 10),
            )
        ),
        Tier.CORE: kinds.with_claims_and_matches(
            Space(
                core_fits,
                kind=tuple(Kind)[3:7],
                a=(*range(3, 100), 101, 105, 110, 115),
                b=range(2, 10),
            ),
            only=lambda kind, *_: kind < 5,
        ),
        Tier.CHALLENGE: Space(
            challenge_fits,
            kind=tuple(Kind)[7:],
            a=(*range(2, 20), 21, 23, 27, 34, 36, 37, 43, 46, 58),
            b=(*range(12, 60), 62, 63, 67, 68, 72, 73, 78, 79, 82, 84, 86, 89, 93, 96, 98),
            shift=range(len(_SHIFTS)),
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, shift = (*values, 0)[:4]
        twin = (int(kind), a, b, shift)
        match kind:
            case Kind.BY_WHOLE:
                return _by_whole(a, b, twin)
            case Kind.BY_TENS:
                return _by_tens(a, b, twin)
            case Kind.WHOLES:
                return _wholes(a, b, twin)
            case Kind.BY_TENTHS:
                return _by_decimal(a * b, 1, b, 1, a, 0, twin)
            case Kind.BOTH:
                return _by_decimal(a * b, 2, b, 1, a, 1, twin)
            case Kind.HUNDREDTHS:
                return _by_decimal(a * b, 3, a, 2, b, 1, twin)
            case Kind.SHARED:
                return _share(5 * a, b, twin)
            case Kind.FILLED:
                return _fill(a, b, twin)
            case Kind.KNOWN:
                return _known(a, b, *_SHIFTS[shift], twin)
            case Kind.LINE:
                return _line(a, b // 10, b % 10, twin)
        return _box(a, b, twin)


def _by_whole(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return a number of tenths divided by b, which comes to a tenths."""
    first, key = decimal(a * b, 1), decimal(a, 1)
    asked = t.divide(first, t.Int(b))
    steps = worked(asked, (f"Divide {a * b} by {b}, and keep the point in its place.", key))
    return work_out(
        asked, key, steps, ((m.FORGETS_POINT, t.Int(a)), (m.ONE_TOO_MANY, decimal(a, 2))), twin
    )


def _by_tens(a: int, power: int, twin: tuple[object, ...]) -> Draft:
    """Return a number of tenths divided by 10, 100 or 1000."""
    first, key = decimal(a, 1), decimal(a, 1 + power)
    asked = t.divide(first, t.Int(10**power))
    steps = worked(asked, (f"Each digit moves {counted(power, 'place')} to the right.", key))
    wrong = (
        (m.WRONG_WAY, decimal(a * 10**power, 1)),
        (m.ONE_TOO_MANY, decimal(a, 2 + power)),
    )
    return work_out(asked, key, steps, wrong, twin)


def _wholes(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return a whole number divided by one that leaves a remainder; the decimal ends."""
    asked = t.divide(t.Int(a), t.Int(b))
    key = decimal(1000 * a // b, 3)
    whole, rest = divmod(a, b)
    steps = (
        Step(
            f"{b} goes into {a} {whole} {'time' if whole == 1 else 'times'}, remainder {rest}.",
            t.equals(t.Int(a), t.add(t.times(t.Int(whole), t.Int(b)), t.Int(rest))),
        ),
        Step(
            "Go on with tenths, hundredths and thousandths.",
            t.equals(t.divide(t.Int(rest), t.Int(b)), decimal(1000 * rest // b, 3)),
        ),
        Step("Put the two together.", t.equals(asked, key)),
    )
    wrong = (
        (m.REMAINDER, decimal(10 * whole + rest, 1)),
        (m.DROPS_REMAINDER, t.Int(whole)),
    )
    return work_out(asked, key, steps, wrong, twin)


def _by_decimal(
    top: int,
    top_places: int,
    bottom: int,
    bottom_places: int,
    quotient: int,
    places: int,
    twin: tuple[object, ...],
) -> Draft:
    """Return a decimal divided by one with fewer places or as many."""
    asked = t.divide(decimal(top, top_places), decimal(bottom, bottom_places))
    key = decimal(quotient, places)
    ten = 10**bottom_places
    steps = worked(
        asked,
        (
            f"Multiply both numbers by {ten}, so that you divide by a whole number.",
            t.divide(decimal(top * ten, top_places), t.Int(bottom)),
        ),
        ("Then divide.", key),
    )
    wrong = (
        (m.ONE_TOO_MANY, decimal(quotient, places + 1)),
        (m.ONE_PLACE, decimal(quotient * 10, places)),
    )
    return work_out(asked, key, steps, wrong, twin)


_NUMBERS = ("Three", "Four", "Five", "Six", "Seven", "Eight")


def _share(each: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return a price that b people share; each pays so many pence."""

    def pounds(pence: int) -> t.Node:
        return money_node(Fraction(pence, 100))

    text = by_turns(_SHARED, each // 5 + b)
    whole, key = pounds(each * b), pounds(each)
    asked = t.divide(whole, t.Int(b))
    # The whole pounds shared, and what is left of them written as pence.
    left = each * b // 100 % b
    wrong = slips(
        (m.REMAINDER, pounds(each * b // 100 // b * 100 + left)),
        (m.DROPS_REMAINDER, pounds(each * b // 100 // b * 100)),
        key=key,
    )
    steps = (
        Step(
            "Write the price in pence, and divide.",
            t.equals(t.divide(t.Int(each * b), t.Int(b)), t.Int(each)),
        ),
        Step("Write the answer in pounds.", t.equals(asked, key)),
    )
    shown = prompt(f"{{n}} {text} {{p}}. How much does each pay?", n=t.Int(b), p=whole)
    return Draft(shown, Find(asked), key, "money", steps, wrong, twin)


def _fill(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return how many times an amount of tenths goes into another: a times."""
    text, unit = by_turns(_FILLED, a + b)
    large, small = (t.Quantity(decimal(n, 1), unit) for n in (a * b, b))
    asked = t.divide(large, small)
    steps = (
        Step(
            "Find how often the small amount goes into the large one.",
            t.equals(t.divide(decimal(a * b, 1), decimal(b, 1)), t.divide(t.Int(a * b), t.Int(b))),
        ),
        Step("Then divide.", t.equals(t.divide(t.Int(a * b), t.Int(b)), t.Int(a))),
    )
    wrong = slips(
        (m.MULTIPLIES, decimal(a * b * b, 2)), (m.ONE_TOO_MANY, decimal(a, 1)), key=t.Int(a)
    )
    return Draft(
        prompt(text, a=large, b=small), Find(asked), t.Int(a), "integer", steps, wrong, twin
    )


def _known(a: int, b: int, down_top: int, down_bottom: int, twin: tuple[object, ...]) -> Draft:
    """Return a quotient to be found from one that is given: ab ÷ b = a."""
    given = t.equals(t.divide(t.Int(a * b), t.Int(b)), t.Int(a))
    asked = t.divide(decimal(a * b, down_top), decimal(b, down_bottom))
    up = down_bottom - down_top
    key = decimal(a * 10 ** max(up, 0), max(-up, 0))
    text = prompt("You are told that {g}. Use this to work out {e}.", g=given, e=asked)
    ten = 10 ** max(down_top, down_bottom)
    steps = worked(
        asked,
        (
            f"Multiply both numbers by {ten}.",
            t.divide(
                decimal(a * b * ten, down_top),
                decimal(b * ten, down_bottom),
            ),
        ),
        ("Compare with the division that is given.", key),
    )
    wrong = slips(
        (m.ONE_PLACE, decimal(a * 10 ** max(up + 1, 0), max(-up - 1, 0))),
        (m.ONE_TOO_MANY, decimal(a * 10 ** max(up - 1, 0), max(1 - up, 0))),
    )
    return Draft(text, Find(asked, (given,)), key, "decimal", steps, wrong, twin)


def _line(a: int, c: int, d: int, twin: tuple[object, ...]) -> Draft:
    """Return 0.a × 0.c over 0.0d."""
    below = decimal(d, 2)
    asked = t.Frac(t.times(decimal(a, 1), decimal(c, 1)), below)
    key = t.Int(a * c // d)
    steps = worked(
        asked,
        ("Multiply in the numerator.", t.Frac(decimal(a * c, 2), below)),
        ("Multiply numerator and denominator by 100.", t.Frac(t.Int(a * c), t.Int(d))),
        ("Then divide.", key),
    )
    wrong = (
        (m.ONE_TOO_MANY, decimal(a * c // d, 1)),
        (m.ONE_PLACE, t.Int(a * c // d * 10)),
    )
    return work_out(asked, key, steps, wrong, twin)


def _box(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Return □ ÷ 0.a = b tenths."""
    box, divisor, quotient = t.Blank(), decimal(a, 1), decimal(b, 1)
    asked = t.equals(t.divide(box, divisor), quotient)
    key = decimal(a * b, 2)
    steps = (
        Step(f"Multiply both sides by 0.{a}.", t.equals(box, t.times(quotient, divisor))),
        Step("Work it out.", t.equals(box, key)),
    )
    wrong = slips((m.SAME_OPERATION, Fraction(b, a)), (m.ONE_PLACE, decimal(a * b, 1)), key=key)
    text = prompt("Find the number that goes in the box: {e}.", e=asked)
    return Draft(text, Find(box, (asked,)), key, "decimal", steps, wrong, twin)
