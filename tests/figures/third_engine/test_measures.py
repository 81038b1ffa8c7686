"""A third engine over circles, solids, shaded shapes and angles: coordinates, by python-flint.

What the exact road takes from a figure's data is held to what its drawing comes to, worked out in
rational coordinates and in balls (`fmpq`, `arb`). No road of the proofs does it like this: a prism
is lifted into space and measured as the convex hull of its corners, an area by the shoelace rule,
an angle by the arctangent of its rays.
"""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import combinations

from flint import fmpq

from itembank.figures.drawing import Arc, Area, Stroke, Text, text_box
from itembank.figures.figure import Reading, drawn, kind_of, read
from itembank.figures.kinds.number.shaded_shape import ShadedShape
from itembank.figures.kinds.plane.angles import Angles
from itembank.figures.kinds.plane.circle import Circle
from itembank.figures.kinds.solid.cylinder import Cylinder
from itembank.figures.kinds.solid.prism import Prism
from itembank.notation import tree as t
from itembank.notation.value import exact
from itembank.proof.exact.reckoning.elimination import answer
from tests.balls import arb
from tests.figures.every_figure import examples
from tests.figures.held import COUNT, MEASURED, holds

Corner = tuple[fmpq, ...]


def q(value: int | Fraction) -> fmpq:
    value = Fraction(value)
    return fmpq(value.numerator, value.denominator)


def ball(node: t.Node) -> arb:
    """Return what an amount is worth, with or without π."""
    count = exact(t.replaced(node, {t.Sym("π"): t.Int(1)}))
    return arb(q(count)) * (arb.pi() if "π" in t.symbols(node) else 1)


def near(a: arb, b: arb, tolerance: str = "1e-25") -> bool:
    return bool(abs(a - b) <= arb(tolerance) * abs(b))


def turn(centre: tuple, start: tuple, end: tuple) -> arb:
    """Return the angle from one direction to another, anticlockwise, as a part of a whole turn."""
    x, y = (q(start[i] - centre[i]) for i in (0, 1))
    u, v = (q(end[i] - centre[i]) for i in (0, 1))
    angle = arb.atan2(arb(x * v - y * u), arb(x * u + y * v)) / (2 * arb.pi())
    return angle if angle > 0 else angle + 1


@holds(MEASURED, "circle")
def test_circles() -> None:
    for figure in examples("circle", COUNT, 3):
        assert isinstance(figure, Circle)
        picture = drawn(figure)
        (rim,) = (*picture.of("circle"), *picture.of("sector"))
        assert isinstance(rim, Arc)
        (label,) = (
            (mark for mark in picture.marks if isinstance(mark, Text) and "radius" in mark.role)
            if figure.radius is not None
            else (
                mark for mark in picture.marks if isinstance(mark, Text) and "diameter" in mark.role
            )
        )
        assert not isinstance(label.content, str)
        r = arb(q(exact(label.content))) / (1 if figure.radius is not None else 2)
        part = turn(rim.centre, rim.start, rim.end) if rim.sector else arb(1)
        for reading in kind_of(figure).readings(figure):
            found = {
                "radius": r,
                "diameter": 2 * r,
                "circumference": 2 * arb.pi() * r,
                "arc": 2 * arb.pi() * r * part,
                "area": arb.pi() * r * r * part,
                "angle": part * 360,
            }[reading.name]
            # A drawn direction is a rational point near to the true one.
            assert near(ball(read(figure, reading)), found, "1e-4"), (figure, reading)
            if not rim.sector:
                assert near(ball(read(figure, reading)), found), (figure, reading)


def lifted(figure: Prism) -> list[Corner]:
    """Return the corners of a drawn prism in space, in the units of its labels."""
    picture = drawn(figure)
    edges = [
        mark.points
        for mark in (*picture.of("edge"), *picture.of("hidden edge"))
        if isinstance(mark, Stroke)
    ]
    places: dict[tuple, Corner] = {edges[0][0]: (fmpq(0), fmpq(0), fmpq(0))}
    level = [abs(a[0] - b[0]) for a, b in edges if a[1] == b[1]]
    scale = q(exact(figure.width)) / q(level[0])
    while len(places) < len({point for edge in edges for point in edge}):
        for edge in edges:
            for a, b in (edge, edge[::-1]):
                if a in places and b not in places:
                    x, y = q(b[0] - a[0]) * scale, q(b[1] - a[1]) * scale
                    # What leads away goes 4 right and 3 up for every 10 of its length.
                    step = (fmpq(0), fmpq(0), x * fmpq(5, 2)) if 3 * x == 4 * y else (x, y, fmpq(0))
                    places[b] = tuple(p + s for p, s in zip(places[a], step, strict=True))
    return [*places.values()]


