"""Mistakes with times of day and lengths of time (common practice, no source)."""

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


OTHER_WAY = Misconception(
    "measures.time-other-way",
    "goes the wrong way through the day",
    "Is the answer earlier or later than the time you know?",
)
HALF_KEPT = Misconception(
    "measures.time-half-kept",
    "goes past 12 and does not change between am and pm",
    "What comes after 11:59 am? What comes after 11:59 pm?",
)
TWELVE_NOT_ADDED = Misconception(
    "measures.time-twelve-not-added",
    "reads an afternoon time as if it were before noon",
    "What is that time by the 24-hour clock?",
)
