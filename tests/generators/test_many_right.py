"""Topics whose questions have many right answers, by engines that the tool does not use.

Fractions are held to python-flint's rationals; factors and pairs of them to brute force over the
numbers that the prompt prints. Nothing here looks at the conditions behind a question.
"""

from __future__ import annotations

import random
from collections.abc import Iterator

import flint
import pytest

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.items.topics.topic import Topic
from itembank.marking.mark import mark
from itembank.marking.verdict import Verdict
from itembank.notation import tree as t
from itembank.notation.line import line

BETWEEN, PAIRS = find_topic("fractions.between"), find_topic("number.factor-pairs")


def _rational(node: t.Node) -> flint.fmpq:
    match node:
        case t.Int(n):
            return flint.fmpq(n)
        case t.Frac(t.Int(top), t.Int(bottom)):
            return flint.fmpq(top, bottom)
        case t.Mixed(whole, top, bottom):
            return flint.fmpq(whole * bottom + top, bottom)
    raise AssertionError(node)


def _printed(item: Item) -> list[t.Node]:
    return [run for run in item.prompt if not isinstance(run, str)]


def _numbers(node: t.Node) -> list[int]:
    parts = node.parts if isinstance(node, t.Listing) else (node,)
    return [part.n for part in parts if isinstance(part, t.Int)]


def _right(item: Item, numbers: list[int]) -> bool:
    """Decide by the printed words of each tier, with remainders only."""
    printed = [run.n for run in _printed(item) if isinstance(run, t.Int)]
    if item.tier is Tier.SUPPORT:
        n, limit = printed
        return len(numbers) == 1 and numbers[0] > limit and n % numbers[0] == 0
    if len(numbers) != 2 or min(numbers) < 1:
        return False
    if item.tier is Tier.CORE:
        limit, n = printed
        return min(numbers) > limit and numbers[0] * numbers[1] == n
    n, limit = printed
    return sum(numbers) < limit and numbers[0] * numbers[1] == n


def _own(topic: Topic, tier: Tier) -> Iterator[Item]:
    return (topic.item(tier, index) for index in topic.spaces[tier].own)


def test_keys_lie_between_and_likely_mistakes_do_not() -> None:
    for tier in Tier:
        for item in _own(BETWEEN, tier):
            low, high = map(_rational, _printed(item))
            assert low < _rational(item.key) < high, item.address
            for slip in item.slips:
                assert not low < _rational(slip.wrong) < high, item.address


def test_keys_are_factors_and_pairs_and_likely_mistakes_are_not() -> None:
    for tier in Tier:
        for item in _own(PAIRS, tier):
            assert _right(item, _numbers(item.key)), item.address
            assert not any(_right(item, _numbers(slip.wrong)) for slip in item.slips), item.address


def _some(topic_tier: tuple[str, Tier], count: int) -> Iterator[Item]:
    name, tier = topic_tier
    topic = find_topic(name)
    for index in random.Random(7).sample(topic.spaces[tier].own, count):
        yield topic.item(tier, index)


@pytest.mark.parametrize("tier", list(Tier))
def test_any_fraction_is_marked_by_where_it_lies(tier: Tier) -> None:
    rng = random.Random(3)
    for item in _some(("fractions.between", tier), 12):
        low, high = map(_rational, _printed(item))
        whole = 0 if tier is not Tier.CHALLENGE else int(low)
        for _ in range(8):
            bottom = rng.randint(3, 90)
            top = rng.randint(1, bottom - 1)
            given: t.Node = t.Mixed(whole, top, bottom) if whole else t.frac(top, bottom)
            right = low < _rational(given) < high
            marked = mark(item, line(given))
            assert (marked.verdict is Verdict.RIGHT) == right, (item.address, line(given), marked)


@pytest.mark.parametrize("tier", [Tier.CORE, Tier.CHALLENGE])
def test_every_pair_is_marked_by_what_the_words_ask(tier: Tier) -> None:
    for item in _some(("number.factor-pairs", tier), 10):
        n = max(run.n for run in _printed(item) if isinstance(run, t.Int))
        pairs = [[a, n // a] for a in range(1, n + 1) if n % a == 0]
        for pair in [*pairs, [2, 3], [0, n], [n, n]]:
            a, b = pair
            for text in (f"{a}, {b}", f"{a} and {b}", f"{b} × {a}"):
                right = mark(item, text).verdict is Verdict.RIGHT
                assert right == _right(item, pair), (item.address, text)


@pytest.mark.parametrize("text", ["-3 and -8", "3", "3, 8, 1", "2.4, 10", "x"])
def test_what_is_no_pair_is_not_right(text: str) -> None:
    item = PAIRS.item(Tier.CHALLENGE, 0)
    assert line(item.key) == "3, 8"
    assert mark(item, text).verdict is not Verdict.RIGHT


def test_a_sum_gives_two_numbers_only_where_the_question_adds_them() -> None:
    assert mark(PAIRS.item(Tier.CHALLENGE, 0), "3 + 8").verdict is Verdict.RIGHT
    core = PAIRS.item(Tier.CORE, 0)
    assert line(core.key) == "3, 8"
    assert mark(core, "3 × 8").verdict is Verdict.RIGHT
    assert mark(core, "3 + 8").verdict is not Verdict.RIGHT


def test_a_known_mistake_is_named_and_a_wrong_form_asked_for() -> None:
    item = BETWEEN.item(Tier.CORE, 0)
    assert [line(run) for run in _printed(item)] == ["1/2", "4/5"]
    known = mark(item, "13/10")
    assert known.verdict is Verdict.KNOWN
    assert known.misconception is not None
    assert known.misconception.id == "fractions.between-added"
    assert mark(item, "0.6").verdict is Verdict.WRONG_FORM
    assert mark(item, "9/10").says == "9/10 is not between 1/2 and 4/5: it is more than 4/5."
    assert mark(item, "√2").verdict is Verdict.UNREADABLE


def test_an_equation_that_is_no_pair_is_answered_by_what_it_comes_to() -> None:
    item = PAIRS.item(Tier.CHALLENGE, 0)
    assert mark(item, "4 × 6 = 24").verdict is Verdict.RIGHT
    assert mark(item, "24 = 6 × 4").verdict is Verdict.RIGHT
    assert mark(item, "6 × 8 = 48").says == "6 × 8 is 48, not 24."
    assert mark(item, "4 × 6 = 25").verdict is Verdict.WRONG


@pytest.mark.parametrize("topic", [BETWEEN, PAIRS])
def test_every_tier_is_large(topic: object) -> None:
    assert all(len(space) >= 200 for space in topic.spaces.values())  # type: ignore[attr-defined]
