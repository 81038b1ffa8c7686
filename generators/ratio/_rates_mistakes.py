"""The mistakes that are made with rates and compound units."""

from __future__ import annotations

from itembank.items.item import Misconception

MULTIPLIES = Misconception(
    "ratio.rates-multiplies",
    "multiplies where it should divide",
    "Is the answer for one more or less than the amount for several?",
)


DIVIDES = Misconception(
    "ratio.rates-divides",
    "divides where it should multiply",
    "Is the answer for several more or less than the amount for one?",
)


OLD_TIME = Misconception(
    "ratio.rates-old-time",
    "divides by the time, and not by the amount for one",
    "What does your answer count: a time, or an amount for each minute, hour or second?",
)


SUBTRACTS = Misconception(
    "ratio.rates-subtracts",
    "subtracts the numbers",
    "What happens to the amount when the time doubles? Does subtracting show that?",
)


NOT_FIRST = Misconception(
    "ratio.rates-not-for-one",
    "multiplies without finding the amount for one",
    "Is the amount in the question for one, or for several?",
)


ADDITIVE = Misconception(
    "ratio.rates-additive",
    "adds the same number to both amounts, or takes it from both",
    "If one amount doubles, what happens to the other? Does your method do that?",
)


UNITS_LOST = Misconception(
    "ratio.rates-units-ignored",
    "works with two times as they stand, whatever their units",
    "Are both times in the same unit?",
)


HUNDRED = Misconception(
    "ratio.rates-hundred-minutes",
    "takes 100 for 60 between hours and minutes, or minutes and seconds",
    "How many minutes are there in an hour? And seconds in a minute?",
)


METRES_ONLY = Misconception(
    "ratio.rates-length-only",
    "changes the unit of length and not the unit of time",
    "You have metres. Are they for an hour or for a second?",
)


TIME_ONLY = Misconception(
    "ratio.rates-time-only",
    "changes the unit of time and not the unit of length",
    "Your time fits. Are the lengths metres or kilometres?",
)


SIXTY_ONCE = Misconception(
    "ratio.rates-sixty-once",
    "multiplies or divides by 60 once, not twice",
    "How many seconds are there in a minute? And in an hour?",
)
