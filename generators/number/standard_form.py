"""Standard form: to and from ordinary numbers, put right, and in order.

The programme of study for key stage 3 (England, 2013) asks pupils to "interpret and compare numbers
in standard form A × 10ⁿ, 1 ≤ A < 10, where n is a positive or negative integer or zero" (from
memory). Sizes of real things below are round figures from memory.
"""

from __future__ import annotations

from typing import Any

from generators.number import _standard as m
from generators.number._standard import Standard, standard
from generators.number._standard_numbers import (
    FACTS,
    Kind,
    challenge_fits,
    core_fits,
    digits_of,
    four_numbers,
    orders_of,
    support_fits,
    three_numbers,
)
from generators.number._writing import decimal, worked
from itembank.items import kinds
from itembank.items.item import Draft, Find, Order, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


def _keep_odd(a: int, b: int, n: int) -> bool:
    """Keep numbers of two figures, large and small."""
    return a != b


def _odd(topic: Topic, tier: Tier, a: int, b: int, n: int) -> Draft:
    """Return one number in three writings, and one whose index counts the noughts."""
    number = Standard(10 * a + b, 1, n)
    whole = Standard(10 * a + b, 0, n - 1)
    noughts = Standard(10 * a + b, 1, n - 1 if n > 0 else n + 1)
    return kinds.odd_one_out(
        noughts.node,
        (number.ordinary, number.node, whole.node),
        mistakes=((m.COUNTS_NOUGHTS, 1),),
        steps=(
            Step("Write it out.", t.equals(number.node, number.ordinary)),
            Step("Write it out.", t.equals(whole.node, number.ordinary)),
        ),
        twin=(a, b, n),
    )


