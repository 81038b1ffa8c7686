"""Which topics a person may have meant who wrote none: by what they are called, or by spelling."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable

from itembank.text.folding import folded

MOST = 3
"""So many topics are offered; more are no help."""


def near_topics(name: str, known: Iterable[str], cutoff: float = 0.6) -> list[str]:
    """Return the topics in `known` that `name` may mean, the best first; perhaps none.

    First come those whose id or title has every word of it, as a teacher writes a topic, then
    those that are spelt like it.

    >>> near_topics("circle area", ["geometry.area-of-circles", "geometry.circumference"])
    ['geometry.area-of-circles']
    >>> near_topics("ratio", ["number.order-of-operations", "ratio.share"])
    ['ratio.share']
    >>> near_topics("HCF", ["number.hcf", "number.lcm"])
    ['number.hcf']
    >>> near_topics("ratio.shar", ["ratio.share", "ratio.scale", "number.hcf"])
    ['ratio.share', 'ratio.scale']
    """
    from itembank.items.topics.registry import listed_topics

    ids = list(dict.fromkeys(known))
    titles = {topic.id: folded(topic.title) for topic in listed_topics().values()}
    words = _words(folded(name))
    found = [
        topic
        for topic in ids
        if words and _are_in(words, _words(f"{folded(topic)} {titles.get(topic, '')}"))
    ]

    def beside(topic: str) -> tuple[bool, int]:
        """Tell whether a topic is called otherwise, and how much its title says beside that."""
        title = titles.get(topic, topic)
        called = folded(name) in (title, topic.partition(".")[2])
        return not called, len(title)

    found.sort(key=beside)
    # Of what is no id, words tell more than letters: ‘circle area’ is spelt like other topics.
    if not found or "." in name:
        found += difflib.get_close_matches(name.lower(), ids, n=MOST, cutoff=cutoff)
    return list(dict.fromkeys(found))[:MOST]


def _words(text: str) -> list[str]:
    return [word for word in re.split(r"[^\w’']+", text) if word]


def _are_in(words: list[str], called: list[str]) -> bool:
    """Tell whether each word begins one that a topic is called by; *ratio* begins no operations."""
    return all(any(part.startswith(word.removesuffix("s")) for part in called) for word in words)
