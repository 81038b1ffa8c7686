"""Topics by the words that somebody has in mind."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Mapping, Sequence

from itembank.errors import ItembankError
from itembank.items.topics.listing import Listed
from itembank.items.topics.programme_of_study import statement
from itembank.text.folding import folded

_WORD = re.compile(r"[^\W_]+")


def topics_found(words: Sequence[str], topics: Mapping[str, Listed]) -> tuple[Listed, ...]:
    """Return the topics that have all the words, each the beginning of a word of theirs.

    Looked through are a topic's id and title, the statements that it serves and the names of its
    misconceptions. Without words it is all topics.

    Raises
    ------
    ItembankError
        If no topic has them; where a word is nearly one that topics have, that is named.

    >>> from itembank.items.topics.registry import listed_topics
    >>> [topic.id for topic in topics_found(["sharing", "ratio"], listed_topics())]
    ['ratio.share']
    """
    wanted = list(dict.fromkeys(_words(words)))
    if words and not wanted:
        raise ItembankError("There are no letters to look for. Write words: area triangle.")
    texts = {name: set(_words(_texts(topic))) for name, topic in topics.items()}
    found = tuple(
        topics[name]
        for name, has in texts.items()
        if all(any(word.startswith(part) for word in has) for part in wanted)
    )
    if found:
        return found
    known = sorted(set().union(*texts.values()))
    lost = [part for part in wanted if not any(word.startswith(part) for word in known)]
    near = [word for part in lost for word in difflib.get_close_matches(part, known, 1, 0.75)]
    advice = f" Did you mean {' '.join(near)}?" if near else " Try fewer words, or others."
    raise ItembankError(f"No topic has the words ‘{' '.join(words)}’.{advice}")


def _texts(topic: Listed) -> Iterable[str]:
    yield from (topic.id, topic.title)
    yield from (statement(label).text for label in topic.statements)
    yield from topic.misconceptions.values()


def _words(texts: Iterable[str]) -> list[str]:
    return [folded(word) for text in texts for word in _WORD.findall(text)]
