"""A set in symbols that is to be shaded in a Venn diagram."""

from __future__ import annotations

from generators._drawn import to_draw
from generators.probability._sets_told import LETTERS, SETS
from itembank.figures.kinds.sets.shaded_sets import REGIONS, ShadedSets
from itembank.items.item import Draft, Step, Tier, prompt
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t


def shade(topic: Topic, tier: Tier, which: int, letters: int) -> Draft:
    """Return two sets, of which a part is to be shaded."""
    told, names = SETS[which], LETTERS[letters]
    a, b = names
    wanted = tuple(REGIONS[place] for place in told.regions)
    text = prompt("Shade {s} in the Venn diagram.", s=t.Label(told.shown.format(a=a, b=b)))
    steps = [Step(f"It is what is {told.look.format(a=a, b=b)}."), Step("Shade that, and no more.")]
    if told.before[0]:
        steps.insert(0, Step(f"Find first what is {told.before[0].format(a=a, b=b)}."))
    return to_draw(
        text,
        ShadedSets(a, b),
        ShadedSets(a, b, wanted),
        tuple(steps),
        ("to shade", which, letters),
    )
