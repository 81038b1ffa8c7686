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
