"""The mistakes that are made on the way back from a percentage to the whole."""

from __future__ import annotations

from itembank.items.item import Misconception

OF_PART = Misconception(
    "percentages.percentage-of-the-part",
    "finds the percentage of the part that is given",
    "Is the given number the whole or a part of it? So is the whole larger or smaller?",
)


REST = Misconception(
    "percentages.finds-the-rest",
    "finds the rest, and not the whole",
    "Draw a bar for the whole. Which part of it have you found?",
)


PLAIN = Misconception(
    "percentages.back-by-the-number",
    "adds or subtracts the percentage as a plain number",
    "Is 10% of every amount 10? What is it of 50?",
)


OF_NEW = Misconception(
    "percentages.percentage-of-the-new",
    "takes the percentage of the new amount to go back",
    "The change was a percentage of which amount: the old or the new?",
)


WRONG_WAY = Misconception(
    "percentages.changes-again",
    "makes the same change once more instead of going back",
    "Was the amount before larger or smaller than it is now?",
)


ADDS_BOTH = Misconception(
    "percentages.adds-the-percentages-back",
    "adds the two percentages and goes back by the sum",
    "The second rise is a percentage of which price?",
)


ONE_BACK = Misconception(
    "percentages.goes-back-once",
    "goes back by the last change only",
    "How many changes were there? Which have you undone?",
)


WRONG_PART = Misconception(
    "percentages.wrong-part",
    "takes the given part to be the percentages that are named",
    "Which percentage do the given ones stand for? Is it named in the question?",
)


STOPS = Misconception(
    "percentages.stops-at-the-old",
    "gives the old price and not the price now",
    "Which price does the last sentence ask for: the old or the new one?",
)
