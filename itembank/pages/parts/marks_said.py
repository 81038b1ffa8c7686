"""Marks on paper: how many a question or a sheet is worth, in words."""

from __future__ import annotations

from itembank.packs.data.pack import Sheet
from itembank.text.in_words import plural

ONE_EACH = "Each question is worth 1 mark."
MOSTLY_ONE = "A question is worth 1 mark unless it says more."


def counted(marks: int) -> str:
    """Return a number of marks in words that no line break parts.

    >>> counted(3).split("\N{NO-BREAK SPACE}"), counted(1)[-4:]
    (['3', 'marks'], 'mark')
    """
    return f"{marks}\u00a0{plural(marks, 'mark')}"


def total(sheet: Sheet) -> int:
    """Return the marks of a sheet's questions; its examples earn none."""
    return sum(item.marks for item in sheet.items)


def how_many_each(sheet: Sheet) -> str:
    """Return the sentence that says what a question without a number of marks is worth."""
    ones = sum(item.marks == 1 for item in sheet.items)
    if ones == len(sheet.items):
        return ONE_EACH
    return MOSTLY_ONE if ones else ""
