"""Mistakes with quadratic equations (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

ONE_ROOT = Misconception(
    "equations.one-root",
    "gives only one of the two solutions",
    "Which other number makes the equation true? Try a negative one, and 0.",
)
HALVES = Misconception(
    "equations.halves-square",
    "halves where it should take the square root",
    "Which number times itself makes the right-hand side?",
)
SIGNS = Misconception(
    "equations.roots-with-wrong-signs",
    "reads the solutions off the brackets with the wrong signs",
    "Put your first solution into its bracket. Is the bracket 0?",
)
NOT_ZERO = Misconception(
    "equations.not-zero",
    "puts each bracket equal to the number on the right instead of making one side 0",
    "When is a product 0? Can you tell as much of a product that is not 0?",
)
DIVIDES_LETTER = Misconception(
    "equations.divides-letter",
    "divides both sides by the letter and loses a solution",
    "Put 0 for the letter. Is the equation true?",
)
ROOT_OF_LETTER = Misconception(
    "equations.root-of-a-term",
    "takes the square root as if the right-hand side were a number",
    "Put your solution into the equation. Are both sides equal?",
)
NEGATIVE_LENGTH = Misconception(
    "equations.negative-length",
    "gives the solution that cannot be a length",
    "Can a side of a rectangle be that long?",
)
OTHER_SIDE = Misconception(
    "equations.other-side-of-rectangle",
    "gives the other side of the rectangle",
    "Which side does the question ask for?",
)
