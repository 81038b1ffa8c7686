"""The mistakes that are made with symmetry."""

from __future__ import annotations

from itembank.items.item import Misconception

DIAGONALS = Misconception(
    "geometry.symmetry-diagonals",
    "counts both diagonals as lines of symmetry",
    "Fold the paper along that diagonal. Do the two halves match?",
)


NO_DIAGONALS = Misconception(
    "geometry.symmetry-no-diagonals",
    "looks for upright and level lines of symmetry alone",
    "Turn the paper so that a corner points at you. Is there a line of symmetry now?",
)


UPRIGHT_ALONE = Misconception(
    "geometry.symmetry-upright-alone",
    "looks for an upright line of symmetry alone",
    "Turn the paper on its side. Is there another line of symmetry?",
)


TWICE = Misconception(
    "geometry.symmetry-lines-twice",
    "counts each line of symmetry once from each of its ends",
    "Draw each line right through the shape. How many have you drawn?",
)


CORNERS_ALONE = Misconception(
    "geometry.symmetry-corners-alone",
    "counts the lines through corners alone",
    "Is there a line of symmetry through the middle of a side?",
)


ORDER_FOR_LINES = Misconception(
    "geometry.symmetry-order-for-lines",
    "gives the order of rotational symmetry for the number of lines",
    "Do you turn the shape or fold it to find that out?",
)


LINES_FOR_ORDER = Misconception(
    "geometry.symmetry-lines-for-order",
    "gives the number of lines of symmetry for the order of rotational symmetry",
    "Do you turn the shape or fold it to find that out?",
)


FULL_TURN_LEFT_OUT = Misconception(
    "geometry.symmetry-full-turn-left-out",
    "does not count the full turn",
    "After a full turn, does it look the same? Does your count go as far as that?",
)


WHOLE_GRID = Misconception(
    "geometry.symmetry-whole-grid",
    "counts the lines of symmetry of the grid, whatever is shaded",
    "Fold along each of your lines. Does each shaded square fall on a shaded one?",
)


ALL_QUARTERS = Misconception(
    "geometry.symmetry-all-quarters",
    "counts all quarter turns, whether it looks the same or not",
    "Turn it by a quarter. Is every shaded part where a shaded part was?",
)


HALF_TURNS_ALONE = Misconception(
    "geometry.symmetry-half-turns-alone",
    "tries half turns alone",
    "Does it look the same even before it is upside down?",
)


SIDES = Misconception(
    "geometry.symmetry-sides",
    "gives the number of sides",
    "Trace the shape, with its shading. How often does it fall on itself?",
)


TURNED = Misconception(
    "geometry.symmetry-turned",
    "turns a square by half a turn instead of reflecting it",
    "Fold the paper along the line. On which square does the shaded one fall?",
)


OTHER_LINE = Misconception(
    "geometry.symmetry-other-line",
    "reflects a square in another line",
    "Where does the line of symmetry have to go? Which squares have no partner yet?",
)


REFLECTED_ACROSS = Misconception(
    "geometry.symmetry-reflected-across",
    "reflects a square in the upright line instead of turning it by half a turn",
    "Turn the paper upside down. Where is the shaded square now?",
)


REFLECTED_OVER = Misconception(
    "geometry.symmetry-reflected-over",
    "reflects a square in the level line instead of turning it by half a turn",
    "Turn the paper upside down. Is the shaded square still as far from the left?",
)


CHANGED_LETTER = Misconception(
    "geometry.symmetry-changed-letter",
    "takes a line x = a for level, and a line y = b for upright",
    "Name some points where x is that number. What line do they make?",
)


EDGE = Misconception(
    "geometry.symmetry-edge",
    "takes a line at the edge of the shape",
    "Fold along that line. Do the two halves match?",
)


ALWAYS_Y_X = Misconception(
    "geometry.symmetry-always-y-x",
    "takes every line that slants like y = x for y = x",
    "Does the line go through the origin? Name two points on it.",
)


GRADIENT_SIGN = Misconception(
    "geometry.symmetry-gradient-sign",
    "takes a line that falls for one that rises",
    "When x grows by 1 on that line, does y grow or get less?",
)
