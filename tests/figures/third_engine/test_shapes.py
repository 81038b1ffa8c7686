"""A third engine over patterns, nets and solids: by symmetries of points, folding and counting.

Places are rational numbers of python-flint (`fmpq`), turns are balls (`arb`). A net is folded in
space by matrices; no road of the proofs does that with the drawing's own places.
"""

from __future__ import annotations

from flint import fmpq, fmpq_mat

from itembank.figures.drawing import Arc, Area, Drawing, Mark, Point, Stroke, Text, text_box
from itembank.figures.figure import Reading, drawn, kind_of, read
from itembank.notation.line import line
from itembank.notation.value import exact
from tests.balls import arb
from tests.figures.every_figure import examples
from tests.figures.held import COUNT, MEASURED, holds
from tests.figures.third_engine.test_measures import ball, near, q, shoelace, turn

Spot = tuple[fmpq, fmpq]
Solid = tuple[fmpq, fmpq, fmpq]


def areas(drawing: Drawing, start: str = "") -> list[Area]:
    return [m for m in drawing.marks if isinstance(m, Area) and m.role.startswith(start)]


def corners(mark: Area) -> list[Spot]:
    return [(q(x), q(y)) for x, y in mark.points]


def middle(mark: Area) -> Spot:
    found = corners(mark)
    return tuple(sum((c[k] for c in found), fmpq(0)) / len(found) for k in (0, 1))


def _size(mark: Mark) -> fmpq:
    """Return how large a tile is; of a dot, the square on its radius."""
    if isinstance(mark, Arc):
        assert mark.whole
        return q(mark.radius) ** 2
    assert isinstance(mark, Area)
    return shoelace(mark)


@holds(MEASURED, "growing pattern")
def test_growing_patterns() -> None:
    for figure in examples("growing pattern", COUNT, 3):
        tiles = [[*map(_size, drawn(figure).of(f"tile {n}"))] for n in (1, 2, 3)]
        (size,) = {each for row in tiles for each in row}
        first, second, third = (sum(row, fmpq(0)) / size for row in tiles)
        assert third - second == second - first
        for reading in kind_of(figure).readings(figure):
            if reading.name == "tiles":
                n = int(reading.of[0])
                assert q(exact(read(figure, reading))) == first + (n - 1) * (second - first), figure


def _image(spot: Spot, way: tuple[int, ...], centre: Spot) -> Spot:
    """Return where a matrix about a centre takes a place."""
    x, y = spot[0] - centre[0], spot[1] - centre[1]
    a, b, c, d = way
    return (centre[0] + a * x + b * y, centre[1] + c * x + d * y)


@holds(MEASURED, "shaded squares")
def test_patterns_of_squares() -> None:
    ways = ((0, -1, 1, 0), (-1, 0, 0, -1), (0, 1, -1, 0), (1, 0, 0, 1))
    mirrors = ((-1, 0, 0, 1), (1, 0, 0, -1), (0, 1, 1, 0), (0, -1, -1, 0))
    for figure in examples("shaded squares", COUNT, 3):
        picture = drawn(figure)
        cells = areas(picture)
        dark = {middle(mark) for mark in cells if mark.fill != "none"}
        xs, ys = ([c[k] for mark in cells for c in corners(mark)] for k in (0, 1))
        centre = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
        whole = {middle(mark) for mark in cells}

        def kept(
            shaded: set[Spot],
            tried: tuple[tuple[int, ...], ...],
            centre: Spot = centre,
            whole: set[Spot] = whole,
        ) -> int:
            return sum(
                {_image(s, way, centre) for s in whole} == whole
                and {_image(s, way, centre) for s in shaded} == shaded
                for way in tried
            )

        letters = {
            str(mark.content): min(
                whole, key=lambda s, at=mark.at: (s[0] - q(at.x)) ** 2 + (s[1] - q(at.y)) ** 2
            )
            for mark in picture.of("letter")
            if isinstance(mark, Text)
        }
        for reading in kind_of(figure).readings(figure):
            said = line(read(figure, reading)).strip('"')
            tried = mirrors if "line" in reading.name else ways
            if not reading.of:
                assert int(said) == kept(dark, tried), figure
            else:
                counts = {name: kept(dark | {spot}, tried) for name, spot in letters.items()}
                wanted = int(reading.of[0])
                assert [name for name, n in counts.items() if n == wanted] == [said], figure


