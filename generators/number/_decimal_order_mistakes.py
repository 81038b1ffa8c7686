"""The mistakes that are made where decimals are read, compared and put in order."""

from __future__ import annotations

from itembank.items.item import Misconception

LONGER = Misconception(
    "number.decimals-longer-is-larger",
    "reads what stands after the point as a whole number: longer is larger",
    "How many tenths has each number? Write them all with as many places.",
)
SHORTER = Misconception(
    "number.decimals-shorter-is-larger",
    "takes the number with fewer decimal places to be larger",
    "Which is larger, 0.3 or 0.30? What does a further place add?",
)
TENTHS_ONLY = Misconception(
    "number.decimals-looks-at-tenths-only",
    "compares the tenths and stops there",
    "The tenths are equal. What does the next place say?",
)
PAST_LARGER = Misconception(
    "number.decimals-past-the-larger",
    "puts a further digit after the larger of the two numbers",
    "Is your number less than the larger of the two?",
)
ONE_PLACE_OUT = Misconception(
    "number.decimals-one-place-out",
    "counts the places from the wrong digit",
    "What is the first place after the point called? And the next?",
)
FACE_VALUE = Misconception(
    "number.decimals-face-value",
    "gives the digit itself, whatever its place",
    "Is the digit worth as much there as it would be in front of the point?",
)
STEP_IS_ONE = Misconception(
    "number.decimals-step-is-one",
    "counts every mark of the line as 1",
    "How many steps are there from one number to the other? What is one step worth?",
)
STEP_TOO_SMALL = Misconception(
    "number.decimals-step-too-small",
    "takes a step of the line to be a tenth of what it is",
    "How many steps make the gap between the two numbers? What is one step worth?",
)
STEP_IS_TENTH = Misconception(
    "number.decimals-step-is-a-tenth",
    "takes every step of the line to be 0.1",
    "How many steps are there from one number to the other? What is one step worth?",
)
IGNORES_SIGNS = Misconception(
    "number.decimals-ignores-the-signs",
    "puts the numbers in order as if there were no minus signs",
    "Where on a number line do negative numbers stand?",
)
NEGATIVES_TURNED = Misconception(
    "number.decimals-negatives-the-wrong-way",
    "puts the negative numbers in order of their sizes",
    "Which is colder, −1 degrees or −10 degrees?",
)
WRONG_END = Misconception(
    "number.decimals-counts-from-the-wrong-end",
    "counts the steps down from the number at the right",
    "What number stands at the left end? Do the numbers go up or down from there?",
)
THE_END = Misconception(
    "number.decimals-gives-an-end",
    "gives one of the two numbers itself",
    "Is a number between itself and another?",
)
DIFFERENCE = Misconception(
    "number.decimals-gives-the-difference",
    "gives how far apart the two numbers are",
    "Is your number more than the smaller of the two?",
)
HALF_DIFFERENCE = Misconception(
    "number.decimals-gives-half-the-difference",
    "halves the difference and does not add it on",
    "That is how far to go. Where do you start from?",
)
