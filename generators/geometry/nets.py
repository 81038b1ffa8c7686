"""Nets: which face is opposite which, which shape folds to a cube, surface and volume from a net.

England's programme of study for key stage 3 (2013) asks pupils to "use the properties of faces,
surfaces, edges and vertices of cubes, cuboids ... to solve problems in 3-D" (from memory).
"""

from __future__ import annotations

from typing import Any

from generators._scatter import scattered
from generators.geometry import _nets as n
from generators.geometry._net_mistakes import (
    BLOCK,
    CORNER,
    EDGES_ADDED,
    FURTHEST,
    HALF,
    LONG_ROW,
    NEXT,
    SAME_SIDE,
    SURFACE_FOR_VOLUME,
    VOLUME_FOR_SURFACE,
)
from itembank.figures.kinds.solid.net import Net
from itembank.figures.kinds.solid.net_folding import Rect, opposite
from itembank.items import kinds
from itembank.items.asks.of_figure import of_figure
from itembank.items.item import Draft, Misconception, Step, Tier
from itembank.items.topics.registry import register
from itembank.items.topics.space import Space
from itembank.items.topics.topic import Topic
from itembank.items.wrong_answers import slips
from itembank.notation import tree as t

_OPPOSITE = "The net is folded to make a cube. Which face is opposite face {}?"


def _beside(faces: tuple[Rect, ...], own: int, corner: bool) -> list[int]:
    """Return the faces that are joined to one in the net, or that touch it at a corner alone."""
    x, y, _, _ = faces[own]
    far = (1, 1) if corner else (0, 1)
    return [
        k for k, (a, b, _, _) in enumerate(faces) if tuple(sorted((abs(a - x), abs(b - y)))) == far
    ]


def _furthest(faces: tuple[Rect, ...], own: int) -> int | None:
    """Return the face whose middle is furthest away, where one alone is."""
    x, y, _, _ = faces[own]
    gaps = [(a - x) ** 2 + (b - y) ** 2 for a, b, _, _ in faces]
    return gaps.index(max(gaps)) if gaps.count(max(gaps)) == 1 else None


