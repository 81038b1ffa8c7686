"""Mistakes with times of day that more than one topic knows."""

from __future__ import annotations

from itembank.items.item import Misconception

HOUR_LOST = Misconception(
    "measures.time-hour-lost",
    "goes past the hour and does not count it",
    "Count on to the next full hour first. Which hour is it after that?",
)
HUNDRED = Misconception(
    "measures.time-hundred-minutes",
    "works as if an hour had 100 minutes",
    "How many minutes are there from 09:50 to 10:00?",
)
SMALL_FROM_LARGE = Misconception(
    "measures.time-small-from-large",
    "takes the smaller minutes from the larger, whichever come first",
    "Count on to the next full hour. How far is it from there?",
)
WAIT_LEFT_OUT = Misconception(
    "measures.time-wait-left-out",
    "leaves the wait out",
    "Does time go on while you wait?",
)
