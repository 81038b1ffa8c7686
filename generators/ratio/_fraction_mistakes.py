"""The mistakes that are made between ratios and fractions."""

from __future__ import annotations

from itembank.items.item import Misconception

PART_TO_PART = Misconception(
    "ratio.fraction-part-to-part",
    "writes one part over the other part",
    "How many parts make up the whole? Is that the denominator of your fraction?",
)


OTHER_PART = Misconception(
    "ratio.fraction-other-part",
    "gives the fraction for the other part",
    "Which number of the ratio stands for the kind you were asked about?",
)


WHOLE_AS_PART = Misconception(
    "ratio.fraction-whole-as-part",
    "uses the whole as the second part of the ratio",
    "Half of a club are juniors and the rest are seniors. Is the ratio of the two 1 : 2?",
)


REVERSED = Misconception(
    "ratio.fraction-ratio-reversed",
    "writes the parts of the ratio in the other order",
    "Which kind does the question name first? Which number of your ratio stands for it?",
)


JOINED = Misconception(
    "ratio.fraction-numerator-joined",
    "puts the numerator of the fraction in front of the given ratio",
    "Add up the parts of your ratio. Is the first of them the fraction in the question?",
)


OF_WHOLE = Misconception(
    "ratio.fraction-rest-ignored",
    "shares the whole, not the rest, in the given ratio",
    "Add up your fractions of the whole. Do they come to more than 1?",
)
