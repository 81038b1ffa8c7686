"""Names of topics that nobody knows, with the nearest that somebody does."""

from __future__ import annotations

from collections.abc import Collection

from itembank.files.faults import join_words, nearest


def unknown_topic(name: str, known: Collection[str]) -> str:
    """Return the words for a topic that does not exist, with the nearest that do.

    >>> unknown_topic("ratio.shar", ["ratio.share", "ratio.scale"])
    'There is no topic ‘ratio.shar’. Did you mean ratio.share or ratio.scale?'
    """
    near = nearest(name, known)
    advice = f" Did you mean {join_words(near, 'or')}?" if near else ""
    return f"There is no topic ‘{name}’.{advice}"
