"""Mistakes with the values of a line's equation (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

ADDS_NUMBER = Misconception(
    "graphs.table-adds-for-times",
    "adds the number in front of x instead of multiplying by it",
    "What does the number in front of x tell you to do with x?",
)
SIDE_BY_SIDE = Misconception(
    "graphs.table-side-by-side",
    "writes the value of x after the number in front of it, like a digit",
    "What does 3x mean? What is it when x is 4?",
)
MINUS_LOST = Misconception(
    "graphs.table-minus-lost",
    "forgets the minus of the value of x",
    "What is a positive number times a negative one?",
)
FORWARDS = Misconception(
    "graphs.table-forwards",
    "puts the value of y in the place of x",
    "Which coordinate is known: the first or the second? Which letter is that?",
)
NUMBER_ALONE = Misconception(
    "graphs.table-number-alone",
    "leaves out the number at the end",
    "Where has the last number of the equation gone?",
)
