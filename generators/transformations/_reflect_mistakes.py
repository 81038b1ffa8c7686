"""Mistakes with reflections (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

OTHER_AXIS = Misconception(
    "transformations.reflect-other-axis",
    "reflects in the other axis",
    "Put your ruler along the mirror line. Which axis is it?",
)
BOTH_AXES = Misconception(
    "transformations.reflect-both",
    "changes the sign of both coordinates",
    "Which coordinate stays as it is in this mirror?",
)
IN_AXIS = Misconception(
    "transformations.reflect-in-axis",
    "reflects in an axis instead of the line that is given",
    "Draw the mirror line. How far is the point from it?",
)
CHANGED_LINE = Misconception(
    "transformations.reflect-changed-line",
    "takes a line x = a for level, and a line y = b for upright",
    "Name some points where x is that number. What line do they make?",
)
ON_THE_LINE = Misconception(
    "transformations.reflect-on-the-line",
    "goes to the mirror line and no further",
    "How far is the point from the mirror? Is its image as far, on the other side?",
)
EDGE = Misconception(
    "transformations.reflect-edge",
    "takes the edge of a shape for the mirror line",
    "How far is that line from one shape, and how far from the other?",
)
