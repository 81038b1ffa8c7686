"""How the faces, edges and vertices of solids are counted, a kind at a time."""

from __future__ import annotations

from generators.geometry import _solid_shapes as s
from generators.geometry._solid_shapes import EDGES, FACES, VERTICES
from itembank.items.item import Step
from itembank.notation import tree as t


def summed(*terms: int) -> t.Relation:
    """Return a sum of whole numbers and what it comes to."""
    return t.equals(t.add(*map(t.Int, terms)), t.Int(sum(terms)))


def _count_step(shape: str, n: int, part: str) -> Step:
    """Return how the faces, edges or vertices of a solid are counted, a kind at a time."""
    say, terms = {
        ("prism", FACES): ("Two ends, and a face for each side of an end.", (2, n)),
        ("prism", EDGES): ("Round one end, round the other, and those between them.", (n, n, n)),
        ("prism", VERTICES): ("At one end, and at the other.", (n, n)),
        ("pyramid", FACES): ("The base, and a triangle for each side of it.", (1, n)),
        ("pyramid", EDGES): ("Round the base, and up to the top.", (n, n)),
        ("pyramid", VERTICES): ("Round the base, and the top.", (n, 1)),
    }[shape, part]  # fmt: skip
    return Step(f"{part.capitalize()} of the {shape}: {say[0].lower()}{say[1:]}", summed(*terms))


_JOIN = {
    FACES: "Two of these faces lie inside, where the parts are joined.",
    EDGES: "Where the parts are joined, each edge has been counted twice.",
    VERTICES: "Where the parts are joined, each vertex has been counted twice.",
}


def counted(shape: str, n: int, part: str) -> list[Step]:
    """Return how they are counted, of a solid of two parts each part first."""
    if shape in ("prism", "pyramid"):
        return [_count_step(shape, n, part)]
    lower = "prism" if shape == "tower" else "pyramid"
    a, b = s.count(lower, n, part), s.count("pyramid", n, part)
    twice = 2 if part == FACES else n
    line = t.equals(t.Sum(t.Int(a), (("+", t.Int(b)), ("-", t.Int(twice)))), t.Int(a + b - twice))
    first = _count_step(lower, n, part)
    if shape == "tower":
        return [first, _count_step("pyramid", n, part), Step(_JOIN[part], line)]
    each = first.say.replace("the pyramid", "each pyramid")
    return [Step(each, first.maths), Step(_JOIN[part], line)]
