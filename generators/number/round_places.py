"""Rounding to decimal places, and to the nearest 10, 100, 1000 or whole number.

The programme of study for key stage 3 (England, 2013) asks pupils to "round numbers and measures
to an appropriate degree of accuracy [for example, to a number of decimal places or significant
figures]" (from memory).
"""

from __future__ import annotations

from enum import IntEnum
from fractions import Fraction
from math import gcd
from typing import Any

from generators._turns import by_turns
from generators.number import _rounding as r
from generators.number._rounding import Number, rounded
from itembank.items import kinds
from itembank.items.item import Draft, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted


class Kind(IntEnum):
    """What is rounded, and to what."""

    ONE_PLACE, TENS, HUNDREDS, WHOLE = range(4)
    TWO_PLACES, CARRIED, STORY, TO_ONE = range(4, 8)
    FRACTION, THREE_PLACES, SHARED = range(8, 11)


def _of(kind: int, a: int, b: int) -> tuple[Number, int, int]:
    """Return the number, the places asked for, and a place that is taken by mistake."""
    match kind:
        case Kind.ONE_PLACE:
            return Number(a, 2), 1, 0
        case Kind.TENS:
            return Number(a, 0), -1, -2
        case Kind.HUNDREDS:
            return Number(a, 0), -2, -1
        case Kind.WHOLE:
            return Number(a, 1), 0, -1
        case Kind.TWO_PLACES:
            return Number(a * 100 + b, 4), 2, 1 if b % 2 else 3
        case Kind.TO_ONE:
            return Number(a * 10 + b % 10, 3), 1, 0 if b % 2 else 2
        case Kind.CARRIED:
            # A 9 in the place that is asked for, and more than half behind it.
            return Number(a * 1000 + 900 + b, 4), 2, 1
        case Kind.STORY:
            return Number(a * 100 + b, 0), -2 if b % 2 else -3, -1 if b % 2 else -2
    return Number(a * 100 + b, 4), 3, 2


def _mistakes(kind: int, a: int, b: int) -> list[r.Wrong]:
    number, places, other = _of(kind, a, b)
    key = rounded(number, places)
    return r.told_apart(key, r.basic_mistakes(number, places, other))


def _plain(kind: int, a: int, b: int) -> bool:
    number, _, _ = _of(kind, a, b)
    return number.units % 10 != 0 and len(_mistakes(kind, a, b)) >= 2


def _support(kind: int, a: int) -> bool:
    """Keep numbers of three digits, with one place to look at."""
    match kind:
        case Kind.TENS:
            suits = a % 3 == 0
        case Kind.HUNDREDS:
            suits = a >= 150 and a % 100 not in (0, 50) and a % 3 == 1
        case _:
            suits = a >= 110 and a % 3 == 2
    return suits and _plain(kind, a, 0)


def _core(kind: int, a: int, b: int) -> bool:
    """Keep numbers with several digits too many, those that carry, and large ones in stories."""
    match kind:
        case Kind.TWO_PLACES:
            suits = a % 10 != 9
        case Kind.TO_ONE:
            suits = a >= 110 and b < 10
        case Kind.CARRIED:
            suits = 50 <= b < 100 and a % 10 != 0 and b % 2 == 1
        case _:
            suits = a >= 104 and b % 5 != 0
    return suits and _plain(kind, a, b)


def _challenge(kind: int, a: int, b: int) -> bool:
    """Keep fractions as decimals, numbers that carry on and on, and lengths that are shared."""
    match kind:
        case Kind.FRACTION:
            good = 3 <= b <= 13 and a < b and gcd(a, b) == 1 and b in (3, 6, 7, 9, 11, 12, 13)
            return good and len(_of_fraction(a, b)) >= 2
        case Kind.SHARED:
            good = b in (3, 6, 7, 9, 11) and a > 2 * b and a % b != 0 and a <= 60
            return good and len(_of_shared(a, b)) >= 2
    return a >= 60 and a % 10 == 9 and b % 10 >= 5 and b >= 90 and _plain(kind, a, b)


