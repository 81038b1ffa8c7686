"""Mistakes with conversion graphs (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

WRONG_AXIS = Misconception(
    "graphs.conversion-wrong-axis",
    "starts from the other axis",
    "Which axis shows the amount that you know? Start there.",
)
SAME_NUMBER = Misconception(
    "graphs.conversion-same-number",
    "gives the number that is known already",
    "Go from the axis to the line. Where do you come to on the other axis?",
)
ADDS = Misconception(
    "graphs.conversion-adds",
    "adds what is between the two amounts, instead of multiplying",
    "What do twice as many come to? Is that twice as much?",
)
STOPS = Misconception(
    "graphs.conversion-stops",
    "reads a smaller amount off the graph, and does not multiply",
    "You have read off a part of it. How many such parts are there?",
)
