"""The mistakes that are made with function machines."""

from __future__ import annotations

from itembank.items.item import Misconception

OTHER_ORDER = Misconception(
    "algebra.machine-other-order",
    "works through the boxes from right to left",
    "Which box does the number come to first? Follow the arrows.",
)


FIRST_BOX = Misconception(
    "algebra.machine-first-box",
    "stops after the first box",
    "How many boxes has the machine? What does each of them do?",
)


FORWARDS = Misconception(
    "algebra.machine-forwards",
    "puts the output through the machine instead of going back",
    "Put your number into the machine. Is the output the one that is shown?",
)


SAME_ORDER = Misconception(
    "algebra.machine-undone-in-order",
    "undoes the boxes in the order in which they stand",
    "Which box did the number go through last? Undo that first.",
)


LEFT_OUT = Misconception(
    "algebra.machine-box-left-out",
    "leaves out what the other box does",
    "What does the first box make of the input?",
)


ADDED = Misconception(
    "algebra.machine-added",
    "adds two numbers where their difference is wanted",
    "How far is it from what comes out of the first box to the output?",
)


SUBTRACTED = Misconception(
    "algebra.machine-subtracted",
    "subtracts where the second box multiplies",
    "What do you multiply by to come to the output?",
)


MADE_NOTHING = Misconception(
    "algebra.machine-made-nothing",
    "makes the output 0 instead of equal to the input",
    "Put your number into the machine. Does the same number come out?",
)


NOTHING_CHANGES = Misconception(
    "algebra.machine-box-alone",
    "gives the number that the second box takes away",
    "Put your number into the machine. Does the same number come out?",
)


FIRST_TERM = Misconception(
    "algebra.first-only",
    "multiplies only the first term in the bracket",
    "The whole of what comes out of the first box is multiplied. What is in it?",
)