def _of_fraction(a: int, b: int) -> list[r.Wrong]:
    key = _quotient(a, b, 2)
    low = Number(100 * a // b, 2)
    return r.told_apart(
        key,
        [
            (r.CUTS_OFF, low) if key != low else (r.ALWAYS_UP, Number(low.units + 1, 2)),
            (r.OTHER_WAY, _quotient(b, a, 2)),
            (r.WRONG_PLACE, _quotient(a, b, 1)),
        ],
    )


def _of_shared(a: int, b: int) -> list[r.Wrong]:
    key = _quotient(a, b, 2)
    low = Number(100 * a // b, 2)
    whole, rest = divmod(a, b)
    return r.told_apart(
        key,
        [
            (r.CUTS_OFF, low) if key != low else (r.ALWAYS_UP, Number(low.units + 1, 2)),
            (r.REMAINDER, Number(whole * 10 ** len(str(rest)) + rest, len(str(rest)))),
        ],
    )


def _quotient(a: int, b: int, places: int) -> Number:
    """Return a ÷ b rounded; a quotient that does not end is never halfway."""
    exact = Fraction(a * 10**places, b)
    return Number(int(exact + Fraction(1, 2)), places)


# What is counted in large numbers: so many of something in a year, or at a time.
_STORIES = (
    "A bus depot used {n} litres of fuel in a year.",
    "A swimming club’s pool holds {n} litres of water.",
    "A market garden sold {n} lettuces in a year.",
    "A library lent {n} books in a year.",
    "A school kitchen served {n} meals in a year.",
    "A bus went {n} kilometres in a year.",
)
_SHARED = (
    "A {a} metre roll of fleece is cut into {b} equal pieces. How long is each piece, in metres, "
    "to 2 decimal places?",
    "A sack of {a} kilograms of seed is divided equally among {b} gardeners. How many kilograms "
    "does each get, to 2 decimal places?",
    "A tank of {a} litres of water is shared equally among {b} beds. How many litres does each bed "
    "get, to 2 decimal places?",
    "A {a} metre cable is cut into {b} equal lengths. How long is each length, in metres, to 2 "
    "decimal places?",
)


@register
class RoundPlaces(Topic):
    """One digit too many; several of them, and carrying; fractions and what is shared."""

    id = "number.round-places"
    title = "Rounding to decimal places and to the nearest 10, 100 or whole number"
    statements = ("number.rounding",)
    prerequisites = ("number.order-decimals",)
    misconceptions = (
        r.CUTS_OFF,
        r.ALWAYS_UP,
        r.WRONG_PLACE,
        r.DROPS_NOUGHTS,
        r.IN_STEPS,
        r.NO_CARRY,
        r.OTHER_WAY,
        r.REMAINDER,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=tuple(Kind)[:4], a=range(102, 990))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=tuple(Kind)[4:8],
                a=(*range(3, 100, 7), *range(104, 990, 19)),
                b=(*range(3, 100, 6), 16, 28, 46, 49, 58, 67, 76, 94, 97),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=tuple(Kind)[8:],
                a=(*range(1, 61), *range(69, 800, 30)),
                b=(3, 6, 7, 9, 11, 12, 13, 95, 96, 97, 98),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b = (*values, 0)[:3]
        twin = (int(kind), a, b)
        if kind in (Kind.FRACTION, Kind.SHARED):
            return _divided(kind, a, b, twin)
        number, places, _ = _of(kind, a, b)
        key = rounded(number, places)
        node = number.node
        if kind == Kind.STORY:
            story = by_turns(_STORIES, a + b)
            text = prompt(f"{story} Round this to {_to(places)}.", n=node)
        else:
            text = prompt(f"Round {{n}} to {_to(places)}.", n=node)
        ask = Round(node, "places", places)
        if places <= 0:
            ask = Round(node, "nearest", 10**-places)
        wrong = slips(*r.nodes(_mistakes(kind, a, b)))
        return Draft(text, ask, key.node, "rounded", _steps(number, places), wrong, twin)


def _to(places: int) -> str:
    if places > 0:
        return counted(places, "decimal place")
    return "the nearest whole number" if places == 0 else f"the nearest {10**-places}"


def _steps(number: Number, places: int) -> tuple[Step, ...]:
    low, key = r.cut(number, places), rounded(number, places)
    high = Number(low.units + 1, places)
    next_digit = number.units // 10 ** (number.places - places - 1) % 10
    way = "5 or more: round up" if key != low else "less than 5: round down"
    return (
        Step(f"It is between {low.said} and {high.said}."),
        Step(f"The next digit is {next_digit}, which is {way}.", key.node),
    )


def _divided(kind: int, a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a quotient that does not end, to two decimal places."""
    key = _quotient(a, b, 2)
    digits = 1000 * a // b
    if kind == Kind.FRACTION:
        target: t.Node = t.frac(a, b)
        text = prompt("Write {f} as a decimal, rounded to 2 decimal places.", f=target)
        wrong = _of_fraction(a, b)
    else:
        first, second = t.Int(a), t.Int(b)
        target = t.divide(first, second)
        text = prompt(by_turns(_SHARED, a + b), a=first, b=second)
        wrong = _of_shared(a, b)
    way = "5 or more: round up" if digits % 10 >= 5 else "less than 5: round down"
    steps = (
        Step(
            f"Divide {a} by {b} as far as the third decimal place: {Number(digits, 3).said}…",
        ),
        Step(f"The third is {digits % 10}, which is {way}.", key.node),
    )
    return Draft(
        text,
        Round(target, "places", 2),
        key.node,
        "rounded",
        steps,
        slips(*r.nodes(wrong)),
        twin,
    )
