"""Ratio topics: keys found a third way from the printed words, and what makes items worth asking.

The solvers below read only the printed line of a prompt, by regular expression, and work in
python-flint's rationals or by trying whole numbers in turn. They share no code with the
generators or the checker.
"""

from __future__ import annotations

import random
import re
from itertools import count
from math import gcd

import pytest
from flint import fmpq

from generators.ratio.best_value import BestValue
from generators.ratio.combine import Combine
from generators.ratio.difference import Difference
from generators.ratio.fraction_of_whole import FractionOfWhole
from generators.ratio.one_part import OnePart
from generators.ratio.proportion import Proportion
from generators.ratio.scale import Scale
from generators.ratio.share import Share
from generators.ratio.simplest_form import SimplestForm
from generators.ratio.unit_form import UnitForm
from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.topic import Topic
from itembank.notation import line
from tests.depth import cases, each, whole
from tests.generators.mistakes import declared_ones, each_mistake

TOPICS: tuple[Topic, ...] = (
    SimplestForm(),
    UnitForm(),
    Share(),
    OnePart(),
    Difference(),
    Combine(),
    FractionOfWhole(),
    Proportion(),
    BestValue(),
    Scale(),
)
TIERS = [(topic, tier) for topic in TOPICS for tier in Tier]
SOME_TIERS = each(TIERS, 8)
EACH = cases(40, 120, 120)

# How many of the smallest unit met here one of each unit makes.
SIZES: dict[str, fmpq | int] = {
    "": 1, "%": fmpq(1, 100), "£": 100, "€": 1, "p": 1, "mm": 1, "cm": 10, "m": 1000,
    "km": 1_000_000, "g": 1, "kg": 1000, "ml": 1, "l": 1000, "min": 1, "h": 60,
}  # fmt: skip
NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+\.\d+|\d+)"
AMOUNT = re.compile(rf"([£€]?)({NUMBER})(p\b|%| (?:mm|cm|km|m|kg|g|ml|l|min|h)\b)?")
RATIO = re.compile(rf"{AMOUNT.pattern}(?: : {AMOUNT.pattern})+")


def shown(item: Item) -> str:
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def rational(text: str) -> fmpq:
    total = fmpq(0)
    for piece in text.split(" "):
        if "/" in piece:
            top, bottom = piece.split("/")
            total += fmpq(int(top), int(bottom))
        else:
            whole, _, places = piece.partition(".")
            total += fmpq(int(whole + places), 10 ** len(places))
    return total


def amounts(text: str) -> list[fmpq]:
    return [
        rational(number) * SIZES[(sign or unit or "").strip()]
        for sign, number, unit in AMOUNT.findall(text)
    ]


def ratios(text: str) -> tuple[list[list[fmpq]], list[fmpq]]:
    """Return the ratios in a text and, apart from them, its other amounts."""
    found = [amounts(match.group()) for match in RATIO.finditer(text)]
    return found, amounts(RATIO.sub("", text))


def whole_parts(parts: list[fmpq]) -> list[int]:
    """Scale a ratio to whole numbers by trying multipliers until all parts are whole."""
    for scale in count(1):
        scaled = [part / parts[0] * scale for part in parts]
        if all(part.q == 1 for part in scaled):
            return [int(part.p) for part in scaled]
    raise AssertionError


def sample(topic: Topic, tier: Tier) -> list[Item]:
    own = topic.spaces[tier].own
    return [topic.item(tier, i) for i in random.Random(7).sample(own, min(EACH, len(own)))]


def one_of(parts: fmpq, amount: fmpq, tier: Tier) -> fmpq:
    """Return one part: things that can be counted by trying numbers, amounts by division."""
    if tier is Tier.SUPPORT:
        return next(fmpq(n) for n in range(1, 1000) if n * parts == amount)
    return amount / parts


