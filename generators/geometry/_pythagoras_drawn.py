"""Right-angled triangles that are drawn, with a side to be found by Pythagoras’ theorem."""

from __future__ import annotations

from generators.geometry._calculator import amount
from generators.geometry._right_drawn import in_picture
from generators.geometry._right_triangles import core_legs, triple_of
from itembank.items.item import Draft, Tier
from itembank.items.topics.topic import Topic


def drawn_longest(topic: Topic, tier: Tier, index: int, k: int, unit: str) -> Draft:
    """Return the question for the longest side of a triple, drawn."""
    draft = topic.make(tier, index, k, unit, False)
    a, b = triple_of(index, k)[:2]
    labels = {"level": amount(b, unit), "upright": amount(a, unit)}
    return in_picture(draft, (b, a), labels, "slope", index + 3 * k + len(unit))


def drawn_side(topic: Topic, tier: Tier, kind: str, a: int, b: int, k: int) -> Draft:
    """Return the question for a side of a triangle that is drawn, rounded or not."""
    draft = topic.make(tier, kind, a, b, k)
    level, upright = legs = core_legs(kind, a, b, k)
    if kind == "long":
        labels = {"level": amount(level, "cm"), "upright": amount(upright, "cm")}
        return in_picture(draft, legs, labels, "slope", a + 2 * b)
    if kind == "short":
        known, wanted, longest = "level", "upright", triple_of(a, k)[2]
    else:
        known, wanted = ("level", "upright") if a % 2 else ("upright", "level")
        longest = b
    given = {"level": level, "upright": upright}[known]
    labels = {known: amount(given, "cm"), "slope": amount(longest, "cm")}
    return in_picture(draft, legs, labels, wanted, a + 3 * b + 2 * k)
