"""Mistakes with the equation of a line (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

CHANGED_OVER = Misconception(
    "graphs.equation-changed-over",
    "puts the gradient and the intercept in each other's place",
    "Put 0 for x in your equation. Is that where the line crosses the y-axis?",
)
X_CROSSING = Misconception(
    "graphs.equation-x-crossing",
    "takes where the line crosses the x-axis for the intercept",
    "Which axis is the y-axis? Where does the line cross it?",
)
SAME_START = Misconception(
    "graphs.parallel-same-intercept",
    "takes lines that cross the y-axis at the same place to be parallel",
    "Do those two lines meet? Do parallel lines ever meet?",
)
OWN_EQUATION = Misconception(
    "graphs.parallel-own-equation",
    "gives the line itself, and not one through the point",
    "Put the coordinates of the point into your equation. Is it true?",
)
COORDINATE_AS_INTERCEPT = Misconception(
    "graphs.parallel-y-as-intercept",
    "takes the y-coordinate of the point for the intercept",
    "Is your point on the y-axis? What is x there?",
)
ADDS_PRODUCT = Misconception(
    "graphs.parallel-adds-product",
    "adds the gradient times x instead of taking it away",
    "Put the coordinates of the point into y = mx + c. What is left for c?",
)
