"""The wrong methods that the topics on similar shapes look for.

Adding the difference is what research on proportional reasoning names first (Hart and others,
*Children's Understanding of Mathematics: 11–16*, 1981; from memory); the others are common
classroom errors (common practice, no source).
"""

from __future__ import annotations

from itembank.items.item import Misconception

ADDITIVE = Misconception(
    "geometry.similar-additive",
    "adds the same length to each side instead of multiplying",
    "If every side of a shape grows by the same length, does its shape stay as it was?",
)
INVERSE = Misconception(
    "geometry.similar-inverse",
    "divides where multiplying is needed, or the other way round",
    "Is the shape you look for the larger one or the smaller one?",
)
FACTOR_ONLY = Misconception(
    "geometry.similar-factor-only",
    "gives the scale factor as the length",
    "You know how many times as long it is. As long as which side?",
)
PART_FOR_WHOLE = Misconception(
    "geometry.similar-part-for-whole",
    "compares a side of the small triangle with the rest of the side, not with all of it",
    "Draw the two triangles apart. How long is the whole side of the large one?",
)
WHOLE_FOR_REST = Misconception(
    "geometry.similar-whole-for-rest",
    "gives the whole side, where a part of it is asked for",
    "Read the question again. Which piece of the side does it ask for?",
)
REST_ONLY = Misconception(
    "geometry.similar-adds-the-rest",
    "adds the rest of one side to the other side",
    "How many times as long is the side of the large triangle?",
)
PERIMETER_AS_AREA = Misconception(
    "geometry.similar-squared-for-length",
    "squares the scale factor for a length",
    "Is a perimeter a length or an area?",
)
NOT_SQUARED = Misconception(
    "geometry.area-factor-not-squared",
    "multiplies the area by the scale factor of the lengths",
    "Draw a 1 cm square, and one with sides twice as long. How many of the first fit in it?",
)
FACTOR_DOUBLED = Misconception(
    "geometry.area-factor-doubled",
    "doubles the scale factor instead of squaring it",
    "Both the length and the width grow. What is the area multiplied by?",
)
NOT_ROOTED = Misconception(
    "geometry.area-factor-not-rooted",
    "gives the scale factor of the areas for that of the lengths",
    "If lengths were multiplied by that, what would areas be multiplied by?",
)
HALVED_FOR_ROOT = Misconception(
    "geometry.area-factor-halved",
    "halves the scale factor of the areas",
    "Multiply your factor by itself. Do you get the factor of the areas?",
)
HUNDRED_ONLY = Misconception(
    "geometry.square-metre-as-hundred",
    "takes a square metre to be 100 square centimetres",
    "How many rows of 1 cm squares fit on a square metre? How many are there in a row?",
)
AREA_DIFFERENCE = Misconception(
    "geometry.area-factor-additive",
    "adds the difference instead of multiplying",
    "Is the second one so much larger, or so many times as large?",
)
RATIO_OF_AREAS = Misconception(
    "geometry.area-factor-for-lengths",
    "multiplies the length by the scale factor of the areas",
    "If lengths were multiplied by that, what would areas be multiplied by?",
)
