"""The mistakes that are made with scales."""

from __future__ import annotations

from itembank.items.item import Misconception

ADDS = Misconception(
    "ratio.scale-additive",
    "adds the numbers instead of multiplying",
    "How long is a thing really if it is 1 cm on the plan? And 2 cm, and 3 cm?",
)


DIVIDES = Misconception(
    "ratio.scale-divides",
    "divides to find the real length, where multiplying is needed",
    "1 cm on the plan stands for some metres. Do 10 cm stand for more metres, or for fewer?",
)


MULTIPLIES = Misconception(
    "ratio.scale-multiplies",
    "multiplies to find the length on the plan, where dividing is needed",
    "Would that length fit on a sheet of paper? Is a plan larger or smaller than the real thing?",
)


SCALES_SWAPPED = Misconception(
    "ratio.scale-scales-swapped",
    "multiplies by the scale of the second plan and divides by the scale of the first",
    "Is a shed drawn longer at 1 : 50 or at 1 : 100? Did your length grow or shrink as it should?",
)


CM_AS_M = Misconception(
    "ratio.scale-centimetres-as-metres",
    "finds the real length in centimetres and writes metres after it",
    "Picture a length of 100 cm. How many metres is that?",
)


M_AS_CM = Misconception(
    "ratio.scale-metres-as-centimetres",
    "divides the number of metres without changing it to centimetres first",
    "Which unit does the answer need? How many centimetres make 1 m?",
)


UNITS_IGNORED = Misconception(
    "ratio.scale-units-ignored",
    "compares the two numbers without making the units the same",
    "A plan shows 2 m as 1 cm. Is its scale 1 : 2? What do both lengths need first?",
)


THOUSAND = Misconception(
    "ratio.scale-thousand",
    "takes 1000 centimetres to be one metre",
    "How many centimetres long is a metre rule?",
)


REAL = Misconception(
    "ratio.scale-real-length",
    "finds the real length and stops",
    "Would that fit on a sheet of paper? What does the question ask for?",
)
