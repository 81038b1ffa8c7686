"""What goes wrong with constructions: in telling them apart, and with what follows from them."""

from __future__ import annotations

from generators.geometry._misconceptions import NUMBERS_WRONG_WAY
from itembank.items.item import Misconception

LINE_OR_ANGLE = Misconception(
    "geometry.constructions-line-or-angle",
    "mixes up bisecting a line and bisecting an angle",
    "Where is the point of the compasses put first: at an end of a line, or at a corner?",
)
ON_OR_OFF = Misconception(
    "geometry.constructions-on-or-off",
    "sees the right angle, and not from where the perpendicular starts",
    "Is the point on the line, is it off the line, or are there two ends to start from?",
)
ARCS_ALONE = Misconception(
    "geometry.constructions-arcs-alone",
    "names a construction by crossing arcs alone, whatever their centres",
    "Where were the centres of these two arcs? How wide were the compasses opened?",
)
NOT_HALVED = Misconception(
    "geometry.constructions-not-halved",
    "gives the whole and not the part",
    "Where on the picture is the part that the question asks for?",
)
DOUBLED = Misconception(
    "geometry.constructions-doubled",
    "doubles where it has to halve",
    "Is the part larger than the whole?",
)
HALVED_AGAIN = Misconception(
    "geometry.constructions-halved-again",
    "halves what is a half already",
    "Is the whole smaller than its part?",
)
COPIED = Misconception(
    "geometry.constructions-copied",
    "gives the part that is given, and not the whole",
    "Show me the whole on the picture. Is it as large as what is given?",
)
MIXED_UP = Misconception(
    "geometry.constructions-sixty-or-ninety",
    "mixes up the angle of 60° and the right angle, which arcs make",
    "Which lengths are equal here? What triangle do they make?",
)
HALVED_ONCE = Misconception(
    "geometry.constructions-halved-once",
    "counts one bisector where there are two",
    "How many lines bisect an angle here? Which angle does each of them bisect?",
)
OTHER_PART = Misconception(
    "geometry.constructions-other-part",
    "gives the other part of the angle",
    "Put a finger on each arm of the angle that is asked for.",
)
EQUAL_ACUTE = Misconception(
    "geometry.constructions-equal-acute",
    "takes two angles for equal that are not",
    "Which two sides of the triangle are equal? Which angles are opposite them?",
)
RIGHT_LEFT_OUT = Misconception(
    "geometry.constructions-right-left-out",
    "leaves an angle out when adding up to 180°",
    "Which three angles add up to 180°?",
)
OTHER_END = Misconception(
    "geometry.constructions-other-end",
    "takes the distance to a point on the line, not at a right angle",
    "Measure with a strip of paper. At which angle does the shortest way meet the line?",
)
ON_THE_LINE = Misconception(
    "geometry.constructions-itself",
    "says what is on the line itself",
    "Fold the paper along the line that was drawn. What falls on what?",
)
CROSSING = Misconception(
    "geometry.constructions-crossing",
    "takes a point where arcs cross",
    "What is true of that point? Is it asked for?",
)
PAST_THE_LINE = Misconception(
    "geometry.constructions-past-the-line",
    "goes on past the line",
    "Where does the way come to the line?",
)
PART_FOR_WHOLE = Misconception(
    "geometry.constructions-part-for-whole",
    "sets a part equal to the whole",
    "Which of the two is larger on the picture? How many times?",
)
HALF_DOUBLED = Misconception(
    "geometry.constructions-half-doubled",
    "doubles the letter and not the number beside it",
    "What is twice all of the expression?",
)
SIZE_FOR_LETTER = Misconception(
    "geometry.constructions-size-for-letter",
    "gives the size where the letter is asked for",
    "What does the question ask for? Is the letter itself all of it?",
)
EVERY = (
    *(LINE_OR_ANGLE, ON_OR_OFF, ARCS_ALONE, NOT_HALVED, DOUBLED, HALVED_AGAIN, COPIED, MIXED_UP),
    *(HALVED_ONCE, OTHER_PART, EQUAL_ACUTE, RIGHT_LEFT_OUT, OTHER_END, ON_THE_LINE),
    *(CROSSING, PAST_THE_LINE),
    NUMBERS_WRONG_WAY,
    *(PART_FOR_WHOLE, HALF_DOUBLED, SIZE_FOR_LETTER),
)
