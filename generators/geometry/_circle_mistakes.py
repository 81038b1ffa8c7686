"""The wrong methods that the topics on circles look for.

The names describe common classroom errors with circles (common practice, no source).
"""

from __future__ import annotations

from itembank.items.item import Misconception

RADIUS_AS_DIAMETER = Misconception(
    "geometry.circle-radius-as-diameter",
    "uses the radius where the diameter belongs",
    "Which of the two goes right across the circle? Which one does the question give?",
)
DIAMETER_AS_RADIUS = Misconception(
    "geometry.circle-diameter-as-radius",
    "uses the diameter where the radius belongs",
    "Where does a radius start, and where does it end? How long is it here?",
)
AREA_FOR_LENGTH = Misconception(
    "geometry.circle-area-for-circumference",
    "finds the area instead of the length round the circle",
    "Is the question about the edge, or about what is inside it? Which unit fits?",
)
DOUBLED = Misconception(
    "geometry.circle-doubled-for-squared",
    "doubles the radius instead of squaring it",
    "What does the small 2 of a square say? What is the square of 5?",
)
PI_SQUARED = Misconception(
    "geometry.circle-pi-squared-too",
    "squares π as well as the radius",
    "In the formula for the area, which letter does the small 2 belong to?",
)
HALVES_FOR_ROOT = Misconception(
    "geometry.circle-halves-for-root",
    "halves, where a square root is needed",
    "Square your radius. Do you get back what the area is made of?",
)
NO_ROOT = Misconception(
    "geometry.circle-square-for-radius",
    "stops at the square of the radius",
    "You know the radius times itself. What is the radius?",
)
RING_BY_WIDTH = Misconception(
    "geometry.ring-from-width",
    "takes the width of the ring for a radius",
    "Draw the two circles. What is the radius of each of them?",
)
RING_LARGE_ONLY = Misconception(
    "geometry.ring-large-circle-only",
    "gives the area of the larger circle, with its middle",
    "Shade the part that the question asks for. What has to be taken away?",
)
CUT_ONLY = Misconception(
    "geometry.cut-out-only",
    "gives the area of what is cut out",
    "Shade the part that the question asks for. What has to be taken away?",
)
MULTIPLIED_BACK = Misconception(
    "geometry.circle-multiplies-back",
    "multiplies by π, where dividing undoes it",
    "Is the distance across longer or shorter than the distance round?",
)
STOPS_AT_DIAMETER = Misconception(
    "geometry.circle-stops-at-diameter",
    "gives the diameter where the radius is asked for",
    "Read the question again. Does it ask for all the way across, or half of it?",
)
HALVED_TWICE = Misconception(
    "geometry.circle-halved-twice",
    "halves twice to find the radius",
    "Dividing by π gives a distance. Is that the diameter or the radius?",
)
HALF_FOR_WHOLE = Misconception(
    "geometry.circle-radius-for-diameter",
    "gives the radius where the diameter is asked for",
    "Read the question again. Does it ask for all the way across, or half of it?",
)
DOUBLED_BACK = Misconception(
    "geometry.circle-doubles-back",
    "doubles, where halving or nothing is needed",
    "Is the distance across longer or shorter than the distance round?",
)
STOPS_AT_RADIUS = Misconception(
    "geometry.circle-stops-at-radius",
    "stops at the radius, where the diameter is asked for",
    "Read the question again. Does it ask for all the way across, or half of it?",
)
WHOLE_CIRCLE = Misconception(
    "geometry.circle-whole-for-part",
    "works with the whole circle",
    "How much of a whole circle is drawn?",
)
EDGE_LEFT_OUT = Misconception(
    "geometry.circle-straight-edge-left-out",
    "leaves out the straight edge",
    "Put a finger on the shape and go all the way round. Which edges did you pass?",
)
ONE_TURN = Misconception(
    "geometry.circle-turns-left-out",
    "finds how far the wheel goes in one turn",
    "How far does it go in 2 turns? How many turns are there?",
)
