"""What documents are called: the title of each, and the day in words."""

from __future__ import annotations

from itembank.packs.data.pack import Pack
from itembank.packs.data.pack_item import TierName
from itembank.text.in_words import long_date


def title_of(pack: Pack, what: str) -> str:
    """Return a document's title: what it is, the lesson, the class and the date."""
    lesson = pack.lesson
    return f"{what}: {lesson.title}, {lesson.class_name}, {long_date(lesson.date)}"


def sheet_name(tier: TierName) -> str:
    """Return a sheet's title.

    >>> sheet_name("core")
    'Core sheet'
    """
    return f"{tier.capitalize()} sheet"
