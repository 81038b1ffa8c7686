"""The mistakes that are made with powers and roots."""

from __future__ import annotations

from itembank.items.item import Misconception

TIMES_INDEX = Misconception(
    "number.powers-times-the-index",
    "multiplies by the index",
    "What does the index tell you to do? How many factors are there?",
)
SWAPS = Misconception(
    "number.powers-swaps-base-and-index",
    "swaps the number and its index",
    "Which number is multiplied by itself, and how many times does it stand there?",
)
HALVES = Misconception(
    "number.powers-halves-for-a-root",
    "divides by 2 or 3 instead of taking the root",
    "Multiply your answer by itself. Where do you get to?",
)
POWER_FOR_ROOT = Misconception(
    "number.powers-power-for-a-root",
    "takes the power instead of the root",
    "Is the root larger or smaller than the number?",
)
ROOTS_EACH = Misconception(
    "number.powers-roots-each-part",
    "takes the root of each part by itself",
    "What is under the root, worked out? Is the root of 9 + 16 really 3 + 4?",
)
NO_ROOTS = Misconception(
    "number.powers-leaves-the-roots-out",
    "works with the numbers under the roots",
    "What does each root sign tell you to find?",
)
JOINS = Misconception(
    "number.powers-joins-the-powers",
    "multiplies the numbers and adds the indices",
    "Write both powers out as products. Are all the factors equal?",
)
NOUGHT_IS_NOUGHT = Misconception(
    "number.powers-power-nought-is-nought",
    "takes the power 0 to be 0",
    "Go down: 2 cubed, 2 squared, 2 to the power 1. What is halved each time? What comes next?",
)
NOUGHT_CHANGES_NOTHING = Misconception(
    "number.powers-power-nought-changes-nothing",
    "takes the power 0 to leave the number as it is",
    "Go down: 2 cubed, 2 squared, 2 to the power 1. What is halved each time? What comes next?",
)
STOPS = Misconception(
    "number.powers-stops-at-the-side",
    "gives one side and not the whole way round",
    "How many sides have to be edged?",
)
QUARTERS = Misconception(
    "number.powers-quarters-the-area",
    "divides the area by 4 to find a side",
    "How do you find the area of a square from its side? What undoes that?",
)
NEGATIVE_ANSWER = Misconception(
    "number.powers-negative-index-negative-answer",
    "takes a negative index to give a negative number",
    "Go down: 2 cubed, 2 squared, 2 to the power 1, 2 to the power 0. What comes next?",
)
NUMERATOR_ONLY = Misconception(
    "number.powers-raises-the-numerator-only",
    "raises the numerator and leaves the denominator",
    "Write the power out as a product of fractions. What happens to the denominators?",
)
ROOT_IGNORED = Misconception(
    "number.powers-ignores-the-root",
    "compares the number under the root, and not its root",
    "Which two square numbers is it between? So which whole numbers is its root between?",
)
