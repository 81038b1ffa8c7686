"""Right-angled triangles that are drawn, with a side or an angle to be found."""

from __future__ import annotations

from fractions import Fraction

from generators.geometry._calculator import amount, root_of
from generators.geometry._ratios import SIDES, ratio_of
from generators.geometry._right_drawn import in_picture
from itembank.items.item import Draft, Tier
from itembank.items.topics.topic import Topic
from itembank.notation import tree as t

_PLACES = {"opposite": "upright", "adjacent": "level", "hypotenuse": "slope"}
"""Where a side of a triangle stands that is drawn with its angle at the foot of its slope."""


def drawn_side(topic: Topic, tier: Tier, name: str, degrees: int, side: int) -> Draft:
    """Return the question for a side of a triangle that is drawn with an angle and a side."""
    multiplied = tier is Tier.SUPPORT
    draft = topic.make(tier, *(() if multiplied else ("side",)), name, degrees, side)
    above, below = SIDES[name]
    wanted, given = (above, below) if multiplied else (below, above)
    slope = {
        "opposite": side / ratio_of("sin", degrees),
        "adjacent": side / ratio_of("cos", degrees),
        "hypotenuse": Fraction(side),
    }[given]
    legs = slope * ratio_of("cos", degrees), slope * ratio_of("sin", degrees)
    labels = {_PLACES[given]: amount(side, "cm"), "foot": t.Quantity(t.Int(degrees), "°")}
    return in_picture(draft, legs, labels, _PLACES[wanted], (degrees + side) // 4 + side)


def drawn_angle(topic: Topic, tier: Tier, name: str, a: int, b: int) -> Draft:
    """Return the question for an angle of a triangle that is drawn with two sides."""
    return angle_in_picture(topic.make(tier, "angle", name, a, b), name, a, b)


def angle_in_picture(draft: Draft, name: str, a: int, b: int) -> Draft:
    """Return a question for the angle whose ratio is a over b with its triangle drawn."""
    top, bottom = SIDES[name]
    other = root_of(Fraction(abs(b * b - a * a)))
    legs = {
        "sin": (other, Fraction(a)),
        "cos": (Fraction(a), other),
        "tan": (Fraction(b), Fraction(a)),
    }[name]
    labels = {_PLACES[top]: amount(a, "cm"), _PLACES[bottom]: amount(b, "cm")}
    return in_picture(draft, legs, labels, "foot", a + 2 * b + len(top))
