"""Factors and factor pairs: many answers are right, and the key is one of them."""

from __future__ import annotations

from functools import cache
from typing import Any

from itembank.items import kinds
from itembank.items.item import Condition, Draft, Give, Misconception, Step, Tier, prompt
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

MULTIPLE = Misconception(
    "number.multiple-for-factor",
    "gives a multiple instead of a factor",
    "Does your number go into the number in the question, or is it the other way round?",
)
NOT_GREATER = Misconception(
    "number.limit-itself",
    "takes the limit itself to be allowed",
    "Is a number greater than itself? Is it less than itself?",
)
ADDS = Misconception(
    "number.adds-for-multiplies",
    "gives two numbers that add up to it",
    "What do your two numbers make when you multiply them?",
)
ONE_AND_ITSELF = Misconception(
    "number.one-and-itself",
    "gives 1 and the number itself, whatever else is asked",
    "Your numbers multiply to make it. What else does the question say about them?",
)
A, B, X = t.Sym("a"), t.Sym("b"), t.Sym("x")


@cache
def _factors(n: int) -> tuple[int, ...]:
    return tuple(k for k in range(1, n + 1) if n % k == 0)


@cache
def _pairs(n: int) -> tuple[tuple[int, int], ...]:
    return tuple((k, n // k) for k in _factors(n) if k * k <= n)


def _support(n: int, a: int) -> bool:
    """Keep limits that are factors themselves, with two factors or more that are greater."""
    return n % a == 0 and sum(k > a for k in _factors(n)) >= 2


def _core(n: int, m: int) -> bool:
    """Keep numbers with two pairs or more that have both numbers above the limit."""
    # The second part: that the pair of the slip, m + 1 and the rest to n, multiplies to n would
    # make the slip right.
    return sum(a > m for a, _ in _pairs(n)) >= 2 and (m + 1) * (n - m - 1) != n


def _challenge(n: int, place: int) -> bool:
    """Keep limits that are the sum of a pair, with two pairs or more that have a smaller one."""
    # Pairs stand from far apart to close, and the closer the smaller their sum.
    return 0 < place < len(_pairs(n)) - 2


@register
class FactorPairs(Topic):
    """Factors of a number, and pairs of them that meet a condition."""

    id = "number.factor-pairs"
    title = "Factors and factor pairs"
    statements = ("number.primes",)
    misconceptions = (MULTIPLE, NOT_GREATER, ADDS, ONE_AND_ITSELF)
    spaces = {
        Tier.SUPPORT: kinds.with_given_answers(Space(_support, n=range(12, 121), a=range(2, 61))),
        Tier.CORE: Space(_core, n=range(24, 241), m=range(2, 6)),
        Tier.CHALLENGE: Space(_challenge, n=range(24, 301), place=range(1, 10)),
    }

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return self._factor(*values)
        if tier is Tier.CORE:
            return self._pair(*values)
        return self._small_sum(*values)

    def _factor(self, n: int, a: int) -> Draft:
        key = min(k for k in _factors(n) if k > a)
        asked = t.relate(X, ">", t.Int(a))
        steps = (
            Step(f"Look for a number greater than {a}.", t.relate(t.Int(key), ">", t.Int(a))),
            Step(
                f"It has to go into {n} with nothing left over.",
                t.equals(t.Int(n), t.times(t.Int(key), t.Int(n // key))),
            ),
        )
        return Draft(
            prompt("Write down a factor of {n} that is greater than {a}.", n=t.Int(n), a=t.Int(a)),
            Give((X,), (asked,), (Condition("factor", (t.Int(n),)),)),
            t.Int(key),
            "integer",
            steps,
            slips((NOT_GREATER, a), (MULTIPLE, 2 * n)),
            ("factor", n, a),
        )

    def _pair(self, n: int, m: int) -> Draft:
        tried = [pair for pair in _pairs(n) if 1 < pair[0] <= m]
        low, high = next(pair for pair in _pairs(n) if pair[0] > m)
        steps = (
            *(_multiplies(n, pair, f"{pair[0]} is not greater than {m}: go on.") for pair in tried),
            _multiplies(n, (low, high), f"Both numbers are greater than {m}."),
        )
        limits = tuple(t.relate(letter, ">", t.Int(m)) for letter in (A, B))
        limit_used = _pair_node(m, n // m) if n % m == 0 else None
        return Draft(
            prompt(
                "Write down two whole numbers, both greater than {m}, that multiply to make {n}.",
                m=t.Int(m),
                n=t.Int(n),
            ),
            Give((A, B), (t.equals(t.times(A, B), t.Int(n)), *limits), (Condition("whole"),)),
            _pair_node(low, high),
            "amounts",
            steps,
            slips(
                (NOT_GREATER, limit_used),
                (ADDS, _pair_node(m + 1, n - m - 1)),
                (ONE_AND_ITSELF, _pair_node(1, n)),
            ),
            ("pair", n, m),
        )

    def _small_sum(self, n: int, place: int) -> Draft:
        pairs = _pairs(n)
        limit = sum(pairs[place])
        low, high = pairs[place + 1]
        steps = (
            _multiplies(n, pairs[place], f"Start with one pair of factors of {n}."),
            Step("Add the two numbers.", _adds(pairs[place])),
            _multiplies(n, (low, high), "The sum has to be smaller: try numbers that are closer."),
            Step(
                "Add again, and compare.",
                t.Relation(t.add(t.Int(low), t.Int(high)), (("<", t.Int(limit)),)),
            ),
        )
        return Draft(
            prompt(
                "Write down two positive whole numbers that multiply to make {n} and have a sum "
                "of less than {s}.",
                n=t.Int(n),
                s=t.Int(limit),
            ),
            Give(
                (A, B),
                (
                    t.equals(t.times(A, B), t.Int(n)),
                    t.relate(t.add(A, B), "<", t.Int(limit)),
                ),
                (Condition("whole"), Condition("positive")),
            ),
            _pair_node(low, high),
            "amounts",
            steps,
            slips(
                (NOT_GREATER, _pair_node(*pairs[place])),
                (ONE_AND_ITSELF, _pair_node(1, n)),
            ),
            ("sum", n, limit),
        )


def _pair_node(a: int, b: int) -> t.Listing:
    return t.Listing((t.Int(a), t.Int(b)))


def _multiplies(n: int, pair: tuple[int, int], say: str) -> Step:
    a, b = pair
    return Step(say, t.equals(t.times(t.Int(a), t.Int(b)), t.Int(n)))


def _adds(pair: tuple[int, int]) -> t.Relation:
    a, b = pair
    return t.equals(t.add(t.Int(a), t.Int(b)), t.Int(a + b))
