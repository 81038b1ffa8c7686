"""Mistakes with chance, as classrooms know them (from memory)."""

from __future__ import annotations

from itembank.items.item import Misconception

PART_TO_PART = Misconception(
    "probability.part-to-part",
    "compares the part with the rest instead of the whole",
    "How many are there to choose from in all?",
)
EQUALLY_LIKELY = Misconception(
    "probability.equally-likely",
    "takes every kind for equally likely, however many there are of each",
    "Are there as many of one kind as of another? Which is more likely?",
)
THE_OTHERS = Misconception(
    "probability.the-others",
    "gives the probability of all the others",
    "Which outcome does the question ask about?",
)
FIRST_OF_TWO = Misconception(
    "probability.first-of-two",
    "uses only the first outcome that is named",
    "How many outcomes does the question name? Which of them will do?",
)
OLD_TOTAL = Misconception(
    "probability.old-total",
    "changes one number and leaves the total as it was",
    "How many are there in all now?",
)
DIVIDES_PART = Misconception(
    "probability.divides-by-numerator",
    "finds one part of the fraction and stops there",
    "What does the numerator tell? How many parts do you need?",
)
TIMES_FRACTION = Misconception(
    "probability.times-instead-of-whole",
    "finds that fraction of the number that is given",
    "Is the number in the question the whole, or a part of it?",
)
ALL_OF_THEM = Misconception(
    "probability.all-of-them",
    "finds how many there are in all and stops there",
    "Does the question ask for all of them? Which ones does it ask for?",
)
SAME_AGAIN = Misconception(
    "probability.same-for-not",
    "gives the probability of the outcome itself",
    "Is it as likely not to happen as to happen? What do the two add up to?",
)
LOSES_TENTH = Misconception(
    "probability.complement-loses-tenth",
    "subtracts the digits from 1.00 without carrying, a tenth too many",
    "Add your answer to the probability in the question. Do you get 1?",
)
FROM_TEN = Misconception(
    "probability.complement-from-ten",
    "subtracts from 10 instead of 1",
    "What is the largest number that a probability can be?",
)
NUMERATOR_LESS = Misconception(
    "probability.swaps-numerator",
    "subtracts the numerator from 10 and keeps the denominator",
    "Write 1 as a fraction with this denominator. What is left?",
)
STOPS_AT_SUM = Misconception(
    "probability.stops-at-sum",
    "adds the probabilities that are known and stops there",
    "What do all of the probabilities add up to? How much is left?",
)
EVEN_SHARE = Misconception(
    "probability.shares-evenly",
    "shares the probability evenly among all outcomes",
    "Are all of the outcomes equally likely? Do the probabilities add up to 1 with yours?",
)
STOPS_AT_LETTER = Misconception(
    "probability.stops-at-letter",
    "finds the letter and forgets to multiply it",
    "What stands in the table for this outcome? Put your number in.",
)
ALL_TO_LETTER = Misconception(
    "probability.all-to-one-letter",
    "takes all that is left for one letter, however often the letter comes",
    "How many times does the letter come in the table altogether?",
)
MULTIPLIED_FOR_OR = Misconception(
    "probability.multiplies-for-or",
    "multiplies the probabilities for one outcome or another",
    "Is it more or less likely when either of two will do?",
)
UPSIDE_DOWN = Misconception(
    "probability.upside-down",
    "writes the reciprocal",
    "Can a probability be more than 1?",
)