def solve(item: Item) -> list[fmpq]:
    """Find the answer from the printed words: the parts of a ratio, or amounts."""
    text, tier = shown(item), item.tier
    (given, loose), name = ratios(text), item.topic.partition(".")[2]
    first = given[0] if given else []
    if name == "simplest-form":
        return [fmpq(part) for part in whole_parts(first)]
    if name == "unit-form":
        over = first[1] if "form n : 1" in text else first[0]
        return [part / over for part in first]
    if name == "share":
        value = loose[0] / sum(first)
        shares = [value * part for part in first]
        return [max(shares) - min(shares)] if tier is Tier.CHALLENGE else shares
    if name == "one-part":
        index = 0 if tier is Tier.SUPPORT else 1
        value = one_of(first[index], loose[0], tier)
        return [value * (first[1] if tier is Tier.SUPPORT else sum(first))]
    if name == "difference":
        value = one_of(max(first) - min(first), loose[0], tier)
        if tier is Tier.CORE:
            return [value * sum(first)]
        if tier is Tier.CHALLENGE:
            return [value * sorted(first)[1]]
        asked = re.search(r"How many (?:are )?(\w+)", text)
        names = re.search(r"(\w+) and (\w+)", text)
        assert asked
        assert names
        return [value * first[[n.lower() for n in names.groups()].index(asked[1])]]
    if name == "combine":
        (a, b), (d, c) = given
        parts = [a / b, fmpq(1), c / d]
        if tier is not Tier.CHALLENGE:
            return [fmpq(part) for part in whole_parts(parts)]
        return [part / sum(parts) * loose[0] for part in parts]
    if name == "fraction-of-whole":
        if tier is Tier.SUPPORT:
            asked = re.search(r"(?:are|is) (\w+)\?", text)
            names = re.search(r"(\w+) (?:and|to) (\w+)", text)
            assert asked
            assert names
            return [first[[n.lower() for n in names.groups()].index(asked[1])] / sum(first)]
        rest = 1 - loose[0]
        if tier is Tier.CORE:
            return [fmpq(part) for part in whole_parts([loose[0], rest])]
        others = [rest * part / sum(first) for part in first]
        return [fmpq(part) for part in whole_parts([loose[0], *others])]
    if name == "proportion":
        if tier is Tier.CHALLENGE:
            pound, euros, here, there = loose
            return [here - there / euros * pound]
        few, amount, many = loose
        if " pays " in text:
            few, amount = amount, few
        return [amount / few * many]
    if name == "scale":
        if tier is Tier.SUPPORT:
            unit, stands, plan = loose
            return [plan / unit * stands]
        if len(given) == 2:
            return [loose[0] * given[0][1] / given[1][1]]
        if given:
            return [loose[0] * first[1]] if "on the plan. How" in text else [loose[0] / first[1]]
        real, plan = loose[:2]
        return [fmpq(1), real / plan]
    raise AssertionError(name)


@whole
@pytest.mark.parametrize(
    ("topic", "tier"),
    [(topic, tier) for topic, tier in TIERS if topic.id != "ratio.best-value"],
    ids=lambda value: getattr(value, "id", str(value)),
)
def test_key_is_found_again_from_the_printed_words(topic: Topic, tier: Tier) -> None:
    for item in sample(topic, tier):
        assert amounts(line(item.key)) == solve(item), shown(item)


@whole
@pytest.mark.parametrize("tier", list(Tier))
def test_best_value_gives_most_for_a_penny(tier: Tier) -> None:
    for item in sample(BestValue(), tier):
        packs = re.findall(r"(Pack \w): (.*?) for (.*?)\.(?: |$)", shown(item))
        assert len(packs) == 3
        per_penny = {name: amounts(size)[0] / amounts(price)[0] for name, size, price in packs}
        best = [name for name, value in per_penny.items() if value == max(per_penny.values())]
        assert [line(item.key).strip('"')] == best, shown(item)


@whole
@pytest.mark.parametrize(
    ("topic", "tier"), SOME_TIERS, ids=lambda value: getattr(value, "id", value)
)
def test_wrong_answers_are_wrong_and_different(topic: Topic, tier: Tier) -> None:
    for item in sample(topic, tier):
        is_ratio = item.form in ("ratio", "one-to-n", "n-to-one")
        values = []
        for node in (item.key, *(slip.wrong for slip in each_mistake(item))):
            text = line(node)
            parts = amounts(text)
            values.append(
                text if not parts else tuple(p / parts[0] for p in parts) if is_ratio else parts
            )
            assert all(part > 0 for part in parts), shown(item)
        assert len(item.slips) >= 2
        assert all(values.count(value) == 1 for value in values), (shown(item), values)


