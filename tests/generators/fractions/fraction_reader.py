"""Reads the printed line of a question on fractions, in python-flint's rationals."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from functools import cache
from itertools import islice

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
from itembank.items.topics.topic import Topic
from itembank.notation import line
from tests.depth import cases

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

SAMPLE = cases(50, 150, 150)

SIZES = {"min": 60, "h": 3600, "cm": 1, "m": 100, "km": 100000, "g": 1, "kg": 1000}
SIZES |= {"ml": 1, "l": 1000, "p": 1, "£": 100}


@cache
def sample(topic: Topic, tier: Tier) -> tuple[Item, ...]:
    """Return questions that are asked in words alone; those of figures have a reader of theirs.

    They are made once for all tests.
    """
    own = topic.spaces[tier].own
    indices = random.Random(f"{topic.id}/{tier}").sample(own, len(own))
    items = (topic.item(tier, index) for index in indices)
    return tuple(islice((item for item in items if item.figure is None), SAMPLE))


def everything(*topics: str) -> Iterator[Item]:
    for topic in TOPICS:
        if not topics or topic.id.partition(".")[2] in topics:
            for tier in Tier:
                yield from sample(topic, tier)


def printed(item: Item) -> str:
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def mathematics(item: Item) -> list[str]:
    return [line(run) for run in item.prompt if not isinstance(run, str)]


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
