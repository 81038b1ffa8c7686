"""The mistakes that are made with density and pressure."""

from __future__ import annotations

from itembank.items.item import Misconception

MULTIPLIES = Misconception(
    "ratio.density-multiplies",
    "multiplies where it should divide",
    "What is the mass of 1 cubic centimetre? How do you find it?",
)


DIVIDES = Misconception(
    "ratio.density-divides",
    "divides where it should multiply, or the other way round",
    "What is the mass of 1 cubic centimetre? And of 2?",
)


SUBTRACTS = Misconception(
    "ratio.density-subtracts",
    "subtracts the numbers",
    "What does the unit tell you to do with mass and volume?",
)


ADDS_EDGES = Misconception(
    "ratio.density-adds-edges",
    "adds the three edges for the volume",
    "How many cubes of 1 cm fit in one layer? How many layers are there?",
)


LIKE_WATER = Misconception(
    "ratio.density-volume-as-mass",
    "gives the volume as the mass",
    "Is the mass of 1 cubic centimetre 1 gram here?",
)


KILOGRAMS = Misconception(
    "ratio.density-kilograms-kept",
    "divides kilograms where grams are wanted",
    "In which unit of mass is the density? In which unit is the mass?",
)


HUNDRED = Misconception(
    "ratio.density-hundred-grams",
    "takes 100 grams for a kilogram",
    "How many grams are there in a kilogram?",
)


MEAN = Misconception(
    "ratio.density-mean",
    "takes the mean of the two densities",
    "Is there as much of the one as of the other?",
)


ONE_MASS = Misconception(
    "ratio.density-adds",
    "adds the two densities",
    "Can a mixture be denser than each of its parts?",
)


HEAVIEST = Misconception(
    "ratio.density-heaviest",
    "takes the heaviest to be the densest",
    "Is a large tree denser than a small coin? What else matters?",
)


SMALLEST = Misconception(
    "ratio.density-smallest",
    "takes the smallest to be the densest",
    "Is a small cork denser than a large stone? What else matters?",
)


PRESSURE_TIMES = Misconception(
    "ratio.pressure-multiplies",
    "multiplies the force and the area",
    "How much force is there on 1 square centimetre? How do you find it?",
)


PRESSURE_UPSIDE = Misconception(
    "ratio.pressure-divides-the-other-way",
    "divides where it should multiply, or the other way round",
    "Is there more force on a larger area, at the same pressure?",
)


EDGES_ADDED = Misconception(
    "ratio.pressure-adds-edges",
    "adds the two edges for the area",
    "How do you find the area of a rectangle?",
)