def minus(a: Corner, b: Corner) -> Corner:
    return tuple(x - y for x, y in zip(a, b, strict=True))


def cross(a: Corner, b: Corner) -> Corner:
    return (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )


def dot(a: Corner, b: Corner) -> fmpq:
    return sum((x * y for x, y in zip(a, b, strict=True)), fmpq(0))


def hull(corners: list[Corner]) -> tuple[fmpq, arb]:
    """Return the volume and the surface of the convex hull of some points, by brute force."""
    inside = tuple(sum(each, fmpq(0)) / len(corners) for each in zip(*corners, strict=True))
    seen: set[frozenset[Corner]] = set()
    volume, surface = fmpq(0), arb(0)
    for a, b, c in combinations(corners, 3):
        way = cross(minus(b, a), minus(c, a))
        sides = [dot(way, minus(p, a)) for p in corners]
        if not any(way) or (any(s > 0 for s in sides) and any(s < 0 for s in sides)):
            continue
        face = [p for p, side in zip(corners, sides, strict=True) if side == 0]
        if frozenset(face) in seen:
            continue
        seen.add(frozenset(face))
        middle = tuple(sum(each, fmpq(0)) / len(face) for each in zip(*face, strict=True))
        first = minus(face[0], middle)
        across = cross(way, first)

        def angle(
            p: Corner, middle: Corner = middle, first: Corner = first, across: Corner = across
        ) -> float:
            gone = minus(p, middle)
            up = float(Fraction(str(dot(gone, across)))) / math.sqrt(
                float(Fraction(str(dot(across, across))))
            )
            along = float(Fraction(str(dot(gone, first)))) / math.sqrt(
                float(Fraction(str(dot(first, first))))
            )
            return math.atan2(up, along)

        face.sort(key=angle)
        twice = (fmpq(0), fmpq(0), fmpq(0))
        for p, after in zip(face, [*face[1:], face[0]], strict=True):
            twice = tuple(
                s + x
                for s, x in zip(twice, cross(minus(p, middle), minus(after, middle)), strict=True)
            )
        surface += arb(dot(twice, twice)).sqrt() / 2
        volume += abs(dot(twice, minus(middle, inside))) / 6
    return volume, surface


@holds(MEASURED, "prism")
def test_prisms_as_convex_hulls() -> None:
    for figure in examples("prism", COUNT, 3):
        assert isinstance(figure, Prism)
        volume, surface = hull(lifted(figure))
        assert q(exact(read(figure, Reading("volume")))) == volume, figure
        if Reading("surface area") in kind_of(figure).readings(figure):
            assert near(ball(read(figure, Reading("surface area"))), surface), figure


def shoelace(mark: Area) -> fmpq:
    points = [(q(x), q(y)) for x, y in mark.points]
    pairs = zip(points, [*points[1:], points[0]], strict=True)
    return abs(sum((a[0] * b[1] - b[0] * a[1] for a, b in pairs), fmpq(0))) / 2


