"""Likely mistakes with congruent triangles."""

from __future__ import annotations

from generators.geometry import _misconceptions as angles
from itembank.items.item import Misconception

LETTERS_IN_ORDER = Misconception(
    "geometry.letters-in-order",
    "pairs the corners by the order of their letters, and not by what is equal",
    "Which corner of the other triangle has the same sides or angles around it?",
)
HAS_A_PARTNER = Misconception(
    "geometry.has-a-partner",
    "gives a side or an angle that has its partner already",
    "Which parts of the two triangles are marked equal? Which one has no partner yet?",
)
MIXED_LETTERS = Misconception(
    "geometry.mixed-letters",
    "mixes up the letters for sides and for angles",
    "How many sides are told of each triangle? How many angles?",
)
NEEDS_AN_ANGLE = Misconception(
    "geometry.needs-an-angle",
    "takes three equal sides not to be enough",
    "Can you bend a triangle of three rods? What if there were four?",
)
ANGLES_ARE_ENOUGH = Misconception(
    "geometry.angles-are-enough",
    "takes equal angles to make triangles congruent",
    "Draw a triangle, and one with sides twice as long. What are their angles?",
)
ANY_ANGLE = Misconception(
    "geometry.any-angle",
    "takes two sides and any angle for SAS",
    "Is the angle between the two sides? Could the far end swing to another place?",
)
ANY_SIDE = Misconception(
    "geometry.any-side",
    "takes two angles and any side for ASA",
    "Which angle is across from that side, in the one triangle and in the other?",
)
RIGHT_IS_RHS = Misconception(
    "geometry.right-is-rhs",
    "takes every pair of right-angled triangles for RHS",
    "Is the hypotenuse told? Which two sides are?",
)
NO_THIRD_ANGLE = Misconception(
    "geometry.no-third-angle",
    "does not find the third angle before comparing",
    "Two angles of a triangle are told. What is the third?",
)
STOPS_AT_PARTNER = Misconception(
    "geometry.stops-at-partner",
    "gives the angle that the partner tells and stops there",
    "Which angle is asked for? Which two do you know now?",
)
ADDS_AND_STOPS = Misconception(
    "geometry.congruent-adds-and-stops",
    "adds the two angles that are known and stops there",
    "What do the three angles of a triangle come to? What is left?",
)
ENDS_SWAPPED = Misconception(
    "geometry.ends-swapped",
    "pairs the wrong ends, and works out the third angle",
    "Which of the two told sides ends at that corner? Which one ends at the corner asked for?",
)
ANGLES_ALIKE = Misconception(
    "geometry.angles-alike",
    "takes all three angles to be 60°",
    "Are the sides of the triangle all as long? When are its angles?",
)
LEFT_TO_180 = Misconception(
    "geometry.left-to-180",
    "takes the angle from 180° where its partner is equal",
    "Which angle of the other triangle is it the partner of? What do you know of the two?",
)
ONLY_SSS = Misconception(
    "geometry.only-sss",
    "takes only three equal sides to be enough",
    "Could you draw two unlike triangles with these sides and angles? Try.",
)
COUNTS_SIDES = Misconception(
    "geometry.counts-sides",
    "does not see the third side",
    "How many sides are told of each triangle? Is an angle told?",
)
THREE_IS_SSS = Misconception(
    "geometry.three-is-sss",
    "takes any three equal parts for SSS",
    "What do the letters of SSS stand for? Are three sides told?",
)
PARTNER_ALONE = Misconception(
    "geometry.partner-alone",
    "finds the side by its partner, and does not add the other",
    "Which two sides does the question add? Which of them have you found?",
)
BOTH_TOGETHER = Misconception(
    "geometry.congruent-both-together",
    "gives the perimeter of both triangles together",
    "How many triangles does the question ask about?",
)
SIDE_LEFT_OUT = Misconception(
    "geometry.congruent-side-left-out",
    "leaves out a side of the perimeter",
    "How many sides does a triangle have? How many did you add?",
)
SIDES_ADDED_ONLY = Misconception(
    "geometry.congruent-sides-added-only",
    "adds the two sides that are told and stops there",
    "What do all three sides come to? What is left for the third?",
)
ONE_SIDE_TAKEN = Misconception(
    "geometry.congruent-one-side-taken",
    "takes one side alone from the perimeter",
    "How many sides are told? How many of them have you taken away?",
)

MISTAKES = (
    *(LETTERS_IN_ORDER, HAS_A_PARTNER, MIXED_LETTERS, NEEDS_AN_ANGLE, ANGLES_ARE_ENOUGH),
    *(ANY_ANGLE, ANY_SIDE, RIGHT_IS_RHS, NO_THIRD_ANGLE, STOPS_AT_PARTNER, ADDS_AND_STOPS),
    *(ENDS_SWAPPED, ANGLES_ALIKE, LEFT_TO_180, ONLY_SSS, COUNTS_SIDES, THREE_IS_SSS),
    *(PARTNER_ALONE, BOTH_TOGETHER, SIDE_LEFT_OUT, SIDES_ADDED_ONLY, ONE_SIDE_TAKEN),
    *(angles.NUMBERS_LEFT_OUT, angles.ANGLE_NOT_LETTER, angles.NUMBERS_WRONG_WAY),
)
