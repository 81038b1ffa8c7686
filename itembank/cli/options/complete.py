"""Names that the shell completes."""

from __future__ import annotations


def complete_topic(incomplete: str) -> list[str]:
    """Return the topics that begin as typed, for the shell's completion."""
    from itembank.items.topics.registry import topic_ids

    return [topic for topic in topic_ids() if topic.startswith(incomplete)]
