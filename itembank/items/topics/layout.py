"""What the filters of the spaces decide, written down once: the layout that ships.

A filter is asked of every point of a product, often a thousand for each that it keeps, and so it
takes a topic up to seconds to find its question number 7. Which points each part holds is a fact
about the topics, so ``generators/layout.txt`` tells it beside the list of the topics, and with
the same mark of the very files it was made from (:mod:`itembank.items.topics.listing`, which
writes both). Where the mark is not theirs the filters are asked.

A line holds the name of a part, ``topic/tier/place``, or of one of its axes, then the numbers
it holds, where they are not all from 0 on: each as its distance from the one before, as four
bytes, compressed, in base 85.
"""

from __future__ import annotations

import sys
import zlib
from array import array
from base64 import b85decode, b85encode
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from itertools import accumulate, pairwise
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.items.topics.space_part import Decided
from itembank.items.topics.spread import Spread

if TYPE_CHECKING:
    from itembank.items.topics.topic import Topic

NAME = "layout.txt"
Known = Callable[[str], Sequence[int] | None]


def packed(numbers: Sequence[int]) -> str:
    """Return numbers as text.

    >>> unpacked(packed([4, 7, 2])), packed([0, 1, 2]), unpacked("3")
    ([4, 7, 2], '3', range(0, 3))
    """
    if all(number == place for place, number in enumerate(numbers)):
        return str(len(numbers))
    steps = array("i", [after - before for before, after in pairwise([0, *numbers])])
    if sys.byteorder == "big":
        steps.byteswap()
    return "=" + b85encode(zlib.compress(steps.tobytes(), 9)).decode("ascii")


def unpacked(text: str) -> Sequence[int]:
    """Return the numbers that a text of :func:`packed` holds.

    Raises
    ------
    ValueError
        If it holds none.
    """
    if not text.startswith("="):
        return range(int(text))
    steps = array("i")
    try:
        steps.frombytes(zlib.decompress(b85decode(text[1:])))
    except zlib.error as error:
        raise ValueError(str(error)) from None
    if sys.byteorder == "big":
        steps.byteswap()
    return list(accumulate(steps))


def named(topic: Topic) -> Iterator[tuple[str, Decided]]:
    """Yield the parts of a topic's spaces, and what further kinds choose from, with their names."""
    for tier, space in topic.spaces.items():
        for place, part in enumerate(space.parts):
            name = f"{topic.id}/{tier}/{place}"
            for axis, values in part.axes.items():
                if isinstance(values, Spread):
                    yield f"{name}/{axis}", values
            yield name, part


def know(topic: Topic, known: Known) -> None:
    """Let the spaces of a topic ask what is known of them before they ask their filters."""
    for name, decided in named(topic):
        decided.known = partial(known, name)


def text_of(topics: Sequence[Topic], mark: str) -> str:
    """Return the text of the layout of some topics, by their filters, whatever was known."""
    for topic in topics:
        for space in topic.spaces.values():
            space.forget()
    lines = [
        f"{name} {packed(decided.numbers)}" for topic in topics for name, decided in named(topic)
    ]
    return "\n".join([mark, *lines, ""])


class Layout:
    """The layout that a text holds; lines are read when they are asked for."""

    def __init__(self, text: str) -> None:
        self._lines = dict(line.split(" ", 1) for line in text.splitlines()[1:])

    def numbers(self, name: str) -> Sequence[int] | None:
        """Return the numbers under a name, or None where there are none."""
        text = self._lines.get(name)
        try:
            return None if text is None else unpacked(text)
        except ValueError:
            return None


def read(folder: Path, mark: str) -> Layout | None:
    """Return the layout that a folder holds, or None where it is not of the files of that mark."""
    try:
        text = (folder / NAME).read_text("ascii")
        return Layout(text) if text.partition("\n")[0] == mark else None
    except (OSError, ValueError):
        return None
