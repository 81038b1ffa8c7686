"""Which of several wordings a question has, read off its numbers."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

Choice = TypeVar("Choice")


def by_turns(choices: Sequence[Choice], number: int) -> Choice:
    """Return one of several wordings, orders or units: the next one for the next number.

    The numbers of a question choose its story, so that stories change from item to item and
    no two items ask the same numbers in other words, as they would if a space held both.

    >>> [by_turns(("tulips", "members", "buses"), number) for number in range(4)]
    ['tulips', 'members', 'buses', 'tulips']
    """
    # A longer list would give items that are there already other words: it does not grow.
    return choices[number % len(choices)]
