"""Names of topics that nobody knows, with the nearest that somebody does."""

from __future__ import annotations

from collections.abc import Collection

from itembank.files.faults import join_words
from itembank.items.topics.near_topics import near_topics


def unknown_topic(name: str, known: Collection[str]) -> str:
    """Return the words for a topic that does not exist, with the nearest that do.

    >>> unknown_topic("ratio.shar", ["ratio.share", "ratio.scale"])
    'There is no topic ‘ratio.shar’. Did you mean ratio.share or ratio.scale?'
    >>> unknown_topic("ratio", ["ratio.share", "ratio.scale"])
    '‘ratio’ is a strand, not a topic. Its topics are ratio.share and ratio.scale.'
    """
    of_strand = [topic for topic in known if topic.partition(".")[0] == name.lower()]
    if of_strand:
        some = [*of_strand[:3], f"{len(of_strand) - 3} more"] if len(of_strand) > 4 else of_strand
        return f"‘{name}’ is a strand, not a topic. Its topics are {join_words(some)}."
    near = near_topics(name, known)
    advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
    return f"There is no topic ‘{name}’.{advice}"
