"""Two independent events: both, neither, exactly one and at least one.

England's programme of study for key stage 3 (2013) asks pupils to use sample spaces of "combined
events" to "calculate theoretical probabilities" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._turns import by_turns
from generators.probability import _misconceptions as m
from generators.probability._combined_in_brief import BRIEF
from generators.probability.single import SIMPLEST
from itembank.items import kinds
from itembank.items.forms.form_rules import decimal_node, number_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds import line_edits as e
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

# What two events are, and how both, neither, exactly one and at least one of them are asked for.
_PAIRS = (
    (
        "The probability that the morning bus is late is {p}. "
        "The probability that the evening bus "
        "is late is {q}. The two are independent.",
        ("both buses are late", "neither bus is late", "exactly one of the buses is late",
         "at least one of the buses is late"),
    ),
    (
        "The probability that a bean seed grows is {p}. The probability that a pea seed grows is "
        "{q}. The two are independent.",
        ("both seeds grow", "neither seed grows", "exactly one of the seeds grows",
         "at least one of the seeds grows"),
    ),
    (
        "The probability that Priya wins her race is {p}. The probability that Owen wins his race "
        "is {q}. The two are independent.",
        ("both of them win", "neither of them wins", "exactly one of them wins",
         "at least one of them wins"),
    ),
    (
        "A fair spinner lands on red with probability {p}. Another lands on red with probability "
        "{q}. Both are spun.",
        ("both land on red", "neither lands on red", "exactly one lands on red",
         "at least one lands on red"),
    ),
)  # fmt: skip
_TWICE = (
    "The probability that a spinner lands on red is {p}. It is spun twice. "
    "What is the probability that it lands on red both times?",
    "The probability that a bus is late is {p}, whatever happened the day before. "
    "What is the probability that it is late on two days in a row?",
    "The probability that a ticket wins is {p}. Leila takes a ticket, puts it back, and takes a "
    "ticket again. What is the probability that she wins both times?",
)
BOTH, NEITHER, EXACTLY, AT_LEAST, TWICE = range(5)
"""What is asked of two events."""


def _chances(a: int, b: int, c: int, d: int) -> tuple[Fraction, Fraction] | None:
    """Return two probabilities that are neither equal nor a half; of tenths d is 0."""
    if d == 0:
        return (Fraction(a, 10), Fraction(c, 10)) if b == 0 and a < c and 5 not in (a, c) else None
    if b == 0 or a >= b or c >= d or gcd(a, b) > 1 or gcd(c, d) > 1 or a * d >= c * b:
        return None
    return Fraction(a, b), Fraction(c, d)


def _asked(kind: int, p: Fraction, q: Fraction) -> Fraction:
    return {
        BOTH: p * q,
        TWICE: p * p,
        NEITHER: (1 - p) * (1 - q),
        EXACTLY: p * (1 - q) + (1 - p) * q,
        AT_LEAST: 1 - (1 - p) * (1 - q),
    }[kind]


def _wrong(kind: int, p: Fraction, q: Fraction) -> list[tuple[Any, Fraction]]:
    both, neither = p * q, (1 - p) * (1 - q)
    return {
        BOTH: [(m.ADDS_FOR_BOTH, p + q), (m.NEITHER_INSTEAD, neither)],
        TWICE: [(m.DOUBLES, 2 * p), (m.SAME_AGAIN, p)],
        NEITHER: [(m.NOT_BOTH, 1 - both), (m.BOTH_INSTEAD, both)],
        EXACTLY: [
            (m.ONE_ORDER, p * (1 - q)),
            (m.BOTH_INSTEAD, both),
            (m.ADDS_FOR_EITHER, p + q),
        ],
        AT_LEAST: [
            (m.ADDS_FOR_EITHER, p + q),
            (m.BOTH_INSTEAD, both),
            (m.NEITHER_INSTEAD, neither),
        ],
    }[kind]


def _kept(kind: int, a: int, b: int, c: int, d: int) -> bool:
    if kind == TWICE:
        # Only the first is used: the point with the second at its least stands for all.
        if (c, d) != (1, 0) or (b and (a >= b or gcd(a, b) > 1)) or (b == 0 and a == 5):
            return False
        pair: tuple[Fraction, Fraction] | None = (Fraction(a, b or 10),) * 2
    else:
        pair = _chances(a, b, c, d)
    if pair is None:
        return False
    wrong = [value for _, value in _wrong(kind, *pair)]
    return _asked(kind, *pair) not in wrong and len({*wrong}) == len(wrong)


_BOTTOMS = (0, 2, 3, 4, 5, 6, 7, 8, 10)
_AXES = {"a": range(1, 10), "b": _BOTTOMS, "c": range(1, 10), "d": _BOTTOMS}


@register
class Combined(Topic):
    """Both of two events; neither, or twice in a row; exactly one, or at least one."""

    id = "probability.combined"
    title = "Two independent events"
    statements = ("probability.sample-spaces",)
    prerequisites = ("probability.single", "fractions.multiply")
    misconceptions = (
        *(m.ADDS_FOR_BOTH, m.NEITHER_INSTEAD, m.DOUBLES, m.SAME_AGAIN, m.NOT_BOTH),
        *(m.BOTH_INSTEAD, m.ONE_ORDER, m.ADDS_FOR_EITHER),
    )
    spaces = {
        Tier.SUPPORT: Space(_kept, kind=(BOTH,), **_AXES),
        Tier.CORE: Space(_kept, kind=(NEITHER, TWICE), **_AXES),
        Tier.CHALLENGE: Space(_kept, kind=(EXACTLY, AT_LEAST), **_AXES),
    }
    spaces = kinds.with_statements(spaces)
    spaces = kinds.with_working_spotted(
        spaces,
        "probability.combined",
        kinds.working_goes_wrong({m.ADDS_FOR_BOTH: (e.added,), m.DOUBLES: (e.added,)}),
    )
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        kind, a, b, c, d = values
        decimal = b == 0
        p, q = Fraction(a, b or 10), Fraction(c, d or 10)
        if kind == TWICE:
            q = p
        write = decimal_node if decimal else number_node
        first, second = write(p), write(q)
        ending = "" if decimal else SIMPLEST
        if kind == TWICE:
            text = prompt(by_turns(_TWICE, a + b) + ending, p=first)
        else:
            story, asks = by_turns(_PAIRS, a + b + c + d)
            words = f"{story} What is the probability that {asks[kind]}?"
            text = prompt(words + ending, p=first, q=second)
        key = write(_asked(kind, p, q))
        whole = t.Int(1)
        not_p, not_q = write(1 - p), write(1 - q)
        left_p, left_q = t.Bracket(t.sub(whole, first)), t.Bracket(t.sub(whole, second))
        others = [
            Step(
                "Find the probability that the first does not happen.",
                t.equals(t.sub(whole, first), not_p),
            ),
            Step(
                "Find the probability that the second does not happen.",
                t.equals(t.sub(whole, second), not_q),
            ),
        ]
        target: t.Node
        if kind in (BOTH, TWICE):
            target = t.times(first, second)
            steps = [Step("Both have to happen: multiply.", t.equals(target, key))]
        elif kind == NEITHER:
            target = t.times(left_p, left_q)
            steps = [*others, Step("Multiply.", t.equals(t.times(not_p, not_q), key))]
        elif kind == EXACTLY:
            target = t.add(t.times(first, left_q), t.times(left_p, second))
            ways = write(p * (1 - q)), write((1 - p) * q)
            steps = [
                *others,
                Step("Only the first happens.", t.equals(t.times(first, not_q), ways[0])),
                Step("Only the second happens.", t.equals(t.times(not_p, second), ways[1])),
                Step("Add the two ways.", t.equals(t.add(*ways), key)),
            ]
        else:
            target = t.sub(whole, t.times(left_p, left_q))
            neither = write((1 - p) * (1 - q))
            steps = [
                *others,
                Step("Find the probability of neither.", t.equals(t.times(not_p, not_q), neither)),
                Step("Subtract from 1.", t.equals(t.sub(whole, neither), key)),
            ]
        return Draft(
            text,
            Find(target),
            key,
            "decimal" if decimal else "lowest-terms",
            tuple(steps),
            slips(*_wrong(kind, p, q), write=write, key=key),
            (kind, p, q, decimal),
            constants=(1,),
        )
