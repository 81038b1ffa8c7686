"""Solids with flat faces: what they have, what of it is seen, and what goes wrong in counting."""

from __future__ import annotations

from functools import lru_cache

from itembank.figures.figure import fault
from itembank.figures.kinds.solid.solid import Solid
from itembank.figures.kinds.solid.solid_model import model
from itembank.items.item import Misconception

FACES, EDGES, VERTICES = PARTS = ("faces", "edges", "vertices")

HIDDEN = Misconception(
    "geometry.solids-hidden",
    "counts only what is seen from the front",
    "What do the dashed lines show?",
)
MIXED_UP = Misconception(
    "geometry.solids-mixed-up",
    "mixes up edges and vertices",
    "Which is a line where two faces meet, and which is a corner?",
)
ENDS_LEFT_OUT = Misconception(
    "geometry.solids-ends-left-out",
    "counts round the solid, and leaves the ends out",
    "Which faces would you stand the solid on? Did you count them?",
)
JOINS_LEFT_OUT = Misconception(
    "geometry.solids-joins-left-out",
    "counts the edges of the ends, and not those that join them",
    "Which edges go from one end to the other?",
)
TOP_LEFT_OUT = Misconception(
    "geometry.solids-top-left-out",
    "counts round the base, and leaves the top out",
    "What is there above the base?",
)
INSIDE = Misconception(
    "geometry.solids-inside",
    "counts what belongs to both parts twice, where they are joined",
    "If you held the solid, could you touch the face where the parts are joined?",
)
ALL_FACES = Misconception(
    "geometry.solids-all-faces",
    "counts all faces, whatever their shape",
    "How many sides has each of these faces?",
)
ONLY_FIRST = Misconception(
    "geometry.solids-only-first",
    "answers how many there are, and not how many more",
    "Which two numbers are to be compared?",
)
ADDED = Misconception(
    "geometry.solids-added",
    "adds the two numbers instead of comparing them",
    "How many more is it? Which sum tells you?",
)
OTHER_FAMILY = Misconception(
    "geometry.solids-other-family",
    "takes a prism for a pyramid, or a pyramid for a prism",
    "Has it two equal ends, or do its faces meet in a point?",
)
OTHER_BASE = Misconception(
    "geometry.solids-other-base",
    "miscounts the sides of the base",
    "Put a finger on one side of the base and count on from there.",
)

TALLEST = {"prism": 65, "pyramid": 70, "tower": 50, "double pyramid": 45}
"""How high each is drawn at most, so that it has room beside its question."""


@lru_cache(maxsize=1024)
def drawable(shape: str, sides: int, height: int, lying: bool) -> bool:
    """Tell whether a solid is drawn clearly, with room for it."""
    made = Solid(shape, sides, height, lying)  # type: ignore[arg-type]
    return height <= TALLEST[shape] and not fault(made)


def count(shape: str, sides: int, part: str) -> int:
    """Return how many faces, edges or vertices a solid has.

    >>> [count("prism", 4, part) for part in PARTS], count("tower", 4, "edges")
    ([6, 12, 8], 16)
    """
    n = sides
    return {
        "prism": {FACES: n + 2, EDGES: 3 * n, VERTICES: 2 * n},
        "pyramid": {FACES: n + 1, EDGES: 2 * n, VERTICES: n + 1},
        "tower": {FACES: 2 * n + 1, EDGES: 4 * n, VERTICES: 2 * n + 1},
        "double pyramid": {FACES: 2 * n, EDGES: 3 * n, VERTICES: n + 2},
    }[shape][part]


def sided(shape: str, sides: int, wanted: int) -> int:
    """Return how many faces of a solid have so many sides."""
    ends = {"prism": 2, "pyramid": 1, "tower": 1}.get(shape, 0) if sides == wanted else 0
    walls = sides if wanted == 4 and shape in ("prism", "tower") else 0
    slopes = {"pyramid": sides, "tower": sides, "double pyramid": 2 * sides}.get(shape, 0)
    return ends + walls + (slopes if wanted == 3 else 0)


@lru_cache(maxsize=1024)
def seen(figure: Solid, part: str, wanted: int = 0) -> int:
    """Return how many faces, edges or vertices are seen; of faces those with so many sides."""
    solid = model(figure.shape, figure.sides, figure.height, figure.lying)
    faces = [face for face, shown in zip(solid.faces, solid.seen, strict=True) if shown]
    if part == FACES:
        return sum(wanted in (0, len(face)) for face in faces)
    if part == VERTICES:
        return len({corner for face in faces for corner in face})
    return sum(any(solid.seen[face] for face in both) for both in solid.edges.values())


def doubled(shape: str, sides: int, part: str) -> int | None:
    """Return the count of both parts of a solid added up, None where it has one part."""
    parts = {"tower": ("prism", "pyramid"), "double pyramid": ("pyramid", "pyramid")}.get(shape)
    return None if parts is None else sum(count(text, sides, part) for text in parts)