@holds(MEASURED, "cut polygon")
def test_cut_polygons() -> None:
    for figure in examples("cut polygon", COUNT, 3):
        marks = areas(drawn(figure))
        if marks[0].role == "outline":
            rim, dark = corners(marks[0]), None
            n = len(rim)
        else:
            n = len(marks)
            rim = [corners(mark)[1] for mark in marks]
            dark = {middle(mark) for mark in marks if mark.fill != "none"}
        (cx, cy) = (
            sum((x for x, _ in rim), fmpq(0)) / len(rim),
            sum((y for _, y in rim), fmpq(0)) / len(rim),
        )
        spots = {*rim} if dark is None else dark
        x, y = rim[-1]
        first = arb.atan2(arb(y - cy), arb(x - cx))

        def same(turned: list[tuple[arb, arb]], spots: set[Spot] = spots) -> bool:
            return all(
                any(abs(x - a) < arb("1e-3") and abs(y - b) < arb("1e-3") for a, b in spots)
                for x, y in turned
            )

        turns = mirrors = 0
        for k in range(n):
            angle = 2 * arb.pi() * k / n
            c, s = angle.cos(), angle.sin()
            ways = [(arb(x) - cx, arb(y) - cy) for x, y in spots]
            turns += same([(cx + c * x - s * y, cy + s * x + c * y) for x, y in ways])
            # A mirror goes through the middle, every half a part of a turn from a corner on.
            twice = 2 * first + angle
            c, s = twice.cos(), twice.sin()
            mirrors += same([(cx + c * x + s * y, cy + s * x - c * y) for x, y in ways])
        for reading in kind_of(figure).readings(figure):
            found = mirrors if reading.name == "lines of symmetry" else turns
            assert int(exact(read(figure, reading))) == found, figure


def _turned(points: list[Solid], a: Solid, b: Solid, out: Solid) -> list[Solid]:
    """Return points after a quarter turn about an edge, so that what lay beyond it stands up."""
    along = _scaled(_minus(b, a), out)
    rows = []
    for p in points:
        gone = _minus(p, a)
        # Split into along the edge, beyond it, and out of the paper; then beyond becomes out.
        axis, beyond = along
        u, v, w = (_dot(gone, way) for way in (axis, beyond, out))
        rows.append(
            tuple(a[k] + u * axis[k] + v * out[k] - w * beyond[k] for k in range(3)),
        )
    return rows


def _scaled(edge: Solid, out: Solid) -> tuple[Solid, Solid]:
    """Return the unit ways along an edge that lies along an axis, and beyond it to its right."""
    size = sum((abs(each) for each in edge), fmpq(0))
    axis = tuple(each / size for each in edge)
    m = fmpq_mat([[axis[0], axis[1], axis[2]], [out[0], out[1], out[2]]])
    beyond = (
        m[0, 1] * m[1, 2] - m[0, 2] * m[1, 1],
        m[0, 2] * m[1, 0] - m[0, 0] * m[1, 2],
        m[0, 0] * m[1, 1] - m[0, 1] * m[1, 0],
    )
    return axis, beyond


def _minus(a: Solid, b: Solid) -> Solid:
    return tuple(x - y for x, y in zip(a, b, strict=True))


def _dot(a: Solid, b: Solid) -> fmpq:
    return sum((x * y for x, y in zip(a, b, strict=True)), fmpq(0))


def folded(faces: list[list[Spot]]) -> list[frozenset[Solid]] | None:
    """Return the corners of each face in space, folded up face by face; None if they hang apart.

    Each face is carried with the whole way it hangs by, and turned about every edge on that way,
    the nearest last.
    """
    up = (fmpq(0), fmpq(0), fmpq(1))
    hung: dict[int, list[tuple[Solid, Solid]]] = {0: []}
    left = [0]
    for place in left:
        for other, face in enumerate(faces):
            if other in hung:
                continue
            shared = [corner for corner in faces[place] if corner in face]
            if len(shared) == 2 and len({*shared}) == 2:
                a, b = ((x, y, fmpq(0)) for x, y in shared)
                beyond = _scaled(_minus(b, a), up)[1]
                inside = tuple(sum((c[k] for c in face), fmpq(0)) / 4 for k in (0, 1))
                if _dot(_minus((*inside, fmpq(0)), a), beyond) < 0:
                    a, b = b, a
                hung[other] = [*hung[place], (a, b)]
                left.append(other)
    if len(hung) != len(faces):
        return None
    found = []
    for place, face in enumerate(faces):
        points: list[Solid] = [(x, y, fmpq(0)) for x, y in face]
        for a, b in reversed(hung[place]):
            points = _turned(points, a, b, up)
        found.append(frozenset(points))
    return found


