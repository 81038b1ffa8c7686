"""The mistakes that are made in expanding two brackets."""

from __future__ import annotations

from itembank.items.item import Misconception

ENDS_ONLY = Misconception(
    "algebra.ends-only",
    "multiplies first by first and last by last, and nothing else",
    "Draw a rectangle with the two brackets as its sides. Into how many parts is it split?",
)


ADDS_ENDS = Misconception(
    "algebra.adds-ends",
    "adds the last numbers where they multiply",
    "What do you do with the last numbers of the brackets: add, or multiply?",
)


SIGN = Misconception(
    "algebra.product-sign",
    "gets the sign of the last product wrong",
    "Which signs have the last terms of the two brackets?",
)


SIGN_MIDDLE = Misconception(
    "algebra.sign-middle",
    "adds both middle terms though one of them is negative",
    "Which of the two middle products is negative?",
)


SQUARE_EACH = Misconception(
    "algebra.square-each",
    "squares each term of the bracket, and nothing else",
    "Write the square as a product of two brackets. How many products are there?",
)


ONE_CROSS = Misconception(
    "algebra.one-cross",
    "finds only one of the two products in the middle",
    "Which two products have one letter in them?",
)


TWO_DROPPED = Misconception(
    "algebra.two-dropped",
    "leaves out the number in front of the letter in a middle product",
    "Which number stands in front of the letter when you multiply it?",
)


SIGN_CROSS = Misconception(
    "algebra.sign-cross",
    "gives the two middle products different signs",
    "Which sign has each of the two middle products?",
)


BRACKET_SIGNS = Misconception(
    "algebra.bracket-signs",
    "subtracts only the first term of an expression",
    "You take away the whole bracket. What happens to its other terms?",
)


ADDS_SIDES = Misconception(
    "algebra.area-as-sum",
    "adds the two sides instead of multiplying",
    "What do you do with the length and the width to find an area?",
)


HOLE_LEFT = Misconception(
    "algebra.whole-area",
    "gives the area of the whole, and takes nothing away",
    "Which part of the area does the question ask about?",
)
