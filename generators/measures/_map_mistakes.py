"""Mistakes with the scales of maps."""

from __future__ import annotations

from itembank.items.item import Misconception

ADDS = Misconception(
    "measures.maps-adds",
    "adds the numbers instead of multiplying",
    "How far is 1 cm on the map really? And 2 cm, and 3 cm?",
)
DIVIDES = Misconception(
    "measures.maps-divides",
    "divides to find the real distance, where multiplying is needed",
    "Do 10 cm on the map stand for more kilometres than 1 cm, or for fewer?",
)
THOUSAND_IN_KM = Misconception(
    "measures.maps-thousand-in-kilometre",
    "takes 1000 centimetres to be one kilometre",
    "How many centimetres make a metre? And how many metres a kilometre?",
)
THOUSAND = Misconception(
    "measures.maps-thousand",
    "takes 1000 centimetres to be one metre",
    "How many centimetres long is a metre rule?",
)
ONE_PART = Misconception(
    "measures.maps-one-part",
    "finds one part of the way and stops",
    "Where does the way begin, and where does it end?",
)
SCALE_ONCE = Misconception(
    "measures.maps-scale-once",
    "multiplies an area by the scale once",
    "Draw 1 cm by 1 cm on the map. How long and how wide is that on the ground?",
)
SQUARE_AS_LENGTH = Misconception(
    "measures.maps-square-as-length",
    "takes 100 000 square centimetres to be one square kilometre",
    "How many centimetres long is the side of a square kilometre? And how wide is it?",
)