@pytest.mark.parametrize(
    ("topic", "tier"), SOME_TIERS, ids=lambda value: getattr(value, "id", value)
)
def test_every_tier_is_large_and_never_asks_twice(topic: Topic, tier: Tier) -> None:
    items = list(topic.walk(tier))
    assert len(items) >= 200
    prompts = [shown(item) for item in items]
    drawn = ["" if item.figure is None else words(item.figure) for item in items]
    assert len({*zip(prompts, drawn, strict=True)}) == len(items)
    # What people say of the answer, or write, comes after the question.
    assert max(len(re.split(r"\n\w+ (?:says |writes:)", prompt)[0]) for prompt in prompts) <= 190


@pytest.mark.parametrize("topic", each(TOPICS, 2), ids=lambda topic: topic.id)
def test_every_misconception_shows_on_some_item(topic: Topic) -> None:
    assert declared_ones(topic) == {
        (misconception.id, misconception.name) for misconception in topic.misconceptions
    }
    asks = [
        slip.misconception
        for tier, space in topic.spaces.items()
        for index in space.own
        for slip in topic.make(tier, *space[index]).slips
    ]
    assert all(
        misconception.id.startswith("ratio.") and misconception.ask.endswith("?")
        for misconception in asks
    )


@whole
@pytest.mark.parametrize(
    ("topic", "tier"), SOME_TIERS, ids=lambda value: getattr(value, "id", value)
)
def test_working_is_in_short_sentences_and_ends_in_the_key(topic: Topic, tier: Tier) -> None:
    for item in sample(topic, tier):
        for step in item.steps:
            assert step.say.endswith(".")
            assert len(step.say) <= 110
            assert not re.search(r"\b1 (parts|are)\b", step.say)
        whole = " ".join(line(step.maths) for step in item.steps if step.maths is not None)
        assert all(part in whole for part in line(item.key).split(", ")), shown(item)


@whole
def test_simplest_ratios_have_no_common_factor() -> None:
    for tier in Tier:
        for item in sample(SimplestForm(), tier):
            assert gcd(*(int(part.p) for part in amounts(line(item.key)))) == 1


def wrongs(draft_item: Item) -> dict[str, str]:
    return {slip.misconception.id: line(slip.wrong) for slip in each_mistake(draft_item)}


def found(topic: Topic, tier: Tier, text: str) -> Item:
    """Return the item of a tier with this prompt."""
    return next(item for item in topic.walk(tier) if shown(item) == text)


def test_wrong_answers_are_what_the_wrong_methods_give() -> None:
    # Worked by hand from the name of each misconception.
    item = found(
        SimplestForm(), Tier.CORE, "Write 95 cm : 2.5 m in its simplest form, without units."
    )
    assert line(item.key) == "19 : 50"
    assert wrongs(item) == {
        "ratio.simplest-units-ignored": "38 : 1",
        "ratio.simplest-reversed": "50 : 19",
    }
    item = found(Share(), Tier.SUPPORT, "Share £50 in the ratio 4 : 1.")
    assert line(item.key) == "£40, £10"
    assert wrongs(item)["ratio.share-equal"] == "£25, £25"
    item = found(
        OnePart(),
        Tier.SUPPORT,
        "A depot has electric and diesel buses in the ratio 7 : 5. There are 56 electric buses. "
        "How many are diesel?",
    )
    assert line(item.key) == "40"
    assert wrongs(item) == {
        "ratio.one-part-additive": "54",
        "ratio.one-part-undivided": "280",
    }
    item = found(
        Combine(),
        Tier.CORE,
        "a : b = 3 : 4 and b : c = 6 : 5. Write a : b : c in its simplest form.",
    )
    assert line(item.key) == "9 : 12 : 10"
    assert wrongs(item) == {
        "ratio.combine-joined": "3 : 4 : 5",
        "ratio.combine-added": "3 : 10 : 5",
    }
    item = found(
        Scale(),
        Tier.CORE,
        "A plan has the scale 1 : 50. A shed is really 7.5 m long. "
        "How long is it on the plan, in centimetres?",
    )
    assert line(item.key) == "15 cm"
    assert wrongs(item)["ratio.scale-metres-as-centimetres"] == "0.15 cm"
    assert wrongs(item)["ratio.scale-thousand"] == "150 cm"
