"""The mistakes that are made with sine, cosine and tangent."""

from __future__ import annotations

from itembank.items.item import Misconception

OTHER_RATIO = Misconception(
    "geometry.trigonometry-other-ratio",
    "mixes up sine and cosine",
    "Stand at the angle. Which side is opposite you, and which one is next to you?",
)


TANGENT_TAKEN = Misconception(
    "geometry.trigonometry-tangent-taken",
    "uses the tangent, though the hypotenuse takes part",
    "Which two sides does the question speak of? Which ratio is made of these two?",
)


SINE_TAKEN = Misconception(
    "geometry.trigonometry-sine-taken",
    "uses the sine, though the hypotenuse takes no part",
    "Which two sides does the question speak of? Which ratio is made of these two?",
)


MULTIPLIED = Misconception(
    "geometry.trigonometry-multiplied",
    "multiplies by the ratio, where dividing is needed",
    "Write the ratio with the side you look for. Does it stand above or below?",
)


DIVIDED = Misconception(
    "geometry.trigonometry-divided",
    "divides by the ratio, where multiplying is needed",
    "Write the ratio with the side you look for. Does it stand above or below?",
)


OTHER_ANGLE = Misconception(
    "geometry.trigonometry-other-angle",
    "finds the other acute angle",
    "Stand at the angle that is asked for. Which side is opposite you?",
)


UPSIDE_DOWN = Misconception(
    "geometry.trigonometry-upside-down",
    "divides the two sides the other way round",
    "Say the ratio in words. Which side comes first?",
)


RATIO_GIVEN = Misconception(
    "geometry.trigonometry-ratio-given",
    "gives the ratio of the sides as the angle",
    "You have divided two lengths. How do you come from that ratio to the angle?",
)


EYES_FORGOTTEN = Misconception(
    "geometry.trigonometry-eyes-forgotten",
    "measures from the eyes, and not from the ground",
    "Draw the triangle. Does it stand on the ground?",
)


HALF_ONLY = Misconception(
    "geometry.trigonometry-half-only",
    "finds half of the base",
    "You have cut the triangle in half. Which part of the base have you found?",
)


NOT_CUT = Misconception(
    "geometry.trigonometry-not-cut",
    "uses the whole angle of the isosceles triangle",
    "Where is the right angle? How large is the angle in that triangle?",
)


CUT_OFF = Misconception(
    "geometry.trigonometry-cut-off",
    "leaves the decimals out instead of rounding",
    "Which two whole numbers of degrees does your angle lie between? Which is nearer?",
)


RATIO_ROUNDED = Misconception(
    "geometry.trigonometry-ratio-rounded",
    "rounds the ratio to 1 decimal place before finding the angle",
    "Keep the whole ratio in the calculator. Is the angle still the same?",
)


HALF_ANGLE = Misconception(
    "geometry.trigonometry-half-angle",
    "finds half of the angle",
    "You have cut the triangle in half. Which part of the angle have you found?",
)


WHOLE_BASE = Misconception(
    "geometry.trigonometry-whole-base",
    "uses the whole third side of the isosceles triangle",
    "Where is the right angle? How long is the short side of that triangle?",
)


OTHER_INVERSE = Misconception(
    "geometry.trigonometry-other-inverse",
    "uses the inverse of another ratio",
    "Which ratio does the question name? Which key undoes that one?",
)


OF_RIGHT_ANGLE = Misconception(
    "geometry.trigonometry-of-right-angle",
    "takes the ratio as a fraction of a right angle",
    "The sine of 30° is 0.5. Is 30° half of a right angle?",
)
