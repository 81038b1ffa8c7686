"""The mistakes that are made with a percentage change."""

from __future__ import annotations

from itembank.items.item import Misconception

PLAIN = Misconception(
    "percentages.change-by-the-number",
    "adds or subtracts the percentage as a plain number",
    "What is 10% of the amount? Is that always 10?",
)


STOPS = Misconception(
    "percentages.change-stops-too-soon",
    "gives the change and not the new amount",
    "You have found the change. What does the question ask for?",
)


WRONG_WAY = Misconception(
    "percentages.change-wrong-way",
    "subtracts for an increase, or adds for a decrease",
    "Should the new amount be more or less than the old one?",
)


POINT = Misconception(
    "percentages.reads-units-as-tens",
    "writes a one-figure percentage as tenths, so that 6% becomes 0.6",
    "What is 10% as a decimal? So what is 1%?",
)


PART_ONLY = Misconception(
    "percentages.multiplier-of-the-part",
    "gives the multiplier for the change alone",
    "What percentage of the amount is there after the change?",
)


CHANGE_AS = Misconception(
    "percentages.change-as-percentage",
    "gives the change itself as the percentage",
    "What is 10% of the old amount? Does your answer fit with that?",
)


BY_NEW = Misconception(
    "percentages.divides-by-the-new",
    "divides the change by the new amount",
    "The change is a part of which amount: the old or the new?",
)


NEW_AS = Misconception(
    "percentages.gives-what-is-left",
    "gives the new amount as a percentage of the old one",
    "Does the question ask what there is now, or by how much it changed?",
)


ADDS_BOTH = Misconception(
    "percentages.adds-the-percentages",
    "adds or subtracts the two percentages",
    "The second percentage is a part of which price?",
)


ONE_CHANGE = Misconception(
    "percentages.stops-after-the-first",
    "stops after the first change",
    "How many changes are there? Which have you worked out?",
)


MOST_OFF = Misconception(
    "percentages.most-off",
    "chooses the shop that takes off the largest percentage",
    "Is half off a dear thing always cheaper than nothing off a cheap one?",
)


LOWEST_BEFORE = Misconception(
    "percentages.lowest-before",
    "chooses the lowest price before the reduction",
    "What does each shop charge after the reduction?",
)


COST_OF_ONE = Misconception(
    "percentages.profit-on-the-sales",
    "divides the profit by what was taken, and not by what was paid",
    "Profit is a percentage of which amount: what was paid, or what was taken?",
)
