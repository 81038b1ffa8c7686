"""Short questions read again from the printed text: a pattern for each, and who works it out.

A pattern is the wording with ``{}`` for a number (its unit is left out) and ``{w}`` for a word;
what works it out gets the numbers in their order and shares nothing with the generators. A key is
held to the number in it. Whatever no pattern reads, or two do, is a fault.
"""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from fractions import Fraction
from typing import Any

from flint import fmpq

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.items.topics.space import Space
from itembank.notation.line import line
from tests.depth import cases
from tests.other_kinds import made_by

_PER = r"/(?:h|s|cm\^3|m\^3|min|l)"
UNIT = rf"(?: ?(?:°C|°|%|(?:km|cm|mm|m|kg|g|ml|l|h|min|s|p)(?:\^[23]|{_PER})?)(?![\w^]))?"
NUMBER = rf"[£€$]?(\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?){UNIT}(?![\d/])"
LONGEST = 102
"""Signs of a question that stands in three lines of half a slide, or a few words of a fourth."""
Solve = Callable[..., Any]


def brief_points(space: Space) -> list[int]:
    """Return the indices of a tier's questions that are made in a module *in brief*.

    Those of modules *told* have tests of their own (:mod:`.told_in_words`).
    """
    return made_by(space, lambda make: make.__module__.endswith("_in_brief"))


def printed(item: Item) -> str:
    """Return what is printed, in one line."""
    return "".join(run if isinstance(run, str) else line(run) for run in item.prompt)


def number(said: str) -> Fraction:
    """Return the worth of a number as it is printed: 3, 2.5, 3/4 or 1 3/4."""
    return sum((Fraction(part) for part in said.split()), Fraction(0))


def compiled(pattern: str) -> re.Pattern[str]:
    parts = re.split(r"(\{w?\})", pattern)
    said = {"{}": NUMBER, "{w}": r"[\w-]+"}
    return re.compile("".join(said.get(part) or re.escape(part) for part in parts))


def read(
    text: str, rows: Mapping[re.Pattern[str], Solve], exact: Callable[[int, int], Any] = Fraction
) -> Fraction:
    """Return the answer of a printed question by the one row that reads it.

    `exact` makes the fractions it works with.
    """
    found = [(solve, match) for row, solve in rows.items() if (match := row.fullmatch(text))]
    assert len(found) == 1, (text, len(found))
    [(solve, match)] = found
    given = map(number, match.groups())
    answer = solve(*(exact(each.numerator, each.denominator) for each in given))
    return Fraction(int(answer.p), int(answer.q)) if type(answer) is fmpq else Fraction(answer)


def key_of(item: Item) -> Fraction:
    """Return the number of a key, whatever letter and unit stand with it."""
    match = re.fullmatch(rf"(?:[a-z] = )?(−|-)?{NUMBER}", line(item.key))
    assert match, line(item.key)
    return -number(match[2]) if match[1] else number(match[2])


def some_brief(topic_id: str) -> Iterator[Item]:
    """Yield short questions of every tier of a topic, at least some of each kind."""
    topic = find_topic(topic_id)
    for tier in Tier:
        points = brief_points(topic.spaces[tier])
        rng = random.Random(f"{topic_id}/{tier} in brief")
        for index in rng.sample(points, min(len(points), cases(30, 10_000, 80))):
            yield topic.item(tier, index)


def check_keys(
    topic_id: str, rows: Mapping[re.Pattern[str], Solve], exact: Callable[[int, int], Any]
) -> None:
    """Hold every key to what the printed text comes to, each row being met."""
    for item in some_brief(topic_id):
        assert item.figure is None
        assert len(printed(item)) <= LONGEST, printed(item)
        assert key_of(item) == read(printed(item), rows, exact), (item.address, printed(item))


def check_room(topic_id: str, tiers: Iterable[Tier]) -> None:
    """Hold tiers to a fair share of short questions."""
    spaces = find_topic(topic_id).spaces
    for tier in tiers:
        brief = brief_points(spaces[tier])
        assert len(brief) >= max(30, 0.14 * len(spaces[tier])), (topic_id, tier)
