"""Workings with one wrong line, judged again from the printed text by other means.

The lines are read by regular expressions and worked out in Python's own fractions: neither road
takes part. What the answer should be is the key of the very question, asked plainly.
"""

from __future__ import annotations

import random
import re
from fractions import Fraction
from functools import cache
from itertools import pairwise

import pytest

from itembank.items.asks import FaultyWorking
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import topics
from itembank.items.topics.topic import Topic
from itembank.notation.line import line
from tests.depth import cases, whole
from tests.generators.test_kind_keys import UNIT, solution, text, value
from tests.other_kinds import asked_about, made_by

SAMPLE = cases(6, 60, 15)
_FRAME = re.compile(
    r"(?P<asked>.*) (?P<who>[A-Z][a-z]+) writes: (?P<lines>Line 1: .*) "
    r"Which line is wrong\? What should the answer be\?"
)


def spotted(topic: Topic, tier: Tier) -> list[int]:
    return made_by(
        topic.spaces[tier], lambda make: make.__qualname__.startswith("with_working_spotted")
    )


@cache
def every() -> tuple[tuple[Topic, Tier, tuple[Item, ...]], ...]:
    found = []
    for topic in topics():
        for tier in topic.spaces:
            there = spotted(topic, tier)
            rng = random.Random(f"{topic.id}/{tier}")
            chosen = rng.sample(there, min(SAMPLE, len(there)))
            if chosen:
                found.append((topic, tier, tuple(topic.item(tier, index) for index in chosen)))
    return tuple(found)


def shown(item: Item) -> tuple[str, list[str]]:
    """Return the question and the lines of a prompt."""
    frame = _FRAME.fullmatch(text(item))
    assert frame is not None, text(item)
    numbers, lines = zip(*re.findall(r"Line (\d): \{(.*?)\}", frame["lines"]), strict=True)
    assert list(numbers) == [str(number) for number in range(1, len(lines) + 1)]
    assert frame["who"] not in frame["asked"]
    return frame["asked"], [each.replace("°", "") for each in lines]


def worth(shown_line: str) -> Fraction:
    """Return what a line is worth: an equation its solution."""
    found = solution(shown_line) if " = " in shown_line else value(shown_line)
    assert isinstance(found, Fraction)
    return found


def is_part(shown_line: str) -> bool:
    """Tell whether a line works a part out: an equation without a letter."""
    return " = " in shown_line and not re.search(r"[a-z]", UNIT.sub("", shown_line))


def wrong_lines(lines: list[str], answer: Fraction) -> list[int]:
    """Return the lines that are wrong where what was found before is used in those after it."""
    parts = [shown_line for shown_line in lines if is_part(shown_line)]
    rest = lines[len(parts) :]
    assert not any(map(is_part, rest))
    assert rest
    should: dict[str, str] = {}
    wrong = []
    for number, part in enumerate(parts, start=1):
        made, found = part.split(" = ")
        if value(made) != value(found):
            wrong.append(number)
        meant = put(made, should)
        if value(meant) != value(found):
            should[found] = f"({meant})"
    if worth(put(rest[0], should)) != answer:
        wrong.append(len(parts) + 1)
    for number, (before, after) in enumerate(pairwise(rest), len(parts) + 2):
        if worth(before) != worth(after):
            wrong.append(number)
    return wrong


def put(said: str, should: dict[str, str]) -> str:
    for found, meant in should.items():
        said = re.sub(rf"(?<![\d.]){re.escape(found)}(?![\d.])", meant, said)
    return said


@whole
def test_the_wrong_line_is_found_again_and_the_answer_is_that_of_the_plain_question() -> None:
    for topic, _, items in every():
        for item in items:
            asked, lines = shown(item)
            plain = asked_about(topic, item)
            assert (asked, item.figure) == (text(plain), plain.figure)
            name, result = line(item.key).split(", ", 1)
            assert line(plain.key) == result, text(item)
            answer = worth(result.replace("°", ""))
            assert wrong_lines(lines, answer) == [int(name.strip('"line '))], text(item)


@whole
def test_whoever_makes_the_mistake_comes_to_the_last_line() -> None:
    for _, _, items in every():
        for item in items:
            assert isinstance(item.ask, FaultyWorking)
            mistaken = item.slips[0].wrong
            last = item.ask.lines[-1]
            assert line(mistaken).endswith(line(last)), text(item)
            result = line(item.key).split(", ", 1)[1]
            assert worth(line(last).replace("°", "")) != worth(result.replace("°", ""))


@whole
def test_topics_differ_in_the_line_that_is_wrong_or_in_the_mistake() -> None:
    shown: dict[str, set[tuple[str, str]]] = {}
    for topic, _, items in every():
        for item in items:
            name = line(item.key).split(",")[0]
            shown.setdefault(topic.id, set()).add((name, item.slips[0].misconception.id))
    assert shown
    assert [name for name, ways in shown.items() if len(ways) < 2] == []


@pytest.mark.parametrize(
    ("lines", "answer", "wrong"),
    [
        (["3 + 5 = 8", "8 ÷ 4", "2"], 4, [2]),
        (["13 + 9 = 12", "12 ÷ 2", "6"], 11, [1]),
        (["13 + 9 = 22", "22 ÷ 2", "12"], 11, [3]),
        (["x + 40 = 360", "x = 320"], 140, [1]),
    ],
)
def test_this_reader_finds_the_line_itself(lines: list[str], answer: int, wrong: list[int]) -> None:
    assert wrong_lines(lines, Fraction(answer)) == wrong


@whole
def test_no_line_is_blamed_that_could_be_the_beginning_of_the_right_one() -> None:
    """*14 m × 5 m* for a triangle can still be halved: then the next line would be wrong."""
    met = 0
    for topic, _, items in every():
        if not topic.id.startswith("geometry.area-of-"):
            continue
        for item in items:
            _, lines = shown(item)
            (blamed,) = [int(number) - 1 for number in re.findall(r"line (\d)", line(item.key))]
            told = lines[blamed]
            if blamed == 0 or " = " in lines[blamed - 1]:
                # The right working of these shapes goes on by ÷ 2, × 2 or the same sides again.
                halved = "triangle" in topic.id or "trapezium" in topic.id
                assert not (halved and re.fullmatch(r"\S+ \w+ × \S+ \w+", told)), item.address
                assert not re.fullmatch(r"\S+ \w+ \+ \S+ \w+", told), item.address
            met += 1
    assert met > 3 * SAMPLE
