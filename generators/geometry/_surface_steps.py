"""The working for a surface: a cube by one face, a cuboid by its three different faces."""

from __future__ import annotations

from generators.geometry._calculator import amount
from itembank.items.item import Step
from itembank.notation import tree as t

TWO, HALF, SIX = t.Int(2), t.frac(1, 2), t.Int(6)


def cube_steps(edge: t.Node, face: t.Node, key: t.Node) -> tuple[Step, ...]:
    """Return the working for a cube: six times one face."""
    return (
        Step("Find the area of a face.", t.equals(t.times(edge, edge), face)),
        Step("A cube has six equal faces.", t.equals(t.times(SIX, face), key)),
    )


def steps_in_short(edges: list[t.Node], half: t.Node, key: t.Node) -> tuple[Step, ...]:
    """Return the working for a cuboid in two lines: three faces together, twice."""
    a, b, c = edges
    faces = t.add(t.times(a, b), t.times(b, c), t.times(a, c))
    return (
        Step("Add the three faces that differ.", t.equals(faces, half)),
        Step("Each of them comes twice.", t.equals(t.times(TWO, half), key)),
    )


def steps_face_by_face(sizes: tuple[int, int, int], unit: str, key: t.Node) -> tuple[Step, ...]:
    """Return the working for a cuboid: three different faces, each of them twice."""
    a, b, c = (amount(size, unit) for size in sizes)
    pairs = ((a, b, sizes[0] * sizes[1]), (b, c, sizes[1] * sizes[2]), (a, c, sizes[0] * sizes[2]))
    faces = [amount(area, f"{unit}^2") for _, _, area in pairs]
    products = [t.times(first, other) for first, other, _ in pairs]
    total = t.add(*faces)
    return (
        *(
            Step(say, t.equals(shown, face))
            for say, shown, face in zip(
                ("Find the area of one face.", "Find the next one.", "Find the third one."),
                products,
                faces,
                strict=True,
            )
        ),
        Step("Each comes twice.", t.equals(t.times(TWO, t.Bracket(total)), key)),
    )
