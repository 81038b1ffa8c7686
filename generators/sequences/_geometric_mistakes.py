"""The mistakes that are made with geometric sequences."""

from __future__ import annotations

from itembank.items.item import Misconception

ADDS_LAST = Misconception(
    "sequences.adds-the-last-difference",
    "adds the difference of the last two terms",
    "Are the differences between the terms equal? What is each term multiplied by?",
)


ADDS_FIRST = Misconception(
    "sequences.adds-the-first-step",
    "adds the difference of the first two terms",
    "Are the differences between the terms equal? What is each term multiplied by?",
)


GIVES_DIFFERENCE = Misconception(
    "sequences.difference-for-multiplier",
    "gives a difference instead of the multiplier",
    "Multiply the first term by your number. Is it the second term?",
)


UPSIDE_DOWN = Misconception(
    "sequences.multiplier-upside-down",
    "divides the wrong way round",
    "Multiply the first term by your number. Is it the second term?",
)


HALF_WAY = Misconception(
    "sequences.half-way-between",
    "gives the number half way between its neighbours",
    "What is each term multiplied by? Check your number on both sides.",
)


ONE_FACTOR_MORE = Misconception(
    "sequences.one-factor-too-many",
    "multiplies once too often",
    "How many times do you multiply to come from the 1st term to the 2nd?",
)


TIMES_PLACE = Misconception(
    "sequences.multiplier-times-place",
    "multiplies the multiplier by the number of steps",
    "Work out the terms one by one. How does the second step go?",
)


SIGN = Misconception(
    "sequences.multiplier-sign",
    "loses the minus sign of the multiplier",
    "Which sign has a positive number times a negative one? And two negative ones?",
)


ONE_BACK = Misconception(
    "sequences.one-step-back",
    "goes back one step only",
    "How many steps are there from the 1st term to the term that is given?",
)
