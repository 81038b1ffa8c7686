"""Short questions about the branches of a tree that nobody has to see."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.probability import _misconceptions as m
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_ONE = t.Int(1)
_BAGS = (
    ("red", "blue", "beads"),
    ("green", "white", "balls"),
    ("black", "yellow", "tickets"),
)


def _other(topic: Topic, tier: Tier, p: int) -> Draft:
    """Return the question for the other of two branches."""
    chance = Fraction(p, 100)
    a, key = decimal_node(chance), decimal_node(1 - chance)
    return told(
        "Two branches leave a point of a tree. One is {p}. What is the other?",
        t.sub(_ONE, a),
        key,
        "decimal",
        [("The branches from a point add up to 1.", t.equals(t.sub(_ONE, a), key))],
        [
            (m.SAME_AGAIN, chance),
            (m.HALF_EACH, Fraction(1, 2)),
            (m.LOSES_TENTH, 1 - chance + Fraction(1, 10)),
        ],
        ("other branch", p),
        (1,),
        p=a,
    )


def _third(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the question for the last of three branches."""
    a, b, both = (decimal_node(Fraction(n, 100)) for n in (p, q, p + q))
    key = decimal_node(1 - Fraction(p + q, 100))
    return told(
        "Three branches leave a point of a tree. Two are {p} and {q}. What is the third?",
        t.sub(_ONE, a, b),
        key,
        "decimal",
        [
            ("Add the branches that are known.", t.equals(t.add(a, b), both)),
            ("Subtract from 1.", t.equals(t.sub(_ONE, both), key)),
        ],
        [(m.STOPS_AT_SUM, Fraction(p + q, 100)), (m.LOSES_TENTH, Fraction(110 - p - q, 100))],
        ("third branch", *sorted((p, q))),
        (1,),
        p=a,
        q=b,
    )


def _along(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the question how likely it is to go along two branches."""
    first, second = Fraction(p, 100), Fraction(q, 100)
    a, b, key = decimal_node(first), decimal_node(second), decimal_node(first * second)
    return told(
        "On a tree a branch of {p} leads to one of {q}. What is the probability of both?",
        t.times(a, b),
        key,
        "decimal",
        [("Multiply along the branches.", t.equals(t.times(a, b), key))],
        [(m.ADDS_ALONG, first + second), (m.STOPS_ON_TREE, second)],
        ("along", *sorted((p, q))),
        p=a,
        q=b,
    )


def _taken(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    """Return the question how likely two of one colour are, the first being kept."""
    first, other, things = by_turns(_BAGS, a + b)
    n, k, both = t.Int(a), t.Int(b), a + b
    begin, after = t.frac(a, both), t.frac(a - 1, both - 1)
    value = Fraction(a * (a - 1), both * (both - 1))
    key = number_node(value)
    total = t.add(n, k)
    return told(
        f"A bag has {{a}} {first} and {{b}} {other} {things}. Two are taken. "
        f"Find the probability of two {first}.",
        t.times(t.Frac(n, total), t.Frac(t.sub(n, _ONE), t.sub(total, _ONE))),
        key,
        "number",
        [
            ("Find how many there are.", t.equals(total, t.Int(both))),
            (
                "One less is left of both: multiply along the branches.",
                t.equals(t.times(begin, after), key),
            ),
        ],
        [
            (m.PUTS_BACK, Fraction(a * a, both * both)),
            (m.STOPS_ON_TREE, Fraction(a - 1, both - 1)),
            (m.ADDS_ALONG, Fraction(a, both) + Fraction(a - 1, both - 1)),
        ],
        ("taken", a, b),
        (1,),
        a=n,
        b=k,
    )


def _one_of_each(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    """Return the question how likely one of each colour is, the first being kept."""
    first, other, things = by_turns(_BAGS, a + b)
    n, k, both = t.Int(a), t.Int(b), a + b
    single = Fraction(a * b, both * (both - 1))
    key, way, total = number_node(2 * single), number_node(single), t.add(n, k)
    left = t.sub(total, _ONE)
    return told(
        f"A bag has {{a}} {first} and {{b}} {other} {things}. Two are taken. "
        "Find the probability of one of each.",
        t.add(
            t.times(t.Frac(n, total), t.Frac(k, left)),
            t.times(t.Frac(k, total), t.Frac(n, left)),
        ),
        key,
        "number",
        [
            ("Find how many there are.", t.equals(total, t.Int(both))),
            (
                f"First {first}, then {other}.",
                t.equals(t.times(t.frac(a, both), t.frac(b, both - 1)), way),
            ),
            (
                f"First {other}, then {first}.",
                t.equals(t.times(t.frac(b, both), t.frac(a, both - 1)), way),
            ),
            ("Add the two ways.", t.equals(t.add(way, way), key)),
        ],
        [
            (m.ONE_ORDER, single),
            (m.PUTS_BACK, Fraction(2 * a * b, both * both)),
        ],
        ("one of each", a, b),
        (1,),
        a=n,
        b=k,
    )


_ANY = (5, 15, 20, 25, 30, 35, 40, 45, 55, 60, 65, 70, 75, 80, 85)


BRIEF = {
    Tier.SUPPORT: (
        Brief(_other, lambda p: p % 10 != 5 and p != 50, {"p": range(12, 97, 3)}),
        Brief(
            _third,
            lambda p, q: p != q and (p < q or p % 10 != 0) and p + q not in (50, 55),
            {"p": (5, 10, 15, 20, 25, 30), "q": (20, 30, 35, 40, 45, 55)},
        ),
    ),
    Tier.CORE: (
        Brief(_along, lambda p, q: p < q and p + q != 100, {"p": _ANY[1:10], "q": _ANY[2::2]}),
        Brief(_taken, lambda a, b: a != b, {"a": range(3, 10), "b": range(2, 10)}),
    ),
    Tier.CHALLENGE: (
        Brief(
            _one_of_each,
            lambda a, b: a < b and 2 * a * b != (a + b) * (a + b - 1) // 2,
            {"a": range(2, 10), "b": range(3, 15)},
        ),
    ),
}
"""The short questions of each tier."""
