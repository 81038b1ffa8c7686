"""Small topics for the tests of packs, made for a test and never registered."""

from __future__ import annotations

from itembank.items.item import Draft, Find, Misconception, Slip, Step, Tier, prompt
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

FORGETS = Misconception("forgets-last", "leaves out the last number", "What is left to add?")
NEVER = Misconception("never-shown", "does what no item here shows", "Why?")


class Adding(Topic):
    """Adds two, three or four numbers; swapping the first two gives the twin."""

    misconceptions = (FORGETS, NEVER)

    def make(self, tier, *values):
        numbers = [*values, *range(2, 2 + list(Tier).index(tier))]
        task = t.add(*map(t.Int, numbers))
        if tier is Tier.CHALLENGE:
            task = t.times(t.Int(values[0]), t.Int(values[1]))
        key = t.num(values[0] * values[1] if tier is Tier.CHALLENGE else sum(numbers))
        return Draft(
            prompt=prompt("Work out {task}.", task=task),
            ask=Find(task),
            key=key,
            form="integer",
            steps=(Step("Start from the left.", task), Step("Finish.", t.equals(task, key))),
            slips=(Slip(FORGETS, t.num(values[0])),),
            twin=(tier, *sorted(values)),
            marks=2,
        )


def adding(name: str, size: int) -> Adding:
    """Return a topic whose tiers each hold the pairs of numbers from 2 to size + 1."""

    class One(Adding):
        id = name
        title = f"Title of {name}"
        spaces = {  # noqa: RUF012
            tier: Space(lambda a, b: a != b, a=range(2, size + 2), b=range(2, size + 2))
            for tier in Tier
        }

    return One()
