"""The answer to a question as pages show it."""

from __future__ import annotations

from itembank.packs.data.pack import PackItem
from itembank.pages.engine.paragraph import Piece

EXAMPLE = "for\u00a0example "
OTHERS = " (others\u00a0are\u00a0right)"


def key_shown(item: PackItem) -> list[Piece]:
    """Return the key; where many answers are right it is said to be one of them."""
    return [EXAMPLE, item.key, OTHERS] if item.many else [item.key]
