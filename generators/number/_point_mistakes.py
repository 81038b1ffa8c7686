"""The mistakes that are made in calculations with decimals."""

from __future__ import annotations

from itembank.items.item import Misconception

RIGHT_ALIGNED = Misconception(
    "number.decimals-lines-up-the-last-digits",
    "lines up the last digits instead of the points",
    "What does each digit stand for: ones, tenths or hundredths? Which go together?",
)
PARTS_APART = Misconception(
    "number.decimals-parts-apart",
    "works with the digits after the point as if they were a number of their own",
    "What are 0.7 and 0.5 together? Is it more or less than 1?",
)
NO_CARRY = Misconception(
    "number.decimals-does-not-carry",
    "leaves out what has to be carried",
    "How many tenths make 1? Where do they go?",
)
SMALL_FROM_LARGE = Misconception(
    "number.decimals-small-from-large",
    "takes the smaller digit from the larger in each column",
    "Which number is subtracted from which? Can you do it in every column?",
)
NOT_REDUCED = Misconception(
    "number.decimals-exchanges-and-forgets",
    "exchanges 1 for 10 and does not take the 1 off",
    "When you exchange 1 for 10 tenths, how many ones are left?",
)
BROUGHT_DOWN = Misconception(
    "number.decimals-brings-the-digit-down",
    "brings a digit down where nothing stands above it",
    "What can you write in an empty place after the point?",
)
FIRST_ONLY = Misconception(
    "number.decimals-takes-off-the-first-only",
    "takes off the first price only",
    "What has to be paid for? Have you taken off all of it?",
)
ADDS_SECOND = Misconception(
    "number.decimals-adds-the-second-price",
    "takes off the first price and adds the second",
    "Is the second price paid as well? What does that do to the change?",
)
ADDS_FIRST = Misconception(
    "number.decimals-adds-first",
    "takes addition to come before subtraction",
    "You have £10, spend £4, then get £3. How much have you now?",
)
SAME_OPERATION = Misconception(
    "number.decimals-not-undone",
    "does the operation of the question again instead of undoing it",
    "Put your number in the box. Is the statement true?",
)
ADDS = Misconception(
    "number.decimals-adds-for-a-difference",
    "adds where the difference is asked for",
    "Does the question ask for all of it, or for how much more?",
)
BEGINS_WITH_NOUGHT = Misconception(
    "number.decimals-answer-begins-with-nought",
    "writes the product after a nought and a point, because the question begins so",
    "What is 0.5 + 0.5 + 0.5? Is it more or less than 1?",
)
FORGETS_POINT = Misconception(
    "number.decimals-forgets-the-point",
    "leaves the decimal point out of the answer",
    "Round the numbers. About how large is the answer?",
)
ONE_PLACE = Misconception(
    "number.decimals-one-place-short",
    "puts the point one place too far to the right",
    "Estimate first: is the answer about that large?",
)
ONE_TOO_MANY = Misconception(
    "number.decimals-one-place-too-many",
    "puts the point one place too far to the left",
    "Estimate first: is the answer about that small?",
)
ADDS_NOUGHT = Misconception(
    "number.decimals-adds-a-nought",
    "writes noughts at the end to multiply",
    "Is 2.5 any less than 2.50?",
)
WRONG_WAY = Misconception(
    "number.decimals-wrong-way",
    "moves the digits the wrong way",
    "Does the answer have to be larger or smaller than the number?",
)
TIMES_INDEX = Misconception(
    "number.decimals-times-the-index",
    "multiplies by the index",
    "What does the index tell you to do?",
)
MAKES_LARGER = Misconception(
    "number.decimals-multiplying-makes-larger",
    "takes multiplying to make larger and dividing to make smaller, always",
    "What is half of 8? Is that 8 × 0.5?",
)
REMAINDER = Misconception(
    "number.decimals-remainder-as-decimal",
    "writes the remainder after the point",
    "There is a remainder. How many tenths is it, shared out?",
)
DROPS_REMAINDER = Misconception(
    "number.decimals-drops-the-remainder",
    "stops at the whole number and drops the remainder",
    "Is anything left over? Can it be shared out in tenths?",
)
MULTIPLIES = Misconception(
    "number.decimals-multiplies-instead",
    "multiplies where it should divide",
    "How many times does the smaller amount go into the larger?",
)
