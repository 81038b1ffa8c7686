"""How much room to write in a question asks for."""

from __future__ import annotations

from itembank.packs.data.pack_item import PackItem

FEWEST, MOST = 3, 5
"""Lines of working kept for the shortest and the longest solution."""


def lines_of_working(item: PackItem) -> int:
    """Return the lines of working that the solution takes, within what a page has room for."""
    return min(MOST, max(FEWEST, len(item.steps)))
