"""Fraction topics: keys found a third way from the printed words, and what makes items good.

The reader below works from the line of a prompt alone, in python-flint's rationals, and by
trying whole numbers in turn. It shares no code with the generators or the checker.
"""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from itertools import pairwise

import pytest
from flint import fmpq

from generators.fractions.add_like import AddLike
from generators.fractions.add_mixed import AddMixed
from generators.fractions.add_unlike import AddUnlike
from generators.fractions.decimals_percentages import DecimalsPercentages
from generators.fractions.divide import Divide
from generators.fractions.equivalent import Equivalent
from generators.fractions.find_whole import FindWhole
from generators.fractions.improper_mixed import ImproperMixed
from generators.fractions.lowest_terms import LowestTerms
from generators.fractions.mixed_operations import MixedOperations
from generators.fractions.multiply import Multiply
from generators.fractions.of_quantity import OfQuantity
from generators.fractions.order import OrderFractions
from itembank.items.item import Item, Tier
from itembank.items.measures.difficulty import difficulty
from itembank.items.topics.topic import Topic
from itembank.notation import line
from itembank.proof.lines.steps import step_fault
from tests.generators.mistakes import each_mistake

TOPICS: tuple[Topic, ...] = (
    Equivalent(),
    LowestTerms(),
    ImproperMixed(),
    OrderFractions(),
    AddLike(),
    AddUnlike(),
    AddMixed(),
    Multiply(),
    Divide(),
    MixedOperations(),
    OfQuantity(),
    FindWhole(),
    DecimalsPercentages(),
)
BY_ID = {topic.id: topic for topic in TOPICS}
SAMPLE = 150
SIZES = {"min": 60, "h": 3600, "cm": 1, "m": 100, "km": 100000, "g": 1, "kg": 1000}
SIZES |= {"ml": 1, "l": 1000, "p": 1, "£": 100}


def sample(topic: Topic, tier: Tier) -> Iterator[Item]:
    space = topic.spaces[tier]
    indices = random.Random(f"{topic.id}/{tier}").sample(range(len(space)), min(SAMPLE, len(space)))
    return (topic.item(tier, index) for index in indices)


def everything(*topics: str) -> Iterator[Item]:
    for topic in TOPICS:
        if not topics or topic.id.partition(".")[2] in topics:
            for tier in Tier:
                yield from sample(topic, tier)


def printed(item: Item) -> str:
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def mathematics(item: Item) -> list[str]:
    return [line(run) for run in item.prompt if not isinstance(run, str)]


# --- The third engine: a reader of lines that works in flint's rationals.

TOKEN = re.compile(r"\s*(\d+ \d+/\d+|\d[\d.\u0307]*|[-+×÷/^()%]|of)")


def worth(text: str) -> fmpq:
    """Work out a line of arithmetic, units left out, a sum of money in pounds."""
    text = re.sub(r"£", "", text)
    text = re.sub(r"(?<=\d) (kg|cm|km|ml|min|m|g|l|h)\b", "", text)
    tokens = TOKEN.findall(text)
    assert "".join(tokens).replace(" ", "") == text.replace(" ", ""), text
    value = total(tokens)
    assert not tokens, text
    return value


def total(tokens: list[str]) -> fmpq:
    value = product(tokens)
    while tokens and tokens[0] in "+-":
        value = value + product(tokens) if tokens.pop(0) == "+" else value - product(tokens)
    return value


def product(tokens: list[str]) -> fmpq:
    value = signed(tokens)
    while tokens and tokens[0] in ("×", "÷", "of"):
        value = value / signed(tokens) if tokens.pop(0) == "÷" else value * signed(tokens)
    return value


def signed(tokens: list[str]) -> fmpq:
    if tokens[0] == "-":
        tokens.pop(0)
        return -signed(tokens)
    value = atom(tokens)
    while tokens and tokens[0] in "/^%":
        sign = tokens.pop(0)
        if sign == "%":
            value /= 100
        elif sign == "/":
            value /= atom(tokens)
        else:
            value = value ** int(tokens.pop(0))
    return value


def atom(tokens: list[str]) -> fmpq:
    token = tokens.pop(0)
    if token == "(":
        value = total(tokens)
        assert tokens.pop(0) == ")"
        return value
    if " " in token:
        whole, part = token.split(" ")
        top, bottom = part.split("/")
        return int(whole) + fmpq(int(top), int(bottom))
    if "." in token:
        return decimal(token)
    return fmpq(int(token))


