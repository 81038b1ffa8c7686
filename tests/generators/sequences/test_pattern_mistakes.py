"""Each likely mistake on growing patterns, carried out again from the words and the question.

And the keys by a third road: tiles counted by hand, pattern by pattern.
"""

from __future__ import annotations

import re

from itembank.figures.figure import words
from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation import tree as t
from itembank.notation.line import line
from itembank.notation.parse import parse
from itembank.notation.value import exact
from tests.generators.asked_plainly import plain
from tests.generators.mistakes import each_mistake


def shown(item: Item) -> tuple[int, int, int | None]:
    """Return the tiles of pattern 1, how many each step adds, and the number that is printed."""
    counts = [int(n) for n in re.findall(r"has (\d+)", words(item.figure))]
    printed = [run.n for run in item.prompt if isinstance(run, t.Int)]
    return counts[0], counts[1] - counts[0], printed[0] if printed else None


def at(rule: str, n: int) -> object:
    return exact(t.replaced(parse(rule), {t.Sym("n"): t.Int(n)}))


def counted(first: int, more: int, number: int) -> int:
    tiles = first
    for _ in range(number - 1):
        tiles += more
    return tiles


METHODS = {
    "pattern-times-first": lambda first, more, k: first * k,
    "pattern-step-too-many": lambda first, more, k: first + k * more,
    "pattern-step-alone": lambda first, more, k: more * k,
}
BACK = {
    "pattern-step-too-few": lambda first, more, all_: (all_ - first) // more,
    "pattern-step-too-many": lambda first, more, all_: (all_ - first) // more + 2,
    "pattern-shares-out": lambda first, more, all_: all_ // more,
}
RULES = {
    "pattern-n-plus-step": lambda first, more, n: n + more,
    "pattern-step-alone": lambda first, more, n: more * n,
    "pattern-first-added": lambda first, more, n: more * n + first,
}


def test_keys_and_mistakes_are_what_counting_and_the_wrong_ways_give():
    topic = find_topic("sequences.patterns")
    seen = set()
    for tier in Tier:
        for index in plain(topic, tier)[::3]:
            item = topic.item(tier, index)
            first, more, number = shown(item)
            for slip in each_mistake(item):
                name = slip.misconception.id.partition(".")[2]
                seen.add(name)
                if number is None:
                    for n in (1, 2, 7):
                        assert at(line(slip.wrong), n) == RULES[name](first, more, n)
                else:
                    ways = BACK if "Which" in str(item.prompt[0]) else METHODS
                    assert exact(slip.wrong) == ways[name](first, more, number), item.address
            if number is None:
                assert [at(line(item.key), n) for n in (1, 2, 9)] == [
                    counted(first, more, n) for n in (1, 2, 9)
                ]
            elif "Which" in str(item.prompt[0]):
                assert counted(first, more, int(exact(item.key))) == number
            else:
                assert exact(item.key) == counted(first, more, number)
    assert seen == {m.id.partition(".")[2] for m in topic.misconceptions}
