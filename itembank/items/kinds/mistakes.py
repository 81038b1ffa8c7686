"""Mistakes that belong to a kind of question, whatever its topic."""

from __future__ import annotations

from itembank.items.item import Misconception

OTHER_LINE = Misconception(
    "kinds.blames-other-line",
    "blames a line that follows rightly from the one before",
    "Cover all the lines below. Does this line follow from the one above it?",
)
OTHER_PAIR = Misconception(
    "kinds.pairs-swapped",
    "changes two of the pairs over",
    "Work out both cards of that pair. Do they come to the same?",
)
BY_LOOKS = Misconception(
    "kinds.odd-by-looks",
    "picks the card that looks most unlike the others",
    "What does that card come to? And the others?",
)
CARRY_LOST = Misconception(
    "kinds.carry-lost",
    "loses what is carried when adding in columns",
    "What do the units come to? Where does the ten of it go?",
)
SMALLER_FROM_LARGER = Misconception(
    "kinds.smaller-from-larger",
    "takes the smaller digit from the larger in each column",
    "Count on from the smaller number to the larger. Do you come to your answer?",
)
POINT_KEPT = Misconception(
    "kinds.tenths-stay-tenths",
    "makes tenths of the product of two numbers of tenths",
    "What is a tenth of a tenth? Should your answer be larger or smaller than both numbers?",
)
