"""Lowest common multiples: from lists, from products of primes, of three numbers, in stories.

The programme of study for key stage 3 (England, 2013) asks pupils to "use the concepts and
vocabulary of … common factors, common multiples, highest common factor, lowest common multiple"
(from memory).
"""

from __future__ import annotations

from enum import IntEnum
from math import gcd, lcm, prod
from typing import Any

from generators._turns import by_turns
from generators.number import _factor_mistakes as m
from generators.number._common import find_common, found_by_primes
from generators.number._primes import in_index_form, primes_of
from generators.number._writing import apart
from itembank.items import kinds
from itembank.items.item import Common, Condition, Draft, Find, Give, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import Wrong, slips
from itembank.notation import tree as t


class Kind(IntEnum):
    """Of which numbers the lowest common multiple is asked."""

    TWO, COPRIME, ONE_IN_OTHER, ANY = range(4)
    PRIMES, THREE, BUSES = range(4, 7)
    PRODUCTS, LARGE, SWIMMERS, OTHER = range(7, 11)


def _support(kind: int, a: int, b: int) -> bool:
    """Keep small pairs whose multiples can be listed."""
    if not a < b:
        return False
    h, low = gcd(a, b), lcm(a, b)
    match kind:
        case Kind.TWO:
            return 1 < h < a and low <= 120
        case Kind.COPRIME:
            return h == 1 and a > 2 and low <= 100
        case Kind.ONE_IN_OTHER:
            return h == a > 3 and b <= 60
    return 1 < h < a and low <= 90


def _core(kind: int, a: int, b: int, c: int) -> bool:
    """Keep pairs to be split into primes, threes, and buses that leave together."""
    if not a < b:
        return False
    h = gcd(a, b)
    match kind:
        case Kind.PRIMES:
            return c == 8 and a >= 12 and 3 < h < a and lcm(a, b) <= 600
        case Kind.THREE:
            low = lcm(a, b, c)
            return b < c and a <= 18 and lcm(a, b) < low <= 400 and low < a * b * c and h < a
    return c == 8 and 5 <= a <= 45 and b <= 60 and 2 < h < a and lcm(a, b) <= 360