def _in_row(faces: tuple[Rect, ...], own: int, other: int) -> bool:
    """Tell whether two faces stand in a straight row with one between them."""
    (x, y, _, _), (a, b, _, _) = faces[own], faces[other]
    between = ((x + a) // 2, (y + b) // 2, 1, 1)
    return sorted((abs(a - x), abs(b - y))) == [0, 2] and between in faces


def _mistakes(faces: tuple[Rect, ...], own: int) -> list[tuple[Misconception, int]]:
    """Return the wrong faces, of each mistake the first, each face once."""
    right = opposite(faces, own)
    found: list[tuple[Misconception, int]] = []
    for mistake, places in (
        (FURTHEST, [_furthest(faces, own)]),
        (CORNER, _beside(faces, own, True)),
        (NEXT, _beside(faces, own, False)),
    ):
        for place in places[:1]:
            if place is not None and place != right:
                found.append((mistake, place))
    return found


def _face_asked(which: int, way: int, face: int, in_row: bool) -> bool:
    ways = n.cube_nets()[which]
    if way >= len(ways):
        return False
    faces = n.rects(ways[way])
    other = opposite(faces, face)
    assert other is not None
    apart = len({place for _, place in _mistakes(faces, face)}) > 1
    return apart and _in_row(faces, face, other) is in_row


def _support(which: int, way: int, face: int) -> bool:
    return _face_asked(which, way, face, True)


class _Core:
    """What is asked in the core tier."""

    OPPOSITE, SURFACE = range(2)


def _core(kind: int, a: int, b: int, c: int, d: int) -> bool:
    if kind == _Core.OPPOSITE:
        which, way, face = a - 1, b - 1, c - 1
        return which < 11 and face < 6 and d == 0 and _face_asked(which, way, face, False)
    return b <= 5 and c <= 5 and a <= 5 and _box(a, b, c, d)


def _box(a: int, b: int, c: int, d: int) -> bool:
    """Keep boxes whose edges, surface and volume are apart, and nets that are not too large."""
    volume, half = a * b * c, a * b + b * c + a * c
    low, high = d % 4, d // 4 % 4
    tall = c + max((b, a)[low % 2], 0) + (b, a)[high % 2]
    new = (a + 2 * b + 3 * c + d) % 6 == 0
    apart = len({volume, half, 2 * half, a + b + c}) == 4
    return new and apart and tall <= 11 and 2 * (a + b) <= 16 and len({a, b, c}) > 1


def _challenge(kind: int, a: int, b: int, c: int, d: int) -> bool:
    if kind == 1:
        return d < 16 and _box(a, b, c, d)
    return a == b == c == 1 and _three(d) is not None


def _fault_of(cells: tuple[n.Cell, ...]) -> Misconception:
    """Return why a shape of six squares is taken for a net of a cube."""
    if n.longest_row(cells) > 4:
        return LONG_ROW
    return BLOCK if n.has_block(cells) else SAME_SIDE


def _three(seed: int) -> list[tuple[n.Cell, ...]] | None:
    """Return a net of a cube and two other shapes, each wrong for another reason."""
    lots = scattered(seed, 6, 0, 10_000)
    found = []
    for table, k, way in (
        (n.cube_nets(), lots[0], lots[1]),
        (n.no_nets(), lots[2], lots[3]),
        (n.no_nets(), lots[4], lots[5]),
    ):
        ways = table[k % len(table)]
        found.append(ways[way % len(ways)])
    wide = sum(max(x for x, _ in cells) + 1 for cells in found)
    tall = max(max(y for _, y in cells) + 1 for cells in found)
    if _fault_of(found[1]) == _fault_of(found[2]) or wide > 14 or tall > 4:
        return None
    return found


@register
class Nets(Topic):
    """Nets of cubes and cuboids: opposite faces, surface, volume, and which shape is one."""

    id = "geometry.nets"
    title = "Nets of cubes and cuboids"
    statements = ("geometry.solids",)
    prerequisites = ("geometry.volume-of-cuboids",)
    misconceptions = (
        *(NEXT, CORNER, FURTHEST, LONG_ROW, BLOCK, SAME_SIDE, HALF, VOLUME_FOR_SURFACE),
        *(SURFACE_FOR_VOLUME, EDGES_ADDED),
    )
    spaces = {
        Tier.SUPPORT: Space(_support, which=range(11), way=range(8), face=range(6)),
        Tier.CORE: Space(
            _core, kind=range(2), a=range(1, 12), b=range(1, 9), c=range(1, 7), d=range(16)
        ),
        Tier.CHALLENGE: Space(
            _challenge,
            kind=range(2),
            a=range(1, 6),
            b=range(1, 6),
            c=range(1, 6),
            d=range(400),
        ),
    }
    spaces = kinds.with_statements(spaces)

    def make(self, tier: Tier, *values: Any) -> Draft:
        """Return the question for one point of the tier's space."""
        if tier is Tier.SUPPORT:
            return _opposite(*values)
        kind, a, b, c, d = values
        if tier is Tier.CORE:
            if kind == _Core.OPPOSITE:
                return _opposite(a - 1, b - 1, c - 1)
            return _cuboid(a, b, c, d, volume=False)
        return _cuboid(a, b, c, d, volume=True) if kind else _which(d)


def _opposite(which: int, way: int, face: int) -> Draft:
    faces = n.rects(n.cube_nets()[which][way])
    letters = "ABCDEF"
    figure = Net((faces,), letters=letters)
    text = (_OPPOSITE.format(letters[face]),)
    other = opposite(faces, face)
    assert other is not None
    key = t.Label(letters[other])
    if _in_row(faces, face, other):
        steps = [
            Step(
                "Of three faces in a straight row the first and the third are opposite each other.",
                key,
            )
        ]
    else:
        names = [letters[k] for k in _beside(faces, face, False)]
        joined = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
        steps = [
            Step(f"Keep {letters[face]} as the bottom: {joined} {_stands(len(names))} beside it."),
            Step("Fold on, face by face. One face comes to lie on top.", key),
        ]
    wrong = [(mistake, t.Label(letters[place])) for mistake, place in _mistakes(faces, face)]
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        tuple(steps),
        slips(*wrong),
        ("opposite", *faces, face),
        figure=figure,
    )