@register
class StandardForm(Topic):
    """Short numbers, both ways; longer ones, real sizes, orders; then what is to be put right."""

    id = "number.standard-form"
    title = "Standard form"
    statements = ("number.standard-form",)
    prerequisites = ("number.powers-and-roots",)
    misconceptions = (
        m.COUNTS_NOUGHTS,
        m.TOO_LARGE,
        m.INDEX_IN_NOUGHTS,
        m.LOSES_MINUS,
        m.NEGATIVE_NUMBER,
        m.FIRST_ONLY,
        m.MINUS_IGNORED,
        m.WRONG_WAY,
        m.KEEPS_INDEX,
        m.DIVIDES_FOR_TIMES,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_claims_and_matches(
            Space(
                support_fits,
                kind=tuple(Kind)[:4],
                a=range(1, 10),
                b=range(10),
                n=(*range(-6, -2), *range(3, 8)),
            ),
            lambda kind, *_: kind,
        ).also(_odd, _keep_odd, a=range(1, 10), b=(1, 3, 6, 8), n=(-5, -4, -3, 4, 5, 6)),
        Tier.CORE: kinds.with_matches(
            kinds.with_claims(
                Space(
                    core_fits,
                    kind=tuple(Kind)[4:8],
                    a=range(1, 10),
                    b=(12, 13, 19, 24, 27, 36, 45, 58, 61, 74, 86, 93),
                    n=range(-6, 18),
                ),
                only=lambda kind, *_: kind != Kind.THREE,
            ),
            lambda kind, *_: kind,
            only=lambda kind, *_: kind not in (Kind.FACT, Kind.THREE),
        ),
        Tier.CHALLENGE: kinds.with_claims_and_matches(
            Space(
                challenge_fits,
                kind=tuple(Kind)[8:],
                a=range(1, 10),
                b=(12, 13, 15, 16, 18, 24, 27, 36, 45, 58, 61, 74, 86, 93),
                n=range(-7, 9),
            ),
            lambda kind, *_: kind,
            only=lambda kind, *_: kind != Kind.FOUR,
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, n = values
        twin = (int(kind), a, b, n)
        match kind:
            case Kind.TO_LARGE | Kind.TO_SMALL:
                number = standard(digits_of(a, b), n - (1 if b else 0))
                return _to(number, "Write {n} in standard form.", twin)
            case Kind.TO_LONG:
                return _to(standard(100 * a + b, n - 2), "Write {n} in standard form.", twin)
            case Kind.FROM_LARGE | Kind.FROM_SMALL:
                number = standard(digits_of(a, b), n - (1 if b else 0))
                return _from(number, "Write {n} as an ordinary number.", twin)
            case Kind.FROM_LONG:
                return _from(standard(100 * a + b, n - 2), "Write {n} as an ordinary number.", twin)
            case Kind.FACT:
                words, digits, exponent = FACTS[n]
                number = standard(digits, exponent)
                if a == 1:
                    return _to(number, f"{words} Write this in standard form.", twin)
                return _from(number, f"{words} Write this as an ordinary number.", twin)
            case Kind.PUT_RIGHT:
                return _put_right(a, b, n, twin)
            case Kind.FRACTION:
                return _fraction(a, b, n, twin)
        return _in_order(
            three_numbers(a, b, n) if kind == Kind.THREE else four_numbers(a, b, n), twin
        )


_TIMES = ("", "once", "twice", "three times", "four times", "five times", "six times")


def _far(index: int) -> str:
    times = abs(index)
    return _TIMES[times] if times < len(_TIMES) else f"{times} times"


def _to(number: Standard, words: str, twin: tuple[object, ...]) -> Draft:
    """Ask for an ordinary number in standard form."""
    asked, key = number.ordinary, number.node
    digits, places, index = number
    if index > 0:
        noughts = index - places
        wrong: list[Wrong] = [
            (m.COUNTS_NOUGHTS, Standard(digits, places, noughts).node if places else None),
            (
                m.TOO_LARGE,
                Standard(digits * (1 if places else 10), max(places - 1, 0), index - 1).node,
            ),
            (m.WRONG_WAY, Standard(digits, places, index + 1).node),
        ]
        say = f"To get back, multiply by 10 {_far(index)}."
    else:
        wrong = [
            (m.LOSES_MINUS, Standard(digits, places, -index).node),
            (m.COUNTS_NOUGHTS, Standard(digits, places, index + 1).node),
            (m.TOO_LARGE, Standard(digits, places - 1, index - 1).node if places else None),
        ]
        say = f"To get back, divide by 10 {_far(index)}."
    steps = (Step(f"The first number is at least 1 and less than 10. {say}", t.equals(asked, key)),)
    text = prompt(words, n=asked)
    return Draft(text, Find(asked), key, "standard-form", steps, slips(*wrong), twin)


def _from(number: Standard, words: str, twin: tuple[object, ...]) -> Draft:
    """Ask for a number in standard form as an ordinary number."""
    asked, key = number.node, number.ordinary
    digits, places, index = number
    power = t.Power(t.Int(10), t.num(index))
    if index > 0:
        wrong: list[Wrong] = [
            (m.INDEX_IN_NOUGHTS, t.Int(digits * 10**index) if places else None),
            (m.DIVIDES_FOR_TIMES, decimal(digits, places + index)),
        ]
        lines: tuple[Step, ...] = (
            Step("Write the power of 10 out.", t.equals(power, t.Int(10**index))),
            Step("Multiply.", t.equals(t.times(number.first, t.Int(10**index)), key)),
        )
        if not places:
            wrong.append((m.COUNTS_NOUGHTS, t.Int(digits * 10 ** (index - 1))))
    else:
        down = t.divide(number.first, t.Int(10**-index))
        wrong = [
            (m.INDEX_IN_NOUGHTS, decimal(digits, places - index + 1)),
            (m.NEGATIVE_NUMBER, t.Neg(Standard(digits, places, -index).ordinary)),
        ]
        lines = (
            Step(
                f"The index {_minus(index)} means: divide by 10 {_far(index)}.",
                t.equals(asked, down),
            ),
            Step("Divide.", t.equals(down, key)),
        )
    if len(str(digits)) <= 2:
        do = "multiply" if index > 0 else "divide"
        say = f"The index {_minus(index)} means: {do} by 10 {_far(index)}."
        lines = (Step(say, t.equals(asked, key)),)
    form = "integer" if isinstance(key, t.Int) else "decimal"
    return Draft(prompt(words, n=asked), Find(asked), key, form, lines, slips(*wrong), twin)


def _said(number: Standard) -> str:
    digits = str(number.digits)
    return f"{digits[0]}.{digits[1:]}" if digits[1:] else digits


def _minus(index: int) -> str:
    return f"−{-index}" if index < 0 else str(index)


def _put_right(a: int, b: int, n: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a number that is nearly in standard form, in standard form."""
    digits = 100 * a + b
    large = (a + b + n) % 2 == 0
    given = Standard(digits, 1 if large else 3, n)
    number = standard(digits, n - given.places)
    asked, key = given.node, number.node
    split = t.times if large else t.divide
    after = "One more ten goes into the power." if large else "One ten fewer is in the power."
    steps = (
        Step(
            "Write the first number with one figure before the point.",
            t.equals(given.first, split(number.first, t.Int(10))),
        ),
        Step(after, t.equals(asked, key)),
    )
    wrong = slips(
        (m.WRONG_WAY, Standard(number.digits, number.places, 2 * n - number.power).node),
        (m.KEEPS_INDEX, Standard(number.digits, number.places, n).node),
    )
    text = prompt("Write {n} in standard form.", n=asked)
    return Draft(text, Find(asked), key, "standard-form", steps, wrong, twin)


_BOTTOMS = {12: 4, 13: 5, 15: 8, 16: 2}


def _fraction(a: int, b: int, n: int, twin: tuple[object, ...]) -> Draft:
    """Ask for a fraction of a power of 10 in standard form: 7/4000."""
    bottom = _BOTTOMS[b]
    asked = t.Frac(t.Int(a), t.Int(bottom * 10**n))
    number = standard(a * 1000 // bottom, -3 - n)
    quotient = decimal(a * 1000 // bottom, 3)
    key = number.node
    over = t.Frac(quotient, t.Int(10**n))
    steps = worked(
        asked,
        (f"Divide {a} by {bottom}.", over),
        ("Write it as a decimal.", number.ordinary),
        ("Write the decimal in standard form.", key),
    )
    wrong = slips(
        (m.LOSES_MINUS, Standard(number.digits, number.places, -number.power).node),
        (m.COUNTS_NOUGHTS, Standard(number.digits, number.places, number.power + 1).node),
    )
    text = prompt("Write {n} in standard form.", n=asked)
    return Draft(text, Find(asked), key, "standard-form", steps, wrong, twin)


def _in_order(things: tuple[Standard, ...], twin: tuple[object, ...]) -> Draft:
    """Ask for numbers in order of size, smallest first."""
    shown = {thing: thing.ordinary if not thing.power else thing.node for thing in things}

    def listing(order: tuple[Standard, ...]) -> t.Listing:
        return t.Listing(tuple(shown[thing] for thing in order))

    right, seen, unsigned = orders_of(things)
    turned = (*right[1:], right[0]) if right[0].digits % 2 else (*right[2:], *right[:2])
    steps = (
        *(
            Step("Write it as a decimal.", t.equals(shown[thing], thing.ordinary))
            for thing in turned
            if thing.power
        ),
        Step("Put them in order, as they were printed.", listing(right)),
    )
    wrong = slips((m.FIRST_ONLY, listing(seen)), (m.MINUS_IGNORED, listing(unsigned)))
    text = prompt("Write these in order of size, smallest first: {l}.", l=listing(turned))
    return Draft(text, Order(listing(turned).parts), listing(right), "list", steps, wrong, twin)
