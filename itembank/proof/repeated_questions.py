"""Finds items of a topic that are one question, without keeping every question in memory.

Of each item no more is kept than a mark of eight bytes. Only items whose marks are equal are made
again and looked at, so that two questions that share a mark by chance are not taken for one.
"""

from __future__ import annotations

import hashlib
from array import array
from collections.abc import Callable, Iterable, Iterator, Sequence

Question = tuple[object, ...]
"""What an item has in common with its twins."""

NO_MARK = bytes(8)
"""Stands for an item that could not be looked at."""
AT_ONCE = 1_000_000
"""So many marks are held in a table at a time."""


def mark_of(question: Question) -> bytes:
    """Return eight bytes that are equal for equal questions, on every machine.

    >>> mark_of(("sum", "1/2", 3)) == mark_of(("sum", "1/2", 3)) != mark_of(("sum", "1/2", 4))
    True
    """
    said = repr(_plain(question)).encode("utf-8", "surrogatepass")
    return hashlib.blake2b(said, digest_size=8).digest()


def _plain(value: object) -> object:
    # An enumeration's member is equal to its text, and would be written otherwise.
    if isinstance(value, str):
        return str.__str__(value)
    if isinstance(value, tuple | list):
        return tuple(map(_plain, value))
    return value


def repeats(
    marks: Iterable[bytes], question: Callable[[int], Question], *, at_once: int = AT_ONCE
) -> Iterator[tuple[int, Question]]:
    """Yield, in order, the place of each item that repeats one before it, with its question.

    Parameters
    ----------
    marks
        The marks of the items in order, joined in pieces of any number.
    question
        Returns the question at a place; it is asked only for items whose marks are equal.
    at_once
        How many marks are held in a table at a time.

    >>> items = [("a",), ("b",), ("a",), ("c",), ("a",)]
    >>> list(repeats(map(mark_of, items), items.__getitem__))
    [(2, ('a',)), (4, ('a',))]
    """
    all_marks = array("Q")
    for piece in marks:
        all_marks.frombytes(piece)
    for place, first in sorted(_alike(all_marks, at_once)):
        if any(question(place) == question(earlier) for earlier in first):
            yield place, question(place)


def _alike(marks: Sequence[int], at_once: int) -> Iterator[tuple[int, list[int]]]:
    """Yield the places of marks that came before, each with the places where they came."""
    parts = len(marks) // at_once + 1
    for part in range(parts):
        places: dict[int, int] = {}
        more: dict[int, list[int]] = {}
        for place, mark in enumerate(marks):
            # By the mark and not by its place: so equal marks are in one part, and none is missed.
            if not mark or mark % parts != part:
                continue
            first = places.setdefault(mark, place)
            if first != place:
                before = more.setdefault(mark, [first])
                yield place, list(before)
                before.append(place)
