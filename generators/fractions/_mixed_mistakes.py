"""The mistakes that are made in adding and subtracting mixed numbers."""

from __future__ import annotations

from itembank.items.item import Misconception

NO_CARRY = Misconception(
    "fractions.mixed-no-carry",
    "leaves out the extra whole that the fraction parts make",
    "Do 3/4 and 3/4 make more than 1 whole? Where has that whole gone in your answer?",
)


SMALL_FROM_LARGE = Misconception(
    "fractions.mixed-smaller-from-larger",
    "takes the smaller fraction part from the larger, whichever comes first",
    "What is 5 1/4 − 1 3/4? What do you do when there is not enough to take away from?",
)


NO_PAYBACK = Misconception(
    "fractions.mixed-no-payback",
    "changes a whole into parts but still counts that whole",
    "Once 1 whole has been cut into parts, how many wholes are left to take from?",
)


OTHER_SIGN = Misconception(
    "fractions.mixed-missing-same-sign",
    "uses the printed sign on the two numbers shown instead of undoing it",
    "Put your answer in the box and work out that side. Does it come to what is printed?",
)
