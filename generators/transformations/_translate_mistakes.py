"""Mistakes with translations (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

OPPOSITE = Misconception(
    "transformations.translate-opposite",
    "goes the opposite way",
    "Do you know the point before the move, or after it? Which way is right?",
)
CHANGED_OVER = Misconception(
    "transformations.translate-changed-over",
    "goes up or down by the number for left or right, and the other way round",
    "Which number says how far left or right? Which coordinate does that change?",
)
GAP = Misconception(
    "transformations.translate-gap",
    "counts the squares of the gap between the two shapes",
    "Where does one corner go? Count from it to the same corner of the other shape.",
)
SHIFT_ALONE = Misconception(
    "transformations.translate-shift-alone",
    "gives how far it moves, and not where it comes to",
    "Where does the point start? Where is it after the move?",
)
