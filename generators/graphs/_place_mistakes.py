"""Mistakes with places and midpoints (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

COUNTS_FROM_ONE = Misconception(
    "graphs.coordinates-from-one",
    "counts the lines of the grid from 1 instead of 0",
    "What number does the corner of the grid have? Where do you start to count?",
)
FIRST_ALONE = Misconception(
    "graphs.coordinates-first-alone",
    "looks at the first number alone",
    "How far up is your point? Which of the two numbers says so?",
)
OTHER_ORDER = Misconception(
    "graphs.corners-other-order",
    "joins the corners in another order than their letters",
    "Draw the shape from A to B to C. Which corner is D joined to?",
)
LEVEL = Misconception(
    "graphs.corner-level",
    "puts the corner level with one and in line with another, as if no side were slanted",
    "Join your four points. Are opposite sides parallel?",
)
OTHER_WAY = Misconception(
    "graphs.coordinates-other-way",
    "goes the other way along each axis",
    "Do the numbers grow or shrink when you go right? When you go up?",
)
HALF_THE_WAY = Misconception(
    "graphs.midpoint-half-the-difference",
    "halves the difference of the coordinates instead of their sum",
    "How far is your point from one end, and how far from the other?",
)
NOT_HALVED = Misconception(
    "graphs.midpoint-not-halved",
    "adds the coordinates and does not halve them",
    "Is your point between the two ends?",
)
MIDDLE_AGAIN = Misconception(
    "graphs.midpoint-again",
    "gives the middle of the two points that are given",
    "Which point lies in the middle: one that you know, or one that you look for?",
)
ONE_STEP = Misconception(
    "graphs.midpoint-one-step",
    "gives how far it is from the end to the middle",
    "Your numbers say how far to go. From which point do you go?",
)
