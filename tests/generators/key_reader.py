"""Reads what a generated item prints, for tests that find its key again by another road."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator

from flint import fmpq

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import line
from tests.depth import cases

SAMPLE = cases(30, 70, 70)
"""Items of a tier that are tried."""

NUMBER = r"\d+(?:\.\d+)?"


def sample(name: str, count: int = SAMPLE) -> Iterator[tuple[Item, str]]:
    """Yield random items of every tier of a topic, each with the line of text it prints."""
    topic = find_topic(name)
    for tier in Tier:
        own = topic.spaces[tier].own
        chosen = random.Random(f"{name}/{tier}").sample(own, min(count, len(own)))
        for index in chosen:
            item = topic.item(tier, index)
            yield item, printed(item)


def printed(item: Item) -> str:
    """Return the line of text that an item prints."""
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def exact(text: str) -> fmpq:
    """Return a number as written, its unit or signs left out."""
    found = re.fullmatch(rf"[£€$]?(-?)({NUMBER})(?:%|p|°| ?[a-z/^\d ]+)?", text.strip())
    assert found, text
    whole, _, places = found[2].partition(".")
    value = fmpq(int(whole + places), 10 ** len(places))
    return -value if found[1] else value


def numbers(text: str) -> list[fmpq]:
    """Return the numbers that stand in a text, in order."""
    return [exact(found) for found in re.findall(NUMBER, text)]
