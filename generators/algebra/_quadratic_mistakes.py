"""The mistakes that are made in factorising quadratic expressions."""

from __future__ import annotations

from itembank.items.item import Misconception

AS_PRINTED = Misconception(
    "algebra.quadratic-as-printed",
    "puts the two numbers of the expression into the brackets",
    "Expand your brackets. Which two numbers have to multiply to the last term?",
)


SUM_ONLY = Misconception(
    "algebra.quadratic-sum-only",
    "finds two numbers with the right sum and the wrong product",
    "Expand your brackets. Is the last term right?",
)


PRODUCT_ONLY = Misconception(
    "algebra.quadratic-product-only",
    "finds two numbers with the right product and the wrong sum",
    "Expand your brackets. Is the middle term right?",
)


SIGNS = Misconception(
    "algebra.quadratic-signs",
    "gets the signs in the brackets wrong",
    "Expand your brackets. Which signs have the middle and the last term?",
)


SQUARE = Misconception(
    "algebra.difference-as-square",
    "writes a difference of two squares as the square of a bracket",
    "Expand your brackets. Is there a middle term?",
)


NUMBER_LEFT = Misconception(
    "algebra.quadratic-number-left",
    "leaves out the common factor",
    "Expand your brackets. What number stands in front of the square?",
)


CROSSED = Misconception(
    "algebra.quadratic-crossed",
    "puts the two numbers into the wrong brackets",
    "Expand your brackets. Is the middle term right?",
)


NOT_ROOTED = Misconception(
    "algebra.square-not-rooted",
    "halves the number instead of finding its square root",
    "Which number times itself makes the last term?",
)
