"""Who is told of what did not go as it should with an index, and stops nothing.

An index is looked at deep inside of other work, such as making a pack, which has nothing to say
of indexes. So whoever has a screen listens here.
"""

from __future__ import annotations

from collections.abc import Callable

Remark = Callable[[str], object]
_listeners: list[Remark] = []
_told: set[str] = set()


def listen(listener: Remark) -> None:
    """From now on tell `listener`, and nobody else, of what is remarked; each sentence once."""
    _listeners[:] = [listener]
    _told.clear()


def tell(sentence: str) -> None:
    """Tell the listener a sentence."""
    if sentence not in _told:
        _told.add(sentence)
        for listener in _listeners:
            listener(sentence)
