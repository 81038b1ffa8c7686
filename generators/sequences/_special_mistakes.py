"""The mistakes that are made with special sequences."""

from __future__ import annotations

from itembank.items.item import Misconception

DOUBLES = Misconception(
    "sequences.doubles",
    "doubles where it should square",
    "Which number times itself is a square number: 5 + 5, or 5 × 5?",
)


SQUARES = Misconception(
    "sequences.squares-for-cubes",
    "squares where it should cube",
    "How many factors has a cube number?",
)


TRIPLES = Misconception(
    "sequences.triples",
    "multiplies by 3 where it should cube",
    "What is 2 cubed: 2 × 3, or 2 × 2 × 2?",
)


ONE_ROW_LESS = Misconception(
    "sequences.one-row-too-few",
    "stops one row too early",
    "Draw the dots row by row. Which is the last row that you add?",
)


NOT_HALVED = Misconception(
    "sequences.not-halved",
    "forgets to halve",
    "Try your way for the 2nd triangular number. Is it 3?",
)


ADDS_LAST_STEP = Misconception(
    "sequences.adds-the-last-difference",
    "adds the difference of the last two terms",
    "What does the rule tell you to add?",
)


DOUBLES_LAST = Misconception(
    "sequences.doubles-the-last-term",
    "doubles the last term",
    "Which two terms does the rule tell you to add?",
)


ONE_MORE = Misconception(
    "sequences.one-term-too-far",
    "goes one term too far",
    "Write the terms in a row and number them. Which is the one you want?",
)


ONE_FEWER = Misconception(
    "sequences.one-term-too-few",
    "stops one term too early",
    "Write the terms in a row and number them. Which is the one you want?",
)


ADDED_BACK = Misconception(
    "sequences.added-where-missing",
    "adds the two terms beside the gap",
    "Which two terms add up to the term after the gap?",
)


HALF_WAY = Misconception(
    "sequences.half-way-between",
    "gives the number half way between its neighbours",
    "Add your number to the term before it. Do you get the term after it?",
)


NUMBER_SQUARED = Misconception(
    "sequences.root-for-square",
    "gives a number that can be squared, and not its square",
    "Which number did you multiply by itself? What do you get?",
)


NOT_BETWEEN = Misconception(
    "sequences.square-outside",
    "gives a square number that is not between the two",
    "Is your number more than the first and less than the second?",
)


DIFFERENCE_SQUARED = Misconception(
    "sequences.difference-squared",
    "squares the difference of the positions",
    "Work out both square numbers first.",
)


EQUAL_SHARES = Misconception(
    "sequences.all-letters-alike",
    "counts both letters equally often",
    "Write the third and the fourth term. How often is each letter in them?",
)


ONE_ONLY = Misconception(
    "sequences.second-once",
    "counts the second term once only",
    "Write the terms with a letter for the second. How often does it come?",
)
