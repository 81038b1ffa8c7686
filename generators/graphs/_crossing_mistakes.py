"""Mistakes with where lines cross (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

AT_AXIS = Misconception(
    "graphs.crossing-at-axis",
    "gives where a line crosses the y-axis",
    "Which two lines meet at your point? Is one of them an axis?",
)
WRONG_LINE = Misconception(
    "graphs.crossing-wrong-line",
    "takes the crossing with another line",
    "Which of the lines have the two equations? Check each with a point on it.",
)
READS_Y = Misconception(
    "graphs.crossing-reads-y",
    "gives the value of y, which is known already",
    "What does the equation ask for: x or y?",
)
SIGN_OF_X = Misconception(
    "graphs.crossing-sign",
    "gets the sign of x wrong",
    "Is your point to the left or to the right of the y-axis?",
)
