"""The mistakes that are made with speed, distance and time."""

from __future__ import annotations

from itembank.items.item import Misconception

MULTIPLIES = Misconception(
    "ratio.speed-multiplies",
    "multiplies where it should divide",
    "How far does it go in one hour, or in one second? How do you find that?",
)


DIVIDES = Misconception(
    "ratio.speed-divides",
    "divides where it should multiply",
    "How far does it go in the first hour, or second? And after that?",
)


SUBTRACTS = Misconception(
    "ratio.speed-subtracts",
    "subtracts the numbers",
    "What does the unit of the speed tell you to do with distance and time?",
)


MINUTES = Misconception(
    "ratio.speed-minutes-as-hours",
    "uses the minutes as if they were hours",
    "In what unit is the time? In what unit does the speed want it?",
)


CLOCK = Misconception(
    "ratio.speed-clock-decimal",
    "reads minutes as hundredths of an hour",
    "How many minutes are there in an hour? What is half an hour as a decimal?",
)


PART_HOUR = Misconception(
    "ratio.speed-part-hour",
    "uses the whole hours only",
    "What happened to the minutes?",
)


MEAN = Misconception(
    "ratio.speed-mean-of-speeds",
    "takes the mean of the two speeds",
    "Does it spend the same time at each speed?",
)


HALF_WAY = Misconception(
    "ratio.speed-half-the-way",
    "divides one part of the distance by all of the time",
    "How far is it altogether?",
)


STOP_COUNTED = Misconception(
    "ratio.speed-stop-counted",
    "counts the stop as time spent moving",
    "Is it moving for all of that time?",
)


STOP_ADDED = Misconception(
    "ratio.speed-stop-added",
    "adds the stop to the time of the journey",
    "Is the stop part of the time that is given?",
)


HOURS_KEPT = Misconception(
    "ratio.speed-hours-as-minutes",
    "gives the hours as minutes",
    "Is your answer in hours or in minutes? Which does the question ask for?",
)
