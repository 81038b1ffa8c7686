"""The mistakes that are made in putting fractions in order."""

from __future__ import annotations

from itembank.items.item import Misconception

BIG_DENOMINATOR = Misconception(
    "fractions.order-denominators-only",
    "takes the fraction with the larger denominator to be the smaller, whatever the numerators",
    "A larger denominator means smaller pieces. How many of the pieces are there each time?",
)


BIG_NUMERATOR = Misconception(
    "fractions.order-numerators-only",
    "compares the numerators only",
    "Is 2/100 more than 1/2? What do the denominators tell you?",
)


GAP = Misconception(
    "fractions.order-by-gap",
    "compares how many pieces are missing from 1 whole, and not how large they are",
    "1/2 and 9/10: each lacks 1 piece. Are the two missing pieces the same size?",
)


PERCENT_FACE = Misconception(
    "fractions.order-percent-as-number",
    "takes a percentage as the number in front of the sign",
    "What does 50% mean? Is it more or less than 1?",
)


BAR_AS_POINT = Misconception(
    "fractions.order-bar-as-point",
    "reads the bar of a fraction as a decimal point",
    "What is 1/2 as a decimal? Is it 1.2?",
)


STEPS_COUNTED = Misconception(
    "fractions.order-steps-as-parts",
    "counts as many steps as the numerator says, whatever a step is worth",
    "How many steps of this line make 1 whole? How many of them make one of the equal parts?",
)


FROM_THE_END = Misconception(
    "fractions.order-from-the-end",
    "counts from the right end of the line",
    "Where on the line is 0? Should a small fraction stand near it, or far from it?",
)


LINE_AS_WHOLE = Misconception(
    "fractions.order-line-as-whole",
    "takes the whole line to be 1",
    "Which number stands at the right end? Where on the line is 1?",
)
