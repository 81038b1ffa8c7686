"""The mistakes that are made where one part of a ratio is told."""

from __future__ import annotations

from itembank.items.item import Misconception

ADDS = Misconception(
    "ratio.one-part-additive",
    "keeps the difference between the numbers of the ratio",
    "If the given part doubles, what happens to the other part? Does your method agree?",
)
UNDIVIDED = Misconception(
    "ratio.one-part-undivided",
    "takes the given amount to be one single part",
    "How many parts does the given amount fill? So what is one part worth?",
)
AS_TOTAL = Misconception(
    "ratio.one-part-as-total",
    "takes the given amount to be the whole",
    "What does the question say the given amount is: one kind, or everything together?",
)
OTHER_ONLY = Misconception(
    "ratio.one-part-not-total",
    "leaves the given amount out of the total",
    "Does your total hold everything? What have you not counted?",
)
GRAMS = Misconception(
    "ratio.one-part-unit-kept",
    "works in grams and writes the answer as kilograms",
    "Could anyone lift that? How many grams make 1 kilogram?",
)
