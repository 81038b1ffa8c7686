"""The mistakes that are made in changing money."""

from __future__ import annotations

from itembank.items.item import Misconception

DIVIDES = Misconception(
    "ratio.currency-divides",
    "divides by the rate where it should multiply",
    "You get more than 1 of them for each pound. So is the number larger or smaller?",
)


MULTIPLIES = Misconception(
    "ratio.currency-multiplies",
    "multiplies by the rate where it should divide",
    "One of them is worth less than a pound. So is the number larger or smaller?",
)


SAME = Misconception(
    "ratio.currency-same-number",
    "changes the sign and keeps the number",
    "How much is one pound worth? And two pounds?",
)


ADDS = Misconception(
    "ratio.currency-adds-the-rate",
    "adds or subtracts the rate",
    "The rate is for one pound. How many pounds are there?",
)


UPSIDE_DOWN = Misconception(
    "ratio.currency-rate-upside-down",
    "divides the pounds by the other money",
    "Does a pound buy more or less than 1 of them? What does your rate say?",
)


NOT_SPENT = Misconception(
    "ratio.currency-nothing-spent",
    "changes all of the money back",
    "How much is left after the spending?",
)


ONE_CHANGE = Misconception(
    "ratio.currency-one-change",
    "uses the second rate alone, as if the price were in pounds",
    "What is the price in pounds? Which of the rates is for pounds and dollars?",
)


FIRST_RATE = Misconception(
    "ratio.currency-first-rate",
    "uses the rate of the first change for both",
    "Which rate is there on the way back?",
)


IN_POUNDS = Misconception(
    "ratio.currency-stops-at-pounds",
    "gives the price in pounds",
    "In which currency does the question want the price?",
)


SWAPPED = Misconception(
    "ratio.currency-rates-swapped",
    "uses each rate for the other currency",
    "Which rate has the sign of the price that is given?",
)
