"""The mistakes that are made in writing an amount as a percentage of another."""

from __future__ import annotations

from itembank.items.item import Misconception

TOP_AS = Misconception(
    "percentages.top-as-percentage",
    "gives the part itself as the percentage",
    "Is the part more or less than a half of the whole? Is your percentage?",
)


LARGER_AS = Misconception(
    "percentages.larger-as-percentage",
    "gives the larger amount itself as the percentage",
    "How many times as large as the whole is this amount? Does your percentage fit?",
)


REST = Misconception(
    "percentages.gives-the-rest-percentage",
    "gives the percentage that is left over",
    "Which part does the question ask about? Is it more or less than a half?",
)


UPSIDE_DOWN = Misconception(
    "percentages.divides-the-other-way",
    "divides the whole by the part",
    "Which of the two amounts is the whole? Is the other one more or less than that?",
)


ADDS_UP = Misconception(
    "percentages.adds-to-a-hundred",
    "adds the same to both numbers until the whole is 100",
    "How do you make an equal fraction: by adding or by multiplying?",
)


UNITS_LOST = Misconception(
    "percentages.units-ignored",
    "divides the numbers without making the units the same",
    "Are both amounts in the same unit? Which is the larger amount?",
)


PART_TO_PART = Misconception(
    "percentages.part-to-part",
    "compares one part with the other part, and not with the whole",
    "How many are there altogether? What is your percentage a part of?",
)


CHANGE_ONLY = Misconception(
    "percentages.change-only",
    "gives the difference as a percentage, and leaves out the whole",
    "What is a number as a percentage of itself? Which of these two is larger?",
)


MOST_RIGHT = Misconception(
    "percentages.most-right",
    "chooses the most right answers, whatever they are out of",
    "Is 9 out of 100 better than 8 out of 10? What else matters?",
)


FEWEST_WRONG = Misconception(
    "percentages.fewest-wrong",
    "chooses the fewest wrong answers, whatever they are out of",
    "One wrong out of 2, or two wrong out of 10: which is better?",
)
