"""The mistakes that are made in factorising."""

from __future__ import annotations

from itembank.items.item import Misconception

FIRST_ONLY = Misconception(
    "algebra.divides-first-only",
    "divides only the first term by the factor",
    "Expand your answer. Do you get the expression in the question?",
)


ADDS_UP = Misconception(
    "algebra.adds-up",
    "adds the terms together instead of factorising",
    "Can the two terms be joined into one?",
)


TAKES_AWAY = Misconception(
    "algebra.takes-away",
    "subtracts the factor from a term instead of dividing by it",
    "What is the last term divided by the factor?",
)


LEAVES_WHOLE = Misconception(
    "algebra.leaves-whole",
    "leaves a term out when the factor is the whole term",
    "What is a term divided by itself? Expand your answer to check.",
)


LETTER_LEFT = Misconception(
    "algebra.letter-left",
    "takes a letter out of one term only",
    "Expand your answer. How often is each letter a factor of the second term?",
)


SIGN_LOST = Misconception(
    "algebra.factor-sign-lost",
    "loses a minus sign",
    "Expand your answer. Which sign has each term?",
)


TWICE = Misconception(
    "algebra.twice",
    "writes the common factor twice",
    "How many times is the bracket a factor of each term?",
)


ONE_LESS = Misconception(
    "algebra.length-by-subtraction",
    "subtracts the width instead of dividing by it",
    "Multiply your length by the width. Do you get the area?",
)
