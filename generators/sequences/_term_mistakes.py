"""The mistakes that are made in finding terms by a rule."""

from __future__ import annotations

from itembank.items.item import Misconception

DIGITS = Misconception(
    "sequences.digits",
    "writes the digits side by side instead of multiplying",
    "What stands between a number and n, though we do not write it?",
)


ADDS = Misconception(
    "sequences.adds",
    "adds the number in front of n instead of multiplying",
    "What does 4n mean: 4 more than n, or 4 lots of n?",
)


ORDER = Misconception(
    "sequences.order",
    "adds or subtracts before multiplying",
    "Which do you do first: multiply, or add and subtract?",
)


FROM_NOUGHT = Misconception(
    "sequences.starts-at-nought",
    "starts with n = 0",
    "Which value has n for the first term?",
)


CONSTANT_FIRST = Misconception(
    "sequences.starts-at-the-number-added",
    "starts with the number that is added, and goes up from there",
    "Put n = 1 into the rule. What do you get?",
)


DOUBLES = Misconception(
    "sequences.doubles",
    "doubles where it should square",
    "What is 8 squared: 8 + 8, or 8 × 8?",
)


OTHER_WAY = Misconception(
    "sequences.other-way",
    "substitutes the term for n",
    "Is the number that you are given a term or a position?",
)


SAME_OPERATION = Misconception(
    "sequences.same-operation",
    "repeats an operation instead of undoing it",
    "What undoes adding? What undoes subtracting?",
)


ROWS_ONLY = Misconception(
    "sequences.rows-only",
    "gives the difference of the row numbers",
    "That is how many rows further on it is. How many more are there in each next row?",
)


RULE_OF_DIFFERENCE = Misconception(
    "sequences.rule-of-difference",
    "substitutes the difference of the row numbers into the rule",
    "Work out both rows first. What is their difference?",
)


STEP_TOO_MANY = Misconception(
    "sequences.step-too-many",
    "takes one step too many",
    "How many steps are there from the 1st term to the 4th?",
)


STEP_GIVEN = Misconception(
    "sequences.step-given",
    "gives the difference instead of the term",
    "That is the step. What is the first term?",
)


POSITION = Misconception(
    "sequences.position",
    "gives the position instead of the term",
    "That is the position. What is the term there?",
)


WRONG_ACROSS = Misconception(
    "sequences.adds-letters",
    "moves the unknown to the other side without changing its sign",
    "What do you do to both sides so that n stands on one of them only?",
)
