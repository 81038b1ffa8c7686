"""Mistakes with units of area and of volume (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

LINEAR = Misconception(
    "measures.area-linear",
    "uses the conversion of lengths for an area or a volume",
    "How many small squares or cubes fit along each side of a large one?",
)
WRONG_WAY = Misconception(
    "measures.units-wrong-way",
    "divides where it should multiply, or the other way round",
    "Which of the two units is larger? So are there more of them or fewer?",
)
SQUARED = Misconception(
    "measures.volume-as-area",
    "uses the conversion of areas for a volume",
    "How many layers of small cubes are there in a large cube?",
)
TEN_TIMES = Misconception(
    "measures.units-ten-times",
    "gets the number of noughts wrong",
    "How many of the smaller unit make one of the larger? Count its noughts.",
)
NO_LITRES = Misconception(
    "measures.cubic-centimetres-as-litres",
    "gives the cubic centimetres as litres",
    "How many cubic centimetres make one litre?",
)
ADDS_EDGES = Misconception(
    "measures.adds-edges",
    "adds the three edges for the volume",
    "How many cubes of 1 cm fit in one layer? How many layers are there?",
)
NOT_CHANGED = Misconception(
    "measures.units-not-changed",
    "works with the numbers as they stand, whatever the units",
    "Are both in the same unit?",
)
