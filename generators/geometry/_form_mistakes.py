"""Mistakes with equations about the sides of shapes (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

LENGTH_NOT_LETTER = Misconception(
    "geometry.length-for-letter",
    "gives the length of a side where the letter is asked for",
    "What does the question ask for? Is the letter itself the whole side?",
)
LETTER_FOR_SHAPE = Misconception(
    "geometry.letter-for-perimeter",
    "gives the value of the letter where the perimeter is asked for",
    "What does the letter stand for, and what does the question ask for?",
)
NUMBER_ADDED = Misconception(
    "geometry.side-number-added",
    "adds the number in the expression instead of subtracting it, or the other way round",
    "What is done to the letter to make the side? How do you undo it?",
)
NOT_DIVIDED = Misconception(
    "geometry.side-not-divided",
    "stops before dividing by the number of the letter",
    "That is several lots of the letter. How many?",
)
LETTERS_ADDED = Misconception(
    "geometry.side-letters-added",
    "adds the letters of both sides together",
    "What did you do to one side? Did you do the same to the other side?",
)
