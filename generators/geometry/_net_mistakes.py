"""Mistakes with nets (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

NEXT = Misconception(
    "geometry.nets-next",
    "gives a face that is joined to it in the net",
    "Can two faces with an edge in common be opposite each other?",
)
CORNER = Misconception(
    "geometry.nets-corner",
    "gives a face that touches it at a corner in the net",
    "Fold the net there. Do those two faces come to have an edge in common?",
)
FURTHEST = Misconception(
    "geometry.nets-furthest",
    "gives the face that is furthest away in the net",
    "Which faces come up beside it when you fold? Which one is left for the top?",
)
LONG_ROW = Misconception(
    "geometry.nets-long-row",
    "does not see that in a row of five the first and the last face fall on each other",
    "How many faces go round a cube before you are back at the first?",
)
BLOCK = Misconception(
    "geometry.nets-block",
    "does not see that four faces round one place cannot fold",
    "How many faces of a cube meet at a corner?",
)
SAME_SIDE = Misconception(
    "geometry.nets-same-side",
    "does not see that two faces fall on each other, and one side stays open",
    "Fold it in your head. Which face becomes the lid, and which the bottom?",
)
HALF = Misconception(
    "geometry.nets-half",
    "counts each kind of face once",
    "How many faces has a cuboid? How many have you counted?",
)
VOLUME_FOR_SURFACE = Misconception(
    "geometry.nets-volume-for-surface",
    "finds the volume instead of the surface area",
    "Would you wrap the solid, or fill it? Which of the two does the question ask about?",
)
SURFACE_FOR_VOLUME = Misconception(
    "geometry.nets-surface-for-volume",
    "finds the area of the net instead of the volume",
    "Would you wrap the solid, or fill it? Which of the two does the question ask about?",
)
EDGES_ADDED = Misconception(
    "geometry.nets-edges-added",
    "adds the three edges instead of multiplying them",
    "How many cubes fit along the first edge? How many rows of them make a layer?",
)
