"""The mistakes that are made in naming and completing shapes."""

from __future__ import annotations

from itembank.items.item import Misconception

STOPS_AT_PARALLEL = Misconception(
    "geometry.shapes-stops-at-parallel",
    "sees that both pairs of sides are parallel, and looks no further",
    "What else is true of its sides, or of its angles?",
)


ONE_PAIR = Misconception(
    "geometry.shapes-one-pair",
    "finds one pair of parallel sides, and looks no further",
    "Are the other two sides parallel too, or equal?",
)


RIGHT_ANGLES = Misconception(
    "geometry.shapes-right-angles",
    "sees four right angles, and looks no further",
    "How long are its sides?",
)


EQUAL_SIDES = Misconception(
    "geometry.shapes-equal-sides",
    "sees four equal sides, and looks no further",
    "What are its angles?",
)


PAIRS_FOR_ALL = Misconception(
    "geometry.shapes-pairs-for-all",
    "takes sides that are equal in pairs for four equal sides",
    "Count how far each side goes along and up. Are all four alike?",
)


LOOKS_RIGHT = Misconception(
    "geometry.shapes-looks-right",
    "takes its angles for right angles without a check",
    "Put the corner of a sheet of paper there. Does it fit?",
)


NEIGHBOURS = Misconception(
    "geometry.shapes-neighbours",
    "sees that sides next to each other are equal, and looks no further",
    "Are the other two sides as long as these?",
)


PAIRS_NOT_OPPOSITE = Misconception(
    "geometry.shapes-pairs-not-opposite",
    "takes two pairs of equal sides for a parallelogram, wherever they are",
    "Are the equal sides opposite each other, or next to each other?",
)


ONE_FOR_TWO = Misconception(
    "geometry.shapes-one-for-two",
    "takes one pair of parallel sides for two",
    "Make the other two sides longer. Would they meet?",
)


SOME_RIGHT = Misconception(
    "geometry.shapes-some-right",
    "takes a shape with some right angles for a rectangle",
    "How many of its angles are right angles?",
)


ACUTE_IF_ANY = Misconception(
    "geometry.shapes-acute-if-any",
    "calls a triangle acute-angled because it has acute angles",
    "Which triangle has no acute angle? So which of its angles settles the name?",
)


RIGHT_FOR_OBTUSE = Misconception(
    "geometry.shapes-right-for-obtuse",
    "counts a right angle as obtuse",
    "Is an obtuse angle larger than a right angle, or may it be one?",
)


LARGEST_IS_RIGHT = Misconception(
    "geometry.shapes-largest-is-right",
    "takes the largest angle of a triangle for a right angle",
    "Put the corner of a sheet of paper there. Does it fit?",
)


PARALLEL_ONLY = Misconception(
    "geometry.shapes-parallel-only",
    "makes opposite sides parallel, and looks at nothing else",
    "Which sides have to be equal, and which angles right?",
)


SWAPS_STEPS = Misconception(
    "geometry.shapes-swaps-steps",
    "goes along as far as it should go up, and up as far as along",
    "From B to A, how far is it along? Go just as far along from C.",
)


STRAIGHT_ON = Misconception(
    "geometry.shapes-straight-on",
    "goes straight on from B through A, as far again",
    "Are the three points on one line now? Can they be corners of one shape?",
)
