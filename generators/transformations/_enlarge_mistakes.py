"""Mistakes with enlargements (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

ADDS_FACTOR = Misconception(
    "transformations.enlarge-adds",
    "adds the scale factor to the coordinates",
    "Is a shape twice as large if each corner moves 2 squares?",
)
ONE_COORDINATE = Misconception(
    "transformations.enlarge-one-coordinate",
    "multiplies the first coordinate alone",
    "Does the shape grow in one direction, or in both?",
)
FROM_ORIGIN = Misconception(
    "transformations.enlarge-from-origin",
    "enlarges from the origin instead of the centre that is given",
    "From which point do you count the squares to each corner?",
)
FROM_POINT = Misconception(
    "transformations.enlarge-from-the-point",
    "goes from the corner itself, and not from the centre",
    "Where does your count start: at the centre or at the corner?",
)
UPSIDE_DOWN = Misconception(
    "transformations.enlarge-upside-down",
    "gives the scale factor from the image back",
    "Which shape do you start from? Does it grow or shrink?",
)
AREA_FACTOR = Misconception(
    "transformations.enlarge-area-factor",
    "compares the areas, and not the lengths",
    "How long is one side of each shape?",
)
MIDDLE = Misconception(
    "transformations.enlarge-middle",
    "takes the point halfway between a corner and its image",
    "Join other corners to their images. Do all the lines meet there?",
)