def decimal(token: str) -> fmpq:
    """Long decimals: write the block out 40 times and take the fraction it settles down to."""
    whole, _, digits = token.partition(".")
    dots = [k for k, char in enumerate(digits) if char == "\u0307"]
    plain = digits.replace("\u0307", "")
    if not dots:
        return fmpq(int(whole + plain), 10 ** len(plain))
    # A dot comes after the digit it stands on, so that the first dot moves the second by one.
    start, end = dots[0] - 1, dots[-1] - (len(dots) - 1)
    block, lead = plain[start:end], plain[:start]
    # x and 10^n x have the same digits after the point, so their difference is finite.
    shifted, first = int(whole + lead + block), int(whole + lead)
    return fmpq(shifted - first, 10 ** len(lead) * (10 ** len(block) - 1))


def answer(node: object) -> fmpq:
    return worth(line(node))  # type: ignore[arg-type]


def test_the_reader_of_this_file_knows_its_arithmetic() -> None:
    # Values from memory; each can be done in the head.
    assert worth("1/2 + 1/3") == fmpq(5, 6)
    assert worth("2 1/2 × 2") == 5
    assert worth("(1/2)^2 + 3/4 ÷ 1/2") == fmpq(7, 4)
    assert worth("37.5%") == fmpq(3, 8)
    assert worth("0.16\u0307") == fmpq(1, 6)
    assert worth("0.2\u03077\u0307") == fmpq(3, 11)
    assert worth("0.1\u030742857\u0307") == fmpq(1, 7)
    assert worth("3/4 of 60 kg") == 45


# --- Keys.


def test_sums_products_and_conversions_come_to_their_keys() -> None:
    seen = 0
    for item in everything():
        shown = mathematics(item)
        text = printed(item)
        if len(shown) == 1 and not re.search("[□,]|Which sign", text):
            assert worth(shown[0]) == answer(item.key), item.address
            seen += 1
    assert seen > 3000


def test_numbers_in_boxes_make_the_equation_true_and_no_other_does() -> None:
    seen = 0
    for item in everything():
        for shown in mathematics(item):
            if "□" not in shown:
                continue
            left, right = shown.split(" = ")
            key = line(item.key)
            for value, same in ((f"({key})", True), (f"({key} + 1)", False)):
                sides = [worth(side.replace("□", value)) for side in (left, right)]
                assert (sides[0] == sides[1]) is same, item.address
            seen += 1
    assert seen > 800


def test_orders_are_orders() -> None:
    for item in everything("order"):
        if "Which sign" in printed(item):
            first, second = mathematics(item)
            left, sign, right = re.fullmatch(r"(\S+) ([<>=]) (\S+)", line(item.key)).groups()
            assert (left, right) == (first, second)
            assert {"<": worth(left) < worth(right), ">": worth(left) > worth(right)}[sign]
            continue
        shown = mathematics(item)[0].split(", ")
        given = line(item.key).split(", ")
        assert sorted(given) == sorted(shown)
        values = [worth(part) for part in given]
        assert all(low < high for low, high in pairwise(values))
        # A list that is printed in the right order already asks for nothing.
        assert shown != given


def test_fractions_of_amounts_by_counting_out() -> None:
    for item in everything("of-quantity"):
        text = printed(item)
        if text.startswith("Work out"):
            continue
        amounts = [int(found) for found in re.findall(r"£?(\d+)(?! ?/|\d)(?<!/\d)(?<!/\d\d)", text)]
        whole = amounts[0]
        fractions = [(int(a), int(b)) for a, b in re.findall(r"(\d+)/(\d+)", text)]
        (a, b), *more = fractions
        # Deal the whole out into b equal heaps and keep a of them.
        first = len([n for n in range(whole) if n % b < a])
        assert whole % b == 0
        if not more:
            assert answer(item.key) == first
        elif "of the rest" in text:
            c, d = more[0]
            rest = whole - first
            assert rest % d == 0
            assert answer(item.key) == len([n for n in range(rest) if n % d < c])
        else:
            c, d = more[0]
            second = len([n for n in range(whole) if n % d < c])
            assert answer(item.key) == whole - first - second