@holds(MEASURED, "net")
def test_nets() -> None:
    for figure in examples("net", COUNT, 3):
        picture = drawn(figure)
        roles = [*dict.fromkeys(mark.role for mark in areas(picture, "face"))]
        pieces = [[corners(mark) for mark in areas(picture, role)] for role in roles]
        letters = {
            str(mark.content): mark.at for mark in picture.of("letter") if isinstance(mark, Text)
        }
        readings = kind_of(figure).readings(figure)
        for reading in readings:
            said = line(read(figure, reading)).strip('"')
            if reading.name == "net of a cube":
                closed = [_extent(folded(piece)) for piece in pieces]
                cubes = [k for k, sizes in enumerate(closed) if sizes and len({*sizes}) == 1]
                names = [str(m.content) for m in picture.of("name") if isinstance(m, Text)]
                assert [names[k] for k in cubes] == [said], figure
                continue
            (piece,) = pieces
            space = folded(piece)
            sizes = _extent(space)
            assert sizes is not None, figure
            assert space is not None
            if reading.name == "opposite":
                on = {name: _holding(piece, at) for name, at in letters.items()}
                one, other = (space[on[name]] for name in (reading.of[0], said))
                assert not one & other, figure
                continue
            lines = [m for m in picture.of("square line") if isinstance(m, Stroke)]
            side = _side(piece, lines)
            a, b, c = sorted(size / side for size in sizes)
            number = q(int(said.split()[0]))
            wanted = {
                "volume": a * b * c,
                "surface area": sum((shoelace(m) for m in areas(picture, "face")), fmpq(0))
                / side**2,
                "longest edge": c,
            }
            assert number == wanted[reading.name], (figure, reading)


def _extent(space: list[frozenset[Solid]] | None) -> tuple[fmpq, ...] | None:
    """Return the sizes of the box that folded faces close, or None where they close none."""
    if space is None or len({*space}) != 6:
        return None
    points = {point for face in space for point in face}
    sizes = tuple(max(p[k] for p in points) - min(p[k] for p in points) for k in range(3))
    return sizes if len(points) == 8 and all(sizes) else None


def _holding(piece: list[list[Spot]], at: tuple) -> int:
    x, y = q(at[0]), q(at[1])
    (place,) = [
        k
        for k, face in enumerate(piece)
        if min(c[0] for c in face) < x < max(c[0] for c in face)
        and min(c[1] for c in face) < y < max(c[1] for c in face)
    ]
    return place


def _side(piece: list[list[Spot]], lines: list[Stroke]) -> fmpq:
    """Return the side of a square: the least distance of a line from an edge beside it."""
    gaps = [abs(face[0][k] - face[2][k]) for face in piece for k in (0, 1)]
    for mark in lines:
        (a, b), (c, _) = mark.points
        k = 0 if a == c else 1
        at = q(a) if k == 0 else q(b)
        gaps += [abs(at - corner[k]) for face in piece for corner in face if corner[k] != at]
    return min(gaps)


@holds(MEASURED, "solid")
def test_solids() -> None:
    """Corners and edges are counted as they are drawn, and faces by Euler's relation."""
    for figure in examples("solid", COUNT, 3):
        picture = drawn(figure)
        edges = {
            frozenset(mark.points)
            for role in ("edge", "hidden edge")
            for mark in picture.of(role)
            if isinstance(mark, Stroke)
        }
        spots = {spot for edge in edges for spot in edge}
        faces = 2 - len(spots) + len(edges)
        shown = {
            reading: int(exact(read(figure, reading)))
            for reading in kind_of(figure).readings(figure)
            if reading.name != "called"
        }
        assert shown[Reading("vertices")] == len(spots)
        assert shown[Reading("edges")] == len(edges)
        assert shown[Reading("faces")] == faces
        sided = {int(r.of[0]): count for r, count in shown.items() if r.name == "sided"}
        assert sum(sided.values()) == faces
        # Each edge is a side of two faces.
        assert sum(sides * count for sides, count in sided.items()) == 2 * len(edges)


@holds(MEASURED, "construction")
def test_constructions() -> None:
    """Angles and lengths between the named points, which stand near their true places."""
    for figure in examples("construction", COUNT, 3):
        picture = drawn(figure)
        dots = [mark.centre for mark in picture.of("point") if isinstance(mark, Arc)]
        names = [mark for mark in picture.of("name") if isinstance(mark, Text)]
        at: dict[str, Point] = {}
        for mark in names:
            box = text_box(mark)
            x, y = (box.left + box.right) / 2, (box.bottom + box.top) / 2
            spot = min(dots, key=lambda dot: (dot[0] - x) ** 2 + (dot[1] - y) ** 2)
            at[str(mark.content)] = spot
        assert len({*at.values()}) == len(names), figure

        def far(name: str, at: dict[str, Point] = at) -> arb:
            (a, b), (c, d) = (at[letter] for letter in name)
            return arb(q(a - c) ** 2 + q(b - d) ** 2).sqrt()

        scales = []
        for reading in kind_of(figure).readings(figure):
            said = read(figure, reading)
            if reading.name == "length":
                scales.append(ball(said) / far(reading.of[0]))
            elif reading.name == "angle":
                first, corner, last = (at[letter] for letter in reading.of[0])
                part = turn(corner, first, last)
                degrees = 360 * min(part, 1 - part, key=float)
                assert near(ball(said), degrees, "1e-3"), (figure, reading)
            elif reading.name == "shortest":
                shortest = min(reading.of, key=lambda name: float(far(name)))
                assert line(said).strip('"') == shortest, figure
        assert all(near(scale, scales[0], "1e-3") for scale in scales), figure
