"""The wrong methods that the topics on solids look for.

The names describe common classroom errors with volumes and surfaces (common practice, no source).
"""

from __future__ import annotations

from itembank.items.item import Misconception

EDGES_ADDED = Misconception(
    "geometry.solid-edges-added",
    "adds the lengths instead of multiplying them",
    "How many cubes fit along the first edge? How many rows of them make a layer?",
)
ONE_FACE = Misconception(
    "geometry.solid-one-face",
    "multiplies only two of the lengths, and finds the area of a face",
    "You have found one layer, or one face. How far does the solid go on from there?",
)
SURFACE_FOR_VOLUME = Misconception(
    "geometry.surface-for-volume",
    "finds the surface area instead of the volume",
    "Would you wrap the solid, or fill it? Which of the two does the question ask about?",
)
VOLUME_FOR_SURFACE = Misconception(
    "geometry.volume-for-surface",
    "finds the volume instead of the surface area",
    "Would you wrap the solid, or fill it? Which of the two does the question ask about?",
)
DIVIDED_ONCE = Misconception(
    "geometry.volume-divided-once",
    "divides the volume by one of the lengths only",
    "You have found the area of a face. Which length goes with it?",
)
SUBTRACTED_BACK = Misconception(
    "geometry.volume-subtracts-back",
    "subtracts the lengths from the volume",
    "How is the volume made from the lengths? What undoes that?",
)
THIRD_FOR_ROOT = Misconception(
    "geometry.third-for-cube-root",
    "divides by 3, where a cube root is needed",
    "Multiply your edge by itself, and by itself again. Do you get the volume?",
)
ONE_LAYER = Misconception(
    "geometry.boxes-one-layer",
    "counts the boxes of one layer only",
    "You have filled the bottom. How many layers go on top of one another?",
)
BOXES_ADDED = Misconception(
    "geometry.boxes-added",
    "adds how many fit along each edge",
    "How many fit along the length? How many rows are there? How many layers?",
)
LITRE_AS_HUNDRED = Misconception(
    "geometry.litre-as-hundred",
    "takes a litre to be 100 cubic centimetres",
    "A cube with edges of 10 cm holds a litre. What is its volume in cubic centimetres?",
)
NOT_HALVED = Misconception(
    "geometry.prism-not-halved",
    "forgets to halve for the triangle",
    "Draw the rectangle round the triangle. How much of it is the triangle?",
)
HALVED_TOO = Misconception(
    "geometry.prism-halved-without-triangle",
    "halves, where the cross-section is already known",
    "Which part of the working has the half in it? Is that done already?",
)
SQUARE_OF_AREA = Misconception(
    "geometry.prism-cross-section-squared",
    "multiplies by the length twice",
    "How many layers one unit thick is the prism made of?",
)
MULTIPLIED_AGAIN = Misconception(
    "geometry.volume-multiplies-back",
    "multiplies, where dividing is needed",
    "Is the length part of the volume, or is the volume part of the length?",
)
NOT_DOUBLED = Misconception(
    "geometry.prism-not-doubled",
    "forgets that the triangle is half of base times height",
    "Put your height into the formula for the triangle. Do you get its area?",
)
TRAPEZIUM_NOT_HALVED = Misconception(
    "geometry.trapezium-not-halved",
    "multiplies the sum of the parallel sides by the height and does not halve",
    "Would two of these trapezia fit together? Which shape do they make?",
)
ONE_SIDE_ONLY = Misconception(
    "geometry.trapezium-one-side",
    "uses only one of the parallel sides",
    "Is the shape as wide at the top as at the bottom?",
)
OPPOSITE_FORGOTTEN = Misconception(
    "geometry.surface-three-faces",
    "counts only the faces that can be seen",
    "How many faces are there altogether? Which ones are hidden?",
)
FOUR_FACES = Misconception(
    "geometry.cube-four-faces",
    "counts only four faces of the cube",
    "Hold a dice. How many numbers are there on it?",
)
SLOPE_FORGOTTEN = Misconception(
    "geometry.prism-slope-forgotten",
    "leaves out the sloping face",
    "How many rectangles does the net have? Which edges do they belong to?",
)
LID_COUNTED = Misconception(
    "geometry.lid-counted",
    "counts the lid of an open box",
    "Which face is not there? Have you used it?",
)
STOPS_AT_FACE = Misconception(
    "geometry.stops-at-face",
    "stops at the area of one face",
    "You know the area of a square face. How long is its side?",
)
STOPS_AT_EDGE = Misconception(
    "geometry.stops-at-edge",
    "stops at the edge, where the volume is asked for",
    "Read the question again. Is that what it asks for?",
)
NO_PI = Misconception(
    "geometry.cylinder-without-pi",
    "leaves out π",
    "Is the end of the cylinder a square or a circle? How do you find its area?",
)
RADIUS_DOUBLED = Misconception(
    "geometry.cylinder-radius-doubled",
    "doubles the radius instead of squaring it",
    "What does the small 2 of a square say? What is the square of 5?",
)
CYLINDER_ACROSS = Misconception(
    "geometry.cylinder-diameter-as-radius",
    "uses the diameter where the radius belongs",
    "Where does a radius start, and where does it end? How long is it here?",
)
HEIGHT_SQUARED = Misconception(
    "geometry.cylinder-height-squared",
    "squares the height instead of the radius",
    "Which length belongs to the circle? That one is squared.",
)
CYLINDER_HALF = Misconception(
    "geometry.cylinder-radius-for-diameter",
    "halves a length that is a radius already",
    "Does the question give the radius, or the diameter?",
)
NO_ROOT_TAKEN = Misconception(
    "geometry.cylinder-square-for-radius",
    "stops at the square of the radius",
    "You know the radius times itself. What is the radius?",
)
THIRD_OR_HALF_FOR_ROOT = Misconception(
    "geometry.cylinder-halves-for-root",
    "halves, where a square root is needed",
    "Square your radius. Do you get back what the area of the circle is made of?",
)
DIVIDED_BY_RADIUS = Misconception(
    "geometry.cylinder-divides-by-radius",
    "divides by the radius, and not by its square",
    "How is the volume made from the radius? How often is the radius a factor?",
)
RADIUS_NOT_SQUARED = Misconception(
    "geometry.cylinder-radius-not-squared",
    "does not square the radii",
    "How is the volume made from the radius? How often is the radius a factor?",
)
SAME_DEPTH = Misconception(
    "geometry.cylinder-same-depth",
    "takes the water to stay as deep as it was",
    "Which stays the same when water is poured: its depth, or its volume?",
)
UPSIDE_DOWN = Misconception(
    "geometry.cylinder-upside-down",
    "divides the other way round",
    "Is the second one wider or narrower? Does the water rise or fall?",
)
ONE_CIRCLE = Misconception(
    "geometry.cylinder-one-end",
    "counts one end of the cylinder only",
    "How many circles does the net have? Which one have you left out?",
)
CURVED_ONLY = Misconception(
    "geometry.cylinder-without-ends",
    "leaves out both ends of the cylinder",
    "You have the label of the tin. What else is it made of?",
)
ENDS_COUNTED = Misconception(
    "geometry.cylinder-ends-counted",
    "adds the ends, where only the curved surface is asked for",
    "Read the question again. Which part of the surface does it ask for?",
)
HALF_WAY_ROUND = Misconception(
    "geometry.cylinder-half-way-round",
    "takes π times the radius for the circumference",
    "How is the circumference of a circle worked out? Which length does it start from?",
)
ONE_BASE = Misconception(
    "geometry.surface-one-base",
    "takes off one square only",
    "Which faces are squares? How many of them are there?",
)
TWO_SIDES = Misconception(
    "geometry.surface-two-sides",
    "shares what is left among two sides instead of four",
    "How many rectangles stand round the square base?",
)
HALF_OF_FACE = Misconception(
    "geometry.surface-half-of-face",
    "halves the area of a face to find its side",
    "Multiply your edge by itself. Do you get the area of a face?",
)
HUNDRED_FOR_SQUARE = Misconception(
    "geometry.hundred-for-square-metre",
    "takes a square metre to be 100 square centimetres",
    "How many rows of 1 cm squares fit on a square metre? How many are there in a row?",
)
