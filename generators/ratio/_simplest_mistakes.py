"""The mistakes that are made in writing a ratio in its simplest form."""

from __future__ import annotations

from itembank.items.item import Misconception

REVERSED = Misconception(
    "ratio.simplest-reversed",
    "simplifies, but writes the parts in the other order",
    "Which part of the question came first? Which part of your answer stands for it?",
)


ONE_ONLY = Misconception(
    "ratio.simplest-one-part",
    "divides one part only",
    "2 : 2 means equal shares. If you halve only one part, are the shares still equal?",
)


TAKES_AWAY = Misconception(
    "ratio.simplest-subtracts-factor",
    "subtracts the common factor from both parts instead of dividing by it",
    "Draw bars for 4 : 6 and for 2 : 4. Do the two ratios mean the same?",
)


UNITS_LOST = Misconception(
    "ratio.simplest-units-ignored",
    "simplifies the numbers without making the units the same",
    "Are the two amounts in the same unit? What has to be done before you simplify?",
)


HUNDRED = Misconception(
    "ratio.simplest-always-hundred",
    "changes every unit as if 100 of the smaller made one of the larger",
    "How many of the smaller unit make one of the larger? Is it always 100?",
)


CLEARS_EACH = Misconception(
    "ratio.simplest-cleared-apart",
    "makes each part whole by multiplying it by a number of its own",
    "What did you multiply the first part by? And the second? What does that do to the ratio?",
)


PART_TO_WHOLE = Misconception(
    "ratio.simplest-part-to-whole",
    "compares the parts with all the parts of the shape",
    "How many parts are shaded, and how many are not? Are the shaded ones counted twice?",
)
