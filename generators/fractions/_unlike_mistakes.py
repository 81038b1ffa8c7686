"""The mistakes that are made in adding fractions with different denominators."""

from __future__ import annotations

from itembank.items.item import Misconception

ALL_ACROSS = Misconception(
    "fractions.work-across",
    "works on the numerators and on the denominators separately",
    "What would 1/2 + 1/2 be by your method? Can that be right?",
)


GIVES_USED = Misconception(
    "fractions.add-gives-used",
    "gives the two parts together instead of the rest",
    "You have the two parts together. Does the question ask for them, or for the rest?",
)


KEEPS_DENOMINATOR = Misconception(
    "fractions.add-box-over-common",
    "gives the numerator over the common denominator",
    "What is the denominator below the box? What did you write yours over?",
)


NOT_UNDONE = Misconception(
    "fractions.add-box-not-undone",
    "does again what was done to the missing fraction, instead of undoing it",
    "What was done to the fraction with the box? What undoes that?",
)


DENOMINATORS_TOO = Misconception(
    "fractions.add-denominators-too",
    "adds the denominators, though they are the same",
    "Into how many pieces was the whole cut? Has that changed?",
)