@holds(MEASURED, "cylinder")
def test_cylinders_as_prisms_of_many_sides() -> None:
    """The drawn rim is a polygon of n sides: of a circle it covers n sin(τ/n) / τ, and so on."""
    for figure in examples("cylinder", COUNT, 3):
        assert isinstance(figure, Cylinder)
        picture = drawn(figure)
        (top,) = picture.of("top")
        assert isinstance(top, Area)
        wall = picture.of("wall")[0]
        assert isinstance(wall, Stroke)
        high = abs(q(wall.points[0].y - wall.points[1].y))
        scale = q(exact(figure.height)) / high
        # As deep as wide: a level circle is drawn three tenths as deep.
        points = [(q(x) * scale, q(y) * scale * fmpq(10, 3)) for x, y in top.points]
        edges = list(zip(points, [*points[1:], points[0]], strict=True))
        n, tau = len(points), 2 * arb.pi()
        inside = abs(sum((a[0] * b[1] - b[0] * a[1] for a, b in edges), fmpq(0))) / 2
        base = arb(inside) * tau / (n * (tau / n).sin())
        around = sum(
            (arb((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2).sqrt() for a, b in edges), arb(0)
        )
        curved = around * (tau / 2) / (n * (tau / 2 / n).sin()) * arb(high * scale)
        wanted = {
            "radius": (base / arb.pi()).sqrt(),
            "diameter": 2 * (base / arb.pi()).sqrt(),
            "area of the base": base,
            "curved surface area": curved,
            "surface area": curved + 2 * base,
            "volume": base * arb(high * scale),
        }
        for reading in kind_of(figure).readings(figure):
            # The corners of the rim are rational points near to equal parts of a turn.
            assert near(ball(read(figure, reading)), wanted[reading.name], "1e-8"), figure


@holds(MEASURED, "shaded shape")
def test_shaded_shapes() -> None:
    for figure in examples("shaded shape", COUNT, 3):
        assert isinstance(figure, ShadedShape)
        picture = drawn(figure)
        marks = (*picture.of("shaded"), *picture.of("part"))
        dark = whole = arb(0)
        for mark in marks:
            if isinstance(mark, Area):
                size = arb(shoelace(mark))
            else:
                assert isinstance(mark, Arc)
                size = turn(mark.centre, mark.start, mark.end)
            whole += size
            dark += size if mark.fill != "none" else 0
        shown = exact(read(figure, Reading("shaded")))
        found = dark / whole * figure.wholes
        assert abs(arb(q(shown)) - found) < arb("1e-4"), figure


def meeting(a: tuple, b: tuple, c: tuple, d: tuple) -> tuple[fmpq, fmpq] | None:
    """Return where two segments meet."""
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = ((q(p[0]), q(p[1])) for p in (a, b, c, d))
    bottom = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    if bottom == 0:
        return (ax, ay) if a in (c, d) else (bx, by) if b in (c, d) else None
    s = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / bottom
    u = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / bottom
    if 0 <= s <= 1 and 0 <= u <= 1:
        return ax + s * (bx - ax), ay + s * (by - ay)
    return None


def rational(value: fmpq) -> Fraction:
    return Fraction(int(value.p), int(value.q))


def drawn_angle(figure: Angles, label: Text) -> arb:
    """Return how large the angle is in which a label stands, in degrees, as it is drawn."""
    picture = drawn(figure)
    lines = [
        (mark.points[0], mark.points[-1])
        for mark in (*picture.of("line"), *picture.of("ray"))
        if isinstance(mark, Stroke)
    ]
    box = text_box(label)
    x, y = (box.left + box.right) / 2, (box.bottom + box.top) / 2
    corners = {
        at for (a, b), (c, d) in combinations(lines, 2) if (at := meeting(a, b, c, d)) is not None
    }
    at = min(
        ((rational(p), rational(r)) for p, r in corners),
        key=lambda p: (p[0] - x) ** 2 + (p[1] - y) ** 2,
    )
    rays = []
    for a, b in lines:
        (ax, ay), (bx, by) = a, b
        if (bx - ax) * (at[1] - ay) == (by - ay) * (at[0] - ax):
            rays += [end for end in (a, b) if (Fraction(end[0]), Fraction(end[1])) != at]

    def way(end: tuple) -> float:
        return math.atan2(float(end[1] - at[1]), float(end[0] - at[0]))

    here = way((x, y))
    before = min(rays, key=lambda end: (here - way(end)) % (2 * math.pi))
    after = min(rays, key=lambda end: (way(end) - here) % (2 * math.pi))
    return turn(at, before, after) * 360


@holds(MEASURED, "angles")
def test_angles_that_are_drawn_to_size() -> None:
    """Each letter is worth what the drawn angle says, by its label and by the figure's facts."""
    # The examples are drawn to size, whether or not they promise it.
    for figure in examples("angles", COUNT, 3):
        assert isinstance(figure, Angles)
        for label in drawn(figure).of("angle label"):
            assert isinstance(label, Text)
            assert not isinstance(label.content, str)
            size = drawn_angle(figure, label)
            letters = t.symbols(label.content)
            if not letters:
                assert near(ball(label.content), size, "1e-3"), figure
                continue
            (name,) = letters
            nought, single = (
                exact(t.replaced(label.content, {t.Sym(name): t.Int(n)})) for n in (0, 1)
            )
            found = (size - arb(q(nought))) / arb(q(single - nought))
            (value,) = answer(t.Sym(name), kind_of(figure).relations(figure))
            assert abs(arb(q(value)) - found) < arb("0.05"), (figure, name)
