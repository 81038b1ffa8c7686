"""The mistakes that are made in collecting like terms."""

from __future__ import annotations

from itembank.items.item import Misconception

UNLIKE = Misconception(
    "algebra.unlike",
    "joins terms that are not alike",
    "Which of the terms have just the same letters?",
)


POWERS_ADD = Misconception(
    "algebra.powers-add",
    "adds the powers when adding terms",
    "When you add 4 lots of n² and 1 lot of n², does the power change?",
)


LONE_LETTER = Misconception(
    "algebra.lone-letter",
    "counts a letter on its own as nothing",
    "What number stands in front of a letter on its own, though we do not write it?",
)


LETTER_CANCELLED = Misconception(
    "algebra.letter-cancelled",
    "subtracts the letter and leaves the number",
    "Try 10 for the letter in the question and in your answer. Do they agree?",
)


NEGATIVE_LOST = Misconception(
    "algebra.negative-lost",
    "loses a minus sign",
    "Which sign stands in front of each term?",
)


SIGN_ADDED = Misconception(
    "algebra.sign-added",
    "adds the sizes of two numbers with different signs",
    "Start at −9 and go up 4. Where are you?",
)


SQUARE_AS_PLAIN = Misconception(
    "algebra.square-as-plain",
    "treats a squared term as if it were not squared",
    "If n is 10, are n² and n worth the same?",
)


FRACTIONS_ADDED = Misconception(
    "algebra.fractions-added",
    "adds the terms where one is subtracted",
    "Which sign stands in front of the second fraction?",
)


HALF_ROUND = Misconception(
    "algebra.half-way-round",
    "adds only one length and one width",
    "How many sides has a rectangle? How many of them have you added?",
)


ADDS_ALL = Misconception(
    "algebra.adds-where-it-is-missing",
    "adds the expressions where a part is wanted",
    "Is the part that you want more or less than the whole?",
)


SIGNS_KEPT = Misconception(
    "algebra.bracket-signs",
    "subtracts only the first term of an expression",
    "You take away the whole expression. What happens to its second term?",
)


FIRST_ONLY = Misconception(
    "algebra.one-letter-alone",
    "compares only the first terms",
    "You have found the first term. Does the second term change as well?",
)
