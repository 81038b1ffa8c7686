"""The mistakes that are made with Pythagoras’ theorem."""

from __future__ import annotations

from itembank.items.item import Misconception

SIDES_ADDED = Misconception(
    "geometry.pythagoras-sides-added",
    "adds the two sides",
    "Walk along two sides of a field, or straight across. Are both ways as long?",
)


NO_ROOT = Misconception(
    "geometry.pythagoras-no-root",
    "stops at the square of the side",
    "You know the side times itself. How long is the side?",
)


SUBTRACTED = Misconception(
    "geometry.pythagoras-subtracted",
    "subtracts the squares, where the longest side is asked for",
    "Which side is opposite the right angle? Should your answer be longer than the others?",
)


ADDED = Misconception(
    "geometry.pythagoras-added",
    "adds the squares, where a shorter side is asked for",
    "Which side is opposite the right angle? Can a shorter side be longer than that?",
)


SIDES_SUBTRACTED = Misconception(
    "geometry.pythagoras-sides-subtracted",
    "subtracts the two sides",
    "Square both sides first. What is left when you take one square from the other?",
)


DOUBLED = Misconception(
    "geometry.pythagoras-doubled",
    "doubles the sides instead of squaring them",
    "What does the small 2 of a square say? What is the square of 5?",
)


DIAGONAL_AS_SIDE = Misconception(
    "geometry.pythagoras-diagonal-as-side",
    "takes the diagonal for a side of the rectangle",
    "Draw the rectangle with its diagonal. Which lengths do you multiply for the area?",
)


SIDE_AS_HEIGHT = Misconception(
    "geometry.pythagoras-side-as-height",
    "takes the sloping side for the height",
    "Draw the height. Is it as long as the sloping side?",
)


NOT_HALVED = Misconception(
    "geometry.triangle-not-halved",
    "multiplies base and height and does not halve",
    "Draw the rectangle round the triangle. How much of it is the triangle?",
)


STOPS_AT_SIDE = Misconception(
    "geometry.pythagoras-stops-at-side",
    "stops at the side, and does not go on to the area",
    "Read the question again. Is that what it asks for?",
)


SAVED_NOT_ASKED = Misconception(
    "geometry.pythagoras-saved-not-asked",
    "gives the straight way instead of what it saves",
    "Read the question again. Which two ways does it compare?",
)


BY_SIDES = Misconception(
    "geometry.pythagoras-compares-sides",
    "compares the sum of the sides, without squaring",
    "Work out each square. Which side of the sign is larger?",
)


SMALLEST_SIGN = Misconception(
    "geometry.pythagoras-sign-turned",
    "turns the sign the wrong way",
    "Read your line aloud. Is it true?",
)


ALWAYS_EQUAL = Misconception(
    "geometry.pythagoras-always-equal",
    "takes the squares to be equal in every triangle",
    "For which triangles is the rule true? Work out both sides to see.",
)
