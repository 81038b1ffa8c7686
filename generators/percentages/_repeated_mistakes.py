"""The mistakes that are made with changes made over and over, compound interest among them."""

from __future__ import annotations

from itembank.items.item import Misconception

SIMPLE = Misconception(
    "percentages.repeated-of-the-first",
    "takes the percentage of the first amount every time",
    "The second change is a percentage of which amount?",
)


ONCE = Misconception(
    "percentages.repeated-once",
    "makes the change only once",
    "How many times does the amount change? Which have you worked out?",
)


ONE_SHORT = Misconception(
    "percentages.repeated-one-short",
    "makes the change one time too few",
    "Write the amount after each change. How many changes are there?",
)


CHANGE_ONLY = Misconception(
    "percentages.repeated-change-only",
    "gives the change and not the amount",
    "Does the question ask for the amount at the end, or for the change?",
)


TOTAL = Misconception(
    "percentages.repeated-total",
    "gives the whole amount at the end and not the interest",
    "How much of that was there at the beginning?",
)


ADDS_UP = Misconception(
    "percentages.adds-the-percentages-up",
    "adds or subtracts the percentages",
    "Start with £10. What is it after the first change? The second is a part of which amount?",
)


LEFT = Misconception(
    "percentages.repeated-what-is-left",
    "gives the end as a percentage of the beginning, and not the change",
    "Does the question ask what there is at the end, or by how much it changed?",
)


BACK_ONCE = Misconception(
    "percentages.repeated-back-once",
    "goes back by one change only",
    "How many times did the amount change? How often have you gone back?",
)


BACK_SUM = Misconception(
    "percentages.repeated-back-by-the-sum",
    "goes back by the percentages added up",
    "Try your answer: change it step by step. Do you come to the end amount?",
)
