"""The answer to a question as pages show it."""

from __future__ import annotations

from collections.abc import Iterable

from itembank.files.faults import join_words
from itembank.packs.data.pack_item import PackItem
from itembank.pages.engine.text.paragraph import Piece

EXAMPLE = "for\u00a0example "
OTHERS = " (others\u00a0are\u00a0right)"


def key_shown(item: PackItem) -> list[Piece]:
    """Return the key; where many answers are right it is said to be one of them."""
    return [EXAMPLE, item.key, OTHERS] if item.many else [item.key]


def key_on_slide(item: PackItem) -> list[Piece]:
    """Return the key as a slide has room for it; :func:`others_said` says the rest at its foot."""
    return ["e.g.\u00a0", item.key] if item.many else [item.key]


def others_said(items: Iterable[tuple[int, PackItem]]) -> str:
    """Return a sentence naming the numbered questions that have other right answers, or ""."""
    numbers = [str(number) for number, item in items if item.many]
    if not numbers:
        return ""
    whose, have = ("Question", "has") if len(numbers) == 1 else ("Questions", "have")
    return f"{whose} {join_words(numbers)} {have} other right answers too."