def _stands(count: int) -> str:
    return "stands" if count == 1 else "stand"


def _cuboid(a: int, b: int, c: int, d: int, *, volume: bool) -> Draft:
    faces = n.cut_open(a, b, c, d % 4, d // 4 % 4, turn=2 * (a + b) < c + a + b)
    figure = Net((faces,), unit="cm")
    what = "volume" if volume else "surface area"
    text = (f"The net is folded to make a cuboid. What is the {what} of the cuboid?",)
    sizes = (a * b, b * c, a * c)
    half, inside = sum(sizes), a * b * c
    power = "cm^3" if volume else "cm^2"

    def amount(size: int) -> t.Node:
        return t.Quantity(t.Int(size), power)

    long, wide, high = (t.Quantity(t.Int(size), "cm") for size in (a, b, c))
    bottom = t.Quantity(t.Int(a * b), "cm^2")
    if volume:
        key = amount(inside)
        steps = [
            Step(f"Count squares along the faces: the edges are {a} cm, {b} cm and {c} cm."),
            Step("Find the area of the bottom.", t.equals(t.times(long, wide), bottom)),
            Step("Multiply by the height.", t.equals(t.times(bottom, high), key)),
        ]
        wrong = slips(
            (SURFACE_FOR_VOLUME, amount(2 * half)), (EDGES_ADDED, amount(a + b + c)), key=key
        )
    else:
        key = amount(2 * half)
        products = [t.times(t.Int(p), t.Int(q)) for p, q in ((a, b), (b, c), (a, c))]
        steps = [
            Step("Add one face of each kind.", t.equals(t.add(*products), t.Int(half))),
            Step("There are two of each.", t.equals(t.times(t.Int(2), amount(half)), key)),
        ]
        wrong = slips((HALF, amount(half)), (VOLUME_FOR_SURFACE, amount(inside)), key=key)
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "quantity",
        tuple(steps),
        wrong,
        (what, *faces),
        constants=(2,),
        figure=figure,
    )


def _which(seed: int) -> Draft:
    shapes = _three(seed)
    assert shapes is not None
    order = sorted(range(3), key=lambda k: scattered(seed * 3 + k, 1, 0, 9999))
    figure = Net(tuple(n.rects(shapes[k]) for k in order), "PQR")
    letters = {k: "PQR"[place] for place, k in enumerate(order)}
    text = ("Which of the shapes P, Q and R is a net of a cube?",)
    key = t.Label(letters[0])
    wrong = [(_fault_of(shapes[k]), t.Label(letters[k])) for k in (1, 2)]
    why = {
        LONG_ROW: "has a row of more than four, whose ends fall on each other",
        BLOCK: "has four squares round one place, where only three faces of a cube meet",
        SAME_SIDE: "has two squares that fall on each other, so that one side stays open",
    }
    steps = [
        Step(f"{letters[k]} {why[_fault_of(shapes[k])]}.")
        for k in sorted((1, 2), key=letters.__getitem__)
    ]
    return Draft(
        text,
        of_figure(figure, text),
        key,
        "name",
        (*steps, Step(f"{letters[0]} has a side for each of its squares.", key)),
        slips(*wrong),
        ("which", *(shapes[k] for k in order)),
        figure=figure,
    )
