"""The mistakes that are made with negative numbers."""

from __future__ import annotations

from itembank.items.item import Misconception

ADDS_SIZES = Misconception(
    "number.negatives-adds-the-sizes",
    "adds the sizes and keeps the minus",
    "Where do you start on the number line? Which way do you go?",
)
DROPS_MINUS = Misconception(
    "number.negatives-drops-the-minus",
    "leaves a minus out",
    "Is the number above or below zero? Where is it on the number line?",
)
SMALL_FROM_LARGE = Misconception(
    "number.negatives-small-from-large",
    "takes the smaller size from the larger, whichever comes first",
    "You have £4 and pay a bill of £9. Are you above zero, or below?",
)
TWO_MINUSES = Misconception(
    "number.negatives-two-minuses-make-a-plus",
    "takes any two minuses to make a plus",
    "You owe £2 and borrow £3 more. Do you owe money, or have some?",
)
WRONG_WAY = Misconception(
    "number.negatives-goes-the-wrong-way",
    "goes up the number line where it should go down",
    "It is −2 degrees and gets 6 degrees colder. Which way does the thermometer go?",
)
DROPS_BRACKET = Misconception(
    "number.negatives-drops-the-bracket",
    "takes subtracting a negative number for subtracting",
    "If a debt of £5 is taken away from you, are you better or worse off?",
)
DROPS_SECOND = Misconception(
    "number.negatives-drops-the-second-minus",
    "takes adding a negative number for adding",
    "If a debt of £5 is added to what you have, are you better or worse off?",
)
SIZE_FOR_VALUE = Misconception(
    "number.negatives-takes-size-for-value",
    "takes the negative number with the smaller size to be the lowest",
    "Which is colder, −1 degrees or −10 degrees?",
)
LOSES_SIGN = Misconception(
    "number.negatives-loses-the-sign",
    "leaves the minus out of the answer",
    "What is 3 lots of a debt of £2?",
)
KEEPS_MINUS = Misconception(
    "number.negatives-keeps-the-minus",
    "gives a negative answer to two negative numbers",
    "Go on with the pattern: −3 × 2, −3 × 1, −3 × 0. What comes next?",
)
ADDS_INSTEAD = Misconception(
    "number.negatives-adds-or-subtracts-instead",
    "adds or subtracts instead of multiplying or dividing",
    "Which operation does the sign between the two numbers ask for?",
)
READS_AS_TAKE = Misconception(
    "number.negatives-reads-the-bracket-as-subtracting",
    "reads multiplying by a negative number as subtracting",
    "Which sign stands in front of the brackets?",
)
SQUARE_NEGATIVE = Misconception(
    "number.negatives-square-stays-negative",
    "takes the square of a negative number to be negative",
    "A square is a number times itself. What is a negative times a negative?",
)
DOUBLES = Misconception(
    "number.negatives-multiplies-by-the-index",
    "multiplies by the index",
    "What does the index, the small raised number, tell you to do?",
)
LEFT_TO_RIGHT = Misconception(
    "number.negatives-left-to-right",
    "works from left to right, whatever the operations are",
    "Which comes first: subtracting or multiplying?",
)
ALL_CANCEL = Misconception(
    "number.negatives-all-minuses-cancel",
    "takes any number of minuses to make a plus",
    "How many negative numbers are multiplied or divided? Is that even or odd?",
)
SIGNS_SWAPPED = Misconception(
    "number.negatives-signs-swapped",
    "gives the minus to the other number",
    "What do your two numbers add up to?",
)
NOT_UNDONE = Misconception(
    "number.negatives-not-undone",
    "adds a number on the other side where it should be subtracted",
    "What undoes adding? Which operation takes the number away from both sides?",
)
