"""Short questions about function machines that are told in words."""

from __future__ import annotations

from fractions import Fraction

from generators.algebra._machine_mistakes import (
    FIRST_BOX,
    FORWARDS,
    NOTHING_CHANGES,
    OTHER_ORDER,
    SAME_ORDER,
)
from itembank.items.item import Draft, Find, Tier
from itembank.items.kinds.brief import Brief, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def _output(topic: Topic, tier: Tier, a: int, b: int, x: int) -> Draft:
    first, second, given = t.Int(a), t.Int(b), t.Int(x)
    key, between = t.Int(a * x + b), t.Int(a * x)
    return told(
        "A machine multiplies by {a} and then adds {b}. What is the output for {x}?",
        t.add(t.times(given, first), second),
        key,
        "integer",
        [
            ("Multiply.", t.equals(t.times(given, first), between)),
            ("Add.", t.equals(t.add(between, second), key)),
        ],
        [(OTHER_ORDER, (x + b) * a), (FIRST_BOX, a * x)],
        ("output in brief", a, b, x),
        a=first,
        b=second,
        x=given,
    )


def _input(topic: Topic, tier: Tier, a: int, b: int, x: int) -> Draft:
    first, second, given = t.Int(a), t.Int(b), t.Int(a * x + b)
    key, between = t.Int(x), t.Int(a * x)
    return told(
        "A machine multiplies by {a} and then adds {b}. What input has the output {y}?",
        t.divide(t.Bracket(t.sub(given, second)), first),
        key,
        "integer",
        [
            ("Go back: subtract.", t.equals(t.sub(given, second), between)),
            ("Then divide.", t.equals(t.divide(between, first), key)),
        ],
        [
            (FORWARDS, (a * x + b) * a + b),
            (FIRST_BOX, a * x),
            (SAME_ORDER, whole(Fraction(a * x + b, a) - b)),
        ],
        ("input in brief", a, b, x),
        a=first,
        b=second,
        y=given,
    )


def _same(topic: Topic, tier: Tier, a: int, x: int) -> Draft:
    b = (a - 1) * x
    first, second, key, n = t.Int(a), t.Int(b), t.Int(x), t.Sym("n")
    left, right = t.sub(t.juxt(first, n), second), n
    less = n if a == 2 else t.juxt(t.Int(a - 1), n)
    steps: list[tuple[str, t.Node]] = [
        ("The output equals the input.", t.equals(left, right)),
        ("Subtract n from both sides.", t.equals(t.sub(less, second), t.Int(0))),
        (f"Add {b}.", t.equals(less, second)),
    ]
    steps.append(("Divide.", t.equals(t.divide(second, t.Int(a - 1)), key)))
    return told(
        "A machine multiplies by {a} and then subtracts {b}. Which input comes out the same?",
        Find(n, (t.equals(left, right),)),
        key,
        "integer",
        steps,
        [(NOTHING_CHANGES, b), (FIRST_BOX, whole(Fraction(b, a))), (FORWARDS, b * a - b)],
        ("same in brief", a, x),
        a=first,
        b=second,
    )


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _output,
            lambda a, b, x: x not in (a, b),
            {"a": range(2, 10), "b": (3, 4, 5, 7, 8, 11), "x": range(3, 13)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _input,
            lambda a, b, x: x not in (a, b) and a != b,
            {"a": range(3, 10), "b": (2, 5, 7, 8, 11), "x": range(3, 13)},
        ),
    ),
    Tier.CHALLENGE: (Brief(_same, None, {"a": range(3, 13), "x": range(3, 66)}),),
}
"""The short questions of each tier."""
