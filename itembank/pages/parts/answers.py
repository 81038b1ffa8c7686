"""The answer to a question as pages show it."""

from __future__ import annotations

from itembank.packs.data.pack import PackItem
from itembank.pages.engine.paragraph import Piece

EXAMPLE = "for example "
OTHERS = " (others are right)"


def key_shown(item: PackItem) -> list[Piece]:
    """Return the key; where many answers are right it is said to be one of them."""
    return [EXAMPLE, item.key, OTHERS] if item.many else [item.key]
