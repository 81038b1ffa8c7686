"""The wrong methods that the topics on angles look for.

The names describe common classroom errors with angle facts (common practice, no source). Those
that one topic alone has stand in its own file.
"""

from __future__ import annotations

from itembank.items.item import Misconception

LINE_FULL_TURN = Misconception(
    "geometry.line-as-full-turn",
    "makes the angles on a straight line add up to 360°",
    "Stand facing along the line, and turn to face the other way. Is that a whole turn?",
)
LINE_RIGHT_ANGLE = Misconception(
    "geometry.line-as-right-angle",
    "makes the angles on a straight line add up to 90°",
    "How many right angles fit side by side on a straight line?",
)
POINT_HALF_TURN = Misconception(
    "geometry.point-as-half-turn",
    "makes the angles round a point add up to 180°",
    "Turn all the way round until you face the same way again. How many right angles is that?",
)
COPIED = Misconception(
    "geometry.angle-copied",
    "gives an angle that is shown, as if the two were equal",
    "Is there a rule that makes these two angles equal?",
)
LEFT_OUT = Misconception(
    "geometry.angle-left-out",
    "leaves out one of the angles",
    "Put your finger on each angle in turn. Have you used all of them?",
)
SQUARE_UNSEEN = Misconception(
    "geometry.right-angle-unseen",
    "leaves out the angle that is marked with a square",
    "What does the small square in the corner tell you?",
)
NOT_SHARED = Misconception(
    "geometry.angle-not-shared",
    "stops before sharing what is left among the equal parts",
    "How many equal parts is that altogether? Which of them is asked for?",
)
SHARED_EQUALLY = Misconception(
    "geometry.angles-shared-equally",
    "shares what is left equally among angles that are not equal",
    "Are these angles equal? How many times as large is the larger one?",
)
MULTIPLE_ALONE = Misconception(
    "geometry.multiple-alone",
    "divides by the number of times and forgets the angle that is there once",
    "How many lots of the letter are there altogether?",
)
NUMBERS_LEFT_OUT = Misconception(
    "geometry.angle-numbers-left-out",
    "leaves the plain numbers out of the equation",
    "Which numbers stand in the angles beside the letters? Where are they in your equation?",
)
ANGLE_NOT_LETTER = Misconception(
    "geometry.angle-for-letter",
    "gives the size of an angle where the letter is asked for",
    "What does the question ask for? Is the letter itself the whole angle?",
)
NUMBERS_WRONG_WAY = Misconception(
    "geometry.angle-numbers-added",
    "moves the plain number to the other side without changing its sign",
    "What do you do to both sides so that the letters stand alone?",
)
SET_EQUAL = Misconception(
    "geometry.angles-set-equal",
    "makes two angles equal that are not",
    "Do the two angles look equal? What is true of them together?",
)
OPPOSITE_AS_LINE = Misconception(
    "geometry.opposite-as-line",
    "makes vertically opposite angles add up to 180°",
    "Which two angles stand side by side on a straight line? Is that these two?",
)
REST_OF_TURN = Misconception(
    "geometry.rest-of-turn",
    "takes the angle that is given away from 360°",
    "What do all four angles make together? Is there only one angle left?",
)
OTHER_ANGLE = Misconception(
    "geometry.other-angle-given",
    "gives the angle next to the one that is asked for",
    "Which angle is asked for? Put your finger on it.",
)
NOT_DIVIDED = Misconception(
    "geometry.angle-not-divided",
    "gives the angle and does not divide by the number of the letter",
    "That is the whole angle. How many lots of the letter make it?",
)
SUBTRACTS_MULTIPLIER = Misconception(
    "geometry.angle-multiplier-subtracted",
    "subtracts the number of the letter instead of dividing by it",
    "What does the number in front of the letter mean? How do you undo it?",
)
ADDS_NUMBER = Misconception(
    "geometry.angle-number-added",
    "adds the number in the bracket instead of subtracting it, or the other way round",
    "What is done to the letter to make the angle? How do you undo it?",
)
TRIANGLE_FULL_TURN = Misconception(
    "geometry.triangle-as-full-turn",
    "makes the angles of a triangle add up to 360°",
    "Tear the corners off a triangle and put them together. What do they make?",
)
TRIANGLE_ONE_ANGLE = Misconception(
    "geometry.triangle-one-angle-taken",
    "subtracts only one of the angles that are given from 180°",
    "How many angles has a triangle? How many of them have you used?",
)
WRONG_PAIR = Misconception(
    "geometry.isosceles-wrong-pair",
    "takes the wrong two angles of an isosceles triangle to be equal",
    "Which two sides are marked as equal? Which angles lie opposite them?",
)
EXTRA_SHARED = Misconception(
    "geometry.isosceles-base-shared",
    "shares what is left between two angles though one of the equal angles is given",
    "Which angle is equal to the one that is given? So how many angles are left?",
)
ONE_BASE_ANGLE = Misconception(
    "geometry.isosceles-one-base-angle",
    "subtracts only one of the two equal angles",
    "How many angles of that size does the triangle have?",
)
OPPOSITE_EQUAL = Misconception(
    "geometry.quadrilateral-opposite-equal",
    "makes opposite angles equal in any quadrilateral",
    "In which quadrilaterals are opposite angles equal? Is this one of them?",
)
NEIGHBOURS_HALF_TURN = Misconception(
    "geometry.quadrilateral-neighbours-180",
    "makes neighbouring angles add up to 180° in any quadrilateral",
    "When do two angles of a quadrilateral add up to 180°? Are any sides parallel here?",
)
QUADRILATERAL_HALF_TURN = Misconception(
    "geometry.quadrilateral-as-triangle",
    "makes the angles of a quadrilateral add up to 180°",
    "Draw a diagonal. How many triangles do you see?",
)
FACING_EQUAL = Misconception(
    "geometry.co-interior-equal",
    "makes two angles equal that lie between parallel lines on the same side",
    "Is the one angle acute and the other obtuse? Can they be equal?",
)
EQUAL_AS_LINE = Misconception(
    "geometry.parallel-equal-as-180",
    "makes angles add up to 180° that are equal",
    "Do the two angles look equal? Trace the letter F or Z that you see.",
)
PARALLEL_ALL_EQUAL = Misconception(
    "geometry.parallel-all-equal",
    "makes all angles on parallel lines equal",
    "Is one of the two angles acute and the other obtuse? Can they be equal?",
)
SUM_WITHOUT_TWO = Misconception(
    "geometry.polygon-sides-not-triangles",
    "multiplies 180° by the number of sides",
    "Draw the diagonals from one corner. How many triangles do you see?",
)
ONE_TOO_FEW = Misconception(
    "geometry.polygon-one-triangle-less",
    "takes one triangle fewer than there are sides, not two",
    "Draw the diagonals from one corner of a quadrilateral. How many triangles are there?",
)
EXTERIOR_FOR_INTERIOR = Misconception(
    "geometry.exterior-for-interior",
    "mixes up the interior and the exterior angle",
    "Which angle is inside the polygon, and which one is between a side and the next side's line?",
)
INTERIOR_OVER_360 = Misconception(
    "geometry.interior-into-360",
    "divides 360° by the interior angle",
    "Which angles add up to 360°: the interior or the exterior ones?",
)
HALF_TURN_SHARED = Misconception(
    "geometry.exterior-from-180",
    "shares 180° among the exterior angles",
    "Walk round the polygon. How far have you turned when you are back where you began?",
)
TWO_NOT_ADDED = Misconception(
    "geometry.polygon-two-not-added",
    "divides by 180° and does not add 2",
    "That is the number of triangles. How many sides has a polygon of so many triangles?",
)
FORGETS_SIDES = Misconception(
    "geometry.polygon-not-divided",
    "gives the sum of all the angles instead of one of them",
    "How many equal angles share that sum?",
)
OTHER_POLYGON = Misconception(
    "geometry.polygon-sum-of-quadrilateral",
    "takes 360° for the sum of the angles of any polygon",
    "How many triangles does this polygon split into? What do their angles make?",
)
SIDES_ONE_OFF = Misconception(
    "geometry.polygon-times-not-plus-one",
    "forgets to count the exterior angle itself",
    "How many exterior angles would fit into 180° together?",
)
SUBTRACTS_ANGLE = Misconception(
    "geometry.angle-subtracted-not-divided",
    "subtracts the angle instead of dividing by it",
    "How many angles of that size make the whole? What do you do to find out?",
)
