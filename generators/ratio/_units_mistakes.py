"""The mistakes that are made in changing units."""

from __future__ import annotations

from itembank.items.item import Misconception

WRONG_WAY = Misconception(
    "ratio.units-wrong-way",
    "divides where it should multiply, or the other way round",
    "Which of the two units is larger? So are there more of them or fewer?",
)


FACTOR = Misconception(
    "ratio.units-wrong-factor",
    "uses another number of smaller units to the larger one",
    "How many of the smaller units make one of the larger?",
)


CLOCK = Misconception(
    "ratio.units-clock-decimal",
    "reads the decimal part as the smaller unit",
    "Is 0.5 of an hour 5 minutes? How many minutes is it?",
)


HUNDRED = Misconception(
    "ratio.units-hundred-for-sixty",
    "takes 100 for 60",
    "How many seconds are in a minute, and minutes in an hour?",
)


ONE_STEP = Misconception(
    "ratio.units-one-step",
    "stops half way, at the unit between the two",
    "In which unit is your number? In which unit is it wanted?",
)


NOT_CHANGED = Misconception(
    "ratio.units-not-changed",
    "works with the numbers as they stand, whatever the units",
    "Are both amounts in the same unit?",
)


BY_NUMBER = Misconception(
    "ratio.units-by-number",
    "puts the numbers in order, whatever the units",
    "Which is longer, 1 m or 50 cm? What else matters?",
)


BY_UNIT = Misconception(
    "ratio.units-by-unit",
    "puts the units in order, whatever the numbers",
    "Is 1 m longer or shorter than 500 cm? What else matters?",
)


OTHER_WAY = Misconception(
    "ratio.units-divides-the-other-way",
    "divides the smaller amount by the larger",
    "Which of the two is larger? How many of the smaller fit in it?",
)
