"""The mistakes that are made with inverse proportion."""

from __future__ import annotations

from itembank.items.item import Misconception

DIRECT = Misconception(
    "ratio.inverse-as-direct",
    "takes it to be direct proportion: more of one means more of the other",
    "If one number is doubled, is the other doubled or halved? What does your method do?",
)


ADDITIVE = Misconception(
    "ratio.inverse-additive",
    "adds to one number what is taken from the other",
    "If one number is halved, what happens to the other? Does your method do that?",
)


UNDIVIDED = Misconception(
    "ratio.inverse-total",
    "stops at the product of the two numbers",
    "You have multiplied. By which number is the product to be divided?",
)


ALL_OF_THEM = Misconception(
    "ratio.inverse-all-not-extra",
    "gives how many are needed altogether, and not how many more",
    "How many are there already? What does the question ask for?",
)


FORGETS_DONE = Misconception(
    "ratio.inverse-forgets-what-is-done",
    "shares out the whole job, and forgets what is done already",
    "How much of the job is left when the number changes?",
)


SAME_TIME = Misconception(
    "ratio.inverse-nothing-changes",
    "takes the rest to last as long as with all of them",
    "Are as many at work as before? So does the rest take as long?",
)
