"""Marks on paper: how many a question or a sheet is worth, in words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from itembank.packs.data.pack_item import PackItem
from itembank.text.in_words import plural

ONE_EACH = "Each question is worth 1 mark."
MOSTLY_ONE = "A question is worth 1 mark unless it says more."


def counted(marks: int) -> str:
    """Return a number of marks in words that no line break parts.

    >>> counted(3).split("\N{NO-BREAK SPACE}"), counted(1)[-4:]
    (['3', 'marks'], 'mark')
    """
    return f"{marks}\u00a0{plural(marks, 'mark')}"


def total(items: Iterable[PackItem]) -> int:
    """Return the marks of questions; the examples of a sheet earn none."""
    return sum(item.marks for item in items)


def how_many_each(items: Sequence[PackItem]) -> str:
    """Return the sentence that says what a question without a number of marks is worth."""
    ones = sum(item.marks == 1 for item in items)
    if ones == len(items):
        return ONE_EACH
    return MOSTLY_ONE if ones else ""