def test_wholes_by_trying_every_number() -> None:
    for item in everything("find-whole"):
        text = printed(item)
        if "□" in text:
            continue
        a, b = (int(n) for n in re.search(r"(\d+)/(\d+)", text).groups())  # type: ignore[union-attr]
        known = int(re.search(r"(?:Now|That is) £?(\d+)", text).group(1))  # type: ignore[union-attr]
        left = " left" in text
        fits = [
            n
            for n in range(1, 2000)
            if n * a % b == 0 and (n - n * a // b if left else n * a // b) == known
        ]
        assert [answer(item.key)] == fits, item.address


def test_one_amount_as_a_fraction_of_another_in_the_smaller_unit() -> None:
    for item in sample(BY_ID["fractions.lowest-terms"], Tier.CHALLENGE):
        sizes = []
        for shown in mathematics(item):
            found = re.fullmatch(r"(£?)(\d+) ?(\w*)", shown)
            assert found is not None
            sizes.append(int(found[2]) * SIZES[found[1] or found[3]])
        whole, part = sizes
        assert answer(item.key) == fmpq(part, whole)


def test_stories_with_mixed_numbers_and_portions() -> None:
    seen = 0
    for item in everything("add-mixed", "divide", "improper-mixed"):
        text, shown = printed(item), mathematics(item)
        if len(shown) != 2:
            continue
        first, second = (worth(part) for part in shown)
        if "left?" in text:
            expected = first - second
        elif "altogether?" in text and item.topic.endswith("add-mixed"):
            expected = first + second
        elif item.topic.endswith("improper-mixed"):
            # The container is named first in three of the stories, and holds less.
            expected = max(first, second) / min(first, second)
        else:
            expected = first / second
        assert answer(item.key) == expected, item.address
        seen += 1
    assert seen > 200


def test_the_rest_of_a_whole_after_two_fractions() -> None:
    seen = 0
    for item in sample(BY_ID["fractions.add-unlike"], Tier.CHALLENGE):
        shown = mathematics(item)
        if len(shown) == 2:
            assert sum((worth(part) for part in shown), fmpq(0)) + answer(item.key) == 1
            seen += 1
    assert seen > 20


# --- Working.


def test_each_line_of_working_is_true_by_the_third_engine() -> None:
    seen = 0
    for item in everything():
        assert step_fault(item) == "", item.address
        for step in item.steps:
            text = line(step.maths) if step.maths is not None else ""
            if " = " not in text or "□" in text:
                continue
            # Changing a unit keeps the amount but not the number; that has a test of its own.
            if step.say == "Write both amounts in the same unit.":
                continue
            values = [worth(side.replace("p", "")) for side in text.split(" = ")]
            assert all(value == values[0] for value in values), (item.address, text)
            seen += 1
    assert seen > 8000


def test_each_line_says_in_a_short_sentence_what_is_done() -> None:
    for item in everything():
        for step in item.steps:
            assert re.fullmatch(r"[A-Z0-9].{5,75}\.", step.say), step.say


# --- Likely mistakes.


def test_wrong_answers_are_wrong_and_differ() -> None:
    for item in everything():
        texts = [line(slip.wrong) for slip in item.slips]
        assert len(texts) >= 2, item.address
        assert len(set(texts)) == len(texts), item.address
        if item.form in ("list", "sign"):
            assert line(item.key) not in texts
            continue
        values = [worth(text) for text in texts]
        assert answer(item.key) not in values, item.address
        assert len(set(values)) == len(values), item.address
        assert all(value > 0 for value in values), item.address


def test_every_misconception_is_declared_and_some_item_shows_it() -> None:
    for topic in TOPICS:
        # A question to ask may be the item's own, with its numbers.
        shown = {
            (slip.misconception.id, slip.misconception.name)
            for tier in Tier
            for item in topic.walk(tier)
            for slip in each_mistake(item)
        }
        assert shown == {
            (misconception.id, misconception.name) for misconception in topic.misconceptions
        }, topic.id


def test_misconceptions_have_one_name_each() -> None:
    names: dict[str, str] = {}
    for topic in TOPICS:
        for misconception in topic.misconceptions:
            assert names.setdefault(misconception.id, misconception.name) == misconception.name
            assert misconception.id.startswith("fractions.")
            assert "?" in misconception.ask


# Question, its key, and the answers of the wrong methods, each worked by hand.
BY_HAND = (
    ("add-unlike", "support", "2/3 + 1/6", "5/6", {"add-across": "1/3", "keep-numerators": "1/2"}),
    (
        "add-unlike",
        "core",
        "3/4 - 1/3",
        "5/12",
        {"subtract-across": "2", "keep-numerators": "1/6"},
    ),
    ("add-like", "support", "1/5 + 2/5", "3/5", {"add-across": "3/10"}),
    ("add-like", "support", "4/5 - 1/5", "3/5", {"subtract-denominators-away": "3"}),
    ("multiply", "support", "2/7 × 3", "6/7", {"multiply-both-parts": "2/7"}),
    (
        "multiply",
        "core",
        "2/3 × 3/4",
        "1/2",
        {"multiply-adds-denominators": "6/7", "multiply-flips": "8/9"},
    ),
    (
        "divide",
        "core",
        "1/2 ÷ 1/4",
        "2",
        {"divide-without-flipping": "1/8", "divide-flips-first": "1/2"},
    ),
    ("mixed-operations", "core", "1/2 + 1/3 × 3/4", "3/4", {"order-left-to-right": "5/8"}),
    ("decimals-percentages", "support", "3/5", "0.6", {"convert-bar-as-point": "3.5"}),
    ("improper-mixed", "support", "11/4", "2 3/4", {"mixed-swapped": "3 2/4"}),
    ("lowest-terms", "support", "6/10", "3/5", {"cancel-one-part": "3/10"}),
    (
        "of-quantity",
        "support",
        "1/4 of 20",
        "5",
        {"of-gives-the-rest": "15", "of-subtracts-denominator": "16"},
    ),
    ("equivalent", "support", "2/3 = □/12", "8", {"equivalent-by-adding": "11"}),
    (
        "find-whole",
        "core",
        "2/3 of □ = 8",
        "12",
        {"whole-one-part": "4", "whole-multiplies-only": "24"},
    ),
)


@pytest.mark.parametrize(("name", "tier", "question", "key", "wrong"), BY_HAND)
def test_wrong_methods_give_what_a_pupil_would_get_by_hand(
    name: str, tier: str, question: str, key: str, wrong: dict[str, str]
) -> None:
    topic = BY_ID[f"fractions.{name}"]
    found = [item for item in topic.walk(Tier(tier)) if mathematics(item) == [question]]
    item = next(item for item in found if line(item.key) == key)
    given = {
        slip.misconception.id.partition(".")[2]: line(slip.wrong) for slip in each_mistake(item)
    }
    for misconception, text in wrong.items():
        assert given[misconception] == text


# Questions on which a wrong method gives the right answer, so that they may not be asked.
BLIND = (
    # 2 × 2 = 2 + 2, so adding the whole to the numerator is right.
    ("multiply", "2/5 × 2"),
    ("multiply", "2 × 2/5"),
    # 1/10 is 10%, so taking the denominator as the percentage is right.
    ("decimals-percentages", "1/10"),
    # 1/4 of 16: taking 4 away gives what is left, the answer of the other mistake.
    ("of-quantity", "1/4 of 16"),
    # 1/2 of a number is 2: adding 2 and multiplying by 2 come to the same.
    ("find-whole", "1/2 of □ = 2"),
    # 2 2/3: swapped it is itself.
    ("improper-mixed", "8/3"),
    # The numerators are 1 apart and the answer is 1/12: leaving them as they were is right.
    ("add-unlike", "3/4 - 2/3"),
)


@pytest.mark.parametrize(("name", "question"), BLIND)
def test_blind_and_dull_questions_are_not_asked(name: str, question: str) -> None:
    topic = BY_ID[f"fractions.{name}"]
    asked = [
        printed(item)
        for tier in Tier
        for item in topic.walk(tier)
        if mathematics(item) == [question] and "decimal" not in printed(item)
    ]
    assert asked == []


# --- Spaces.


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.id)
def test_each_tier_has_at_least_200_questions_and_none_twice(topic: Topic) -> None:
    for tier in Tier:
        items = list(topic.walk(tier))
        assert len(items) >= 200
        assert len({item.twin for item in items}) == len(items)
        assert len({item.prompt for item in items}) == len(items)


