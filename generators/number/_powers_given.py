"""Square and cube numbers with a property: many answers are right."""

from __future__ import annotations

from math import lcm

from generators.number import _power_mistakes as m
from itembank.items.asks.give import Condition, Give
from itembank.items.item import Draft, Misconception, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

BEYOND = Misconception(
    "number.powers-beyond-the-limits",
    "gives a number of the right sort that is not between the two",
    "Is your number between the two numbers of the question?",
)
NOT_A_MULTIPLE = Misconception(
    "number.powers-not-a-multiple",
    "gives a square number, and forgets that it is to be a multiple",
    "Divide your number by the other number of the question. Is there a remainder?",
)
_X = t.Sym("x")


def _powers(index: int, low: int, high: int) -> list[int]:
    """Return the numbers whose power is between two others."""
    return [n for n in range(1, 40) if low < n**index < high]


def _between(low: int, high: int) -> t.Relation:
    return t.Relation(t.Int(low), (("<", _X), ("<", t.Int(high))))


def _doubled(index: int, low: int, high: int) -> int | None:
    """Return a multiple of the index between two numbers, which is no power."""
    powers = [n**index for n in range(1, 40)]
    found = [index * n for n in range(2, 300) if low < index * n < high and index * n not in powers]
    return found[0] if found else None


def _between_fits(index: int, tens: int, wide: int) -> bool:
    low, high = 10 * tens, 10 * (tens + wide)
    return len(_powers(index, low, high)) in (2, 3)


def power_between(topic: Topic, tier: Tier, index: int, tens: int, wide: int) -> Draft:
    """Return the question for a square or a cube number between two numbers."""
    low, high = 10 * tens, 10 * (tens + wide)
    roots = _powers(index, low, high)
    key = roots[0] ** index
    name = {2: "square", 3: "cube"}[index]
    line = t.equals(t.Power(t.Int(roots[0]), t.Int(index)), t.Int(key))
    return Draft(
        prompt(f"Write a {name} number between {{a}} and {{b}}.", a=t.Int(low), b=t.Int(high)),
        Give((_X,), (_between(low, high),), (Condition(name),)),
        t.Int(key),
        "integer",
        (
            Step(f"Work out {name} numbers until one is between the two.", line),
            Step("This will do:", t.Int(key)),
        ),
        slips(
            (m.TIMES_INDEX, _doubled(index, low, high)),
            (BEYOND, (roots[-1] + 1) ** index),
            key=t.Int(key),
        ),
        ("power between", index, low, high),
    )


def _multiple_fits(factor: int, tens: int, wide: int) -> bool:
    low, high = 10 * tens, 10 * (tens + wide)
    roots = _powers(2, low, high)
    right = [n for n in roots if n % _root(factor) == 0]
    return len(right) in (2, 3) and len(roots) > len(right)


def _root(factor: int) -> int:
    """Return what a number has to be a multiple of, so that its square is one of `factor`."""
    return next(n for n in range(1, factor + 1) if n * n % factor == 0)


def square_and_multiple(topic: Topic, tier: Tier, factor: int, tens: int, wide: int) -> Draft:
    """Return the question for a square number between two numbers that is a multiple."""
    low, high = 10 * tens, 10 * (tens + wide)
    roots = _powers(2, low, high)
    right = next(n for n in roots if n % _root(factor) == 0)
    other = next(n for n in roots if n % _root(factor))
    key = right**2
    double = lcm(2, factor)
    multiple = next(n for n in range(low + 1, high) if n % double == 0 and n not in _squares())
    return Draft(
        prompt(
            "Write a square number between {a} and {b} that is a multiple of {f}.",
            a=t.Int(low),
            b=t.Int(high),
            f=t.Int(factor),
        ),
        Give(
            (_X,),
            (_between(low, high),),
            (Condition("square"), Condition("multiple", (t.Int(factor),))),
        ),
        t.Int(key),
        "integer",
        (
            Step(
                "Work out square numbers between the two.",
                t.equals(t.Power(t.Int(right), t.Int(2)), t.Int(key)),
            ),
            Step(
                f"This one is {factor} times a whole number.",
                t.equals(t.times(t.Int(factor), t.Int(key // factor)), t.Int(key)),
            ),
            Step("So this will do:", t.Int(key)),
        ),
        slips((NOT_A_MULTIPLE, other**2), (m.TIMES_INDEX, multiple), key=t.Int(key)),
        ("square and multiple", factor, low, high),
    )


def _squares() -> list[int]:
    return [n * n for n in range(1, 40)]


def with_given(spaces: dict[Tier, Space]) -> dict[Tier, Space]:
    """Return the spaces of a topic, with numbers to give at the ends of support and core."""
    return {
        **spaces,
        Tier.SUPPORT: spaces[Tier.SUPPORT].also(
            power_between, _between_fits, index=(2, 3), tens=range(1, 40, 2), wide=range(2, 16, 2)
        ),
        Tier.CORE: spaces[Tier.CORE].also(
            square_and_multiple,
            _multiple_fits,
            factor=(2, 3, 5, 6, 8, 9, 12),
            tens=range(1, 40, 6),
            wide=range(6, 26, 3),
        ),
    }
