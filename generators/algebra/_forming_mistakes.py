"""The mistakes that are made in forming expressions."""

from __future__ import annotations

from itembank.items.item import Misconception

REVERSED = Misconception(
    "algebra.expression-reversed",
    "adds where the situation subtracts, or subtracts where it adds",
    "Which word tells you whether to add or to subtract?",
)


TIMES_AS_PLUS = Misconception(
    "algebra.expression-adds",
    "adds the number instead of multiplying by it",
    "Try 10 for the letter. What do you do with 10 to find the answer?",
)


JOINED = Misconception(
    "algebra.unlike",
    "joins terms that are not alike",
    "Which of the terms have just the same letters?",
)


ORDER = Misconception(
    "algebra.expression-order",
    "carries out the operations in the wrong order",
    "What is done first, and what to all of that? Do you need a bracket?",
)


FIXED_TIMES = Misconception(
    "algebra.expression-fixed-multiplied",
    "multiplies the fixed amount by the letter",
    "Which of the amounts is paid once? Which is paid again and again?",
)


SUBTRACTED_WRONG_WAY = Misconception(
    "algebra.expression-subtracts-wrong-way-round",
    "subtracts the wrong way round",
    "Which amount is there at first? What is taken away from it?",
)


LEFT_OUT = Misconception(
    "algebra.expression-part-left-out",
    "leaves out one of the parts",
    "How many parts are to be added? How many have you?",
)


HALF_ROUND = Misconception(
    "algebra.half-way-round",
    "adds only one length and one width",
    "How many sides has a rectangle? How many of them have you added?",
)


FIRST_ONLY = Misconception(
    "algebra.first-only",
    "multiplies only the first term in the bracket",
    "Which terms in the bracket are multiplied?",
)


PLUS_AS_TIMES = Misconception(
    "algebra.expression-more-as-times",
    "multiplies by the number instead of adding it",
    "Is it so many more, or so many times as many?",
)


SUBTRACTS = Misconception(
    "algebra.expression-subtracts",
    "subtracts the number instead of dividing by it",
    "Share 20 things equally among 4. What do you do with 20 and 4?",
)


MULTIPLIES = Misconception(
    "algebra.expression-multiplies",
    "multiplies where the situation divides",
    "Are there more things in each than there were in all?",
)


DIVIDES_WRONG_WAY = Misconception(
    "algebra.expression-divides-wrong-way-round",
    "divides the wrong way round",
    "What is shared out, and into how many parts?",
)
