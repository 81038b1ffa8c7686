"""Questions that a topic asks in words beside those with a picture: samples, and their text."""

import random
from collections.abc import Iterator

from itembank.items.item import Item, Tier
from itembank.items.topics.registry import find_topic
from itembank.notation.line import line
from tests.depth import cases

COUNT = cases(12, 40, 40)
"""So many questions of each part of a tier."""


def told(name: str, modules: tuple[str, ...], count: int = COUNT) -> Iterator[Item]:
    """Yield questions of the parts that are made in modules of a topic's strand, of each some."""
    topic = find_topic(name)
    for tier in Tier:
        space = topic.spaces[tier]
        for part, indices in zip(space.parts, space.part_indices, strict=True):
            if part.kind is not None and part.kind.make.__module__.rpartition(".")[2] in modules:
                chosen = random.Random(f"{name}{tier}").sample(
                    list(indices), min(count, len(indices))
                )
                for index in chosen:
                    yield topic.item(tier, index)


def text_of(item: Item) -> str:
    """Return the prompt as text, minus signs as they are typed."""
    shown = "".join(run if isinstance(run, str) else line(run) for run in item.prompt)
    return shown.replace("−", "-")
