"""The mistakes that are made in finding the whole from a fraction of it."""

from __future__ import annotations

from itembank.items.item import Misconception

OF_PART = Misconception(
    "fractions.whole-takes-fraction-of-part",
    "finds the fraction of the part that is given",
    "Is the whole more or less than its part? What about your answer?",
)


ADDS_DENOMINATOR = Misconception(
    "fractions.whole-adds-denominator",
    "adds the denominator to the part",
    "If half of a number is 5, what is the number? What does your method give?",
)


ONE_PART = Misconception(
    "fractions.whole-one-part",
    "finds 1 part and stops",
    "You know what 1 part is worth. How many parts make the whole?",
)


DENOMINATOR_ONLY = Misconception(
    "fractions.whole-multiplies-only",
    "multiplies by the denominator without first finding 1 part",
    "The amount given is several parts. How much is 1 part?",
)


LEFT_AS_USED = Misconception(
    "fractions.whole-left-as-used",
    "takes what is left for the part that is gone",
    "Draw a bar and shade what is gone. Which part of the bar is the amount you know?",
)


FRACTION_OF_LEFT = Misconception(
    "fractions.whole-adds-fraction-of-left",
    "adds the fraction of what is left, as if it were the fraction of the whole",
    "Take the fraction away from your answer. Do you get back to what is left?",
)


KNOWN_OUT = Misconception(
    "fractions.whole-leaves-known-out",
    "counts only the parts that have no number",
    "Is the part that you know a part of the whole bar too?",
)
