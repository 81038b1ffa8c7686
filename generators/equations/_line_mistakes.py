"""The mistakes that are made with inequalities on a number line."""

from __future__ import annotations

from itembank.items.item import Misconception

CIRCLES = Misconception(
    "equations.circles-swapped",
    "reads an open circle as a filled one, or the other way round",
    "Which circle counts its own number: the open or the filled one?",
)


DIRECTION = Misconception(
    "equations.arrow-turned",
    "turns the inequality sign the wrong way",
    "Choose a number under the thick line. Does it fit your inequality?",
)


OPEN_COUNTED = Misconception(
    "equations.open-end-counted",
    "counts a number under an open circle",
    "Does an open circle count its own number?",
)


FILLED_LEFT_OUT = Misconception(
    "equations.filled-end-left-out",
    "leaves out a number under a filled circle",
    "Does a filled circle count its own number?",
)


NOUGHT_LEFT_OUT = Misconception(
    "equations.nought-left-out",
    "leaves out 0",
    "Is 0 an integer? Does it lie under the thick line?",
)


NEXT_INSIDE = Misconception(
    "equations.one-integer-too-far",
    "goes one integer too far inside",
    "Which is the first integer that counts?",
)


WRONG_SIDE = Misconception(
    "equations.integer-outside",
    "gives an integer that lies outside the thick line",
    "Does your number lie under the thick line?",
)


MARKS_AS_ONES = Misconception(
    "equations.marks-as-ones",
    "counts every mark of the line as 1",
    "What is each step of this line worth?",
)
