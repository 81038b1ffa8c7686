"""How often something is to be expected: from a probability, from counts, and back.

England's programme of study for key stage 3 (2013) asks pupils to "record, describe and analyse
the frequency of outcomes of simple probability experiments" (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from math import gcd
from typing import Any

from generators._turns import by_turns
from generators.probability import _misconceptions as m
from generators.probability._expected_in_brief import BRIEF
from itembank.items import kinds
from itembank.items.forms.form_rules import decimal_node
from itembank.items.item import Draft, Find, Step, Tier, prompt
from itembank.items.kinds.brief import with_brief
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_OFTEN = (
    "The probability that a spinner lands on red is {p}. It is spun {n} times. "
    "How many times do you expect red?",
    "The probability that a seed grows is {p}. A gardener sows {n} seeds. "
    "How many do you expect to grow?",
    "The probability that a bus is late is {p}. There are {n} buses in a week. "
    "How many do you expect to be late?",
    "The probability that a ticket wins is {p}. A club sells {n} tickets. "
    "How many do you expect to win?",
    "The probability that a bike needs a new tyre is {p}. A workshop checks {n} bikes. "
    "How many do you expect to need a new tyre?",
)
_BAG = (
    "A bag holds {a} red counters and {b} blue counters. A counter is taken at random and put "
    "back, {n} times. How many times do you expect a red counter?",
    "A fair spinner has {a} green sections and {b} white sections, all of one size. It is spun "
    "{n} times. How many times do you expect green?",
    "A box holds {a} winning tickets and {b} that lose. A ticket is taken at random and put back, "
    "{n} times. How many times do you expect a winning ticket?",
)
_MORE = (
    "A bag holds {a} red counters and {b} blue counters. A counter is taken at random and put "
    "back, {n} times. How many more times do you expect red than blue?",
    "A fair spinner has {a} green sections and {b} white sections, all of one size. It is spun "
    "{n} times. How many more times do you expect green than white?",
)
_WANTED = (
    "The probability that a seed grows is {p}. A gardener wants {k} plants. "
    "How many seeds would you expect her to need?",
    "The probability that a ticket wins is {p}. A club wants to give {k} prizes. "
    "How many tickets would you expect it to need?",
    "The probability that a spinner lands on red is {p}. In a game it landed on red {k} times, as "
    "often as expected. How many times was it spun?",
)
_TRIED = (
    "A spinner is spun {n} times and lands on red {k} times. "
    "How many times would you expect red in {m} spins?",
    "Of {n} seeds that were sown {k} grew. How many would you expect to grow of {m} seeds?",
    "Of {n} buses {k} were late. How many would you expect to be late of {m} buses?",
    "Of {n} swimmers {k} came by bus. How many would you expect to come by bus of {m} swimmers?",
)


def _fair(a: int, b: int, each: int) -> bool:
    """Keep a proper fraction in lowest terms, and a number of trials that is not too plain."""
    return a < b and gcd(a, b) == 1 and each not in (a, b) and 2 * a != b


def _support(decimal: bool, a: int, b: int, each: int) -> bool:
    if decimal:
        return b == 10 and each > 1 and a not in (5, 10 - a) and each != a
    return _fair(a, b, each) and 1 < a < b - 1 and b * each <= 240


def _core(kind: int, a: int, b: int, each: int, more: int) -> bool:
    if kind == _TRIALS:
        if not _fair(a, b, each) or more == 1:
            return False
        # From k of n to m: more times as many.
        n, k = b * each, a * each
        wrong = {k + n * (more - 1), k, (n - k) * more}
        return 20 <= n <= 100 and k * more not in wrong and len(wrong) == 3
    return more == 1 and _counts(a, b, each)


def _counts(a: int, b: int, each: int) -> bool:
    """Keep counts where every single thing is expected `each` times."""
    if a == b or gcd(a, b) > 1 or each in (a, b):
        return False
    total = (a + b) * each
    wrong = {b * each, Fraction(total, 2), a * total}
    return total <= 200 and len(wrong) == 3 and a * each not in wrong and total % 5 == 0


def _challenge(kind: int, a: int, b: int, each: int) -> bool:
    if kind == 0:  # how many trials for so many
        return _fair(a, b, each) and b * each <= 400 and b - a not in (1, a)
    gap = (a - b) * each
    return a > b and _counts(a, b, each) and gap not in (a * each, b * each, each)


_COUNTS, _TRIALS = range(2)


@register
class ExpectedFrequency(Topic):
    """How often to expect an outcome: from its probability; from counts; from trials, and back."""

    id = "probability.expected-frequency"
    title = "Expected frequency"
    statements = ("probability.experiments",)
    prerequisites = ("probability.single", "fractions.of-quantity")
    misconceptions = (
        *(m.DIVIDES_BY_NUMERATOR, m.EXPECTS_OTHERS, m.ONE_PART_EXPECTED, m.EQUAL_EXPECTED),
        *(m.COUNT_TIMES, m.EXPECTED_AGAIN, m.ADDS_DIFFERENCE, m.SAME_FREQUENCY),
        *(m.FIRST_ONLY, m.COUNTS_APART),
    )
    spaces = {
        Tier.SUPPORT: Space(
            _support,
            decimal=(False, True),
            a=range(1, 10),
            b=range(3, 13),
            each=(2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30),
        ),
        Tier.CORE: Space(
            _core,
            kind=(_COUNTS, _TRIALS),
            a=range(2, 10),
            b=range(2, 10),
            each=range(2, 31),
            more=(1, 2, 3, 5, 10),
        ),
        Tier.CHALLENGE: Space(
            _challenge, kind=range(2), a=range(2, 10), b=range(2, 13), each=range(2, 31)
        ),
    }
    spaces = kinds.with_statements(spaces)
    spaces = with_brief(spaces, BRIEF)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _often(*values)
        kind, *rest = values
        if tier is Tier.CORE:
            return _from_trials(*rest) if kind == _TRIALS else _from_counts(*rest[:3])
        return _back(*rest) if kind == 0 else _how_many_more(*rest)


def _often(decimal: bool, a: int, b: int, each: int) -> Draft:
    n = b * each
    p = decimal_node(Fraction(a, b)) if decimal else t.frac(a, b)
    key, count = t.Int(a * each), t.Int(n)
    wrong: list[tuple[Any, int]]
    if decimal:
        steps = [
            Step(
                "Multiply the probability by the number of times.", t.equals(t.times(p, count), key)
            )
        ]
        wrong = [(m.EXPECTS_OTHERS, n - a * each), (m.COUNT_TIMES, a * n)]
        if n % a == 0:
            wrong.append((m.DIVIDES_BY_NUMERATOR, n // a))
    else:
        steps = [
            Step(f"Find 1/{b} of {n}.", t.equals(t.divide(count, t.Int(b)), t.Int(each))),
            Step(f"Multiply by {a}.", t.equals(t.times(t.Int(a), t.Int(each)), key)),
        ]
        wrong = [(m.EXPECTS_OTHERS, n - a * each), (m.ONE_PART_EXPECTED, each)]
    return Draft(
        prompt(by_turns(_OFTEN, a + b + each), p=p, n=count),
        Find(t.times(p, count)),
        key,
        "integer",
        tuple(steps),
        slips(*wrong, key=key),
        ("often", decimal, a, b, n),
    )


def _from_counts(a: int, b: int, each: int) -> Draft:
    whole = a + b
    total = whole * each
    first, second, n = t.Int(a), t.Int(b), t.Int(total)
    key = t.Int(a * each)
    target = t.times(t.Frac(first, t.add(first, second)), n)
    return Draft(
        prompt(by_turns(_BAG, a + b + each), a=first, b=second, n=n),
        Find(target),
        key,
        "integer",
        (
            Step("Find how many there are in all.", t.equals(t.add(first, second), t.Int(whole))),
            Step(f"Find 1/{whole} of {total}.", t.equals(t.divide(n, t.Int(whole)), t.Int(each))),
            Step(f"Find {a}/{whole} of it.", t.equals(t.times(t.Int(a), t.Int(each)), key)),
        ),
        slips(
            (m.EXPECTS_OTHERS, b * each),
            (m.EQUAL_EXPECTED, total // 2 if total % 2 == 0 else None),
            (m.COUNT_TIMES, a * total),
            key=key,
        ),
        ("counts", a, b, total),
    )


def _back(a: int, b: int, each: int) -> Draft:
    p, k, letter = t.frac(a, b), t.Int(a * each), t.Sym("n")
    key = t.Int(b * each)
    return Draft(
        prompt(by_turns(_WANTED, a + b + each), p=p, k=k),
        Find(letter, (t.equals(t.times(p, letter), k),)),
        key,
        "integer",
        (
            Step(
                "The probability times the number is what is wanted.",
                t.equals(t.times(p, letter), k),
            ),
            Step(f"Find 1/{b} of the number.", t.equals(t.divide(k, t.Int(a)), t.Int(each))),
            Step(f"Multiply by {b}.", t.equals(t.times(t.Int(b), t.Int(each)), key)),
        ),
        slips(
            (m.EXPECTED_AGAIN, a * a * each // b if a * a * each % b == 0 else None),
            (m.ONE_PART_EXPECTED, each),
            (m.EXPECTS_OTHERS, (b - a) * each),
            key=key,
        ),
        ("back", a, b, each),
    )


def _how_many_more(a: int, b: int, each: int) -> Draft:
    whole = a + b
    first, second, n = t.Int(a), t.Int(b), t.Int(whole * each)
    key = t.Int((a - b) * each)
    both = t.add(first, second)
    target = t.sub(t.times(t.Frac(first, both), n), t.times(t.Frac(second, both), n))
    return Draft(
        prompt(by_turns(_MORE, a + b + each), a=first, b=second, n=n),
        Find(target),
        key,
        "integer",
        (
            Step("Find how many there are in all.", t.equals(both, t.Int(whole))),
            Step(f"Find 1/{whole} of the times.", t.equals(t.divide(n, t.Int(whole)), t.Int(each))),
            Step("Find the first.", t.equals(t.times(first, t.Int(each)), t.Int(a * each))),
            Step("Find the other.", t.equals(t.times(second, t.Int(each)), t.Int(b * each))),
            Step("Subtract.", t.equals(t.sub(t.Int(a * each), t.Int(b * each)), key)),
        ),
        slips(
            (m.FIRST_ONLY, a * each),
            (m.COUNTS_APART, a - b),
            key=key,
        ),
        ("more", a, b, each),
    )


def _from_trials(a: int, b: int, each: int, more: int) -> Draft:
    n, k, many = t.Int(b * each), t.Int(a * each), t.Int(b * each * more)
    key = t.Int(a * each * more)
    return Draft(
        prompt(by_turns(_TRIED, a + b + each + more), n=n, k=k, m=many),
        Find(t.times(t.Frac(k, n), many)),
        key,
        "integer",
        (
            Step(
                "Write how often it came as a fraction.",
                t.equals(t.Frac(k, n), t.frac(a, b)),
            ),
            Step(
                f"Find 1/{b} of the new number.",
                t.equals(t.divide(many, t.Int(b)), t.Int(each * more)),
            ),
            Step(f"Find {a}/{b} of it.", t.equals(t.times(t.Int(a), t.Int(each * more)), key)),
        ),
        slips(
            (m.ADDS_DIFFERENCE, a * each + b * each * (more - 1)),
            (m.SAME_FREQUENCY, a * each),
            (m.EXPECTS_OTHERS, (b - a) * each * more),
            key=key,
        ),
        ("trials", a, b, each, more),
    )
