"""A topic that has too few different questions, and what can be done about it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.errors import ItembankError
from itembank.items.item import Item, Tier
from itembank.packs.data.source import TopicSources, matter_of, size, sources, too_few
from itembank.packs.sources.bank_source import BankSource
from itembank.text.in_words import plural


class TooFew(ItembankError):
    """A topic has too few different questions of a tier; says how many there are.

    Args:
        news: whether that some of them may not be used was found out only now.
    """

    def __init__(self, message: str = "", *, news: bool = False, **about: Any) -> None:
        super().__init__(message, **about)
        self.news = news


def too_small(
    topic: TopicSources, tier: Tier, same: Callable[[Item], tuple[object, ...]] | None
) -> TooFew:
    """Return the error for a tier with fewer different questions than a pack needs.

    `same` is what is equal for two items that are one question, wherever they come from; without
    it the twins of the topic are told apart.
    """
    settled = [source.settle(tier) for source in sources(topic) if isinstance(source, BankSource)]
    items = [
        source.item(tier, index)
        for source in sources(topic)
        for index in range(size(source, tier))
        if not isinstance(source, BankSource) or source.is_open(tier, index)
    ]
    held = len({item.twin if same is None else same(item) for item in items})
    questions = plural(held, "question", "different questions")
    only = f"only {held}" if held else "no"
    questions = questions if held else "question that can be used"
    said = [f"{topic.id} has {only} {tier} {questions}, and this pack needs more."]
    said += [words for source in sources(topic) if (words := too_few(source, tier))]
    said.append("Ask for fewer questions or versions, or add another topic.")
    matters = [name for source in sources(topic) if (name := matter_of(source, tier))]
    return TooFew(" ".join(said), matter=matters[0] if matters else "", news=any(settled))
