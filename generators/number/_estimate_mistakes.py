"""The mistakes that are made in estimating."""

from __future__ import annotations

from itembank.items.item import Misconception

DROPS_NOUGHTS = Misconception(
    "number.estimate-drops-the-noughts",
    "leaves out the noughts when rounding",
    "Is each rounded number about as large as the number it came from?",
)


CUTS_OFF = Misconception(
    "number.estimate-cuts-off",
    "cuts each number off after its first figure instead of rounding",
    "Which is nearer: the first figure as it stands, or one more?",
)


ONE_ONLY = Misconception(
    "number.estimate-rounds-one-number-only",
    "rounds one of the numbers only",
    "Which numbers have you rounded? Does the question say each number?",
)


EXACT = Misconception(
    "number.estimate-works-it-out",
    "works the sum out exactly instead of estimating",
    "What does the question ask you to do with each number first?",
)


TO_WHOLE = Misconception(
    "number.estimate-rounds-to-a-whole-number",
    "rounds a number below 1 to a whole number",
    "Which is the first figure of that number that is not a nought?",
)


DIVIDES_SMALLER = Misconception(
    "number.estimate-dividing-makes-smaller",
    "multiplies by a number below 1 where it should divide",
    "How many halves are there in 10? Is that more or less than 10?",
)


STOPS = Misconception(
    "number.estimate-leaves-the-denominator-out",
    "leaves the denominator out",
    "What does the line of the fraction tell you to do last?",
)


NOT_SQUARED = Misconception(
    "number.estimate-doubles-for-squares",
    "doubles where it should square",
    "What does the index 2 tell you to do?",
)


HALVES_FOR_ROOT = Misconception(
    "number.estimate-halves-for-a-root",
    "halves instead of taking the square root",
    "Multiply your root by itself. Where do you get to?",
)
