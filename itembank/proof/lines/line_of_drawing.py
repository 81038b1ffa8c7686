"""Lines for a question whose answer is drawn."""

from __future__ import annotations

from itembank.items.asks import Draw
from itembank.notation import tree as t


def drawn_fault(ask: Draw, line: t.Node) -> str:
    """Hold a line to what is drawn, or to what stands beside it."""
    wanted = (t.Label(ask.wanted.told), *(node for _, node in ask.wanted.holds))
    return "" if line in wanted else "says something else than what is to be drawn"
