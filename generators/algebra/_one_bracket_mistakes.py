"""The mistakes that are made in expanding one bracket."""

from __future__ import annotations

from itembank.items.item import Misconception

FIRST_ONLY = Misconception(
    "algebra.first-only",
    "multiplies only the first term in the bracket",
    "Which terms in the bracket does the term outside multiply?",
)


JOINS = Misconception(
    "algebra.joins",
    "goes on to join terms that are not alike",
    "Which of the terms have just the same letters?",
)


ADDS = Misconception(
    "algebra.adds-out",
    "adds the number outside instead of multiplying",
    "What does a number in front of a bracket mean?",
)


SIGN = Misconception(
    "algebra.sign",
    "gets the sign of the last product wrong",
    "Which signs have the two numbers that you multiply last?",
)


DOUBLES = Misconception(
    "algebra.doubles",
    "writes a letter times itself as twice the letter",
    "If x is 5, what is x times x? What is 2x?",
)


POWER_LOST = Misconception(
    "algebra.power-lost",
    "multiplies a letter by itself and leaves out the square",
    "If a is 3, what is 2a × 3a? What is 6a?",
)


SUBTRACTS_FIRST = Misconception(
    "algebra.subtracts-first",
    "subtracts before multiplying",
    "Which comes first here: to multiply the bracket, or to subtract?",
)


WHOLE_AREA = Misconception(
    "algebra.whole-area",
    "gives the area of the whole, and takes nothing away",
    "Which part of the area does the question ask about?",
)


PERIMETER = Misconception(
    "algebra.area-as-sum",
    "adds the two sides instead of multiplying",
    "What do you do with the length and the width to find an area?",
)