def _challenge(kind: int, a: int, b: int, c: int) -> bool:
    """Keep products that are given, large threes, three swimmers, and a number to be found."""
    if not a < b:
        return False
    h, low = gcd(a, b), lcm(a, b)
    match kind:
        case Kind.PRODUCTS:
            return c == 30 and a >= 36 and 5 < h < a and low <= 3000
        case Kind.OTHER:
            return c == 30 and a >= 12 and 3 < h < a and low <= 600 and apart(b, low // a, h, low)
        case Kind.LARGE:
            low = lcm(low, c)
            once = prod(p for p, _ in primes_of(low))
            return b < c and a >= 12 and low <= 1500 and apart(low, once, lcm(a, b)) and h > 2
    low = lcm(low, c)
    suits = b < c and a >= 30 and c <= 75 and low <= 1200 and gcd(h, c) > 2
    return suits and apart(low, lcm(a, b), gcd(h, c))


_BUSES = (
    "One bus leaves the depot every {a} minutes and another every {b} minutes. They have just left "
    "together. After how many minutes will they next leave together?",
    "One tap in a market garden opens every {a} minutes and another every {b} minutes. They have "
    "just opened together. After how many minutes will they next open together?",
    "One clock in a library chimes every {a} minutes and another every {b} minutes. They have just "
    "chimed together. After how many minutes will they next chime together?",
    "One oven in a school kitchen beeps every {a} seconds and another every {b} seconds. They have "
    "just beeped together. After how many seconds will they next beep together?",
)
_SWIMMERS = (
    "Three swimmers set off together from the same end. They swim there and back in {a}, {b} and "
    "{c} seconds, and keep going. After how many seconds are all three back at that end together "
    "for the first time?",
    "Three cyclists set off together round a track. They take {a}, {b} and {c} seconds for a lap, "
    "and keep going. After how many seconds are all three at the start together for the first "
    "time?",
    "Three lights at a bus depot flash together. They flash every {a}, {b} and {c} seconds. After "
    "how many seconds do all three flash together again for the first time?",
)
_FIRST = (
    4, 6, 8, 9, 10, 12, 14, 15, 16, 18, 20, 21, 24, 25, 27, 28, 30, 32, 36, 40, 45,
)  # fmt: skip
_SECOND = (
    8, 9, 10, 12, 14, 15, 16, 18, 20, 21, 24, 25, 28, 30, 32, 35, 36, 40, 42, 45, 48, 50, 54,
    60,
)  # fmt: skip
_LARGER_FIRST = (
    12, 14, 15, 16, 18, 20, 24, 28, 30, 32, 36, 40, 42, 45, 48, 50, 54, 56, 60, 72, 84,
)  # fmt: skip
_LARGER_SECOND = (
    18, 20, 24, 28, 30, 36, 40, 42, 45, 48, 50, 54, 60, 63, 70, 72, 75, 80, 84, 90, 96, 100,
    108, 120, 126,
)  # fmt: skip


@register
class Lcm(Topic):
    """From lists of multiples; from products of primes; of given products and three numbers."""

    id = "number.lcm"
    title = "Lowest common multiple"
    statements = ("number.primes",)
    prerequisites = ("number.prime-factors", "number.hcf")
    misconceptions = (
        m.MULTIPLIES,
        m.GIVES_HCF,
        m.ANY_MULTIPLE,
        m.NOT_ITSELF,
        m.COMMON_FACTOR,
        m.OF_ONE_ONLY,
        m.FIRST_TWO,
        m.ADDS,
        m.SHARED_ONCE,
        m.DIVIDES_ONLY,
    )
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(
            Space(_support, kind=tuple(Kind)[:4], a=range(3, 25), b=range(4, 49))
        ),
        Tier.CORE: kinds.with_given_answers(
            Space(
                _core,
                kind=tuple(Kind)[4:7],
                a=_FIRST,
                b=_SECOND,
                c=(8, 9, 10, 12, 14, 15, 16, 18, 20, 21, 24),
            )
        ),
        Tier.CHALLENGE: kinds.with_given_answers(
            Space(
                _challenge,
                kind=tuple(Kind)[7:],
                a=_LARGER_FIRST,
                b=_LARGER_SECOND,
                c=(30, 36, 40, 42, 45, 48, 50, 54, 60, 66, 70, 72, 75),
            )
        ),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c = (*values, 0)[:4]
        twin = (int(kind), a, b, c)
        if kind == Kind.ANY:
            return _any(a, b, twin)
        if kind == Kind.OTHER:
            return _other(a, b, twin)
        three = kind in (Kind.THREE, Kind.LARGE, Kind.SWIMMERS)
        numbers = (a, b, c) if three else (a, b)
        low = lcm(*numbers)
        shown: tuple[t.Node, ...] = tuple(map(t.Int, numbers))
        if kind == Kind.PRODUCTS:
            shown = tuple(map(in_index_form, numbers))
        names = dict(zip("abc", shown, strict=False))
        if kind == Kind.BUSES:
            text = prompt(by_turns(_BUSES, a // 3 + b), **names)
        elif kind == Kind.SWIMMERS:
            text = prompt(by_turns(_SWIMMERS, a // 2 + b // 2 + c), **names)
        else:
            text = find_common("lowest common multiple", shown, kind == Kind.PRODUCTS)
        steps = _lists(numbers, low) if tier is Tier.SUPPORT else _by_primes(kind, numbers, low)
        wrong = slips(*_mistakes(kind, numbers, low), key=t.Int(low))
        return Draft(text, Common(shown, "lcm"), t.Int(low), "integer", steps, wrong, twin)


def _mistakes(kind: int, numbers: tuple[int, ...], low: int) -> list[Wrong]:
    h, times = gcd(*numbers), prod(numbers)
    match kind:
        case Kind.COPRIME:
            return [(m.GIVES_HCF, h), (m.ANY_MULTIPLE, 2 * low)]
        case Kind.ONE_IN_OTHER:
            return [(m.MULTIPLIES, times), (m.NOT_ITSELF, 2 * low)]
        case Kind.BUSES:
            return [(m.MULTIPLIES, times), (m.ADDS, sum(numbers))]
        case Kind.SWIMMERS:
            return [(m.FIRST_TWO, lcm(*numbers[:2])), (m.GIVES_HCF, h)]
        case Kind.THREE:
            return [(m.MULTIPLIES, times), (m.FIRST_TWO, lcm(*numbers[:2]))]
        case Kind.LARGE:
            once = prod(p for p, _ in primes_of(low))
            return [(m.SHARED_ONCE, once), (m.FIRST_TWO, lcm(*numbers[:2]))]
    return [(m.MULTIPLIES, times), (m.GIVES_HCF, h)]


def _lists(numbers: tuple[int, ...], low: int) -> tuple[Step, ...]:
    steps = []
    for n in numbers:
        shown = list(range(n, low + 1, n))
        if len(shown) > 6:
            text = ", ".join(map(str, shown[:3])) + f", …, {shown[-1]}, …"
        else:
            text = ", ".join(map(str, shown)) + ", …"
        steps.append(Step(f"Multiples of {n} are {text}"))
    return (*steps, Step("The first number in both lists is the answer.", t.Int(low)))


def _by_primes(kind: int, numbers: tuple[int, ...], low: int) -> tuple[Step, ...]:
    timed = kind in (Kind.BUSES, Kind.SWIMMERS)
    why = "The time has to be a multiple of each of the times." if timed else ""
    split = () if kind == Kind.PRODUCTS else numbers
    return found_by_primes(why, split, "Take every prime to its highest power.", low)


def _any(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Ask for any common multiple."""
    x = t.Sym("x")
    low = lcm(a, b)
    steps = (
        *(
            Step(
                f"{low} is in the {n} times table.",
                t.equals(t.Int(low), t.times(t.Int(n), t.Int(low // n))),
            )
            for n in (a, b)
        ),
        Step("So it is a common multiple.", t.Int(low)),
    )
    ask = Give((x,), (), (Condition("multiple", (t.Int(a),)), Condition("multiple", (t.Int(b),))))
    wrong = slips((m.COMMON_FACTOR, gcd(a, b)), (m.OF_ONE_ONLY, b))
    text = prompt("Write a common multiple of {a} and {b}.", a=t.Int(a), b=t.Int(b))
    return Draft(text, ask, t.Int(low), "integer", steps, wrong, twin)


def _other(a: int, b: int, twin: tuple[object, ...]) -> Draft:
    """Ask for one number, from the other and from HCF and LCM."""
    h, low = t.Int(gcd(a, b)), t.Int(lcm(a, b))
    known = t.Int(a)
    asked = t.Product(h, (("×", low), ("÷", known)))
    both = a * b
    text = prompt(
        "The highest common factor of two numbers is {h} and their lowest common multiple is {l}. "
        "One of the numbers is {a}. What is the other number?",
        h=h,
        l=low,
        a=known,
    )
    steps = (
        Step(
            "The two numbers multiply to the same as their HCF and LCM.",
            t.equals(t.times(h, low), t.Int(both)),
        ),
        Step(
            "Divide by the number that is known.", t.equals(t.divide(t.Int(both), known), t.Int(b))
        ),
    )
    wrong = slips((m.DIVIDES_ONLY, lcm(a, b) // a), (m.GIVES_HCF, gcd(a, b)), key=t.Int(b))
    return Draft(text, Find(asked), t.Int(b), "integer", steps, wrong, twin)
