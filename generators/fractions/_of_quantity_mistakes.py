"""The mistakes that are made with a fraction of a quantity."""

from __future__ import annotations

from itembank.items.item import Misconception

REST = Misconception(
    "fractions.of-gives-the-rest",
    "gives what is left over instead of the part asked for",
    "Draw a bar and shade the fraction. Is your answer the shaded part, or the rest of the bar?",
)


TAKES_DENOMINATOR = Misconception(
    "fractions.of-subtracts-denominator",
    "takes the denominator away instead of dividing by it",
    "What is half of 10? What does your method give?",
)


ONE_PART = Misconception(
    "fractions.of-one-part",
    "divides by the denominator and forgets to multiply by the numerator",
    "You found one of the equal parts. How many of them does the question want?",
)


NUMERATOR_FIRST = Misconception(
    "fractions.of-divides-by-numerator",
    "divides by the numerator and multiplies by the denominator",
    "Is 3/4 of an amount more or less than the amount? What about your answer?",
)


OF_WHOLE = Misconception(
    "fractions.of-rest-as-whole",
    "takes the second fraction of the whole amount instead of what is left",
    "Read the question again: is the second fraction a part of all of them, or of the rest?",
)


OF_FIRST = Misconception(
    "fractions.of-rest-as-first",
    "takes the second fraction of the first part instead of what is left",
    "Draw the whole as a bar and shade the first part. Which part do you cut up next?",
)


USED = Misconception(
    "fractions.of-gives-used",
    "gives the two parts together instead of the rest",
    "Read the last sentence again. Does it ask for the parts you found, or for the rest?",
)


OF_REST = Misconception(
    "fractions.of-whole-as-rest",
    "takes the second fraction of what is left after the first, instead of the whole amount",
    "What is the second fraction a part of: all of them, or what the first one leaves?",
)
