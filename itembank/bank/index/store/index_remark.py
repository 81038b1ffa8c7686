"""Who is told of an index: of what did not go as it should and stops nothing, and how far it is.

An index is looked at deep inside of other work, such as making a pack, which has nothing to say
of indexes. So whoever has a screen listens here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Protocol


class Bar(Protocol):
    """Shows how far long work has come, until it is cleared."""

    def __call__(self, done: int, total: int, /) -> None:
        """Show that so many of so many items are done."""

    def clear(self) -> None:
        """Take away what is shown."""


Progress = Callable[[int, int], None]
"""Called with how many items are done, and how many there are."""
FEW_ITEMS = 200
"""So few items are done at once: no bar is shown, and starting processes would take longer."""
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


_bars: list[Callable[[], Bar]] = []


def watch(bar: Callable[[], Bar]) -> None:
    """From now on show with such a bar, and no other, how far the reading of a bank has come.

    It is for work that reads a bank by the way; what was given a bar of its own uses that.
    """
    _bars[:] = [bar]


@contextmanager
def shown(report: Progress | None, items: int) -> Iterator[Progress | None]:
    """Give what shows how far work on so many items has come; None where nothing is to.

    It is `report` where there is one. Otherwise whoever watches is shown it where they are many.
    """
    if report is not None or items <= FEW_ITEMS or not _bars:
        yield report
        return
    bar = _bars[0]()
    try:
        yield bar
    finally:
        bar.clear()
