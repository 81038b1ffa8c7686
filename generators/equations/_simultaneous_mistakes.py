"""The mistakes that are made with simultaneous equations."""

from __future__ import annotations

from itembank.items.item import Misconception

SWAPPED = Misconception(
    "equations.swapped",
    "gives the values to the wrong letters",
    "Put your values into both equations. Are both true?",
)


SUBTRACTS = Misconception(
    "equations.subtracts-to-eliminate",
    "subtracts the equations where adding makes the letter go",
    "What is y − (−y)? And y + (−y)?",
)


ADDS = Misconception(
    "equations.adds-to-eliminate",
    "adds the equations where subtracting makes the letter go",
    "What is y + y? And y − y?",
)


LEFT_ONLY = Misconception(
    "equations.left-side-multiplied",
    "multiplies only the left-hand side of an equation",
    "When you multiply an equation, what happens to its right-hand side?",
)


PART_ONLY = Misconception(
    "equations.part-substituted",
    "substitutes only the first term of the expression",
    "What is y equal to? Have you put all of it in place of y?",
)


STOPS = Misconception(
    "equations.other-unknown",
    "gives the value of the other unknown",
    "What does the question ask for? Is that what you have found?",
)


SHARES = Misconception(
    "equations.shares-equally",
    "divides the total as if both kinds were worth the same",
    "Are the two kinds worth the same?",
)


TOTALS_ONLY = Misconception(
    "equations.totals-subtracted",
    "subtracts the totals, though the numbers of both kinds differ",
    "By which things do the two orders differ?",
)


HALF_TOTAL = Misconception(
    "equations.total-less-difference",
    "subtracts the difference from the total and stops there",
    "Find both numbers. Do they add up to the total?",
)
