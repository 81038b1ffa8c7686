"""Keys of the strand probability, worked out a third time: from the text that is printed alone.

What the questions mean is read here by patterns of its own. Chances are found by counting equally
likely cases, one by one, wherever that can be done. A figure is read from its words, as a pupil
would who cannot see it.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from fractions import Fraction

import pytest
import sympy

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from itembank.notation import tree as t

SAMPLE = 45
"""Items of each tier."""


def printed(item: Item) -> str:
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def numbers(text: str) -> list[Fraction]:
    """Return the numbers of a text, fractions and percentages too."""
    found = []
    for top, bottom, sign in re.findall(r"(\d+(?:\.\d+)?)(?:/(\d+))?(%)?", text):
        value = Fraction(top) / (int(bottom) if bottom else 1)
        found.append(value / 100 if sign else value)
    return found


def key_value(item: Item) -> Fraction:
    shown = line(item.key).partition("=")[2] or line(item.key)
    (value,) = numbers(shown)
    return value


def single(text: str, said: str) -> Fraction:
    found = numbers(text)
    if "the rest" in text or "do not win" in text:
        known, chance = found
        every = [n for n in range(1, 400) if n * chance == known]
        (n,) = every
        return n - known
    if "How many" in text:
        every_, chance = found
        return every_ * chance
    if "more" in text and len(found) == 3:
        bag = ["good"] * int(found[0] + found[2]) + ["other"] * int(found[1])
    else:
        kinds = 2 if " or " in text else 1
        bag = []
        for place, count in enumerate(found):
            bag += ["good" if place < kinds else "other"] * int(count)
    return Fraction(bag.count("good"), len(bag))


def _table(said: str) -> dict[str, Fraction]:
    x = sympy.Symbol("x")
    values = {}
    for name, shown in re.findall(r"(\w+) has ([^;.]+)", said.split(": ")[1]):
        parts = shown.split()
        if parts[-1] == "x":
            values[name] = (int(parts[0]) if len(parts) > 1 else 1) * x
        else:
            values[name] = sympy.Rational("".join(parts).replace("point", "."))
    total = sympy.Add(*values.values()) - 1
    settled = sympy.solve(total, x)[0] if total.has(x) else 0
    found = {name: Fraction(str(value.subs(x, settled))) for name, value in values.items()}
    return {**found, "x": Fraction(str(settled))}


def complement(text: str, said: str) -> Fraction:
    if not said:
        (chance,) = numbers(text)
        return 1 - chance
    values = _table(said)
    if "value of x" in text:
        return values["x"]
    question = text.split(". ")[1]
    named = [name for name in re.findall(r"\w+", question) if name in values]
    value = sum((values[name] for name in named), Fraction(0))
    return 1 - value if " not " in question else value


KEYS: dict[str, Callable[[str, str], Fraction]] = {
    "probability.single": single,
    "probability.not": complement,
}


def sample(name: str) -> list[Item]:
    topic = find_topic(name)
    found = []
    for tier in Tier:
        size = len(topic.spaces[tier])
        chance = random.Random(f"{name}/{tier}")
        found += [topic.item(tier, n) for n in chance.sample(range(size), min(SAMPLE, size))]
    return found


@pytest.mark.parametrize("name", KEYS)
def test_the_printed_question_gives_the_key_again(name: str) -> None:
    for item in sample(name):
        text, said = printed(item), words(item.figure) if item.figure else ""
        assert KEYS[name](text, said) == key_value(item), (item.address, text, said)


@pytest.mark.parametrize("name", KEYS)
def test_a_key_that_is_a_probability_stands_between_0_and_1(name: str) -> None:
    for item in sample(name):
        if "What is the probability" in printed(item) and not isinstance(item.key, t.Int):
            assert 0 < key_value(item) < 1, item.address
