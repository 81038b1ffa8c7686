"""Short questions about two amounts in a ratio, of which one or the difference is told."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators._turns import by_turns
from generators.ratio import _difference_mistakes as d
from generators.ratio._one_part_mistakes import ADDS, OTHER_ONLY, UNDIVIDED
from itembank.items.item import Draft, Find, Tier
from itembank.items.kinds.brief import Brief, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_TWO = (("cats", "dogs"), ("cars", "vans"), ("pens", "pads"), ("hens", "ducks"))
_A, _B, _C = t.Sym("a"), t.Sym("b"), t.Sym("c")


def _shares(first: int, other: int) -> t.Relation:
    return t.equals(t.Ratio((_A, _B)), t.ratio(t.Int(first), t.Int(other)))


def _difference(topic: Topic, tier: Tier, first: int, other: int, each: int) -> Draft:
    """Return the question for the more of two amounts, from how many more there are."""
    few, many = by_turns(_TWO, first + other + each)
    gap, key, parts = t.Int((other - first) * each), t.Int(other * each), t.Int(other - first)
    return told(
        f"The ratio of {few} to {many} is {{r}}. "
        f"There are {{g}} more {many}. How many {many} are there?",
        Find(_B, (_shares(first, other), t.equals(t.sub(_B, _A), gap))),
        key,
        "integer",
        [
            (
                "Find how many parts more that is.",
                t.equals(t.sub(t.Int(other), t.Int(first)), parts),
            ),
            ("Find one part.", t.equals(t.divide(gap, parts), t.Int(each))),
            (f"Multiply by {other}.", t.equals(t.times(t.Int(other), t.Int(each)), key)),
        ],
        [
            (d.IS_PART, gap.n * other),
            (d.STOPS, each),
            (d.AS_TOTAL, whole(Fraction(gap.n * other, first + other))),
        ],
        ("difference in brief", first, other, each),
        r=t.ratio(t.Int(first), t.Int(other)),
        g=gap,
    )


def _difference_total(topic: Topic, tier: Tier, first: int, other: int, each: int) -> Draft:
    """Return the question for both amounts together, from how many more there are."""
    few, many = by_turns(_TWO, first + other + each)
    gap, parts, count = t.Int((other - first) * each), t.Int(other - first), first + other
    key = t.Int(count * each)
    return told(
        f"The ratio of {few} to {many} is {{r}}. "
        f"There are {{g}} more {many}. How many are there in all?",
        Find(t.add(_A, _B), (_shares(first, other), t.equals(t.sub(_B, _A), gap))),
        key,
        "integer",
        [
            (
                "Find how many parts more that is.",
                t.equals(t.sub(t.Int(other), t.Int(first)), parts),
            ),
            ("Find one part.", t.equals(t.divide(gap, parts), t.Int(each))),
            ("Add the parts.", t.equals(t.add(t.Int(first), t.Int(other)), t.Int(count))),
            ("Multiply.", t.equals(t.times(t.Int(count), t.Int(each)), key)),
        ],
        [(d.IS_PART, gap.n * count), (d.LARGER, other * each), (d.STOPS, each)],
        ("difference total in brief", first, other, each),
        r=t.ratio(t.Int(first), t.Int(other)),
        g=gap,
    )


def _other(topic: Topic, tier: Tier, first: int, other: int, each: int) -> Draft:
    """Return the question for one of two amounts, from the other."""
    few, many = by_turns(_TWO, first + other + each)
    given, key = t.Int(first * each), t.Int(other * each)
    return told(
        f"The ratio of {few} to {many} is {{r}}. There are {{n}} {few}. How many {many} are there?",
        Find(_B, (_shares(first, other), t.equals(_A, given))),
        key,
        "integer",
        [
            ("Find one part.", t.equals(t.divide(given, t.Int(first)), t.Int(each))),
            (f"Multiply by {other}.", t.equals(t.times(t.Int(other), t.Int(each)), key)),
        ],
        [(ADDS, given.n + other - first), (UNDIVIDED, given.n * other)],
        ("other in brief", first, other, each),
        r=t.ratio(t.Int(first), t.Int(other)),
        n=given,
    )


def _all(topic: Topic, tier: Tier, first: int, other: int, each: int) -> Draft:
    """Return the question for both amounts together, from one of them."""
    few, many = by_turns(_TWO, first + other + each)
    given, count = t.Int(first * each), first + other
    key = t.Int(count * each)
    return told(
        f"The ratio of {few} to {many} is {{r}}. There are {{n}} {few}. How many are there in all?",
        Find(t.add(_A, _B), (_shares(first, other), t.equals(_A, given))),
        key,
        "integer",
        [
            ("Find one part.", t.equals(t.divide(given, t.Int(first)), t.Int(each))),
            ("Add the parts.", t.equals(t.add(t.Int(first), t.Int(other)), t.Int(count))),
            ("Multiply.", t.equals(t.times(t.Int(count), t.Int(each)), key)),
        ],
        [(OTHER_ONLY, other * each), (UNDIVIDED, given.n * count)],
        ("all in brief", first, other, each),
        r=t.ratio(t.Int(first), t.Int(other)),
        n=given,
    )


def _three(topic: Topic, tier: Tier, first: int, other: int, last: int, each: int) -> Draft:
    """Return the question for three amounts together, from how many more the last is."""
    gap, parts, count = t.Int((last - first) * each), t.Int(last - first), first + other + last
    key = t.Int(count * each)
    numbers = [t.Int(n) for n in (first, other, last)]
    shares = t.equals(t.Ratio((_A, _B, _C)), t.Ratio(tuple(numbers)))
    return told(
        "Pens, pads and pins are in the ratio {r}. There are {g} more pins than pens. "
        "How many in all?",
        Find(t.add(_A, _B, _C), (shares, t.equals(t.sub(_C, _A), gap))),
        key,
        "integer",
        [
            ("Find how many parts more.", t.equals(t.sub(numbers[2], numbers[0]), parts)),
            ("Find one part.", t.equals(t.divide(gap, parts), t.Int(each))),
            ("Add the parts.", t.equals(t.add(*numbers), t.Int(count))),
            ("Multiply.", t.equals(t.times(t.Int(count), t.Int(each)), key)),
        ],
        [(d.IS_PART, gap.n * count), (d.LARGER, last * each), (d.STOPS, each)],
        ("three in brief", first, other, last, each),
        r=t.Ratio(tuple(numbers)),
        g=gap,
    )


def _three_from_one(
    topic: Topic, tier: Tier, first: int, other: int, last: int, each: int
) -> Draft:
    """Return the question for three amounts together, from the second."""
    given, count = t.Int(other * each), first + other + last
    key = t.Int(count * each)
    numbers = [t.Int(n) for n in (first, other, last)]
    shares = t.equals(t.Ratio((_A, _B, _C)), t.Ratio(tuple(numbers)))
    return told(
        "Pens, pads and pins are in the ratio {r}. There are {n} pads. How many are there in all?",
        Find(t.add(_A, _B, _C), (shares, t.equals(_B, given))),
        key,
        "integer",
        [
            ("Find one part.", t.equals(t.divide(given, numbers[1]), t.Int(each))),
            ("Add the parts.", t.equals(t.add(*numbers), t.Int(count))),
            ("Multiply.", t.equals(t.times(t.Int(count), t.Int(each)), key)),
        ],
        [(OTHER_ONLY, (first + last) * each), (UNDIVIDED, given.n * count)],
        ("three from one in brief", first, other, last, each),
        r=t.Ratio(tuple(numbers)),
        n=given,
    )


def _keep_three(first: int, other: int, last: int, each: int) -> bool:
    return (
        first < last - 1
        and other not in (first, last)
        and gcd(first, other, last) == 1
        and each not in (first, other, last, last - first)
    )


def _keep(first: int, other: int, each: int) -> bool:
    return Fraction(first, other).numerator == first and each not in (first, other)


def _keep_gap(first: int, other: int, each: int) -> bool:
    return first < other - 1 and _keep(first, other, each) and each != other - first


_PARTS = {
    "first": range(2, 8),
    "other": range(3, 10),
    "each": (3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20),
}
_THREE = {
    "first": (2, 3, 4, 5),
    "other": (3, 4, 5, 7),
    "last": (5, 6, 7, 8, 9),
    "each": (4, 6, 8, 11, 12, 15),
}
DIFFERENCE = {
    Tier.SUPPORT: (Brief(_difference, _keep_gap, _PARTS),),
    Tier.CORE: (Brief(_difference_total, _keep_gap, _PARTS),),
    Tier.CHALLENGE: (Brief(_three, _keep_three, _THREE),),
}
ONE_PART = {
    Tier.SUPPORT: (Brief(_other, _keep, _PARTS),),
    Tier.CORE: (Brief(_all, _keep, _PARTS),),
    Tier.CHALLENGE: (Brief(_three_from_one, _keep_three, _THREE),),
}
