"""The mistakes that are made with the order of operations."""

from __future__ import annotations

from itembank.items.item import Misconception

LEFT_TO_RIGHT = Misconception(
    "number.operations-left-to-right",
    "works from left to right, whatever the operations are",
    "Which operation comes first: the one on the left, or the multiplication or division?",
)


NO_BRACKETS = Misconception(
    "number.operations-ignores-brackets",
    "works the sum out as if there were no brackets",
    "What do brackets tell you to do first?",
)


ADDS_FIRST = Misconception(
    "number.operations-adds-first",
    "takes addition to come before subtraction",
    "You have £10, spend £4, then get £3. How much have you now?",
)


TIMES_FIRST = Misconception(
    "number.operations-multiplies-before-dividing",
    "takes multiplication to come before division",
    "What is 8 ÷ 4 × 2, from left to right?",
)


SQUARES_ALL = Misconception(
    "number.operations-squares-too-much",
    "squares everything that stands in front of the index",
    "Which number does the small 2 belong to?",
)


SQUARES_EACH = Misconception(
    "number.operations-squares-each",
    "squares the numbers in the brackets one by one, and not their sum",
    "What is 1 + 2? What is (1 + 2) squared? Is it 1 + 4?",
)


IN_A_LINE = Misconception(
    "number.operations-types-in-a-line",
    "divides only the two numbers next to the line of the fraction",
    "Which numbers stand above the line, and which below it? What is each worth?",
)


STOPS = Misconception(
    "number.operations-stops",
    "stops before the whole sum is worked out",
    "Which numbers of the question have you used? Are there any left?",
)


TAKES_FIRST_OFF = Misconception(
    "number.operations-takes-off-the-first-only",
    "takes off the first cost and adds the second",
    "Is the second cost paid as well? What does that do to the change?",
)
