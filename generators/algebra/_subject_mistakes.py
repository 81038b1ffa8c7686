"""The mistakes that are made in changing the subject of a formula."""

from __future__ import annotations

from itembank.items.item import Misconception

SAME = Misconception(
    "algebra.same-operation",
    "repeats an operation instead of undoing it",
    "Which operation undoes the one in the formula?",
)


SUBTRACTS = Misconception(
    "algebra.subtracts-multiplier",
    "subtracts the multiplier instead of dividing by it",
    "Which operation undoes multiplying?",
)


ONE_TERM = Misconception(
    "algebra.one-term",
    "divides only one term of the other side",
    "When you divide a side, is each of its terms divided?",
)


ONE_MULTIPLIED = Misconception(
    "algebra.one-term-multiplied",
    "multiplies only one term of the other side",
    "When you multiply a side, is each of its terms multiplied?",
)


SIGN_LOST = Misconception(
    "algebra.subject-sign-lost",
    "loses a minus sign",
    "Which sign stands in front of the letter that is to be the subject?",
)


SIGNS = Misconception(
    "algebra.terms-moved",
    "moves terms across without changing their signs",
    "What undoes adding a term: adding it again, or subtracting it?",
)


DIVIDES_ONE = Misconception(
    "algebra.divides-by-one-term",
    "divides by only one term of the bracket",
    "What is the letter multiplied by: one term, or the whole bracket?",
)


BRACKET_LEFT = Misconception(
    "algebra.outside-one-term",
    "divides as if the number outside multiplied one term alone",
    "Which terms does the number in front of the bracket multiply?",
)


ADDS_DIVISOR = Misconception(
    "algebra.adds-divisor",
    "adds the divisor instead of multiplying by it",
    "Which operation undoes dividing?",
)


WRONG_WAY = Misconception(
    "algebra.subtracts-wrong-way-round",
    "subtracts the wrong way round",
    "What is subtracted from what?",
)


ORDER = Misconception(
    "algebra.undoing-order",
    "undoes the operations in the wrong order",
    "Which was done last in the formula? Undo that first.",
)
