"""Rounding to significant figures: large numbers, small ones, noughts inside, and carrying.

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
from generators.number._writing import decimal
from itembank.items import kinds
from itembank.items.item import Draft, Round, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t
from itembank.text.in_words import counted


class Kind(IntEnum):
    """What is rounded, and to how many figures."""

    LARGE, MIXED, SMALL, TWO = range(4)
    INNER, SMALL_TWO, CARRIED, STORY = range(4, 8)
    FRACTION, PRODUCT, NINES = range(8, 11)


def _of(kind: int, a: int, b: int) -> tuple[Number, int]:
    """Return the number, and how many figures are asked for."""
    match kind:
        case Kind.LARGE:
            return Number(a * 10 + b, 0), 1
        case Kind.MIXED:
            return Number(a * 10 + b, 2), 1
        case Kind.SMALL:
            return Number(a, 4 if b % 2 else 5), 1
        case Kind.TWO:
            return Number(a * 10 + b, 0), 2
        case Kind.INNER:
            # Digits with a nought between: a 0 b, in hundredths or thousandths.
            return Number(a // 10 * 1000 + a % 10 * 10 + b, 2 if b % 2 else 3), 3
        case Kind.SMALL_TWO:
            return Number(a * 10 + b, 5 if b % 2 else 6), 2
        case Kind.CARRIED:
            # Two figures, then a 9 and what takes it up: 29.97 to 3 figures.
            return Number(a * 100 + 90 + b, 2 if b % 2 else 3), 3
        case Kind.STORY:
            return Number(a * 1000 + b * 100 + a % 97, 0), 2 if b % 2 else 1
    return Number(9900 + a, 2 if b % 2 else 4), 2


def _first(number: Number) -> int:
    """Return the decimal place of the first figure: 0 for ones, 1 for tenths, −1 for tens."""
    return number.places - len(str(number.units)) + 1


def _place(number: Number, figures: int) -> int:
    return _first(number) + figures - 1


def _key(number: Number, figures: int) -> Number:
    """Return a number rounded, with the places that its figures need: 99.6 to two is 100."""
    found = rounded(number, _place(number, figures))
    return rounded(found, _place(found, figures))


def _mistakes(number: Number, figures: int) -> list[r.Wrong]:
    key, place = _key(number, figures), _place(number, figures)
    first = _first(number)
    digits = str(number.units)
    wrong = []
    if place < 0:
        wrong.append((r.DROPS_NOUGHTS, Number(key.units, 0)))
    if first > 0:
        # 0.0382 with the nought before the point as its first figure
        wrong.append((r.LEADING_NOUGHTS, rounded(number, figures - 1)))
    wrong += r.basic_mistakes(number, place, number.places)[:2]
    if first >= 0:
        wrong.append((r.COUNTS_PLACES, rounded(number, min(figures, number.places))))
    elif number.places:
        wrong.append((r.WRONG_PLACE, rounded(number, 0)))
    if "0" in digits[:figures]:
        wrong.append((r.SKIPS_NOUGHTS, rounded(number, min(place + 1, number.places))))
    if place > 0 and digits[figures - 1] == "9" and key.value > r.cut(number, place).value:
        low = r.cut(number, place)
        wrong.append((r.NO_CARRY, Number(low.units // 10 * 100 + 10, place + 1)))
    return r.told_apart(key, wrong)


def _plain(kind: int, a: int, b: int) -> bool:
    number, figures = _of(kind, a, b)
    return (
        number.units % 10 != 0
        and len(str(number.units)) > figures
        and len(_mistakes(number, figures)) >= 2
    )


def _support(kind: int, a: int, b: int) -> bool:
    """Keep numbers of two to four figures."""
    match kind:
        case Kind.LARGE:
            suits = a >= 110 and a % 2 == 1 and a // 10 % 10 != 9
        case Kind.MIXED:
            suits = a >= 110 and a % 2 == 0 and a // 100 != 9
        case Kind.SMALL:
            suits = b <= 2 and a // 10 % 10 != 9
            return suits and _plain(kind, a, b)
        case _:
            suits = a >= 110 and a % 10 != 9
    return suits and a % 7 == b % 7 and _plain(kind, a, b)


def _core(kind: int, a: int, b: int) -> bool:
    """Keep noughts inside and in front, numbers that carry, and large numbers in stories."""
    match kind:
        case Kind.INNER:
            suits = a < 100 and a % 10 != 0
        case Kind.SMALL_TWO:
            suits = a < 100 or a % 100 // 10 == 0
        case Kind.CARRIED:
            suits = a < 100 and a % 10 != 0 and b >= 5
        case _:
            suits = a >= 110 and a % 3 == 0 and b != 9
    return suits and _plain(kind, a, b)


def _challenge(kind: int, a: int, b: int) -> bool:
    """Keep fractions as decimals, products that are rounded, and numbers of nines."""
    match kind:
        case Kind.FRACTION:
            good = b in (3, 6, 7, 9, 11, 12, 13, 17, 19, 23) and a < b and gcd(a, b) == 1
            return good and len(_of_fraction(a, b)) >= 2
        case Kind.PRODUCT:
            good = a >= 12 and b >= 12 and a % 10 != 0 != b % 10 and a <= 99
            return good and len(_of_product(a, b)) >= 2
    return 50 <= a < 99 and a % 10 != 0 and b <= 2 and _plain(kind, a, b)


def _quotient(a: int, b: int, figures: int) -> Number:
    exact, first = Fraction(a, b), 0
    while exact * 10**first < 1:
        first += 1
    place = first + figures - 1
    found = Number(int(exact * 10**place + Fraction(1, 2)), place)
    return rounded(found, _place(found, figures))


def _of_fraction(a: int, b: int) -> list[r.Wrong]:
    key = _quotient(a, b, 2)
    low = Number(int(Fraction(a, b) * 10**key.places), key.places)
    tenths = Number(int(Fraction(a, b) * 10 + Fraction(1, 2)), 1)
    return r.told_apart(
        key,
        [
            (r.CUTS_OFF, low) if key != low else (r.ALWAYS_UP, Number(low.units + 1, key.places)),
            (r.OTHER_WAY, rounded(Number(int(Fraction(b, a) * 1000), 3), 1)),
            (r.LEADING_NOUGHTS, tenths),
        ],
    )


def _product(a: int, b: int) -> Number:
    """Return a tenths times b ten-thousandths: 4.5 × 0.0203, in units of the last place."""
    return Number(a * b, 5)


def _of_product(a: int, b: int) -> list[r.Wrong]:
    exact = _product(a, b)
    if len(str(exact.units)) < 4:
        return []
    key, place = _key(exact, 2), _place(exact, 2)
    early = Number(_key(Number(a, 1), 1).units * _key(Number(b, 4), 1).units, 0)
    shift = _key(Number(a, 1), 1).places + _key(Number(b, 4), 1).places
    return r.told_apart(
        key,
        [
            (r.TOO_EARLY, Number(early.units, shift)),
            *r.basic_mistakes(exact, place, exact.places)[:1],
            (r.COUNTS_PLACES, rounded(exact, 2)),
        ],
    )


_STORIES = (
    "A swimming club’s pool holds {n} litres of water.",
    "A bus depot used {n} litres of fuel in a year.",
    "A market garden sold {n} carrots in a year.",
    "A library’s website had {n} visits in a year.",
    "The buses of a depot went {n} kilometres in a year.",
)


@register
class RoundFigures(Topic):
    """One figure; two and three with noughts among them; then fractions, products and nines."""

    id = "number.round-figures"
    title = "Rounding to significant figures"
    statements = ("number.rounding",)
    prerequisites = ("number.round-places",)
    misconceptions = (
        r.DROPS_NOUGHTS,
        r.LEADING_NOUGHTS,
        r.CUTS_OFF,
        r.ALWAYS_UP,
        r.IN_STEPS,
        r.COUNTS_PLACES,
        r.WRONG_PLACE,
        r.SKIPS_NOUGHTS,
        r.NO_CARRY,
        r.OTHER_WAY,
        r.TOO_EARLY,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=tuple(Kind)[:4], a=range(110, 990), b=range(1, 10))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=tuple(Kind)[4:8],
                a=(*range(11, 100), *range(101, 990, 8)),
                b=range(1, 10),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=tuple(Kind)[8:],
                a=range(1, 99),
                b=(*range(1, 10), 11, 12, 13, 17, 19, 23, 38, 56, 74, 92, 203, 306, 408),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b = values
        twin = (int(kind), a, b)
        if kind == Kind.FRACTION:
            return _fraction(a, b, twin)
        if kind == Kind.PRODUCT:
            return _multiplied(a, b, twin)
        number, figures = _of(kind, a, b)
        node = number.node
        to = counted(figures, "significant figure")
        if kind == Kind.STORY:
            text = prompt(f"{by_turns(_STORIES, a + b)} Round this to {to}.", n=node)
        else:
            text = prompt(f"Round {{n}} to {to}.", n=node)
        return Draft(
            text,
            Round(node, "figures", figures),
            _key(number, figures).node,
            "rounded",
            _steps(number, figures, tier is Tier.SUPPORT),
            slips(*r.nodes(_mistakes(number, figures))),
            twin,
        )


_ORDINALS = ("first", "second", "third")


def _steps(number: Number, figures: int, brief: bool = False) -> tuple[Step, ...]:
    digits = str(number.units)
    key = _key(number, figures)
    digit, after = digits[figures - 1], int(digits[figures])
    way = "5 or more: round up" if after >= 5 else "less than 5: round down"
    if _place(number, figures) < 0:
        way += ", and fill up with noughts"
    first = f"The {_ORDINALS[figures - 1]} significant figure is the {digit}"
    if _first(number) > 0:
        first += "; noughts at the front do not count"
    last = f"The next digit is {after}, which is {way}."
    if brief:
        return (Step(f"{first}. {last}", key.node),)
    return Step(f"{first}."), Step(last, key.node)


def _fraction(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    key = _quotient(a, b, 2)
    target = t.frac(a, b)
    places = key.places + 1
    digits = Number(a * 10**places // b, places)
    last = digits.units % 10
    way = "5 or more: round up" if last >= 5 else "less than 5: round down"
    steps = (
        Step(f"Divide {a} by {b} as far as the third figure: {digits.said}…"),
        Step(f"The third is {last}, which is {way}.", key.node),
    )
    return Draft(
        prompt("Write {f} as a decimal, rounded to 2 significant figures.", f=target),
        Round(target, "figures", 2),
        key.node,
        "rounded",
        steps,
        slips(*r.nodes(_of_fraction(a, b))),
        twin,
    )


def _multiplied(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    exact = _product(a, b)
    key = _key(exact, 2)
    target = t.times(decimal(a, 1), decimal(b, 4))
    steps = (
        Step("Multiply first.", t.equals(target, decimal(exact.units, 5))),
        *_steps(exact, 2),
    )
    return Draft(
        prompt("Work out {e}. Give your answer to 2 significant figures.", e=target),
        Round(target, "figures", 2),
        key.node,
        "rounded",
        steps,
        slips(*r.nodes(_of_product(a, b))),
        twin,
    )
