"""Short questions about two independent events, of which only the probabilities are told."""

from __future__ import annotations

from fractions import Fraction

from generators.probability import _misconceptions as m
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Tier
from itembank.items.kinds.brief import Brief, told
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_TWO = "Independent events have probabilities {p} and {q}. Find the probability of "
_ONE = t.Int(1)


def _chances(p: int, q: int) -> tuple[Fraction, Fraction, t.Node, t.Node]:
    first, second = Fraction(p, 100), Fraction(q, 100)
    return first, second, decimal_node(first), decimal_node(second)


def _both(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the question how likely both events are."""
    first, second, a, b = _chances(p, q)
    key = decimal_node(first * second)
    return told(
        _TWO + "both.",
        t.times(a, b),
        key,
        "decimal",
        [("Both have to happen: multiply.", t.equals(t.times(a, b), key))],
        [
            (m.ADDS_FOR_BOTH, first + second),
            (m.NEITHER_INSTEAD, (1 - first) * (1 - second)),
        ],
        ("both in brief", *sorted((p, q))),
        p=a,
        q=b,
    )


def _twice(topic: Topic, tier: Tier, p: int) -> Draft:
    """Return the question how likely one event is twice in a row."""
    chance, _, a, _ = _chances(p, p)
    key = decimal_node(chance**2)
    return told(
        "A spinner lands on red with probability {p}. What is the probability of red twice?",
        t.times(a, a),
        key,
        "decimal",
        [("Red and then red again: multiply.", t.equals(t.times(a, a), key))],
        [(m.DOUBLES, 2 * chance), (m.SAME_AGAIN, chance)],
        ("twice in brief", p),
        p=a,
    )


def _neither(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the question how likely it is that none of the two events happens."""
    first, second, a, b = _chances(p, q)
    not_a, not_b = decimal_node(1 - first), decimal_node(1 - second)
    key = decimal_node((1 - first) * (1 - second))
    return told(
        _TWO + "neither.",
        t.times(t.Bracket(t.sub(_ONE, a)), t.Bracket(t.sub(_ONE, b))),
        key,
        "decimal",
        [
            (
                "Find how likely it is that the first does not happen.",
                t.equals(t.sub(_ONE, a), not_a),
            ),
            ("Do the same for the second.", t.equals(t.sub(_ONE, b), not_b)),
            ("Multiply.", t.equals(t.times(not_a, not_b), key)),
        ],
        [(m.NOT_BOTH, 1 - first * second), (m.BOTH_INSTEAD, first * second)],
        ("neither in brief", *sorted((p, q))),
        (1,),
        p=a,
        q=b,
    )


def _exactly(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the question how likely exactly one of two events is."""
    first, second, a, b = _chances(p, q)
    single, other = first * (1 - second), (1 - first) * second
    not_a, not_b = decimal_node(1 - first), decimal_node(1 - second)
    key = decimal_node(single + other)
    return told(
        _TWO + "exactly one.",
        t.add(
            t.times(a, t.Bracket(t.sub(_ONE, b))),
            t.times(t.Bracket(t.sub(_ONE, a)), b),
        ),
        key,
        "decimal",
        [
            (
                "The first happens, not the second.",
                t.equals(t.times(a, not_b), decimal_node(single)),
            ),
            (
                "The second happens, not the first.",
                t.equals(t.times(not_a, b), decimal_node(other)),
            ),
            ("Add.", t.equals(t.add(decimal_node(single), decimal_node(other)), key)),
        ],
        [
            (m.ONE_ORDER, single),
            (m.BOTH_INSTEAD, first * second),
            (m.ADDS_FOR_EITHER, first + second),
        ],
        ("exactly in brief", *sorted((p, q))),
        (1,),
        p=a,
        q=b,
    )


def _at_least(topic: Topic, tier: Tier, p: int, q: int) -> Draft:
    """Return the question how likely at least one of two events is."""
    first, second, a, b = _chances(p, q)
    not_a, not_b = decimal_node(1 - first), decimal_node(1 - second)
    none = decimal_node((1 - first) * (1 - second))
    key = decimal_node(1 - (1 - first) * (1 - second))
    return told(
        _TWO + "at least one.",
        t.sub(_ONE, t.times(t.Bracket(t.sub(_ONE, a)), t.Bracket(t.sub(_ONE, b)))),
        key,
        "decimal",
        [
            (
                "Find how likely it is that the first does not happen.",
                t.equals(t.sub(_ONE, a), not_a),
            ),
            ("Do the same for the second.", t.equals(t.sub(_ONE, b), not_b)),
            ("Find how likely neither is.", t.equals(t.times(not_a, not_b), none)),
            ("Subtract from 1.", t.equals(t.sub(_ONE, none), key)),
        ],
        [
            (m.ADDS_FOR_EITHER, first + second),
            (m.BOTH_INSTEAD, first * second),
            (m.NEITHER_INSTEAD, (1 - first) * (1 - second)),
        ],
        ("at least in brief", *sorted((p, q))),
        (1,),
        p=a,
        q=b,
    )


_TENTHS = (10, 20, 30, 40, 60, 70, 80, 90)
_ANY = (5, 10, 15, 20, 25, 30, 35, 40, 45, 55, 60, 65, 70, 75, 80, 85, 90, 95)
_PAIRS = {"p": _TENTHS, "q": _ANY}


def _apart(p: int, q: int) -> bool:
    return p + q != 100 and (p < q if q % 10 == 0 else p != q)


BRIEF = {
    Tier.SUPPORT: (
        Brief(_both, _apart, {"p": _TENTHS, "q": _ANY}),
        Brief(_twice, None, {"p": _TENTHS}),
    ),
    Tier.CORE: (Brief(_neither, _apart, _PAIRS),),
    Tier.CHALLENGE: (Brief(_exactly, _apart, _PAIRS), Brief(_at_least, _apart, _PAIRS)),
}
"""The short questions of each tier."""
