"""The mistakes that are made where a difference of parts is told."""

from __future__ import annotations

from itembank.items.item import Misconception

IS_PART = Misconception(
    "ratio.difference-as-part",
    "takes the difference to be one part",
    "How many more parts does the larger have? How many parts does the difference fill?",
)


AS_TOTAL = Misconception(
    "ratio.difference-as-total",
    "shares the difference out as if it were the whole amount",
    "Is the number you shared out everything there is? What does the question say it is?",
)


STOPS = Misconception(
    "ratio.difference-one-part",
    "finds the value of one part and stops",
    "What does that number stand for? How many of those parts are you asked for?",
)


LARGER = Misconception(
    "ratio.difference-larger-only",
    "gives the larger amount, not the total",
    "Read the last sentence again. What have you left out?",
)
