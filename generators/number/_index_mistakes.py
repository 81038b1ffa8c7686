"""The mistakes that are made with the laws of indices."""

from __future__ import annotations

from itembank.items.item import Misconception

MULTIPLIES_INDICES = Misconception(
    "number.indices-multiplies-for-adds",
    "multiplies the indices of a product",
    "Write both powers out as products. How many factors are there in all?",
)
MULTIPLIES_BASES = Misconception(
    "number.indices-multiplies-the-bases",
    "multiplies the numbers that are raised",
    "Write both powers out as products. Which number is every factor?",
)
DIVIDES_INDICES = Misconception(
    "number.indices-divides-for-subtracts",
    "divides the indices of a quotient",
    "Write both powers out as products, one over the other. How many factors cancel?",
)
BASES_CANCEL = Misconception(
    "number.indices-cancels-the-bases",
    "divides the numbers that are raised as well",
    "Write both powers out as products, one over the other. What is left?",
)
ADDS_OVER = Misconception(
    "number.indices-adds-for-a-quotient",
    "adds the indices of a quotient",
    "Write both powers out as products, one over the other. How many factors are left?",
)
ADDS_INDICES = Misconception(
    "number.indices-adds-for-multiplies",
    "adds the indices of a power of a power",
    "How many times does the power in the brackets stand there? How many factors is that?",
)
RAISES_INDEX = Misconception(
    "number.indices-raises-the-index",
    "raises the index to the power outside",
    "How many times does the power in the brackets stand there? How many factors has each?",
)
NO_INDEX = Misconception(
    "number.indices-forgets-the-index-one",
    "takes a letter without an index to have the index 0",
    "How many factors is a letter by itself?",
)
ADDS_FRONT = Misconception(
    "number.indices-adds-the-coefficients",
    "adds the numbers in front",
    "What is 3 × 4? What stands between the two terms?",
)
SUBTRACTS_FRONT = Misconception(
    "number.indices-subtracts-the-coefficients",
    "subtracts the numbers in front",
    "What is done with the two numbers: are they divided or subtracted?",
)
FRONT_NOT_RAISED = Misconception(
    "number.indices-leaves-the-coefficient",
    "raises the letter and leaves the number in front",
    "What stands inside the brackets? How often is each part of it multiplied?",
)
FRONT_TIMES = Misconception(
    "number.indices-multiplies-the-coefficient-by-the-index",
    "multiplies the number in front by the power outside",
    "Write the brackets out as a product. How often does the number in front stand there?",
)
FIRST_TWO = Misconception(
    "number.indices-stops-half-way",
    "stops before the last power has been used",
    "Which powers have you used? Is there one left?",
)
SIGN_LOST = Misconception(
    "number.indices-subtracts-the-other-way",
    "subtracts the smaller index from the larger, whichever comes first",
    "Are there more factors to divide by, or more to be divided?",
)
NOT_CHANGED = Misconception(
    "number.indices-multiplies-unlike-bases",
    "multiplies two unlike numbers and adds the indices as they stand",
    "Can the first number be written as a power of the second?",
)
