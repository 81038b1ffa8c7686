"""Short questions about the outcomes of two spinners: how many, and how likely some are."""

from __future__ import annotations

from fractions import Fraction

from generators._turns import by_turns
from generators.probability import _misconceptions as m
from itembank.items.forms.form_rules import number_node
from itembank.items.item import Draft, Misconception, Tier
from itembank.items.kinds.brief import Brief, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

ONE_OF_TWO = Misconception(
    "probability.outcomes-of-one",
    "counts the outcomes of one of the two alone",
    "What can come with the first outcome? And with the second?",
)

_PAIRS = (
    "Two spinners have {a} and {b} sections. How many outcomes are there for the two?",
    "There are {a} soups and {b} cakes. How many ways are there to choose one of each?",
    "There are {a} shirts and {b} hats. How many ways are there to choose one of each?",
)
_SPINNERS = "Spinners have {a} and {b} equal sections. {k} pairs win. "


def _how_many(topic: Topic, tier: Tier, a: int, b: int) -> Draft:
    """Return the question how many pairs there are."""
    first, second, key = t.Int(a), t.Int(b), t.Int(a * b)
    return told(
        by_turns(_PAIRS, a + b),
        t.times(first, second),
        key,
        "integer",
        [("Each goes with every one of the others.", t.equals(t.times(first, second), key))],
        [(m.ADDS_OUTCOMES, a + b), (ONE_OF_TWO, max(a, b))],
        ("how many", *sorted((a, b))),
        a=first,
        b=second,
    )


def _win(topic: Topic, tier: Tier, a: int, b: int, k: int) -> Draft:
    """Return the question how likely a win is."""
    first, second, some, pairs = t.Int(a), t.Int(b), t.Int(k), t.Int(a * b)
    key = number_node(Fraction(k, a * b))
    return told(
        _SPINNERS + "What is the probability of a win?",
        t.Frac(some, t.times(first, second)),
        key,
        "number",
        [
            ("Find how many pairs there are.", t.equals(t.times(first, second), pairs)),
            ("Write those that win over all.", t.equals(t.divide(some, pairs), key)),
        ],
        [
            (m.ADDS_OUTCOMES, Fraction(k, a + b)),
            (m.COUNT_OF_CELLS, Fraction(k, a * b - k)),
        ],
        ("win", *sorted((a, b)), k),
        a=first,
        b=second,
        k=some,
    )


def _expected(topic: Topic, tier: Tier, a: int, b: int, k: int, each: int) -> Draft:
    """Return the question how many wins to expect in some games."""
    first, second, some = t.Int(a), t.Int(b), t.Int(k)
    pairs, games, key = t.Int(a * b), t.Int(a * b * each), t.Int(k * each)
    return told(
        _SPINNERS + "How many wins do you expect in {n} games?",
        t.times(t.Frac(some, t.times(first, second)), games),
        key,
        "integer",
        [
            ("Find how many pairs there are.", t.equals(t.times(first, second), pairs)),
            ("Each pair is expected so often.", t.equals(t.divide(games, pairs), t.Int(each))),
            (f"{k} of them win, so multiply.", t.equals(t.times(some, t.Int(each)), key)),
        ],
        [
            (m.ADDS_OUTCOMES, whole(Fraction(k * a * b * each, a + b))),
            (m.NOT_ASKED, (a * b - k) * each),
            (ONE_OF_TWO, whole(Fraction(k * b * each))),
        ],
        ("expected", *sorted((a, b)), k, each),
        a=first,
        b=second,
        k=some,
        n=games,
    )


def _keep_win(a: int, b: int, k: int) -> bool:
    return a < b and a + b != a * b - k and k < min(a * b // 2, a + b) and 2 * k != a * b


def _keep_expected(a: int, b: int, k: int, each: int) -> bool:
    return _keep_win(a, b, k) and each not in (a, b, k) and a * b * each <= 300


BRIEF = {
    Tier.SUPPORT: (Brief(_how_many, lambda a, b: a < b, {"a": range(3, 12), "b": range(4, 19)}),),
    Tier.CORE: (
        Brief(_win, _keep_win, {"a": (3, 4, 5, 6), "b": (4, 5, 6, 7, 8, 9, 10), "k": range(3, 15)}),
    ),
    Tier.CHALLENGE: (
        Brief(
            _expected,
            _keep_expected,
            {"a": (3, 4, 5, 6), "b": (4, 5, 6, 8, 10), "k": range(3, 13), "each": (2, 4, 5, 10)},
        ),
    ),
}
"""The short questions of each tier."""
