"""The mistakes that are made with rules from term to term."""

from __future__ import annotations

from itembank.items.item import Misconception

FROM_FIRST = Misconception(
    "sequences.rule-on-the-first-term",
    "uses the rule on the first term each time",
    "Which term comes just before the one you want? Use the rule on that.",
)


ONE_MORE = Misconception(
    "sequences.one-term-too-far",
    "goes one term too far",
    "Write the terms in a row and number them. Which is the one you want?",
)


ORDER = Misconception(
    "sequences.rule-in-other-order",
    "carries out the two parts of the rule in the wrong order",
    "Which part of the rule is done first?",
)


ONE_PART = Misconception(
    "sequences.one-part-of-the-rule",
    "uses only the first part of the rule",
    "How many things does the rule tell you to do?",
)


WRONG_SIGN = Misconception(
    "sequences.wrong-direction",
    "goes the other way",
    "Do the terms get larger or smaller? Check with the rule.",
)


FORWARDS = Misconception(
    "sequences.forwards-not-back",
    "uses the rule forwards where it has to be undone",
    "Start with your number and use the rule. Do you come to the term that is given?",
)


STEP_GIVEN = Misconception(
    "sequences.step-given-for-term",
    "gives the step instead of the missing term",
    "That is how much is added each time. What is the missing term?",
)


HALF_WAY = Misconception(
    "sequences.halves-between",
    "gives the number half way between, though two terms are missing",
    "How many steps are there from one given term to the other?",
)


COUNTS_TERMS = Misconception(
    "sequences.counts-terms",
    "counts the terms instead of the steps between them",
    "How many steps are there from the first term to the fourth: 3 or 4?",
)


ADDS_GAP = Misconception(
    "sequences.adds-the-first-difference",
    "adds the difference of the first two terms again",
    "What does the rule do with the second term first?",
)


ADDS_MULTIPLIER = Misconception(
    "sequences.adds-the-multiplier",
    "adds the number instead of multiplying by it",
    "Does the rule say to add or to multiply?",
)
