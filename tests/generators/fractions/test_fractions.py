"""Fraction topics: keys found a third way from the printed words, and what makes items good.

The reader below works from the line of a prompt alone, in python-flint's rationals, and by
trying whole numbers in turn. It shares no code with the generators or the checker.
"""

from __future__ import annotations

import re

import pytest

from itembank.items.item import Tier
from itembank.items.topics.topic import Topic
from itembank.notation import line
from itembank.proof.lines.steps import step_fault
from tests.depth import each, only_whole, whole
from tests.generators.fractions.fraction_reader import (
    BY_ID,
    SAMPLE,
    TOPICS,
    answer,
    everything,
    mathematics,
    printed,
    worth,
)
from tests.generators.mistakes import declared_ones, each_mistake


@whole
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
    assert seen > 53 * SAMPLE


@whole
def test_each_line_says_in_a_short_sentence_what_is_done() -> None:
    for item in everything():
        for step in item.steps:
            # A second sentence says what the letters in a picture are.
            sentences = re.split(r"(?<=\.) (?=[A-Z])", step.say)
            assert len(sentences) <= 2, step.say
            assert all(re.fullmatch(r"[A-Z0-9].{5,75}\.", sentence) for sentence in sentences), (
                step.say
            )


@whole
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


@only_whole
def test_every_misconception_is_declared_and_some_item_shows_it() -> None:
    for topic in TOPICS:
        assert declared_ones(topic) == {
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
    found = (item for item in topic.walk(Tier(tier)) if mathematics(item) == [question])
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


@pytest.mark.parametrize(("name", "question"), each(BLIND, 2))
def test_blind_and_dull_questions_are_not_asked(name: str, question: str) -> None:
    topic = BY_ID[f"fractions.{name}"]
    asked = [
        printed(item)
        for tier in Tier
        for item in topic.walk(tier)
        if mathematics(item) == [question] and "decimal" not in printed(item)
    ]
    assert asked == []


@pytest.mark.parametrize("topic", each(TOPICS, 3), ids=lambda topic: topic.id)
def test_each_tier_has_at_least_200_questions_and_none_twice(topic: Topic) -> None:
    for tier in Tier:
        items = list(topic.walk(tier))
        assert len(items) >= 200
        assert len({item.twin for item in items}) == len(items)
        assert len({(item.prompt, item.figure) for item in items}) == len(items)


def test_sums_and_products_are_not_asked_both_ways_round() -> None:
    for name in ("add-like", "add-unlike", "multiply"):
        topic = BY_ID[f"fractions.{name}"]
        for tier in Tier:
            asked = set()
            space = topic.spaces[tier]
            for item in (topic.item(tier, index) for index in space.own):
                found = re.fullmatch(r"(\S+) ([+×]) (\S+)", mathematics(item)[0])
                if found:
                    asked.add((*sorted((found[1], found[3])), found[2]))
                    asked.add((found[0],))
            pairs = [entry for entry in asked if len(entry) == 3]
            assert len(pairs) == len(asked) - len(pairs), (name, tier)


@whole
def test_prompts_are_short_enough_to_project_and_end_as_sentences() -> None:
    for item in everything():
        text = printed(item)
        assert len(text) <= 200, text
        assert re.search(r"[.?]$|□|\d$|%$|\u0307$", text), text


@whole
def test_nothing_in_a_story_is_cut_up_that_is_not_cut_up_in_life() -> None:
    whole = "buses|seeds|seedlings|members|plants|swimmers"
    for item in everything("of-quantity", "find-whole"):
        if re.search(rf"How many (?:{whole})", printed(item)):
            assert answer(item.key).q == 1
            assert all(answer(slip.wrong).q == 1 for slip in each_mistake(item)), item.address


def test_prerequisites_are_topics_of_the_strand() -> None:
    for topic in TOPICS:
        assert set(topic.prerequisites) <= set(BY_ID), topic.id