def test_sums_and_products_are_not_asked_both_ways_round() -> None:
    for name in ("add-like", "add-unlike", "multiply"):
        topic = BY_ID[f"fractions.{name}"]
        for tier in Tier:
            asked = set()
            for item in topic.walk(tier):
                found = re.fullmatch(r"(\S+) ([+×]) (\S+)", mathematics(item)[0])
                if found:
                    asked.add((*sorted((found[1], found[3])), found[2]))
                    asked.add((found[0],))
            pairs = [entry for entry in asked if len(entry) == 3]
            assert len(pairs) == len(asked) - len(pairs), (name, tier)


@pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: topic.id)
def test_difficulty_rises_from_tier_to_tier(topic: Topic) -> None:
    means = []
    for tier in Tier:
        items = list(topic.walk(tier))
        means.append(sum(map(difficulty, items)) / len(items))
    assert means[0] < means[1] < means[2]


def test_prompts_are_short_enough_to_project_and_end_as_sentences() -> None:
    for item in everything():
        text = printed(item)
        assert len(text) <= 200, text
        assert re.search(r"[.?]$|□|\d$|%$|\u0307$", text), text


def test_nothing_in_a_story_is_cut_up_that_is_not_cut_up_in_life() -> None:
    whole = "buses|seeds|seedlings|members|plants|swimmers"
    for item in everything("of-quantity", "find-whole"):
        if re.search(rf"How many (?:{whole})", printed(item)):
            assert answer(item.key).q == 1
            assert all(answer(slip.wrong).q == 1 for slip in each_mistake(item)), item.address


def test_prerequisites_are_topics_of_the_strand() -> None:
    for topic in TOPICS:
        assert set(topic.prerequisites) <= set(BY_ID), topic.id
