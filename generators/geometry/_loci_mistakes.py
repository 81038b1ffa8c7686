"""Mistakes with where points lie (common practice, no source)."""

from __future__ import annotations

from itembank.items.item import Misconception

CIRCLE = Misconception(
    "geometry.loci-circle",
    "takes a point as far from A as B is",
    "How far is that point from A? And how far from B?",
)
ON_LINE = Misconception(
    "geometry.loci-on-line",
    "takes a point on the line through A and B",
    "Fold the paper so that A falls on B. Is that point on the fold?",
)
LONGER_WAY = Misconception(
    "geometry.loci-longer-way",
    "counts only the longer of the ways along and up",
    "Is it as far along a slanting line as along the grid? Measure with a strip of paper.",
)
MORE = Misconception(
    "geometry.loci-more",
    "takes a point that is further away",
    "Draw the circle round A. Are the points that you want inside it, or outside?",
)
FIRST_ONLY = Misconception(
    "geometry.loci-first-only",
    "looks at the first condition alone",
    "How far is that point from A? Is that less than the question says?",
)
SECOND_ONLY = Misconception(
    "geometry.loci-second-only",
    "looks at the second condition alone",
    "Is that point on the side of the fold where A is?",
)
HALF_GAP = Misconception(
    "geometry.loci-half-gap",
    "gives half the way between the points, and not where it ends",
    "From where do you go that far? Where are you then?",
)
ADDS_WAYS = Misconception(
    "geometry.loci-adds-ways",
    "adds the ways along and up",
    "Is the straight way longer or shorter than going along and then up?",
)
