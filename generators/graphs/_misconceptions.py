"""Mistakes about points and lines that several topics know."""

from __future__ import annotations

from itembank.items.item import Misconception

SWAPPED = Misconception(
    "graphs.coordinates-swapped",
    "gives the coordinates in the wrong order",
    "Which number comes first: how far along, or how far up or down?",
)
SIGN_LOST = Misconception(
    "graphs.coordinates-sign-lost",
    "leaves out the minus signs",
    "Is the point to the left or to the right of 0? Is it above or below 0?",
)
UPSIDE_DOWN = Misconception(
    "graphs.gradient-upside-down",
    "divides how far along by how far up",
    "How far does the line go up when you go 1 along?",
)
GRADIENT_SIGN = Misconception(
    "graphs.gradient-sign",
    "gets the sign of the gradient wrong",
    "Go from left to right. Does the line go up or down?",
)
RISE_ALONE = Misconception(
    "graphs.gradient-rise-alone",
    "gives how far the line goes up, and does not divide",
    "How far along did you go for that? What about 1 along?",
)
INTERCEPT_FOR_GRADIENT = Misconception(
    "graphs.intercept-for-gradient",
    "gives where the line crosses the y-axis instead of the gradient",
    "Which number says where it crosses, and which says how steep it is?",
)
GRADIENT_FOR_INTERCEPT = Misconception(
    "graphs.gradient-for-intercept",
    "gives the gradient instead of where the line crosses the y-axis",
    "What is x on the y-axis? What is y there?",
)
