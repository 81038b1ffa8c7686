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
COUNTS_MARKS = Misconception(
    "probability.counts-marks",
    "gives the number of steps instead of the part of the line",
    "How many steps make 1? What is each of them worth?",
)
FROM_ONE = Misconception(
    "probability.from-one",
    "counts from 1 instead of from 0",
    "At which end is 0? Is the event more or less likely than not?",
)
STEP_IS_TENTH = Misconception(
    "probability.step-is-tenth",
    "takes each step for a tenth",
    "How many steps are there from 0 to 1?",
)
NUMERATOR_MARKS = Misconception(
    "probability.numerator-marks",
    "counts as many steps as the numerator",
    "How many steps make 1? How many of them are this fraction?",
)
NEXT_MARK = Misconception(
    "probability.next-mark",
    "counts the mark at 0 as the first step",
    "How many steps is it from 0 to the mark? Is 0 itself a step?",
)
DIVIDES_BY_NUMERATOR = Misconception(
    "probability.expects-numerator-part",
    "divides the number of trials by the numerator",
    "Into how many parts do you share the trials? How many of the parts do you want?",
)
EXPECTS_OTHERS = Misconception(
    "probability.expects-the-others",
    "finds how often it is expected not to happen",
    "Which outcome does the question ask about?",
)
ONE_PART_EXPECTED = Misconception(
    "probability.expects-one-part",
    "finds one part and forgets the numerator",
    "How many of the equal parts does the fraction stand for?",
)
EQUAL_EXPECTED = Misconception(
    "probability.expects-equal-shares",
    "shares the trials equally among the kinds",
    "Are all kinds equally likely?",
)
COUNT_TIMES = Misconception(
    "probability.count-times-trials",
    "multiplies the trials by how many there are, not by a probability",
    "Can something happen more often than you try? What is its probability?",
)
EXPECTED_AGAIN = Misconception(
    "probability.finds-part-of-expected",
    "finds the fraction of the number that is wanted",
    "Do you have to try more often, or less often, than the number that is wanted?",
)
ADDS_DIFFERENCE = Misconception(
    "probability.adds-more-trials",
    "adds the further trials to the frequency",
    "The number of trials grows so many times. How does the frequency grow?",
)
SAME_FREQUENCY = Misconception(
    "probability.same-frequency",
    "expects the same frequency, however many trials there are",
    "If you try twice as often, how often do you expect it?",
)
FIRST_ONLY = Misconception(
    "probability.expects-first-only",
    "finds how often to expect the first one, and stops there",
    "How often do you expect the other? How far apart are the two?",
)
COUNTS_APART = Misconception(
    "probability.counts-apart",
    "subtracts how many there are of each, not how often they are expected",
    "How often do you expect each of them in all of the turns?",
)
ADDS_OUTCOMES = Misconception(
    "probability.adds-outcomes",
    "adds the numbers of outcomes instead of counting the cells",
    "How many cells are there in each row? How many rows are there?",
)
TOTALS_ALIKE = Misconception(
    "probability.results-equally-likely",
    "takes every result for equally likely",
    "In how many cells does each result stand? Is it the same for all?",
)
BOUND_TOO = Misconception(
    "probability.counts-the-bound",
    "takes more than, less than, at least or at most to be one number off",
    "Does the number itself count? What do the words say?",
)
NOT_ASKED = Misconception(
    "probability.cells-not-asked",
    "counts the cells that do not fit",
    "Which cells does the question ask about?",
)
COUNT_OF_CELLS = Misconception(
    "probability.part-over-rest-of-cells",
    "writes the cells that fit over those that do not",
    "How many cells are there in all?",
)
COUNTS_ONCE = Misconception(
    "probability.counts-pairs-once",
    "counts a result once, however many cells show it",
    "Look at every cell. Does the result stand in several of them?",
)
ADDS_FOR_BOTH = Misconception(
    "probability.adds-for-both",
    "adds the probabilities when both have to happen",
    "Is it more likely or less likely that both happen than that one of them does?",
)
NOT_BOTH = Misconception(
    "probability.neither-as-not-both",
    "takes neither for not both",
    "If one of the two happens, is that neither?",
)
BOTH_INSTEAD = Misconception(
    "probability.both-instead",
    "gives the probability of both",
    "What may happen here? Does it have to be both?",
)
ONE_ORDER = Misconception(
    "probability.one-order-only",
    "finds only one of the two ways",
    "In which two ways can it happen? Have you found both?",
)
ADDS_FOR_EITHER = Misconception(
    "probability.adds-for-at-least-one",
    "adds the two probabilities and counts both twice",
    "Is the case that both happen counted once, or twice?",
)
NEITHER_INSTEAD = Misconception(
    "probability.neither-instead",
    "gives the probability of neither",
    "Does at least one happen in the case you have found?",
)
DOUBLES = Misconception(
    "probability.doubles-for-twice",
    "doubles the probability for twice in a row",
    "Is it more or less likely to happen twice than once?",
)
HALF_EACH = Misconception(
    "probability.half-each",
    "takes two outcomes for equally likely",
    "What does the other branch from the same point say? What do the two add up to?",
)
ADDS_ALONG = Misconception(
    "probability.adds-along-branches",
    "adds along the branches instead of multiplying",
    "Is it more or less likely that both happen than that the first does?",
)
PUTS_BACK = Misconception(
    "probability.as-if-put-back",
    "takes the first branches' probabilities again, as if the first were put back",
    "How many are left in the bag after the first is kept?",
)
STOPS_ON_TREE = Misconception(
    "probability.second-branch-alone",
    "reads the second branch alone",
    "Which branch comes first? What do you do with the two?",
)
ONLY_REGION = Misconception(
    "probability.region-alone",
    "counts one region alone and leaves out the overlap",
    "Who else is in this circle?",
)
OTHER_CIRCLE = Misconception(
    "probability.other-circle",
    "counts the other circle",
    "Which circle does the name stand by?",
)
OVERLAP_TWICE = Misconception(
    "probability.overlap-twice",
    "adds the two circles and counts the overlap twice",
    "How often have you counted those who are in both?",
)
LEAVES_OVERLAP = Misconception(
    "probability.leaves-out-overlap",
    "leaves out the overlap",
    "Are those in both also in one or the other?",
)
EVERYTHING = Misconception(
    "probability.counts-everything",
    "counts all regions",
    "Which region stands for those in neither set? Are they asked for?",
)
LEAVES_OUTSIDE = Misconception(
    "probability.leaves-out-outside",
    "leaves out those outside the circles",
    "Who is in neither set? Do they count here?",
)
MISSING_ALONE = Misconception(
    "probability.missing-region-alone",
    "finds the number that is missing and stops there",
    "Which regions does the question ask for?",
)
ADDS_SHOWN = Misconception(
    "probability.adds-shown-regions",
    "adds the numbers that are shown",
    "How many are there in all? What is missing to make the total?",
)
IGNORES_MISSING = Misconception(
    "probability.ignores-missing-region",
    "takes the missing number for 0",
    "Do the numbers that are shown make the total?",
)
