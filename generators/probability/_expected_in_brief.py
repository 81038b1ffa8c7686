"""Short questions about how often something is to be expected."""

from __future__ import annotations

from fractions import Fraction
from math import gcd

from generators._turns import by_turns
from generators.probability import _misconceptions as m
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Tier
from itembank.items.kinds.brief import Brief, told, whole
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_OFTEN = (
    "Red has probability {p}. How many reds do you expect in {n} spins?",
    "A win has probability {p}. How many wins do you expect in {n} games?",
)
_MISSED = (
    "Red has probability {p}. How many spins of {n} do you expect not to be red?",
    "A win has probability {p}. How many games of {n} do you expect not to win?",
)
_BACK = (
    "Red has probability {p}. How many spins would you expect to give {k} reds?",
    "A win has probability {p}. How many games would you expect to give {k} wins?",
)
_ONE = t.Int(1)


def _often(topic: Topic, tier: Tier, a: int, b: int, each: int) -> Draft:
    """Return the question how often to expect an outcome."""
    p, n, key = t.frac(a, b), t.Int(b * each), t.Int(a * each)
    return told(
        by_turns(_OFTEN, a + b + each),
        t.times(p, n),
        key,
        "integer",
        [
            (f"Find 1/{b} of {b * each}.", t.equals(t.divide(n, t.Int(b)), t.Int(each))),
            (f"Multiply by {a}.", t.equals(t.times(t.Int(a), t.Int(each)), key)),
        ],
        [(m.EXPECTS_OTHERS, (b - a) * each), (m.ONE_PART_EXPECTED, each)],
        ("often", False, a, b, b * each),
        p=p,
        n=n,
    )


def _missed(topic: Topic, tier: Tier, tenths: int, number: int) -> Draft:
    """Return the question how often to expect that something does not happen."""
    chance = Fraction(tenths, 20)
    p, rest = decimal_node(chance), decimal_node(1 - chance)
    n, key = t.Int(number), t.Int(int((1 - chance) * number))
    return told(
        by_turns(_MISSED, tenths + number // 20),
        t.times(t.Bracket(t.sub(_ONE, p)), n),
        key,
        "integer",
        [
            ("Find how likely it is not to happen.", t.equals(t.sub(_ONE, p), rest)),
            ("Multiply by how often it is tried.", t.equals(t.times(rest, n), key)),
        ],
        [(m.EXPECTS_OTHERS, number - key.n), (m.EQUAL_EXPECTED, whole(Fraction(number, 2)))],
        ("missed", tenths, number),
        (1,),
        p=p,
        n=n,
    )


def _back(topic: Topic, tier: Tier, a: int, b: int, each: int) -> Draft:
    """Return the question how many tries are to be expected."""
    p, k, letter, key = t.frac(a, b), t.Int(a * each), t.Sym("n"), t.Int(b * each)
    model = t.equals(t.times(p, letter), k)
    return told(
        by_turns(_BACK, a + b + each),
        Find(letter, (model,)),
        key,
        "integer",
        [
            ("The probability times the number is what is wanted.", model),
            (f"Find 1/{b} of the number.", t.equals(t.divide(k, t.Int(a)), t.Int(each))),
            (f"Multiply by {b}.", t.equals(t.times(t.Int(b), t.Int(each)), key)),
        ],
        [
            (m.EXPECTED_AGAIN, whole(Fraction(a * a * each, b))),
            (m.ONE_PART_EXPECTED, each),
            (m.DIVIDES_BY_NUMERATOR, a * b * each),
        ],
        ("back in brief", a, b, each),
        p=p,
        k=k,
    )


def _keep(a: int, b: int, each: int) -> bool:
    return 1 < a < b - 1 and gcd(a, b) == 1 and each not in (a, b) and b * each <= 240


BRIEF = {
    Tier.SUPPORT: (
        Brief(
            _often,
            _keep,
            {"a": (2, 3, 4, 5, 7), "b": (5, 7, 8, 9, 10), "each": (7, 9, 11, 13, 14, 16, 18)},
        ),
    ),
    Tier.CORE: (
        Brief(
            _missed,
            lambda tenths, number: tenths != 10,
            {"tenths": range(3, 20), "number": range(20, 241, 20)},
        ),
    ),
    Tier.CHALLENGE: (
        Brief(
            _back,
            _keep,
            {
                "a": (2, 3, 4, 5, 7),
                "b": (5, 7, 8, 9, 10),
                "each": (2, 3, 4, 6, 7, 8, 9, 11, 12, 13, 14, 15, 16),
            },
        ),
    ),
}
"""The short questions of each tier."""
